"""Sums with the numbers of one size as they are printed."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Name, PerSize
from gradegen.design.graded import GradedSize
from gradegen.grade.body.sums import Refused, Value, value_of


@dataclass(frozen=True, slots=True)
class Printed:
    """Names and lists as a page of one size takes them: its counts, and its measures as printed."""

    size: GradedSize

    def named(self, name: Name) -> Value:
        """A count, or a finished measure or body column in inches."""
        numbers = self.size.numbers()
        if name.name in numbers:
            return Value(Fraction(numbers[name.name]), None)
        if name.name in self.size.measures:
            return Value(self.size.measures[name.name].printed, "length")
        if name.name in self.size.graded_body:
            return Value(self.size.graded_body[name.name], "length")
        raise Refused(None)

    def entry(self, listed: PerSize) -> Value:
        """This size's entry of a list."""
        if self.size.index >= len(listed.each):
            raise Refused(None)
        return value_of(listed.each[self.size.index])
