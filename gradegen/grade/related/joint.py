"""Counts that depend on each other, as they are asked for: what must hold, and what is wished, in every size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.pattern import CountRule
from gradegen.grade.related.conditions import Condition
from gradegen.grade.related.linear import Linear

Key = tuple[str, int]  # a count and the position of its size, smallest first


@dataclass(frozen=True, slots=True)
class Wish:
    """One count in one size, wished near its length, or near the sum of other counts it is rounded from.

    `off`: how many stitches or rows it is away, either sign; `inches`: what one of them makes, `weight` times that
    counts.
    """

    name: str
    size: int
    off: Linear
    inches: Fraction
    weight: Fraction

    @property
    def weighed(self) -> Fraction:
        """Inches one stitch or row weighs."""
        return self.inches * self.weight


@dataclass(frozen=True, slots=True)
class Held:
    """A condition in one size: its sum is nothing, or (not `is_equal`) at most nothing."""

    condition: Condition
    size: int
    sum: Linear
    is_equal: bool


@dataclass(frozen=True, slots=True)
class Joint:
    """Counts that are solved together over the sizes.

    `rules`: the counts, in the order of the pattern; `present`: which of them exist in which size; `neighbours`: sizes
    whose step is one, for the same wearer; `may_be_none`: counts that may be 0.
    """

    rules: Mapping[str, CountRule]
    sizes: tuple[str, ...]
    held: tuple[Held, ...]
    wishes: tuple[Wish, ...]
    present: frozenset[Key]
    neighbours: tuple[tuple[int, int], ...]
    conditions: tuple[Condition, ...]
    may_be_none: frozenset[str]

    @property
    def couples_sizes(self) -> bool:
        """True when what one size may get depends on what others get."""
        return any(
            condition.kind == "steps" or (condition.kind == "centre" and self.rules[condition.of].centre == "same")
            for condition in self.conditions
        )

    @property
    def blocks(self) -> tuple[tuple[int, ...], ...]:
        """Positions of the sizes that hang together: each alone, or all."""
        positions = tuple(range(len(self.sizes)))
        return (positions,) if self.couples_sizes else tuple((position,) for position in positions)
