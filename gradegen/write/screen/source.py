"""The line of the file a finding points at, and the marks under it."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path

from gradegen.findings import Place
from gradegen.read.files import open_text


@lru_cache(maxsize=8)
def source_lines(file: str) -> tuple[str, ...]:
    """All lines of a file; () when it can't be read."""
    written, _ = open_text(Path(file))
    return tuple(written.text.split("\n")) if written else ()


def source_line(place: Place) -> str | None:
    """The first line of a place; None when there is nothing to show."""
    lines = source_lines(place.file)
    return lines[place.line - 1] if 0 < place.line <= len(lines) and lines[place.line - 1].strip() else None


def text_at(place: Place) -> str:
    """The words that stand at a place, its lines joined by blanks; empty when the file can't be read."""
    lines = source_lines(place.file)[place.line - 1 : place.end_line]
    if not lines:
        return ""
    last = lines[-1][: place.end_column - 1]
    first = (lines[0] if len(lines) > 1 else last)[place.column - 1 :]
    middle = [line.strip() for line in lines[1:-1]]
    return " ".join([first, *middle, *([last.strip()] if len(lines) > 1 else [])]).strip()


def marked(line: str, places: Sequence[Place], width: int) -> tuple[str, str]:
    """The line and the marks under it, both cut to `width` columns around the first mark."""
    marks = _marks(line, places)
    text = "".join(_shown(sign) for sign in line)
    under = "".join(mark * len(_shown(sign)) * _columns(sign) for sign, mark in zip(line, marks, strict=False))
    under += "".join(marks[len(line) :])
    return _cut(text, under.rstrip(), width)


def _marks(line: str, places: Sequence[Place]) -> list[str]:
    marks = [" "] * (len(line) + 1)
    for place in places:
        start = min(place.column - 1, len(line))
        one_line = place.end_line == place.line
        end = place.end_column - 1 if one_line else len(line.rstrip())
        for spot in range(start, max(start + 1, min(end, len(line)))):
            marks[spot] = "^"
    return list(re.sub(r"(?<=\^) {1,2}(?=\^)", lambda gap: "^" * len(gap[0]), "".join(marks)))


def _shown(sign: str) -> str:
    if sign == "\t":
        return "    "
    return sign if sign.isprintable() else "\N{REPLACEMENT CHARACTER}"


def _columns(sign: str) -> int:
    if unicodedata.combining(sign):
        return 0
    return 2 if unicodedata.east_asian_width(sign) in "WF" else 1


def _cut(text: str, under: str, width: int) -> tuple[str, str]:
    if len(text) <= width:
        return text, under
    first = len(under) - len(under.lstrip())
    length = min(len(under) - first, width - 12)
    start = max(0, min(first + length + 5, len(text)) - width + 1)
    end = start + width - (1 if start else 0)
    head, tail = ("…" if start else ""), ("…" if end < len(text) else "")
    shown = head + text[start : end - len(tail)] + tail
    return shown, (" " * len(head) + under[start:end]).rstrip()
