"""Curves in rows: a drawn slope followed by two or three rates, by stretches of stitches, or by short rows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from math import isqrt

from gradegen.numbers.snap import NoCount
from gradegen.numbers.spread import Spread

Point = tuple[Fraction, Fraction]  # stitches and rows done, as shares of all
_GRAIN = 1 << 10  # parts of a row in which distances from a line are compared
_FINE = 1 << 20  # a root is taken to this fineness


def line_through(points: Sequence[Point], events: int) -> tuple[Fraction, ...]:
    """The share of the rows at which each event falls on a drawn line; points as (share of stitches, share of rows)."""
    line = [(Fraction(0), Fraction(0)), *points]
    if line[-1][0] < 1:
        line.append((Fraction(1), Fraction(1)))
    return tuple(_along(line, Fraction(event, events)) for event in range(1, events + 1))


def _along(line: Sequence[Point], across: Fraction) -> Fraction:
    for (x0, y0), (x1, y1) in pairwise(line):
        if across <= x1:
            return y0 if x1 == x0 else y0 + (y1 - y0) * (across - x0) / (x1 - x0)
    return line[-1][1]


def hollow(events: int) -> tuple[Fraction, ...]:
    """A quarter of an ellipse that starts level and ends upright: armholes and necks, quick first, then slower."""
    return tuple(1 - _root(1 - Fraction(event, events) ** 2) for event in range(1, events + 1))


def rounded(events: int) -> tuple[Fraction, ...]:
    """A quarter of an ellipse that starts upright and ends level: crowns and the tops of caps, slow first."""
    return tuple(_root(1 - (1 - Fraction(event, events)) ** 2) for event in range(1, events + 1))


def cap(events: int) -> tuple[Fraction, ...]:
    """A sleeve cap: quick at the underarm, slow up the middle, quick again to the top.

    A third of the stitches within a sixth of the rows at either end (house).
    """
    third, sixth = Fraction(1, 3), Fraction(1, 6)
    return line_through([(third, sixth), (1 - third, 1 - sixth), (Fraction(1), Fraction(1))], events)


def _root(number: Fraction) -> Fraction:
    return Fraction(isqrt(number.numerator * number.denominator * _FINE * _FINE), number.denominator * _FINE)


def fit_rates(events: int, rows: int, every: Sequence[int], along: Sequence[Fraction]) -> Spread | NoCount:
    """How often each of one to three intervals, in the order given, so that the drawn line is followed most closely.

    `along`: the share of the rows at which each event should fall. The rows left over stay plain at the end; an
    interval that is not needed runs 0 times.
    """
    if not 1 <= len(every) <= 3 or min(every) < 1:
        return NoCount("one, two or three intervals can be given")
    if events * min(every) > rows:
        return NoCount(f"{events} shaping rows need {events * min(every)} rows, and there are {rows}")
    wanted = [int(share * rows * _GRAIN) for share in along]
    best: tuple[tuple[int, int], tuple[int, ...]] | None = None
    for times in _splits(events, len(every)):
        used = sum(each * often for each, often in zip(every, times, strict=True))
        if used <= rows:
            miss = _miss(every, times, wanted)
            if best is None or miss < best[0]:
                best = miss, times
    assert best is not None
    runs = tuple(zip(every, best[1], strict=True))
    return Spread(runs, rows - sum(each * often for each, often in runs))


def _splits(events: int, parts: int) -> Iterator[tuple[int, ...]]:
    """Every way to share out the events, in a fixed order."""
    if parts == 1:
        yield (events,)
        return
    for first in range(events + 1):
        for rest in _splits(events - first, parts - 1):
            yield (first, *rest)


def _miss(every: Sequence[int], times: Sequence[int], wanted: Sequence[int]) -> tuple[int, int]:
    """How far the rates leave the line: the largest distance in rows, then the sum, looked at where rates change."""
    largest, total, event, row = 0, 0, 0, 0
    for each, often in zip(every, times, strict=True):
        for step in sorted({1, (often + 1) // 2, often} - {0}) if often else ():
            off = abs((row + each * step) * _GRAIN - wanted[event + step - 1])
            largest, total = max(largest, off), total + off
        event, row = event + often, row + each * often
    return largest, total


def short_row_steps(stitches: int, steps: int) -> tuple[int, ...] | NoCount:
    """The stitches each short row leaves, shorter steps first: 23 in three steps are 7, 8 and 8."""
    if steps < 1:
        return NoCount("a slope needs one step or more")
    if steps > stitches:
        return NoCount(f"{stitches} stitches cannot be left in {steps} steps")
    each, longer = divmod(stitches, steps)
    return (each,) * (steps - longer) + (each + 1,) * longer
