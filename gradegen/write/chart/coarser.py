"""A pattern in one size at ever finer gauges, the coarsest first: its related counts stay so, its shaping fits them.

What the counts then measure is of no interest; rows, relations and schedules are.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule, Gauge, Pattern, Piece
from gradegen.design.schedule import Schedule
from gradegen.grade.one_size import one_graded
from gradegen.grade.shaping.schedules import shape_rows

_COARSER = (9, 6, 4, 3, 2)
_KEPT = 2  # sizes whose coarser counts are remembered, since every piece of a pattern asks for them


@dataclass(frozen=True, slots=True)
class Coarse:
    """The pattern with its shaping worked out for these counts."""

    pattern: Pattern
    numbers: Mapping[str, int]


@dataclass(slots=True)
class _Asked:
    """What has been worked out for one size so far, and what works out the rest."""

    checked: Checked
    index: int
    rest: Iterator[Coarse]
    found: list[Coarse] = field(default_factory=list)


_ASKED: deque[_Asked] = deque(maxlen=_KEPT)


def coarser(checked: Checked, size: GradedSize) -> Iterator[Coarse]:
    """One after the other, none where the pattern has neither relations nor shaping."""
    if not checked.pattern.relations and not checked.pattern.shaping:
        return
    asked = next((one for one in _ASKED if one.checked is checked and one.index == size.index), None)
    if asked is None:
        asked = _Asked(checked, size.index, _worked_out(checked, size))
        _ASKED.append(asked)
    at = 0
    while True:
        if at == len(asked.found):
            following = next(asked.rest, None)
            if following is None:
                return
            asked.found.append(following)
        yield asked.found[at]
        at += 1


def _worked_out(checked: Checked, size: GradedSize) -> Iterator[Coarse]:
    pattern = checked.pattern
    seen: list[Mapping[str, int]] = []
    for times in _COARSER:
        gauges = {name: _at_coarser(gauge, times) for name, gauge in pattern.gauges.items()}
        for loosened in (times, 2):  # limits as much lower; then only half as low, where rows need them
            counts = {name: _at_least(rule, loosened) for name, rule in pattern.counts.items()}
            small = replace(pattern, gauges=gauges, counts=counts)
            graded = one_graded(small, checked.table, size.index)
            numbers = graded.numbers() if graded is not None else {}
            if graded is None or numbers.keys() != size.numbers().keys() or numbers in seen:
                continue
            seen.append(numbers)
            shaped = _shaped(checked, replace(graded, measures=size.measures))
            if _goes_the_same_way(checked.pattern, shaped, size.index):
                yield Coarse(shaped, numbers)


def _goes_the_same_way(pattern: Pattern, small: Pattern, index: int) -> bool:
    """True when every shaping that widens (narrows, leaves as it is) still does."""
    for name, scheduled in pattern.scheduled.items():
        whole, part = (one.sizes[index] for one in (scheduled, small.scheduled[name]))
        if whole is not None and (part is None or _way(whole) != _way(part)):
            return False
    return True


def keeps_rhythm(pattern: Pattern, small: Pattern, piece: Piece, index: int) -> bool:
    """True when plain rows stand between the changes of each of its shapings, or none, only as they do in the size."""
    for name in {sentence.schedule for row in piece.rows for sentence in row.sentences} & pattern.scheduled.keys():
        whole, part = (one.scheduled[name].sizes[index] for one in (pattern, small))
        if whole is not None and part is not None and not _rhythm(part) <= _rhythm(whole):
            return False
    return True


def _rhythm(one: Schedule) -> set[bool]:
    """Whether plain rows stand between changes: in some of its runs, in all, or in none."""
    return {every > 1 for every, times in one.runs if times}


def _way(one: Schedule) -> tuple[int, bool]:
    return (one.to > one.before) - (one.to < one.before), bool(one.leave)


def _shaped(checked: Checked, graded: GradedSize) -> Pattern:
    """The pattern's sentences written anew for these counts, in every size the same."""
    if not checked.pattern.shaping:
        return checked.pattern
    alike = tuple(replace(graded, name=one.name, index=one.index) for one in checked.sizes)
    return shape_rows(checked.pattern, alike)[0]


def _at_coarser(gauge: Gauge, times: int) -> Gauge:
    return replace(
        gauge,
        stitches=gauge.stitches and gauge.stitches / times,
        repeats=gauge.repeats and gauge.repeats / times,
        rows=gauge.rows and gauge.rows / times,
    )


def _at_least(rule: CountRule, times: int) -> CountRule:
    """The rule with limits as much smaller, and without what was pinned."""
    least = rule.least and min(rule.least, max(rule.multiple, -(-rule.least // times), 2))
    return replace(rule, least=least, most=None, pins={})
