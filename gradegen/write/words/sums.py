"""What a sum in braces is worth in one size, when a page needs it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Formula, Name, PerSize
from gradegen.design.graded import GradedSize
from gradegen.grade.reckon import Refused, Value, reckon, value_of


@dataclass(frozen=True, slots=True)
class Worth:
    """A bare number, or a length in exact inches."""

    number: Fraction
    is_length: bool


@dataclass(frozen=True, slots=True)
class _Printed:
    """Names and lists as a page of one size takes them: its counts, and its measures as printed."""

    size: GradedSize

    def named(self, name: Name) -> Value:
        numbers = self.size.numbers()
        if name.name in numbers:
            return Value(Fraction(numbers[name.name]), None)
        if name.name in self.size.measures:
            return Value(self.size.measures[name.name].printed, "length")
        if name.name in self.size.graded_body:
            return Value(self.size.graded_body[name.name], "length")
        raise Refused(None)

    def entry(self, listed: PerSize) -> Value:
        if self.size.index >= len(listed.each):
            raise Refused(None)
        return value_of(listed.each[self.size.index])


def worth(formula: Formula, size: GradedSize) -> Worth | None:
    """What a formula comes to in this size; None where it cannot be worked out, as grading reported."""
    try:
        value = reckon(formula, _Printed(size))
    except Refused:
        return None
    return Worth(value.number, value.kind == "length")
