"""The nearest count a stitch pattern allows: n = k * multiple + plus, with parity and limits; whole numbers only.

Parity is part of the grid, not a second search: with an odd multiple every other count of the pattern has the wanted
parity, so the grid is twice as wide; with an even multiple all counts have the parity of `plus`, or none has.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Parity = Literal["even", "odd"]
Tie = Literal["up", "down"]


@dataclass(frozen=True, slots=True)
class Snapped:
    """A count on its grid.

    `below` and `above` are the next good counts inside the limits. `tie`: two counts were equally near and the named
    rule chose. `held`: a limit (least, most) kept the count from the nearest one on the grid. `grid`: how far apart
    good counts are.
    """

    n: int
    repeats: int
    below: int | None
    above: int | None
    tie: bool
    held: bool
    grid: int


@dataclass(frozen=True, slots=True)
class NoCount:
    """Nothing satisfies what was asked, and why, in words."""

    why: str


@dataclass(frozen=True, slots=True)
class Grid:
    """The counts a stitch pattern allows: first, first + step, ... up to last (None: no end)."""

    first: int
    step: int
    last: int | None

    def neighbours(self, n: int) -> tuple[int | None, int | None]:
        """The good counts next below and above a good count."""
        below = n - self.step if n - self.step >= self.first else None
        above = n + self.step if self.last is None or n + self.step <= self.last else None
        return below, above


def good_counts(
    multiple: int, plus: int, parity: Parity | None = None, least: int | None = None, most: int | None = None
) -> Grid | NoCount:
    """All counts k * multiple + plus (k from 0, at least 1 stitch) with that parity, from `least` to `most`."""
    if multiple < 1:
        return NoCount(f"a multiple of {multiple} is no repeat; the smallest is 1")
    step, residue = multiple, plus
    if parity is not None and residue % 2 != (parity == "odd"):
        if multiple % 2 == 0:
            odd_one = "odd" if plus % 2 else "even"
            return NoCount(f"every multiple of {multiple}{_plus(plus)} is {odd_one}, so none is {parity}")
        residue += multiple
    if parity is not None and multiple % 2:
        step = 2 * multiple
    floor = max(1, plus, least if least is not None else 1)
    first = residue + -(-(floor - residue) // step) * step
    if most is None:
        return Grid(first, step, None)
    if first > most:
        return NoCount(f"no multiple of {multiple}{_plus(plus)} lies between {floor} and {most}")
    return Grid(first, step, most - (most - first) % step)


def snap(
    target: Fraction | int,
    multiple: int = 1,
    plus: int = 0,
    *,
    parity: Parity | None = None,
    least: int | None = None,
    most: int | None = None,
    tie: Tie = "up",
) -> Snapped | NoCount:
    """The good count nearest to `target`; an exact half goes the way `tie` names."""
    grid = good_counts(multiple, plus, parity, least, most)
    if isinstance(grid, NoCount):
        return grid
    place = (Fraction(target) - grid.first) / grid.step
    low = place // 1
    tied = place - low == Fraction(1, 2)
    chosen = low + 1 if place - low > Fraction(1, 2) or (tied and tie == "up") else low
    free = grid.first + int(chosen) * grid.step
    n = max(free, grid.first) if grid.last is None else min(max(free, grid.first), grid.last)
    held = n != free and _a_limit_did_it(free, plus, least, most)
    below, above = grid.neighbours(n)
    return Snapped(n, (n - plus) // multiple, below, above, tied and n == free, held, grid.step)


def _a_limit_did_it(free: int, plus: int, least: int | None, most: int | None) -> bool:
    return (least is not None and free < least and free >= max(1, plus)) or (most is not None and free > most)


def _plus(plus: int) -> str:
    return f" {'plus' if plus > 0 else 'less'} {abs(plus)}" if plus else ""
