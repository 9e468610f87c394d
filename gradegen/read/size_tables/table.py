"""A size table file to a SizeTable: inches and centimetres both as published, known errors repaired and kept."""

from __future__ import annotations

from pathlib import Path

from gradegen.design.pattern import Text
from gradegen.design.sizes import Band, Cell, Column, SizeTable
from gradegen.findings import Finding, Place, Rule, Severity, Written
from gradegen.read.files import open_text
from gradegen.read.size_tables import keys
from gradegen.read.size_tables.bands import BandAt
from gradegen.read.size_tables.derived_columns import derive_column, unknown_column
from gradegen.read.size_tables.ready import find_table
from gradegen.read.yaml.fields import Given, nearest, read_fields
from gradegen.read.yaml.nodes import Scalar
from gradegen.read.yaml.places import read_yaml

TABLE_ROW_LENGTH = Rule(
    "table-row-length", Severity.ERROR, "file format", "A row of a size table has more or fewer values than sizes."
)
SIZE_REPEATED = Rule("size-repeated", Severity.ERROR, "file format", "A size name stands twice.")
UNKNOWN_SIZE = Rule("unknown-size", Severity.ERROR, "file format", "A size that the size table does not have.")
COLUMN_EMPTY = Rule("column-empty", Severity.ERROR, "file format", "A column has neither inches nor centimetres.")

_YOUNGEST_FIRST = ("baby", "child", "adult")


def read_size_table(name_or_path: Text | str, beside: Path) -> tuple[SizeTable | None, tuple[Finding, ...]]:
    """A ready table by its name, or a user's own by its path from the folder `beside` (or that of the file)."""
    table, _, findings = read_table_and_source(name_or_path, beside)
    return table, findings


def read_table_and_source(
    name_or_path: Text | str, beside: Path
) -> tuple[SizeTable | None, Written | None, tuple[Finding, ...]]:
    """The same, with the text of the table's file, for showing a line of it."""
    found, findings = find_table(name_or_path, beside)
    if found is None:
        return None, None, findings
    path, shown_as = found
    source, findings = open_text(path, shown_as)
    if source is None:
        return None, None, findings
    node, findings = read_yaml(source)
    if node is None:
        return None, source, findings
    given, more = read_fields(node, keys.SIZE_TABLE_FIELDS, "a size table")
    findings += more
    if given is None or any(_is_grave(finding) for finding in findings):
        return None, source, findings
    name = name_or_path if isinstance(name_or_path, str) else name_or_path.text
    table, more = _build(name, source.file, given)
    return table, source, findings + more


def _is_grave(finding: Finding) -> bool:
    return finding.severity in (Severity.ERROR, Severity.INTERNAL)


def _build(name: str, file: str, given: Given) -> tuple[SizeTable | None, tuple[Finding, ...]]:
    title, by = given.value(keys.TITLE), given.value(keys.BY)
    names, written = given.value(keys.SIZES) or (), given.value(keys.COLUMNS) or ()
    if title is None or by is None:
        return None, ()
    sizes = tuple(size.text for size in names)
    columns: dict[str, Column] = {}
    findings = [*_repeated_sizes(names)]
    for key, column in written:
        if column is not None:
            built, found = _column(key, column, sizes)
            findings += found
            columns |= {key.text: built} if built else {}
    named = tuple(key.text for key, _ in written)
    findings += [] if by.text in named else [unknown_column(by.text, by.place, named)]
    findings += _add_derived(given, columns, named)
    wearers, found = _wearers(given, sizes)
    findings += found
    if any(_is_grave(finding) for finding in findings):
        return None, tuple(findings)
    place = Place(file, 1, 1, 1, 1)
    told = (given.value(field) for field in (keys.PUBLISHER, keys.YEAR, keys.ADDRESS))
    publisher, year, address = (text.text if text else "" for text in told)
    oddities = tuple(text.text for text in given.value(keys.ODDITIES) or ())
    youngest = min(wearers, key=_YOUNGEST_FIRST.index)
    by_size = wearers if len(set(wearers)) > 1 else ()
    return SizeTable(
        name, file, title.text, publisher, year, address, youngest, by.text, sizes, columns, oddities, place, by_size
    ), tuple(findings)


def _repeated_sizes(names: tuple[Text, ...]) -> list[Finding]:
    seen: dict[str, Text] = {}
    twice = [size for size in names if seen.setdefault(size.text, size) is not size]
    return [size_repeated(size, seen[size.text]) for size in twice]


def size_repeated(size: Text, first: Text) -> Finding:
    """The finding for a size name that was given before."""
    message = f"Size {size.text} stands here twice."
    return SIZE_REPEATED.at(size.place, message, hint="Take one of them out.", see_also=((first.place, "first"),))


def _wearers(given: Given, sizes: tuple[str, ...]) -> tuple[tuple[str, ...], list[Finding]]:
    """One wearer per size; a size left out is a finding."""
    wearer = given.value(keys.WEARER)
    if wearer is None or isinstance(wearer, str):
        return (wearer or "adult",) * max(len(sizes), 1), []
    by_size = {key.text: value for key, value in wearer}
    findings = [_unknown_size(key, sizes) for key, _ in wearer if key.text not in sizes]
    left_out = [size for size in sizes if size not in by_size]
    if left_out and not findings:
        message = f"No wearer is given for {', '.join(left_out)}."
        findings.append(UNKNOWN_SIZE.at(given.place_of(keys.WEARER), message, hint="Give one for each size."))
    return tuple(by_size.get(size) or "adult" for size in sizes) or ("adult",), findings


def _unknown_size(key: Scalar, sizes: tuple[str, ...]) -> Finding:
    guess = nearest(key.text, sizes)
    hint = f"Did you mean {guess}?" if guess else f"Its sizes are {', '.join(sizes)}."
    return UNKNOWN_SIZE.at(key.place, f"This table has no size {key.text}.", hint=hint)


def _column(key: Scalar, given: Given, sizes: tuple[str, ...]) -> tuple[Column | None, list[Finding]]:
    inches, cm = given.value(keys.IN), given.value(keys.CM)
    if inches is None and cm is None:
        return None, [
            COLUMN_EMPTY.at(key.place, f"{key.text} has neither inches nor centimetres.", hint="Add in: [...]")
        ]
    findings = [
        _row_length(key.text, unit.key, len(row), given.place_of(unit), len(sizes))
        for unit, row in ((keys.IN, inches), (keys.CM, cm))
        if row is not None and len(row) != len(sizes)
    ]
    repairs = given.value(keys.USE) or ()
    findings += [_unknown_size(size, sizes) for size, _ in repairs if size.text not in sizes]
    if findings:
        return None, findings
    published = tuple(_cell(inches[at] if inches else None, cm[at] if cm else None) for at in range(len(sizes)))
    repaired = {size.text: _repair(value) for size, value in repairs if value is not None}
    cells = tuple(repaired.get(size) or cell for size, cell in zip(sizes, published, strict=True))
    trust, trust_cm, note, error = (given.value(f) for f in (keys.TRUST, keys.TRUST_CM, keys.NOTE, keys.KNOWN_ERROR))
    return Column(
        name=key.text,
        cells=cells,
        trust=trust.text if trust else "not said",
        trust_cm=trust_cm.text if trust_cm else None,
        note=note.text if note else None,
        derived=None,
        spread_cm=None,
        place=key.place,
        known_error=error.text if error else None,
        published=published if repaired else (),
    ), []


def _row_length(name: str, unit: str, found: int, place: Place, wanted: int) -> Finding:
    hint = "Give one value per size, in the order of sizes; write null where nothing is published."
    return TABLE_ROW_LENGTH.at(
        place, f"{name} ({unit}) does not have one value per size.", expected=str(wanted), found=str(found), hint=hint
    )


def _cell(inches: BandAt | None, cm: BandAt | None) -> Cell | None:
    bands: tuple[Band | None, ...] = tuple(at[0] if at else None for at in (inches, cm))
    spot = inches or cm
    return Cell(bands[0], bands[1], spot[1]) if spot and (bands[0] or bands[1]) else None


def _repair(given: Given) -> Cell | None:
    return _cell(given.value(keys.USE_IN), given.value(keys.USE_CM))


def _add_derived(given: Given, columns: dict[str, Column], named: tuple[str, ...]) -> list[Finding]:
    findings: list[Finding] = []
    for key, value in given.value(keys.DERIVED) or ():
        column, found = derive_column(key, value, columns, named) if value is not None else (None, ())
        findings += found
        if column is not None:
            columns[key.text] = column
    return findings
