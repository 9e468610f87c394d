"""A stitch in every second place: `sc in every other st across`."""

from __future__ import annotations

from gradegen.design.rows import Bound, Either, Into, Repeat, Skip, Times, Work
from gradegen.read.notation.places.bounds import read_bound
from gradegen.read.notation.places.things import read_thing
from gradegen.read.notation.stitches.makes import Item
from gradegen.read.notation.words.reading import Reading

_WHY = (
    "the first of each two is worked into",
    "the first of each two is worked into, and the last one too",
    "the second of each two is worked into",
)


def read_every_other(r: Reading, mark: int, item: Item) -> Either | None:
    """Work and skip in turn, behind one stitch; None where no second place is named."""
    start = r.at
    plain = item.make.times is None and item.make.stitch not in ("inc", "dec") and "tog" not in item.make.stitch
    said = plain and r.accept("in", "into") and r.accept("every", "each", "ea")
    if not said or not (r.accept("other", "alternate", "second") or r.accept("2nd")):
        r.at = start
        return None
    thing = read_thing(r)
    bound = read_bound(r)
    if thing is None or not (bound is not None or r.at_break()):
        r.at = start
        return None
    place = r.place(mark)
    into = Into("next", (thing,), place=place)
    work, skip = Work((item.make,), into, place=place), Skip(into, place=place)
    times = Times("bound", bound=bound or Bound("end"))
    part = Times("bound", bound=bound or Bound("end"), stop_at=1)
    readings = (
        (Repeat((work, skip), times, place=place),),
        (Repeat((work, skip), part, place=place),),
        (Repeat((skip, work), times, place=place),),
    )
    return Either(readings, _WHY, place=place)
