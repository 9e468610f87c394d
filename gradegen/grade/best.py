"""The best counts that satisfy a programme: the largest drift first, then their sum, then smooth steps.

1. Every condition holds.
2. The largest drift is as small as it can be: in each size, or over all where sizes hang together.
3. The sum of all drifts is as small as that allows.
4. What is still open is settled in `smooth`.

Each is asked with the answers before it as conditions, and each answer is reckoned again in whole numbers.
"""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.grade.conditions import Condition
from gradegen.grade.joint import Joint, Key
from gradegen.grade.parts import Drift, Parts
from gradegen.grade.programme import Programme, programme_of
from gradegen.grade.question import Question, Values
from gradegen.grade.smooth import Block, Bound, smoothed
from gradegen.grade.solver import solve

WIDEST = 64  # inches a drift may have before any is as bad as another


def satisfies(programme: Programme, most: int | None = None) -> Values | None:
    """Some values that keep every row, every drift at most so large (`most` None: however large); None: none do."""
    if programme.impossible:
        return None
    limits = [] if most is None else [drift.within(most) for drift in programme.drifts]
    return solve(programme.columns, [*programme.rows, *limits])


def smallest_largest(programme: Programme) -> tuple[int, Values] | None:
    """The smallest that the largest drift can be, and values that show it; None where nothing satisfies the rows."""
    if programme.rules_itself_out():
        return None
    missed, values = _first_found(programme)
    if values is None:
        return None
    best = largest(programme.drifts, values)
    while sizes := sorted({size for drift in programme.drifts for size in drift.sizes_between(missed, best)}):
        middle = sizes[(len(sizes) - 1) // 2]
        nearer = satisfies(programme, middle)
        if nearer is None:
            missed = middle
        else:
            values, best = nearer, largest(programme.drifts, nearer)
    return best, values


def _first_found(programme: Programme) -> tuple[int, Values | None]:
    """The narrowest limit that had no values, and values of the next; limits start low and double."""
    most = max((drift.least_size for drift in programme.drifts), default=0)
    missed, inch = most - 1, programme.parts.to_the_inch
    while most <= WIDEST * inch:
        if (values := satisfies(programme, most)) is not None:
            return missed, values
        missed, most = most, max(2 * most, inch // 8)
    return missed, satisfies(programme)


def largest(drifts: Sequence[Drift], values: Values) -> int:
    """The largest of the drifts, in parts."""
    return max((abs(drift.off(values)) for drift in drifts), default=0)


def total(drifts: Sequence[Drift], values: Values) -> int:
    """The sum of the drifts, in parts."""
    return sum(abs(drift.off(values)) for drift in drifts)


def best_of_block(programme: Programme) -> tuple[Values, Bound] | None:
    """The values of one block of sizes with the smallest drifts, and what they cost; None: nothing satisfies it."""
    found = smallest_largest(programme)
    if found is None:
        return None
    most, values = found
    drifts = programme.drifts
    question = Question(programme, [drift.within(most) for drift in drifts])
    better = question.least({question.distance(drift.times, drift.number): 1 for drift in drifts})
    if better is not None and largest(drifts, better) <= most and total(drifts, better) <= total(drifts, values):
        values = better
    return values, Bound(most, total(drifts, values))


def best_counts(joint: Joint, kept: Sequence[Condition]) -> tuple[dict[Key, int], tuple[Block, ...]]:
    """The best counts of all sizes that have any, and the blocks of sizes in which nothing satisfies the conditions."""
    parts = Parts.of(joint.wishes)
    bounds: dict[Block, Bound] = {}
    counts: dict[Key, int] = {}
    for block in joint.blocks:
        programme = programme_of(joint, kept, block, parts)
        found = best_of_block(programme)
        if found is not None:
            bounds[block] = found[1]
            counts |= programme.counts(found[0])
    sizes = [size for block in bounds for size in block]
    if sizes:
        counts |= smoothed(joint, programme_of(joint, kept, sizes, parts), bounds)
    return counts, tuple(block for block in joint.blocks if block not in bounds)
