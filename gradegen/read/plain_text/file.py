"""An ordinary text file to a Pattern, so that a pattern that was not written for us can be proved."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import chain, repeat
from pathlib import Path

from gradegen.design.pattern import Pattern, Piece, SizeChoice, Terms, Text
from gradegen.design.rows import Definition, Row
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.files import open_text
from gradegen.read.notation.notes.definitions import read_definition
from gradegen.read.notation.notes.notes import read_notes
from gradegen.read.notation.rows import UNDEFINED_STITCH, read_next
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.plain_text.lines import Line, text_lines
from gradegen.read.plain_text.shapes_said import shapes_of
from gradegen.read.plain_text.sizes_only import rows_by_sizes, sizes_of_lines
from gradegen.read.plain_text.sizes_said import sizes_by_lists, sizes_of
from gradegen.read.plain_text.yarn_said import yarns_said

Findings = tuple[Finding, ...]

TERMS_ASSUMED = Rule("terms-assumed", Severity.NOTE, "house", "the text does not say which terms it uses")


def _term_words(names: str) -> re.Pattern[str]:
    says = rf"\b(?:{names})\b[^.\n]{{0,24}}\bterm(?:s|inology)?\b|\bterm(?:s|inology)?\s*:?\s*(?:{names})\b"
    return re.compile(rf"{says}|^abbreviations?\W+(?:{names})\b", re.IGNORECASE)


_TERMS: tuple[tuple[Terms, re.Pattern[str]], ...] = (
    ("UK", _term_words("uk|british")),
    ("US", _term_words(r"us|u\.s\.|american")),
)


def read_text_pattern(
    path: Path | str, sizes: Sequence[str] | None = None, terms: Terms | None = None
) -> tuple[tuple[Pattern, tuple[str, ...]] | None, Findings]:
    """The pattern in a text file and the names of its sizes; None when the file cannot be opened.

    `sizes`, `terms`: what the text does not say. Lines that are no rows are kept as prose.
    """
    source, findings = open_text(Path(path))
    if source is None:
        return None, findings
    lines = text_lines(source)
    names = tuple(sizes) if sizes else sizes_of(lines)
    if not sizes:
        names, more = sizes_by_lists(lines, source, names)
        findings += more
    spoken = terms or _terms(source, lines)
    used: Terms = spoken or "US"
    definitions, more = _definitions(lines, RowNames(used, names))
    noted = [_unbulleted(line.words) for line in lines if line.part in ("head", "notes")]
    noted_facts = read_notes(noted, RowNames(used, names, definitions))
    definitions = {**noted_facts.definitions, **definitions}
    pieces, more_found = _pieces(lines, RowNames(used, names, definitions), source)
    findings += more + more_found
    if spoken is None:
        findings += (
            TERMS_ASSUMED.at(
                source.place(0, 1), "No terms are named, so the rows are read in US terms.", hint="--terms UK"
            ),
        )
    working = frozenset(line.words.place().line for line in lines if line.part == "rows")
    pattern = _pattern(source, lines, used, definitions, pieces)
    return (replace(pattern, yarns=yarns_said(source, working, len(names))), names), findings


def _terms(source: Written, lines: Sequence[Line]) -> Terms | None:
    """The vocabulary that the first line outside the rows names."""
    working = {line.words.place().line for line in lines if line.part == "rows"}
    for number, printed in enumerate(source.text.split("\n"), source.place().line):
        if number in working:
            continue
        for terms, words in _TERMS:
            if words.search(printed.strip()):
                return terms
    return None


_REMARK = re.compile(r"\s*\((?![A-Za-z][A-Za-z-]*(?: [A-Za-z-]+){0,2}\))[^)]*\)\s*$|\s*\((?:make|work)\b[^)]*\)\s*$")


_NAMED = re.compile(r"[-*•\s]*([^:=]{1,40}?)\s*(?:[:=]|\s[-–—]\s)\s*(?=\S)")


def _definitions(lines: Iterable[Line], names: RowNames) -> tuple[dict[str, Definition], Findings]:
    known: dict[str, Definition] = {}
    findings: Findings = ()
    for line in lines:
        if line.part != "stitches":
            continue
        match = _NAMED.match(line.words.text)
        if not match:
            continue
        own = RowNames(names.terms, names.sizes, known)
        name = _REMARK.sub("", match[1]).strip()
        definition, more = read_definition(name, line.words.part(match.end(), len(line.words.text)), own)
        known[name] = definition
        findings += more
    return known, findings


def _pieces(lines: Sequence[Line], names: RowNames, source: Written) -> tuple[tuple[Piece, ...], Findings]:
    shapes, findings = shapes_of(lines, source)
    grouped: dict[str, list[Row]] = {}
    section, heading = "", ""
    only = sizes_of_lines(lines, names.sizes)
    for i, line in enumerate(lines):
        if line.part == "rows":
            row, more, names = read_next(line.words, replace(names, only=only.get(i, ())))
            findings += more
            if not grouped or (line.heading != section and not _goes_on(row, grouped[heading])):
                heading = line.heading
            section = line.heading
            grouped.setdefault(heading, []).extend(rows_by_sizes(row))
    late = {heading for heading, rows in grouped.items() if _starts_late(rows)}
    lines_late = {line.words.place().line for line in lines if line.part == "rows" and line.heading in late}
    findings = tuple(f for f in findings if f.rule != UNDEFINED_STITCH.id or f.place.line not in lines_late)
    place = source.place()
    notes = tuple(_text(line) for line in lines if line.part in ("head", "notes"))
    later = tuple(
        note for note in notes if not _MULTIPLE.search(note.text)
    )  # a multiple may be of the first chain alone
    pieces = [
        Piece(Text(heading or "Instructions", rows[0].place), shapes[heading], told, tuple(rows), None, None, place)
        for (heading, rows), told in zip(grouped.items(), chain((notes,), repeat(later)), strict=False)
    ]
    return tuple(pieces), findings


_MULTIPLE = re.compile(r"\bmultiples? of\b", re.I)


def _goes_on(row: Row, before: Sequence[Row]) -> bool:
    """True where a row under a new heading is worked on the rows above it: `Next row`, or the number after the last."""
    if row.label.text.lower().startswith("next"):
        return True
    last = next((r.label.last or r.label.first for r in reversed(before) if r.label.first is not None), None)
    first = row.label.first
    return first is not None and last is not None and first.values[0] == (last.values[0] or 0) + 1


def _starts_late(rows: Sequence[Row]) -> bool:
    """True where the first rows are not in the text, so that a stitch may have been explained in them."""
    first = next((row.label.first for row in rows if not row.is_prose), None)
    return first is not None and first.values != (1,) and first.formula is None


def _unbulleted(words: Written) -> Written:
    bare = words.text.lstrip("-*• ")
    return words.part(len(words.text) - len(bare), len(words.text))


def _text(line: Line) -> Text:
    bare = line.words.text.lstrip("-*• ")
    start = len(line.words.text) - len(bare)
    return Text(bare, line.words.place(start))


def _pattern(
    source: Written, lines: Sequence[Line], terms: Terms, definitions: dict[str, Definition], pieces: tuple[Piece, ...]
) -> Pattern:
    place = source.place(0, 1)
    title = _text(lines[0]) if lines else Text(Path(source.file).stem, place)
    return Pattern(
        file=source.file,
        title=title,
        version=None,
        about=None,
        designer=None,
        terms=terms,
        level=None,
        wearer=None,
        sizes=SizeChoice(Text("", place), None, None, "middle", place),
        units="inches first",
        rounding=None,
        yarns=(),
        notions=(),
        gauges={},
        measures={},
        counts={},
        definitions=tuple(definitions.values()),
        notes=(),
        pieces=pieces,
        finishing=(),
        cautions=(),
        licence=None,
        sources={source.file: source},
        place=source.place(),
    )
