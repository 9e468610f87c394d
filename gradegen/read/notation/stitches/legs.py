"""A decrease whose legs are named one by one: `dc2tog over same st and next st`, `sc2tog in first and second sts`."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Skip, Step, Work
from gradegen.read.notation.places.places_named import read_place, read_target
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.trade.stitches import stitches


def read_legs(r: Reading, work: Work, mark: int) -> list[Step] | None:
    """The decrease over both places; None where the second does not hold all its other legs."""
    known = stitches().get(work.makes[0].stitch)
    legs = known.takes if known is not None and known.takes else 1
    if len(work.makes) != 1 or legs < 2 or work.into.number is not None or work.into.which not in _FIRST_LEG:
        return None
    start = r.at
    r.accept(",")
    if not r.accept("and"):
        r.at = start
        return None
    r.accept("the")
    others = read_place(r) or read_target(r)
    number = 1 if others is None or others.number is None else plain(others.number)
    if others is None or others.which != "next" or number != legs - 1:
        r.at = start
        return None
    place = r.place(mark)
    if work.into.which == "same":
        return [work, Skip(others, place=others.place)]
    both = r.whole(legs, *r.span(mark))
    return [replace(work, into=replace(work.into, number=both), place=place)]


_FIRST_LEG = ("same", "first", "next")
