"""Rows whose `{shaping}` has been worked out: the schedule's sentence stands in their text and is read like any."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from gradegen.design.passages import Sentence
from gradegen.design.rows import Row
from gradegen.findings import Finding, Written
from gradegen.read.notation.rows import read_rows
from gradegen.read.notation.words.row_names import RowNames

_BRACES = re.compile(r"\{\s*([^{}]+?)\s*\}")
_STARTS = re.compile(r"(?:^|[.:\n]\s*)$")


@dataclass(frozen=True, slots=True)
class Filling:
    """What a schedule puts in place of its name: its sentence for all sizes, and one for each size alone."""

    schedule: str
    every_size: str
    each: tuple[str, ...]


def names_schedule(text: str, schedules: Collection[str]) -> bool:
    """True when a schedule's name stands in braces in the text."""
    return any(found[1] in schedules for found in _BRACES.finditer(text))


def read_filled_rows(
    written: Written, fillings: Mapping[str, Filling], names: RowNames
) -> tuple[tuple[Row, ...], tuple[Finding, ...]]:
    """The rows with every known `{schedule}` replaced by its sentence; each keeps what stands there for one size."""
    filled, used = _filled(written, fillings)
    rows, findings = read_rows(filled, names)
    return tuple(_with_sentences(row, used) for row in rows), findings


def _filled(written: Written, fillings: Mapping[str, Filling]) -> tuple[Written, tuple[Filling, ...]]:
    """The text with the sentences in it; every sign of a sentence has the place of its braces."""
    parts: list[str] = []
    anchors: list[tuple[int, int, int]] = []
    used: list[Filling] = []
    at, length = 0, 0
    for found in _BRACES.finditer(written.text):
        filling = fillings.get(found[1])
        if filling is None:
            continue
        before = written.part(at, found.start())
        opens = bool(_STARTS.search(written.text[: found.start()]))
        chosen = replace(
            filling,
            every_size=_capital(filling.every_size, opens),
            each=tuple(_capital(one, opens) for one in filling.each),
        )
        anchors += [(length + offset, line, column) for offset, line, column in before.anchors]
        length += len(before.text)
        parts += [before.text, chosen.every_size]
        anchors += _anchors(written, found.start(), found.end(), length, len(chosen.every_size))
        length += len(chosen.every_size)
        used.append(chosen)
        at = found.end()
    rest = written.part(at, len(written.text))
    anchors += [(length + offset, line, column) for offset, line, column in rest.anchors]
    return Written("".join([*parts, rest.text]), written.file, tuple(anchors)), tuple(used)


def _anchors(written: Written, start: int, end: int, at: int, long: int) -> list[tuple[int, int, int]]:
    """Every sign of a sentence stands at the opening brace, the last one at the closing brace."""
    first, last = written.place(start, start + 1), written.place(end - 1, end)
    spots = [(at + offset, first.line, first.column) for offset in range(long - 1)]
    return [*spots, (at + long - 1, last.line, last.column)] if long else []


def _capital(words: str, opens: bool) -> str:
    return words[:1].upper() + words[1:] if opens else words


def _with_sentences(row: Row, used: Sequence[Filling]) -> Row:
    """The row with the stretches of its text that schedules wrote."""
    found: list[Sentence] = []
    at = 0
    for filling in used:
        start = row.text.find(filling.every_size, at) if filling.every_size else -1
        if start >= 0:
            at = start + len(filling.every_size)
            found.append(Sentence(start, at, filling.schedule, filling.each))
    return replace(row, sentences=tuple(found)) if found else row
