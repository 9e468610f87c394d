"""An ordinary text file to a Pattern, so that a pattern that was not written for us can be proved."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from pathlib import Path

from gradegen.design.pattern import Pattern, Piece, Shape, SizeChoice, Terms, Text
from gradegen.design.rows import Definition, Row
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.files import open_text
from gradegen.read.notation.definitions import read_definition
from gradegen.read.notation.notes import read_notes
from gradegen.read.notation.row_names import RowNames
from gradegen.read.notation.rows import UNDEFINED_STITCH, read_next
from gradegen.read.plain_text.lines import Line, text_lines

Findings = tuple[Finding, ...]

SHAPE_ASSUMED = Rule("shape-assumed", Severity.NOTE, "house", "the text does not say how the piece is worked")
TERMS_ASSUMED = Rule("terms-assumed", Severity.NOTE, "house", "the text does not say which terms it uses")

SIZES_ASSUMED = Rule("sizes-assumed", Severity.NOTE, "house", "the text does not name its sizes")

_SIZES = re.compile(r"\s*sizes?\b\s*(?:are|come)?\s*:?\s*(.+)", re.I)
_UK = re.compile(r"\b(?:uk|british)\b[^.\n]{0,24}\bterm|\bterms?\s*:?\s*(?:uk|british)\b", re.I)
_US = re.compile(r"\b(?:us|u\.s\.|american)\b[^.\n]{0,24}\bterm|\bterms?\s*:?\s*(?:us|u\.s\.|american)\b", re.I)
_ONE_SIZE = re.compile(r"\s*one\s*(?:size)?\s*\.?\s*$", re.I)
_SHAPES: tuple[tuple[Shape, re.Pattern[str]], ...] = (
    ("half-twist band", re.compile(r"half[- ]twist|m(?:oe|o|ö)bius", re.I)),
    ("spiral", re.compile(r"spiral|without joining|do not join|continuous (?:rnd|round)", re.I)),
    ("joined rounds", re.compile(r"(?:worked|made|work) in (?:joined )?(?:rnds|rounds)|joined rounds", re.I)),
    ("flat", re.compile(r"worked flat|turned rows|(?:worked|work) in rows|back and forth", re.I)),
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
    if names == ("one",):
        names, more = _sizes_by_lists(lines, source)
        findings += more
    spoken = terms or _terms(lines)
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
    return (_pattern(source, lines, used, definitions, pieces), names), findings


def sizes_of(lines: Iterable[Line]) -> tuple[str, ...]:
    """Size names from the text's sizes line; ("one",) when there is none."""
    for line in lines:
        match = _SIZES.match(line.words.text) if line.part in ("head", "other") else None
        if match:
            return split_sizes(match[1])
    return ("one",)


_BRACKET_LIST = re.compile(r"\d+\s*[(\[]\s*(\d+(?:\s*[,:]\s*\d+)+)\s*[)\]]")


def _sizes_by_lists(lines: Iterable[Line], source: Written) -> tuple[tuple[str, ...], Findings]:
    """Sizes that only the size lists give away, named by their number."""
    lengths = Counter(
        1 + len(re.split(r"[,:]", match[1])) for line in lines for match in _BRACKET_LIST.finditer(line.words.text)
    )
    if not lengths:
        return ("one",), ()
    number = lengths.most_common(1)[0][0]
    names = tuple(f"size {i + 1}" for i in range(number))
    said = f"No line names the sizes; the size lists have {number} numbers, so {number} sizes are worked."
    return names, (SIZES_ASSUMED.at(source.place(0, 1), said, hint="--sizes S,M,L"),)


def split_sizes(words: str) -> tuple[str, ...]:
    """Size names: `S (M, L)`, `S, M and L`, `XS (S, M) (L, XL)`, `34-38-42`, `one size`."""
    if _ONE_SIZE.match(words):
        return ("one",)
    cut = re.split(r"[(),\[\]{};/|]|\band\b", words.strip().rstrip("."))
    names = [part.strip(" :.") for part in cut if part.strip(" :.")]
    if len(names) == 1 and re.fullmatch(r"\S+(?:\s*-\s*\S+)+", names[0]):
        names = [part.strip() for part in re.split(r"\s*-\s*", names[0])]
    return tuple(dict.fromkeys(names)) or ("one",)


def _terms(lines: Iterable[Line]) -> Terms | None:
    for line in lines:
        if line.part == "rows":
            continue
        if _UK.search(line.words.text):
            return "UK"
        if _US.search(line.words.text):
            return "US"
    return None


def _shape(lines: Iterable[Line]) -> Shape | None:
    """How it is worked: the first line that says so, outside the rows."""
    for line in lines:
        if line.part in ("head", "notes"):
            for shape, words in _SHAPES:
                if words.search(line.words.text):
                    return shape
    return None


def _shape_by_labels(lines: Sequence[Line]) -> Shape:
    rows = " ".join(line.words.text for line in lines if line.part == "rows").lower()
    rounds = len(re.findall(r"\b(?:rnd|round|rd)s?\b", rows))
    if rounds <= len(re.findall(r"\brows?\b", rows)):
        return "flat"
    return "joined rounds" if "join" in rows else "spiral"


def _definitions(lines: Iterable[Line], names: RowNames) -> tuple[dict[str, Definition], Findings]:
    known: dict[str, Definition] = {}
    findings: Findings = ()
    for line in lines:
        if line.part != "stitches":
            continue
        match = re.match(r"[-*•\s]*([^:=]{1,40}?)\s*[:=]\s*(?=\S)", line.words.text)
        if not match:
            continue
        own = RowNames(names.terms, names.sizes, known)
        name = re.sub(r"\s*\([^)]*\)\s*$", "", match[1]).strip()
        definition, more = read_definition(name, line.words.part(match.end(), len(line.words.text)), own)
        known[name] = definition
        findings += more
    return known, findings


def _pieces(lines: Sequence[Line], names: RowNames, source: Written) -> tuple[tuple[Piece, ...], Findings]:
    shape = _shape(lines)
    findings: Findings = ()
    if shape is None:
        shape = _shape_by_labels(lines)
        findings = (SHAPE_ASSUMED.at(source.place(0, 1), f"The text does not say how it is worked; read as: {shape}."),)
    grouped: dict[str, list[Row]] = {}
    for line in lines:
        if line.part == "rows":
            row, more, names = read_next(line.words, names)
            findings += more
            grouped.setdefault(line.heading, []).append(row)
    late = {heading for heading, rows in grouped.items() if _starts_late(rows)}
    lines_late = {line.words.place().line for line in lines if line.part == "rows" and line.heading in late}
    findings = tuple(f for f in findings if f.rule != UNDEFINED_STITCH.id or f.place.line not in lines_late)
    place = source.place()
    notes = tuple(_text(line) for line in lines if line.part in ("head", "notes"))
    pieces = [
        Piece(Text(heading or "Instructions", rows[0].place), shape, notes, tuple(rows), None, None, place)
        for heading, rows in grouped.items()
    ]
    return tuple(pieces), findings


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
