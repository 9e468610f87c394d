"""Rounds behind a flower: `* ch 5, sc in back of work between next 2 petals; repeat from * all around`.

A petal is what a round of nothing else worked into each loop below, so the edge is groups of one make and no stitch
beside them. Only then is the name taken for them, since no other thing on that edge could bear it; there are as many
gaps as petals, because a round closes: the last gap lies between the last petal and the first.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.rows import Into, Repeat, Slip, Step, Thing, Work
from gradegen.work.along.walk import Walk
from gradegen.work.edge import kinds
from gradegen.work.edge.kinds import Kind

_SMALLEST = 3  # stitches in a petal
PETAL_END = Kind("@petal", lambda one: one.nth == one.size, "petal")


def passes_petal(walk: Walk, into: Into) -> bool:
    """Passes one petal and stands in the gap behind it; False where none of this is about petals of a closed round."""
    if not _is_behind_petals(walk, into):
        return False
    walk.owe(PETAL_END)
    walk.take(PETAL_END, 1, into.place)
    return True


def goes_behind_petals(walk: Walk, steps: Sequence[Step]) -> bool:
    """True where the first stitch of these steps goes between two petals, the last of the words before it or not."""
    for step in steps:
        if isinstance(step, (Work, Repeat)):
            return (
                goes_behind_petals(walk, step.body) if isinstance(step, Repeat) else _is_behind_petals(walk, step.into)
            )
    return False


def petals_are_left(walk: Walk) -> bool:
    """True where a round behind petals stops before the last: how often it was meant to run is not certain."""
    return PETAL_END.key in walk.addressed and walk.remaining(PETAL_END) > 0


def petals_of(walk: Walk, steps: Sequence[Step], things: tuple[Thing, ...]) -> Kind | None:
    """What a repeat with these steps goes along, where `things` is the gap between two petals."""
    places = [step.into for step in steps if isinstance(step, (Work, Slip)) and step.into.things == things]
    return PETAL_END if places and all(_is_behind_petals(walk, into) for into in places) else None


def _is_behind_petals(walk: Walk, into: Into) -> bool:
    if walk.site.blind or walk.site.shape == "flat" or into.which != "next" or not _names_figure(walk, into):
        return False
    groups = list(_groups(walk.before))
    return bool(groups) and len(set(groups)) == 1 and all(_is_whole(group) for group in groups)


def _names_figure(walk: Walk, into: Into) -> bool:
    """True for `between next 2 petals`, `between the sc of next 2 petals`: no stitch of the trade or the pattern."""
    if not into.things or into.things[0].name != "gap":
        return False
    within = into.of.things[0].name if into.of is not None and into.of.things else into.things[0].of
    return within is not None and not kinds.is_of_trade(within) and within not in walk.site.definitions


def _groups(edge: Edge) -> Iterator[tuple[Target, ...]]:
    """The edge cut where groups begin, runs opened once: what a run repeats is made alike."""
    group: list[Target] = []
    for item in edge:
        if isinstance(item, Run):
            if group:
                yield tuple(group)
            group = []
            yield from _groups(item.items)
            continue
        if item.nth == 1 and group:
            yield tuple(group)
            group = []
        group.append(item)
    if group:
        yield tuple(group)


def _is_whole(group: Sequence[Target]) -> bool:
    """True for a petal: several stitches made in one place, first to last."""
    return len(group) >= _SMALLEST and all(
        one.kind == "st" and one.nth == i and one.size == len(group) for i, one in enumerate(group, 1)
    )
