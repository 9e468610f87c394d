"""Body measures that no published table carries, worked out exactly from another column by a survey's line."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from gradegen.design.sizes import Band, Cell, Column
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.numbers.exact import decimal_text
from gradegen.read.size_tables import keys
from gradegen.read.yaml.fields import Given, nearest
from gradegen.read.yaml.nodes import Scalar

UNKNOWN_COLUMN = Rule(
    "unknown-column", Severity.ERROR, "file format", "A body column that the size table does not have."
)

INCH = Fraction(254, 100)


def unknown_column(name: str, place: Place, known: tuple[str, ...]) -> Finding:
    """The finding for a column name that is not in the table."""
    guess = nearest(name, known)
    hint = f"Did you mean {guess}?" if guess else f"Its columns are {', '.join(known)}."
    return UNKNOWN_COLUMN.at(place, f"The size table has no column {name}.", hint=hint)


def derive_column(
    name: Scalar, given: Given, columns: Mapping[str, Column], named: tuple[str, ...]
) -> tuple[Column | None, tuple[Finding, ...]]:
    """The survey line at both ends of every cell, inches from inches and centimetres from centimetres."""
    base, slope, intercept = given.value(keys.FROM), given.value(keys.SLOPE), given.value(keys.INTERCEPT)
    if base is None or slope is None or intercept is None:
        return None, ()
    source = columns.get(base.text)
    if source is None:
        return None, () if base.text in named else (unknown_column(base.text, base.place, named),)
    band_at = given.value(keys.RANGE_CM)
    reach = band_at[0] if band_at else None
    cells = tuple(_cell(cell, slope, intercept, reach, name.place) for cell in source.cells)
    trust, note, survey = (given.value(field) for field in (keys.TRUST, keys.NOTE, keys.SOURCE))
    line = (
        f"{decimal_text(slope, 4)} x {base.text} {'+' if intercept >= 0 else '-'} {decimal_text(abs(intercept), 3)} cm"
    )
    return Column(
        name=name.text,
        cells=cells,
        trust=trust.text if trust else "worked out from a survey's line",
        trust_cm=None,
        note=note.text if note else None,
        derived=f"{line}, {survey.text}" if survey else line,
        spread_cm=given.value(keys.RESIDUAL_SD),
        place=name.place,
    ), ()


def _cell(cell: Cell | None, slope: Fraction, intercept: Fraction, reach: Band | None, place: Place) -> Cell | None:
    if cell is None:
        return None
    inches = _band(cell.inches, slope, intercept / INCH)
    cm = _band(cell.cm, slope, intercept)
    return Cell(inches, cm, place, extrapolated=_is_beyond(cell, reach))


def _band(band: Band | None, slope: Fraction, intercept: Fraction) -> Band | None:
    if band is None:
        return None
    ends = (slope * band.low + intercept, slope * band.high + intercept)
    return Band(min(ends), max(ends))


def _is_beyond(cell: Cell, reach: Band | None) -> bool:
    """True when an end of the published cell lies outside the bodies that were measured."""
    if reach is None:
        return False
    if cell.cm is not None:
        low, high = cell.cm.low, cell.cm.high
    elif cell.inches is not None:
        low, high = cell.inches.low * INCH, cell.inches.high * INCH
    else:
        return False
    return low < reach.low or high > reach.high
