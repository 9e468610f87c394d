"""`repeat from * around, ending to correspond`: the last run stops where the edge does."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.edge import Target
from gradegen.design.rows import Aside, Chain, Repeat, Step
from gradegen.work.along.addressed import body_kind
from gradegen.work.along.doing import do
from gradegen.work.along.repeats import loop
from gradegen.work.along.walk import Walk
from gradegen.work.edge.stops import Fault, Unclear

ENDING = "the end of this row 'to correspond' is followed to where the stitches run out, not proved"


def end_to_correspond(walk: Walk, step: Repeat, tail: Sequence[Step]) -> None:
    """Whole runs as long as they fit, then the last one as far as the edge goes; what it comes to is only likely."""
    walk.must_see(step.place)
    kind = body_kind(walk, step.body)
    if kind is None:
        raise Unclear("this repeat goes nowhere", step.place)
    started = bool(walk.out)
    loop(walk, step, None, lambda: walk.remaining(kind) <= 0, 0, kind)
    if walk.remaining(kind) > 0 or (started and isinstance(step.body[0], Chain)):
        _run_out(walk, step.body)
    if walk.remaining(kind) > 0:
        raise Unclear("how this row ends 'to correspond' can't be told", step.place)
    _leave_chain_to_tail(walk, tail)
    walk.likely = ENDING


def _run_out(walk: Walk, steps: Sequence[Step]) -> None:
    """The steps of the body one by one, until one asks for more than is left."""
    for step in steps:
        spot = walk.save()
        try:
            do(walk, step)
        except Fault:
            walk.load(spot)
            return


def _leave_chain_to_tail(walk: Walk, tail: Sequence[Step]) -> None:
    """`ending to correspond, ch 5, join`: the chain that the words name is the one just made."""
    following = next((step for step in tail if not isinstance(step, Aside)), None)
    last = walk.out[-1] if walk.out else None
    if isinstance(following, Chain) and isinstance(last, Target) and last.kind == "sp":
        walk.out.pop()
