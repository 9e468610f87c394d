"""How a row begins: by itself (a chain worked into, a ring), or on what the row before left."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from gradegen.design.pattern import Shape
from gradegen.design.rows import (
    Aside,
    Chain,
    Definition,
    Either,
    Join,
    Make,
    Repeat,
    Row,
    Slip,
    Step,
    Turn,
    Unread,
    Work,
)
from gradegen.read.notation.clauses.rings import makes_ring
from gradegen.trade.stitches import stitches

_TURNING = 6  # the longest chain that only turns
_GOES_ROUND = re.compile(r"\ball (?:a)?round\b|\brep(?:eat)?\b[^.;]*\baround\b", re.IGNORECASE)


def begins_anew(row: Row) -> bool:
    """True when a row makes its own beginning: a chain worked into, a ring, a chain and nothing else."""
    steps = [step for step in row.steps if not isinstance(step, (Aside, Turn))]
    if not steps:
        return False
    first, rest = steps[0], steps[1:]
    if isinstance(first, Work):
        return _goes_into_ring(first) or first.into.which == "evenly" or (first.bare and is_foundation(first.makes))
    if not isinstance(first, Chain):
        return False
    if not rest or (isinstance(rest[0], Join) and rest[0].to == "ring") or makes_ring(row.steps[: -len(steps)]):
        return True
    if isinstance(rest[0], Work) and _goes_into_ring(rest[0]) and row_number(row) in (None, 1):
        return True
    if isinstance(rest[0], Work) and rest[0].into.which == "evenly":
        return True  # so many along an edge, whatever the edge has
    return row_number(row) in (None, 1) and row.label.name.lower() != "next" and _goes_along_chain(first, rest[0])


def is_foundation(makes: Sequence[Make]) -> bool:
    """`40 fsc`: stitches that bring their own chain."""
    known = stitches().get(makes[0].stitch) if len(makes) == 1 else None
    return known is not None and known.takes == 0 and known.counts and bool(known.makes)


def begins_ring(row: Row) -> bool:
    """True when a row begins with a ring, so that the rows after it go round."""
    steps = [step for step in row.steps if not isinstance(step, (Aside, Turn))]
    if len(steps) > 1 and isinstance(steps[0], Chain):
        second = steps[1]
        return (isinstance(second, Join) and second.to == "ring") or (
            isinstance(second, Work) and _goes_into_ring(second)
        )
    return bool(steps) and isinstance(steps[0], Work) and _goes_into_ring(steps[0])


def row_number(row: Row) -> int | None:
    """The number in a row's label where it is one number for all sizes; None without one."""
    first = row.label.first
    return first.values[0] if first is not None and len(first.values) == 1 else None


def _goes_into_ring(work: Work) -> bool:
    return work.into.which == "ring" or any(thing.name == "ring" for thing in work.into.things)


def _goes_along_chain(chain: Chain, first: Step) -> bool:
    """True where the first stitch behind a chain is worked into that chain, and not `ch 1, sc in each ch`."""
    if isinstance(first, Either):
        first = first.readings[0][0]
    if not isinstance(first, (Work, Slip)):
        return False
    long = chain.number.formula is not None or any((value or 0) > _TURNING for value in chain.number.values)
    return first.into.which == "from hook" or (long and any(thing.name == "ch" for thing in first.into.things))


def ends_on_group(row: Row, definitions: Mapping[str, Definition]) -> bool:
    """True when the last stitches of a row are a shell or the like, and no stitch at its edge."""
    last = _last_work(row.steps)
    if last is None or last.into.which in ("last", "tch", "first"):
        return False
    known = stitches().get(last.makes[0].stitch)
    own = definitions.get(last.makes[0].stitch)
    several = len(last.makes) > 1 and any(make.stitch == "ch" for make in last.makes)
    return several or (own is not None and len(own.makes) > 1) or (known is not None and known.varies and own is None)


def _last_work(steps: Sequence[Step]) -> Work | None:
    for step in reversed(steps):
        if isinstance(step, Work):
            return step
        if isinstance(step, Repeat):
            return _last_work(step.body)
        if not isinstance(step, (Aside, Turn, Chain)):
            return None
    return None


def shape_of(row: Row, shape: Shape, ringed: bool = False) -> Shape:
    """How this row is worked: in a flat piece, what closes with a join and does not turn is a round all the same.

    `ringed`: the rows began with a ring.
    """
    if shape != "flat" or any(isinstance(step, Turn) for step in row.steps):
        return shape
    last = next((step for step in reversed(row.steps) if not isinstance(step, Aside)), None)
    closes = isinstance(last, Join) and len(row.steps) > 2
    goes_round = ringed or row.label.kind == "round" or _GOES_ROUND.search(row.text) is not None
    return "joined rounds" if closes or goes_round else shape


_SPACES = re.compile(r"\bch(?:ain)?s?\b", re.IGNORECASE)


def may_leave_spaces(steps: Sequence[Step]) -> bool:
    """True where chains are made behind the first stitch, or words nobody read may make some."""
    begun = False
    for step in steps:
        if isinstance(step, Unread) and _SPACES.search(step.text):
            return True
        if isinstance(step, Chain) and begun:
            return True
        if isinstance(step, Work) and any(make.stitch == "ch" for make in step.makes):
            return True
        if isinstance(step, Repeat) and (may_leave_spaces(step.body) or any(isinstance(s, Chain) for s in step.body)):
            return True
        begun = begun or isinstance(step, (Work, Repeat))
    return False
