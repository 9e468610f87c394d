"""The middle stitch of the row before: `sc to 1 st before centre st`, `3 sc in centre st`, `in centre ch-2 sp`."""

from __future__ import annotations

from gradegen.design.rows import Bound
from gradegen.findings import Place
from gradegen.work.along.walk import Walk
from gradegen.work.edge.cursor import Cursor
from gradegen.work.edge.kinds import ANY_STITCH, Kind
from gradegen.work.edge.stops import Unclear


def left_before_centre(walk: Walk, bound: Bound, place: Place) -> int:
    """How many stitches are left where a run stops so many before the middle one."""
    left = _middle(walk, ANY_STITCH, place) + 1 + walk.site.number(bound.number, 0)
    if left > walk.remaining(ANY_STITCH):
        raise Unclear("the centre of the row before is passed already", place)
    return left


def go_to_centre(walk: Walk, kind: Kind, place: Place) -> None:
    """To the next of a kind, which is the middle one; Unclear where it is not."""
    if walk.remaining(kind) != _middle(walk, kind, place) + 1:
        raise Unclear(f"the next {kind.words} is not the middle one of the row before", place)
    walk.owe(kind)
    while (one := walk.cursor.peek()) is not None and not kind.fits(one):
        walk.cursor.step()


def _middle(walk: Walk, kind: Kind, place: Place) -> int:
    """How many of a kind stand on each side of the middle one; Unclear where two stand in the middle."""
    walk.must_see(place)
    whole = Cursor(walk.before).whole(kind.key, kind.fits)
    if whole % 2 == 0:
        raise Unclear(f"the row before has no {kind.words} in its middle", place)
    return whole // 2
