"""What a sum in braces is worth in one size, when a page needs it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import assert_never

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.design.graded import GradedSize
from gradegen.numbers.rounding import nearest_whole
from gradegen.numbers.units import inches_of


@dataclass(frozen=True, slots=True)
class Worth:
    """A bare number, or a length in exact inches."""

    number: Fraction
    is_length: bool


def worth(formula: Formula, size: GradedSize) -> Worth | None:
    """What a formula comes to in this size; None when a name is unknown or the units don't go together."""
    match formula:
        case Amount():
            return _amount(formula)
        case PerSize():
            fits = size.index < len(formula.each)
            return _amount(formula.each[size.index]) if fits else None
        case Name():
            return _named(formula.name, size)
        case Sum():
            return _joined(formula.sign, worth(formula.left, size), worth(formula.right, size))
        case Call():
            return _called(formula.function, [worth(part, size) for part in formula.parts])
        case _:
            assert_never(formula)


def _amount(amount: Amount) -> Worth:
    length = inches_of(amount)
    return Worth(amount.number, False) if length is None else Worth(length, True)


def _named(name: str, size: GradedSize) -> Worth | None:
    numbers = size.numbers()
    if name in numbers:
        return Worth(Fraction(numbers[name]), False)
    if name in size.measures:
        return Worth(size.measures[name].printed, True)
    if name in size.graded_body:
        return Worth(size.graded_body[name], True)
    return None


def _joined(sign: str, left: Worth | None, right: Worth | None) -> Worth | None:
    if left is None or right is None:
        return None
    if sign in "+-":
        if left.is_length != right.is_length:
            return None
        return Worth(left.number + right.number * (1 if sign == "+" else -1), left.is_length)
    if sign == "*":
        both = left.is_length and right.is_length
        return None if both else Worth(left.number * right.number, left.is_length or right.is_length)
    if right.number == 0 or (right.is_length and not left.is_length):
        return None
    return Worth(left.number / right.number, left.is_length and not right.is_length)


_CALLS: Mapping[str, Callable[[list[Fraction]], Fraction]] = {
    "max": max,
    "min": min,
    "round": lambda parts: Fraction(nearest_whole(parts[0])),
    "up": lambda parts: Fraction(parts[0].__ceil__()),
    "down": lambda parts: Fraction(parts[0].__floor__()),
}


def _called(function: str, parts: list[Worth | None]) -> Worth | None:
    known = [part for part in parts if part is not None]
    alike = len({part.is_length for part in known}) == 1
    if len(known) != len(parts) or not alike or function not in _CALLS:
        return None
    return Worth(_CALLS[function]([part.number for part in known]), known[0].is_length)
