"""The best counts that satisfy a programme: the largest drift first, then their sum, then smooth steps.

1. Every condition holds.
2. The largest drift is as small as it can be: in each size, or over all where sizes hang together.
3. The sum of all drifts is as small as that allows.
4. What is still open is settled in `smooth`.

Each is asked with the answers before it as conditions, and each answer is reckoned again in whole numbers.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from gradegen.grade.related.conditions import Condition
from gradegen.grade.related.joint import Joint, Key
from gradegen.grade.related.parts import Drift, Parts
from gradegen.grade.related.programme import Programme, programme_of
from gradegen.grade.related.question import Question, Values
from gradegen.grade.related.smooth import Block, Bound, smoothed
from gradegen.grade.related.solver import GaveUp, solve

WIDEST = 64  # inches a drift may have before any is as bad as another
SUM_STEPS = 2000  # branches; where sizes hang together there may be more than can be looked into


@dataclass(frozen=True, slots=True)
class Least:
    """The smallest that the largest drift can be, in parts, and values that show it; `is_least`: it is proved."""

    largest: int
    values: Values
    is_least: bool


@dataclass(frozen=True, slots=True)
class Best:
    """Counts by name and size; `unsolved`: blocks of sizes where nothing holds; `is_proved`: none are better."""

    counts: Mapping[Key, int]
    unsolved: tuple[Block, ...]
    is_proved: bool


def satisfies(programme: Programme, most: int | None = None) -> Values | None:
    """Some values that keep every row, every drift at most so large (`most` None: however large); None: none do."""
    if programme.impossible:
        return None
    limits = [] if most is None else [drift.within(most) for drift in programme.drifts]
    found = solve(programme.columns, [*programme.rows, *limits])
    return found.values if found is not None else None


def smallest_largest(programme: Programme) -> Least | None:
    """The smallest that the largest drift can be, and values that show it; None where nothing satisfies the rows.

    Every limit tried is a whole number of parts, so whether a count keeps it is never a matter of rounding.
    """
    if programme.rules_itself_out():
        return None
    missed, values = _first_found(programme)
    if values is None:
        return None
    best, is_least = largest(programme.drifts, values), True
    while sizes := sorted({size for drift in programme.drifts for size in drift.sizes_between(missed, best)}):
        middle = sizes[(len(sizes) - 1) // 2]
        try:
            nearer = satisfies(programme, middle)
        except GaveUp:
            nearer, is_least = None, False
        if nearer is None:
            missed = middle
        else:
            values, best = nearer, largest(programme.drifts, nearer)
    return Least(best, values, is_least)


def _first_found(programme: Programme) -> tuple[int, Values | None]:
    """The widest limit that had no values, and values of the next; limits start low and double."""
    most = max((drift.least_size for drift in programme.drifts), default=0)
    missed, inch = most - 1, programme.parts.to_the_inch
    while most <= WIDEST * inch:
        if (values := satisfies(programme, most)) is not None:
            return missed, values
        missed, most = most, max(2 * most, inch // 8, 1)
    return missed, satisfies(programme)


def largest(drifts: Sequence[Drift], values: Values) -> int:
    """The largest of the drifts, in parts."""
    return max((abs(drift.off(values)) for drift in drifts), default=0)


def total(drifts: Sequence[Drift], values: Values) -> int:
    """The sum of the drifts, in parts."""
    return sum(abs(drift.off(values)) for drift in drifts)


def best_of_block(programme: Programme) -> tuple[Values, Bound] | None:
    """The values of one block of sizes with the smallest drifts, and what they cost; None: nothing satisfies it."""
    least = smallest_largest(programme)
    if least is None:
        return None
    most, values, drifts = least.largest, least.values, programme.drifts
    question = Question(programme, [drift.within(most) for drift in drifts])
    objective = {question.distance(drift.times, drift.number): 1 for drift in drifts}
    better = question.least(objective, values, SUM_STEPS)
    if largest(drifts, better.values) <= most and total(drifts, better.values) <= total(drifts, values):
        values = better.values
    return values, Bound(most, total(drifts, values), least.is_least and better.is_best)


def best_counts(joint: Joint, kept: Sequence[Condition]) -> Best:
    """The best counts of all sizes that have any, and the blocks of sizes in which nothing satisfies the conditions."""
    parts = Parts.of(joint.wishes)
    bounds: dict[Block, Bound] = {}
    counts: dict[Key, int] = {}
    values: Values = ()
    for block in joint.blocks:
        programme = programme_of(joint, kept, block, parts)
        found = best_of_block(programme)
        if found is not None:
            values, bounds[block] = found
            counts |= programme.counts(values)
    sizes = [size for block in bounds for size in block]
    if sizes:
        programme = programme_of(joint, kept, sizes, parts)
        start = programme.values(counts) if len(bounds) > 1 else values
        counts |= smoothed(joint, programme, bounds, start)
    unsolved = tuple(block for block in joint.blocks if block not in bounds)
    return Best(counts, unsolved, all(bound.is_least for bound in bounds.values()))
