"""Least squares in exact fractions, for a handful of unknowns."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

Line = Sequence[Fraction]


def best_factor(shapes: Line, values: Line) -> Fraction | None:
    """The one factor k for which k * shape comes nearest to the values in all; None when every shape is nothing."""
    square = sum((shape * shape for shape in shapes), Fraction(0))
    if not square:
        return None
    return sum((shape * value for shape, value in zip(shapes, values, strict=True)), Fraction(0)) / square


def best_parts(lines: Sequence[Line], values: Line) -> tuple[Fraction, ...] | None:
    """The unknowns x for which every line's sum of part * x comes nearest to its value; None: not settled."""
    width = len(lines[0]) if lines else 0
    if not width or len(lines) < width:
        return None
    normal = [
        [sum((line[i] * line[j] for line in lines), Fraction(0)) for j in range(width)]
        + [sum((line[i] * value for line, value in zip(lines, values, strict=True)), Fraction(0))]
        for i in range(width)
    ]
    return _solved(normal)


def _solved(rows: list[list[Fraction]]) -> tuple[Fraction, ...] | None:
    """Gauss and Jordan: the last column of the solved rows; None when a pivot is missing."""
    size = len(rows)
    for at in range(size):
        pivot = next((row for row in range(at, size) if rows[row][at]), None)
        if pivot is None:
            return None
        rows[at], rows[pivot] = rows[pivot], rows[at]
        rows[at] = [part / rows[at][at] for part in rows[at]]
        for row in range(size):
            if row != at and rows[row][at]:
                factor = rows[row][at]
                rows[row] = [part - factor * other for part, other in zip(rows[row], rows[at], strict=True)]
    return tuple(row[size] for row in rows)
