"""Sums of a pattern as formulas of a spreadsheet, so that an editor can follow every number back to the body."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.numbers.units import in_unit, inches_of

CellOf = Callable[[str], str | None]  # the cell of a body column, a measure or a count in one size


class NoFormula(Exception):  # noqa: N818
    """A sum that a spreadsheet cannot say, or that names something it does not hold."""


def column_letter(at: int) -> str:
    """A, B, ... Z, AA, by the column's number from 0."""
    letters = ""
    at += 1
    while at:
        at, rest = divmod(at - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def sheet_formula(formula: Formula, cell: CellOf, index: int) -> str:
    """A sum in one size, without the sign it begins with; raises NoFormula."""
    if isinstance(formula, Amount):
        return _amount(formula)
    if isinstance(formula, PerSize):
        if index >= len(formula.each):
            raise NoFormula
        return _amount(formula.each[index])
    if isinstance(formula, Name):
        found = cell(formula.name)
        if found is None:
            raise NoFormula
        return found
    if isinstance(formula, Sum):
        left, right = sheet_formula(formula.left, cell, index), sheet_formula(formula.right, cell, index)
        return f"({left}{formula.sign}{right})"
    return _called(formula, [sheet_formula(part, cell, index) for part in formula.parts])


def _amount(amount: Amount) -> str:
    """A number; lengths in inches, as a division where they are no whole number."""
    number = amount.number if amount.unit in (None, "sts", "rows") else inches_of(amount)
    if number is None:
        raise NoFormula
    return in_cells(number)


def in_cells(number: Fraction) -> str:
    """An exact number as a spreadsheet can say it: 27/4 stays a division."""
    if number.denominator == 1:
        return str(number.numerator)
    return f"({number.numerator}/{number.denominator})"


def _called(call: Call, parts: list[str]) -> str:
    inside = ",".join(parts)
    if call.function in ("max", "min"):
        return f"{call.function.upper()}({inside})"
    if len(parts) != 1:
        raise NoFormula
    if call.function == "up":
        return f"-INT(-({inside}))"
    return f"INT({inside})" if call.function == "down" else f"INT({inside}+1/2)"


def snapped_formula(raw: str, first: str, step: str, last: str | None, tie: str) -> str:
    """The count nearest to `raw` on first, first + step, ... up to last; an exact half goes the way the tie says."""
    way = f"({raw}-{first})/{step}"
    steps = f"INT({way}+1/2)" if tie == "up" else f"-INT(1/2-{way})"
    free = f"{first}+{step}*{steps}"
    least = f"MAX({first},{free})"
    return least if last is None else f"MIN({last},{least})"


__all__ = ["CellOf", "NoFormula", "column_letter", "in_cells", "in_unit", "sheet_formula", "snapped_formula"]
