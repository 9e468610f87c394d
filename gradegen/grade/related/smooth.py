"""Among counts that cost no more, those that grow smoothly from size to size, then those that `tie` names.

1. Steps between sizes are as near the steps wanted as they can be.
2. Counts without a measure of their own grow by steps as like each other as they can be.
3. What is still open goes the way `tie` names, counts in the order of the pattern; counts without a measure are small.

The search for smoother steps is cut short after so many branches: steps are a matter of looks.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from gradegen.grade.related.joint import Joint, Key
from gradegen.grade.related.parts import Drift
from gradegen.grade.related.programme import Programme
from gradegen.grade.related.question import Question, Values, sum_of

Block = tuple[int, ...]
SMOOTH_STEPS = 300
Sums = list[tuple[Mapping[int, int], int]]


@dataclass(frozen=True, slots=True)
class Bound:
    """What a block of sizes costs, in parts of an inch: its largest drift, and the sum of all.

    `is_least`: it is proved that no sum is smaller.
    """

    largest: int
    total: int
    is_least: bool


def smoothed(joint: Joint, programme: Programme, bounds: Mapping[Block, Bound], start: Values) -> dict[Key, int]:
    """The counts of all sizes of a programme, none costing more than its bound; `start`: values that do not either."""
    question, costs = _bounded(programme, bounds)
    best = start
    for goal in (_steps_off(joint, programme), _bends(joint, programme)):
        if not goal:
            continue
        objective = {question.distance(*one): 1 for one in goal}
        best = _better(question, objective, costs, best)
        question.at_most(objective, _made(goal, best))
        costs.append((goal, _made(goal, best)))
    return programme.counts(_better(question, _ties(joint, programme), costs, best))


def _better(question: Question, objective: Mapping[int, int], costs: list[tuple[Sums, int]], best: Values) -> Values:
    """Values with a smaller objective that cost no more; those given where the solver finds none."""
    found = question.least(objective, best, SMOOTH_STEPS).values
    return found if all(_made(sums, found) <= most for sums, most in costs) else best


def _bounded(programme: Programme, bounds: Mapping[Block, Bound]) -> tuple[Question, list[tuple[Sums, int]]]:
    """The programme with each block kept to its bound, and the sums that may not be exceeded."""
    drifts = {block: [drift for drift in programme.drifts if drift.wish.size in block] for block in bounds}
    limits = [drift.within(bounds[block].largest) for block, those in drifts.items() for drift in those]
    question = Question(programme, limits)
    costs: list[tuple[Sums, int]] = []
    for block, those in drifts.items():
        sums: Sums = [(drift.times, drift.number) for drift in those]
        question.at_most({question.distance(*one): 1 for one in sums}, bounds[block].total)
        costs += [(sums, bounds[block].total), *(([one], bounds[block].largest) for one in sums)]
    return question, costs


def _made(sums: Sums, values: Values) -> int:
    return sum(abs(sum_of(times, number, values)) for times, number in sums)


def _steps_off(joint: Joint, programme: Programme) -> Sums:
    """How far each step between neighbouring sizes is from the step wanted."""
    by_key: dict[Key, Drift] = {(drift.wish.name, drift.wish.size): drift for drift in programme.drifts}
    sums: Sums = []
    for before, after in joint.neighbours:
        for name in joint.rules:
            small, large = by_key.get((name, before)), by_key.get((name, after))
            if small is not None and large is not None:
                sums.append((_less(large.times, small.times), large.number - small.number))
    return sums


def _bends(joint: Joint, programme: Programme) -> Sums:
    """How far two steps that follow each other differ, for counts without a measure."""
    wished = {wish.name for wish in joint.wishes}
    sums: Sums = []
    for (before, size), (same, after) in zip(joint.neighbours, joint.neighbours[1:], strict=False):
        for name in joint.rules:
            keys = [(name, one) for one in (before, size, after)]
            if size == same and name not in wished and all(key in programme.at for key in keys):
                small, middle, large = (programme.grids[key].step for key in keys)
                first, at, last = (programme.at[key] for key in keys)
                sums.append(({last: large, at: -2 * middle, first: small}, 0))
    return sums


def _ties(joint: Joint, programme: Programme) -> dict[int, int]:
    """An objective that prefers larger or smaller counts, the first named most."""
    wished = {wish.name for wish in joint.wishes}
    ties: dict[int, int] = {}
    for place, rule in enumerate(joint.rules.values()):
        way = -1 if rule.tie == "up" and rule.name in wished else 1
        for (name, _), column in programme.at.items():
            if name == rule.name:
                ties[column] = way * (len(joint.rules) - place)
    return ties


def _less(times: Mapping[int, int], other: Mapping[int, int]) -> dict[int, int]:
    both = {column: times.get(column, 0) - other.get(column, 0) for column in {**times, **other}}
    return {column: often for column, often in both.items() if often}
