"""The lines of an ordinary text pattern: which part of the pattern each belongs to, and which lines belong together."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise

from gradegen.findings import Written
from gradegen.read.plain_text.headings import (
    Part,
    begins_rows,
    defines_stitch,
    has_label,
    heading_before_row,
    heading_of,
)

_NOTE = re.compile(r"\W*notes?\s*[:–—-]\s*(?=\S)", re.I)
_SPECIAL = re.compile(r"\W*special (?:stitch(?:es)?|abbreviations?)\s*[:–—-]\s*(?=\S.*(?:[:=]|\s[-–—]\s))", re.I)
_ROW_NAME = re.compile(r"[^:=]*(?:\d|\b(?:rows?|rnds?|rounds?|next|edging|border)\b)", re.I)


_NEXT_LABEL = re.compile(
    r"[.)\]]\s+(?=(?:\d+(?:st|nd|rd|th)\s+(?:row|rnd|round)|(?:row|rnd|round)\s+\d+)(?:\s*\([^()]*\))?\s*(?::|\.?--|\.?—))",
    re.I,
)


@dataclass(frozen=True, slots=True)
class Line:
    """One instruction, note or heading: one printed line and those that continue it."""

    words: Written
    part: Part
    heading: str = ""


@dataclass(frozen=True, slots=True)
class _Span:
    start: int
    end: int
    part: Part
    heading: str


def text_lines(source: Written) -> list[Line]:
    """The lines of a text pattern, each with the part it stands in."""
    part: Part = "head"
    piece, before = "", ""
    kept: list[_Span] = []
    printed = list(_printed(source.text))
    following = _following([raw for _, raw in printed])
    for (start, raw), after in zip(printed, following, strict=True):
        headed = heading_before_row(raw) if kept else 0
        if headed:
            part, piece = "rows", raw[:headed].strip(" :")
            start, raw = start + headed, raw[headed:]
        special = _SPECIAL.match(raw)
        if special and kept:
            start, raw = start + special.end(), raw[special.end() :]
            kept.append(_Span(start, start + len(raw.rstrip()), "stitches", ""))
            before = raw
            continue
        heading = heading_of(raw, after, part) if raw.strip() and kept else None
        if heading is not None:
            part, piece = heading
        elif kept and _may_define(raw, part) and defines_stitch(raw, source.text):
            kept.append(_Span(start + len(raw) - len(raw.lstrip()), start + len(raw.rstrip()), "stitches", ""))
        elif raw.strip():
            if part != "rows" and kept and (begins_rows(raw) or (part == "head" and has_label(raw))):
                part = "rows"
            end = start + len(raw.rstrip())
            if kept and kept[-1].part == part and _continues(raw, before) and part != "head":
                kept[-1] = _Span(kept[-1].start, end, part, kept[-1].heading)
            else:
                own: Part = "notes" if part == "rows" and _NOTE.match(raw) else part
                kept.append(_Span(start + len(raw) - len(raw.lstrip()), end, own, piece))
        before = raw
    return [Line(source.part(span.start, span.end), span.part, span.heading) for span in kept]


def _may_define(line: str, part: Part) -> bool:
    """True before the rows; among and behind them, for a line whose name is no row's."""
    return part in ("head", "notes") or (part == "rows" and _ROW_NAME.match(line) is None)


def _printed(text: str) -> list[tuple[int, str]]:
    """Each printed line with where it starts; one that holds several labelled rows as those."""
    lines: list[tuple[int, str]] = []
    offset = 0
    for raw in text.split("\n"):
        cuts = [0, *(found.end() for found in _NEXT_LABEL.finditer(raw)), len(raw)]
        lines += [(offset + start, raw[start:end]) for start, end in pairwise(cuts) if end > start or not raw]
        offset += len(raw) + 1
    return lines


def _following(lines: list[str]) -> list[str]:
    """For each line the next one that isn't empty."""
    after = ""
    found: list[str] = []
    for raw in reversed(lines):
        found.append(after)
        after = raw if raw.strip() else after
    return found[::-1]


def _continues(line: str, before: str) -> bool:
    """True when a line goes on with the sentence above it."""
    if has_label(line) or not before.strip():
        return False
    return line[:1].isspace() or line[:1].islower() or before.rstrip().endswith((",", ";", "(", "-"))
