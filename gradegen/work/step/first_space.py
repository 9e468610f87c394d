"""A round that begins in a space: the stitches before that space may be the last ones it meets.

`*4 sc in next ch-3 sp, sc in next dc; rep from * around`: the dc on which the round before was joined comes last.
"""

from __future__ import annotations

from gradegen.design.edge import Edge
from gradegen.design.rows import Into
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import count_targets, leading
from gradegen.work.edge.kinds import Kind

_WAYS = ("the stitches before the first space are passed by", "the stitches before the first space come last")


def begin_in_space(walk: Walk, into: Into, kind: Kind) -> None:
    """Before the first stitch of a round: in another reading what stands before its space is moved to the end."""
    if walk.begun or walk.here or walk.out or walk.site.shape == "flat" or into.which not in ("next", "first"):
        return
    first = walk.cursor.peek()
    if first is None or first.kind != "st" or kind.fits(first) or not kind.key.startswith("sp"):
        return
    if not walk.remaining(kind) or not walk.site.choose(
        "first space", "the first space", _WAYS, into.place, silent=True
    ):
        return
    before = walk.cursor.rest()
    while (one := walk.cursor.peek()) is not None and not kind.fits(one):
        walk.cursor.step()
    begin_here(walk, before)


def begin_here(walk: Walk, before: Edge) -> None:
    """The round begins where the cursor stands: what was passed since `before` comes last, and is optional."""
    rest = walk.cursor.rest()
    walk.passed = leading(before, count_targets(before) - count_targets(rest))
    walk.onto((*rest, *walk.passed), again=True)
