"""Ends of a round that go without saying: the last skip, the stitch that the first chain is, a loop beside a shell."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.edge import Target
from gradegen.design.rows import Aside, Chain, Join, Repeat, Skip, Slip, Step
from gradegen.work.along.walk import Walk
from gradegen.work.edge.cursor import Cursor
from gradegen.work.edge.edges import count_targets, last_target, leading
from gradegen.work.edge.kinds import Kind


def ends_on_skip(walk: Walk, step: Repeat, tail: Sequence[Step], kind: Kind) -> bool:
    """`* ch 5, skip 3, sc in next; rep around, ending with ch 5, join`: the last skip goes without saying."""
    chains = [s for s in tail if isinstance(s, Chain)]
    skipped = [s for s in step.body if isinstance(s, Skip)]
    if not chains or not skipped or not any(isinstance(s, Chain) and s.number == chains[0].number for s in step.body):
        return False
    wanted = sum(walk.site.number(s.into.number) for s in skipped)
    left = walk.remaining(kind)
    passed = Cursor(walk.passed).remaining(kind.key, kind.fits) if walk.passed else _slipped(walk)
    if left != wanted and not (passed and left == wanted - passed):
        return False
    walk.take(kind, left, step.place)
    return True


def ends_on_start(walk: Walk, step: Repeat, tail: Sequence[Step], kind: Kind) -> bool:
    """`ch 4, * skip 1, dc in next, ch 1; rep around, join to ch-4`: the last dc is the chain it began with."""
    first, last, stood = step.body[0], step.body[-1], walk.stood
    joins = any(isinstance(s, Join) for s in tail)
    if not joins or not isinstance(first, Skip) or not isinstance(last, Chain) or stood is None:
        return False
    number = walk.site.number(first.into.number)
    if walk.remaining(kind) != number or stood[1][-1:] != (f"ch-{walk.site.number(last.number)} sp",):
        return False
    walk.take(kind, number, step.place)
    return True


def _slipped(walk: Walk) -> int:
    """The places that slip stitches pass at a round's beginning, and its end with them: `sl st in next dc, ch 3`."""
    number = 0
    for step in walk.ahead:
        if isinstance(step, Slip) and not step.to and step.into.which == "next":
            number += walk.site.number(step.into.number)
        elif not isinstance(step, Aside):
            break
    return 0 if walk.site.shape == "flat" else number


def is_beside_group(walk: Walk, left: int, kind: Kind) -> bool:
    """True where a round of shells leaves the one chain space that lies before its first shell: all runs pass it so."""
    rest = walk.cursor.rest()
    over = count_targets(rest) - count_targets(walk.passed)
    if walk.site.shape == "flat" or left != 1 or not kind.key.startswith("sp") or not 0 < over <= 2:
        return False
    made = walk.out[-1] if walk.out else None
    beside = last_target(leading(rest, over)).kind == "sp"
    return beside and isinstance(made, Target) and made.kind == "sp" and any(key[:1] == "@" for key in walk.addressed)
