"""Drifts as whole numbers: parts of an inch so small that every measure, gauge and weight is a whole number of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm

from gradegen.grade.related.joint import Wish
from gradegen.grade.related.solver import Row
from gradegen.numbers.rounding import nearest_whole

FINEST = 10**6  # parts that one stitch may weigh
ROUGH = 10_000  # parts to the inch where exact ones would be finer


@dataclass(frozen=True, slots=True)
class Parts:
    """How many parts an inch has. Not `exact`: measures are then taken to the nearest part.

    Even so an exact half between two counts stays one, for a stitch weighs an even number of parts.
    """

    to_the_inch: int
    exact: bool

    @classmethod
    def of(cls, wishes: Sequence[Wish]) -> Parts:
        """The parts in which all of these wishes come out whole."""
        numbers = [one.weighed * n for one in wishes for n in (Fraction(1), one.off.number, *one.off.times.values())]
        fine = lcm(*(number.denominator for number in numbers))
        if all(one.weighed * fine <= FINEST for one in wishes):
            return cls(fine, True)
        return cls(ROUGH, False)

    def whole(self, wish: Wish) -> tuple[dict[str, int], int]:
        """How many parts each count of a wish makes, and those that no count makes."""
        one = wish.weighed * self.to_the_inch
        if not self.exact:
            one = Fraction(max(2 * nearest_whole(one / 2), 2))
        return {name: nearest_whole(one * n) for name, n in wish.off.times.items()}, nearest_whole(
            one * wish.off.number
        )


@dataclass(frozen=True, slots=True)
class Drift:
    """A wish in parts: what `times` the unknowns and `number` come to is how far off it is, up or down."""

    wish: Wish
    times: Mapping[int, int]
    number: int

    def off(self, values: Sequence[int]) -> int:
        """The drift in parts with these values of the unknowns."""
        return sum(times * values[column] for column, times in self.times.items()) + self.number

    def within(self, most: int) -> Row:
        """The row that keeps the drift at most so large, either way."""
        return Row(self.times, -most - self.number, most - self.number)

    def sizes_between(self, least: int, most: int) -> Iterator[int]:
        """The sizes it can have, above `least` and below `most`."""
        step = gcd(*self.times.values())
        if not step:
            yield from (abs(self.number),) if least < abs(self.number) < most else ()
            return
        for first in {self.number % step, -self.number % step}:
            start = first + max(0, (least - first) // step + 1) * step
            yield from range(start, most, step)

    @property
    def least_size(self) -> int:
        """The smallest size it can have, whatever the others."""
        step = gcd(*self.times.values())
        return min(self.number % step, -self.number % step) if step else abs(self.number)
