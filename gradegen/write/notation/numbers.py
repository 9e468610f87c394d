"""The numbers of a row as written: one for all sizes, a size list, one size's own, or a sum in braces."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.design.rows import Number
from gradegen.numbers.exact import decimal_text
from gradegen.write.words.fold import folded

Worth = Callable[[Formula, int], int | None]


@dataclass(frozen=True, slots=True)
class Figures:
    """The sizes, which of them is written (None: all), and what a sum comes to in a size (None: written as a sum)."""

    sizes: tuple[str, ...]
    wanted: int | None = None
    worth: Worth | None = None

    def values(self, number: Number) -> tuple[int | None, ...] | None:
        """One value for all written sizes, or one per size; None while a sum stays a sum."""
        if number.formula is None:
            return self._of_wanted(number.values)
        if self.worth is None:
            return None
        which = range(len(self.sizes)) if self.wanted is None else (self.wanted,)
        values = tuple(self.worth(number.formula, index) for index in which)
        return values[:1] if len(set(values)) == 1 else values

    def _of_wanted(self, values: tuple[int | None, ...]) -> tuple[int | None, ...]:
        if self.wanted is None or len(values) == 1:
            return values
        return (values[self.wanted] if self.wanted < len(values) else None,)

    def text(self, number: Number | None) -> str:
        """The number as written; "" for none at all."""
        if number is None:
            return ""
        values = self.values(number)
        if values is None:
            return "{" + formula_text(number.formula) + "}" if number.formula else ""
        return folded(["-" if value is None else str(value) for value in values])

    def ordinal(self, number: Number) -> str:
        """`3rd`, `3rd (4th)`."""
        values = self.values(number)
        if values is None:
            return self.text(number)
        return folded(["-" if value is None else ordinal_text(value) for value in values])

    def is_nothing(self, number: Number | None) -> bool:
        """True when none of the written sizes works it: 0 or `-`."""
        values = self.values(number) if number is not None else None
        return values is not None and not any(values)


def ordinal_text(value: int) -> str:
    """1st, 2nd, 3rd, 11th, 22nd."""
    ending = "th" if value % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(value % 10, "th")
    return f"{value}{ending}"


def formula_text(formula: Formula) -> str:
    """A sum as a designer writes it: `2 * band + 1`, brackets only where they change it."""
    match formula:
        case Amount():
            return _fraction(formula.number) + (f" {formula.unit}" if formula.unit else "")
        case PerSize():
            units = {amount.unit for amount in formula.each}
            unit = next(iter(units)) if len(units) == 1 else None
            return f"[{', '.join(_fraction(amount.number) for amount in formula.each)}]" + (f" {unit}" if unit else "")
        case Name():
            return formula.name
        case Call():
            return f"{formula.function}({', '.join(formula_text(part) for part in formula.parts)})"
        case Sum():
            left, right = _left(formula.left, formula.sign), _right(formula.right, formula.sign)
            return f"{left} {formula.sign} {right}"


def _left(part: Formula, sign: str) -> str:
    weaker = isinstance(part, Sum) and part.sign in "+-" and sign in "*/"
    return f"({formula_text(part)})" if weaker else formula_text(part)


def _right(part: Formula, sign: str) -> str:
    stronger = isinstance(part, Sum) and part.sign in "*/" and sign in "+-"
    return formula_text(part) if stronger or not isinstance(part, Sum) else f"({formula_text(part)})"


def _fraction(number: Fraction) -> str:
    rest = number.denominator
    for prime in (2, 5):
        while rest % prime == 0:
            rest //= prime
    return decimal_text(number, 12) if rest == 1 else f"{number.numerator}/{number.denominator}"
