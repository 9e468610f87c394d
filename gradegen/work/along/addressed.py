"""What the steps of a repeat address: the kinds of places that are used up by its runs."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.rows import Aside, Chain, Into, Mixed, Repeat, Skip, Slip, Step, Thing, Work
from gradegen.work.along.petals import petals_of
from gradegen.work.along.walk import Walk
from gradegen.work.edge.kinds import Kind
from gradegen.work.edge.stops import Unclear


def body_kind(walk: Walk, steps: Sequence[Step]) -> Kind | None:
    """Everything that the steps of a repeat address by next, each or skip."""
    union: Kind | None = None
    for things, each in _things(_behind_space(steps)):
        try:
            kind = walk.kind(things, each=each)
        except Unclear:  # `center dc of next petal`: what a petal is shows only on the way
            parts = [one.into.things for one in _parts_of(steps, things) if one.into.things]
            petals = petals_of(walk, steps, things)
            if not parts and petals is None:
                raise
            kind = petals or walk.kind(parts[0])
        union = kind if union is None else (union if kind.key in union.key.split("|") else union | kind)
    return union


def _parts_of(steps: Sequence[Step], things: tuple[Thing, ...]) -> list[Work]:
    """The works into a part of these."""
    works = [step for step in steps if isinstance(step, Work) and step.into.of is not None]
    return [work for work in works if work.into.of is not None and work.into.of.things == things]


def _things(steps: Sequence[Step]) -> list[tuple[tuple[Thing, ...], bool]]:
    """What steps address, and whether by "each"."""
    found: list[tuple[tuple[Thing, ...], bool]] = []
    for step in steps:
        if isinstance(step, (Work, Skip)) or (isinstance(step, Slip) and not step.to):
            outside = any(t.name in ("ring", "group", "below") for t in step.into.things) or _turns_back(step, steps)
            if step.into.which in ("next", "each") and not outside:
                found.append((step.into.things, step.into.which == "each"))
            elif step.into.which == "of" and step.into.of is not None:
                found.append((step.into.of.things, False))
        elif isinstance(step, Repeat):
            found += _things(step.body)
        elif isinstance(step, Mixed):
            found += [(work.into.things, False) for work in step.works]
        elif hasattr(step, "readings"):
            found += _things(step.readings[0])
    return found


def _behind_space(steps: Sequence[Step]) -> Sequence[Step]:
    """The steps behind a space that each run begins by skipping: the space behind the last run is nobody's."""
    first = next((i for i, step in enumerate(steps) if not isinstance(step, (Aside, Chain))), None)
    one = steps[first] if first is not None else None
    if first is None or not isinstance(one, Skip) or [thing.name for thing in one.into.things] != ["sp"]:
        return steps
    rest = steps[first + 1 :]
    return rest if _things(rest) else steps


def _turns_back(step: Step, steps: Sequence[Step]) -> bool:
    return isinstance(step, Work) and goes_back(step.into, steps)


def goes_back(into: Into, steps: Sequence[Step]) -> bool:
    """True for `dc in skipped st` where the row skips stitches itself: back into those, which uses nothing new."""
    skipped = into.things[:1] == (Thing("unworked"),)
    return skipped and _skips(steps)


def _skips(steps: Sequence[Step]) -> bool:
    return any(isinstance(one, Skip) or (isinstance(one, Repeat) and _skips(one.body)) for one in steps)
