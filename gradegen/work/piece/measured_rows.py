"""Rows worked `until piece measures 9 in`: how many that is by the row gauge, where it can be known."""

from __future__ import annotations

from fractions import Fraction

from gradegen.design.formula import Amount, Formula, Name, PerSize
from gradegen.design.passages import Until
from gradegen.numbers.units import in_base_units, kind_of
from gradegen.work.edge.stops import Unclear
from gradegen.work.piece.piece import PieceWork

_WHOLE = frozenset({"", "piece", "work", "it", "fabric", "strip", "this"})
_UNKNOWN = "how many rows this takes is a measure, not a number"


def rows_until(piece: PieceWork, size: int, until: Until, cycle: int) -> int:
    """Rows in whole cycles, the first that comes within half a row of the length; raises Unclear without a gauge."""
    gauge = piece.rows_per_inch
    if gauge is None:
        raise Unclear(_UNKNOWN, until.place)
    worked = _rows_since(piece, size, until)
    wanted = _inches(piece, size, until) * gauge - Fraction(1, 2) - worked
    cycles = max(0, -(-wanted // cycle))
    return _on_side(piece, size, until, int(cycles) * cycle, cycle)


def _on_side(piece: PieceWork, size: int, until: Until, rows: int, cycle: int) -> int:
    """One cycle more where the last row would be of the other side than the words say."""
    standing = piece.standings[size]
    if until.side is None or standing.side is None or not cycle % 2:
        return rows
    last = standing.side if rows % 2 else _other(standing.side)
    return rows if last == until.side else rows + cycle


def _other(side: str) -> str:
    return "WS" if side == "RS" else "RS"


def _rows_since(piece: PieceWork, size: int, until: Until) -> int:
    """Rows worked since the spot the length is measured from."""
    standing = piece.standings[size]
    if standing.rows is None:
        raise Unclear("how many rows were worked before is not known", until.place)
    of, since = until.of, until.since
    if not since and (of in _WHOLE or of in piece.name.lower().split() or of == piece.name.lower()):
        return standing.rows
    mark = _marked(piece, size, since or of)
    if mark is None:
        raise Unclear(f"where this is measured from is not known ({since or of})", until.place)
    return standing.rows - mark


def _marked(piece: PieceWork, size: int, words: str) -> int | None:
    """Rows that were worked when a label with these words came by."""
    marks = piece.marks[size]
    wanted = words.strip().rstrip("s")
    return next((rows for name, rows in reversed(marks.items()) if wanted and wanted in name), None)


def _inches(piece: PieceWork, size: int, until: Until) -> Fraction:
    found = _length(piece, size, until.measure)
    if found is None:
        raise Unclear("this length cannot be worked out", until.place)
    return found


def _length(piece: PieceWork, size: int, formula: Formula) -> Fraction | None:
    if isinstance(formula, Amount):
        return in_base_units(formula) if kind_of(formula.unit) == "length" else None
    if isinstance(formula, PerSize):
        if len(formula.each) != len(piece.sizes):
            return None
        return _length(piece, size, formula.each[size])
    if isinstance(formula, Name):
        return piece.measures[size].get(formula.name) if piece.measures else None
    return None
