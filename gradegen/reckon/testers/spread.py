"""How far numbers lie apart: least, median, mean, most, all exact."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Spread:
    """Some numbers in rising order; never empty."""

    values: tuple[Fraction, ...]

    @property
    def many(self) -> int:
        """How many there are."""
        return len(self.values)

    @property
    def least(self) -> Fraction:
        """The smallest."""
        return self.values[0]

    @property
    def most(self) -> Fraction:
        """The largest."""
        return self.values[-1]

    @property
    def mean(self) -> Fraction:
        """Their sum over their number."""
        return sum(self.values, Fraction(0)) / len(self.values)

    @property
    def median(self) -> Fraction:
        """The one in the middle, or half way between the two in the middle."""
        return self.share(Fraction(1, 2))

    def share(self, part: Fraction) -> Fraction:
        """What `part` of them does not exceed; between two numbers in proportion (0: the least, 1: the most)."""
        at, between = divmod(part * (len(self.values) - 1), 1)
        low = self.values[int(at)]
        return low if not between else low + between * (self.values[int(at) + 1] - low)


def spread_of(values: Iterable[Fraction | None]) -> Spread | None:
    """The spread of the numbers that are known; None where none is."""
    known = sorted(value for value in values if value is not None)
    return Spread(tuple(known)) if known else None
