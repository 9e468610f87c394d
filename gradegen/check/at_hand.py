"""What rules look at again and again: numbers per size, and the place of a number in one size."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Name, PerSize
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule
from gradegen.design.rows import Number
from gradegen.findings import Place
from gradegen.grade.body.sums import Refused, Value, reckon, value_of


@dataclass(frozen=True, slots=True)
class _CountsOf:
    """What names mean in the rows of one size: its graded counts."""

    size: GradedSize

    def named(self, name: Name) -> Value:
        number = self.size.numbers().get(name.name)
        if number is None:
            raise Refused(None)
        return Value(Fraction(number), None)

    def entry(self, listed: PerSize) -> Value:
        if self.size.index >= len(listed.each):
            raise Refused(None)
        return value_of(listed.each[self.size.index])


def number_in(number: Number, size: GradedSize, sizes: int) -> int | None:
    """The whole number of one size; None when the size has none or the sum can't be worked out."""
    if number.formula is not None:
        try:
            value = reckon(number.formula, _CountsOf(size)).number
        except Refused:
            return None
        return int(value) if value.denominator == 1 else None
    if len(number.values) == 1:
        return number.values[0]
    return number.values[size.index] if len(number.values) == sizes > size.index else None


def place_in(number: Number, size: GradedSize, sizes: int) -> Place:
    """The place of one size's own entry of a list; of the whole number where there is no list."""
    return number.places[size.index] if len(number.places) == sizes > max(1, size.index) else number.place


def graded_count(checked: Checked, name: str) -> CountRule | None:
    """The rule of a count that a measure was snapped to; None for sums and unknown names."""
    rule = checked.pattern.counts.get(name.removesuffix(" chain"))
    return rule if rule is not None and rule.formula is None else None
