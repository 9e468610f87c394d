"""Stitches whose places or whose kind go without saying: `work 30 sc evenly around`, `work to within last 3 sc`."""

from __future__ import annotations

from gradegen.design.rows import Bound, Into, Make, Step, Thing, Work
from gradegen.read.notation.bounds import read_bound
from gradegen.read.notation.reading import Reading, unless_one
from gradegen.read.notation.things import STITCHES
from gradegen.read.notation.word_lists import phrases
from gradegen.trade.stitches import stitches


def read_evenly_by_rows(r: Reading) -> list[Step] | None:
    """`sc evenly along the long edge, 1 sc per row end`: one in the end of each row; else None."""
    mark = r.at
    r.accept("work")
    stitch = r.here
    if stitch.kind != "stitch" or stitch.value in ("ch", "sl st", "magic ring", "inc", "dec"):
        return None
    r.at += 1
    if not r.accept("evenly"):
        r.at = mark
        return None
    r.at = r.next_break(r.at)
    opened = r.accept("(")
    r.accept(",", ":", ";")
    r.accept("working", "work", "with", "placing")
    said = r.number()
    number = said if r.here.value == stitch.value or r.low() in STITCHES else None
    if number is not None:
        r.at += 1
    if number is None or not r.phrase(_A_ROW) or (opened and not r.accept(")")):
        r.at = mark
        return None
    make = Make(str(stitch.value), unless_one(number), place=r.place(mark, mark + 1))
    into = Into("each", (Thing("row end"),), bound=Bound("end"), place=r.place(mark))
    return [Work((make,), into, place=r.place(mark))]


_A_ROW = phrases(
    "per row end|per row|for each row|for every row|for each row end|in each row end|in every row end|in each row|"
    "in every row|in the end of each row|in end of each row|into each row end|into each row|for each row of edge"
)
_ENDS = frozenset({",", ";", ".", "end", "close", "open", "star"})
_LONGEST = 10  # words


def read_evenly(r: Reading) -> list[Step] | None:
    """The stitches in no counted places; None when no number is spread here."""
    mark = r.at
    r.phrase(phrases("pick up and|join yarn and|work|evenly"))
    number = r.number()
    stitch = r.here
    if stitch.kind != "stitch" or stitch.value in ("ch", "sl st", "magic ring", "inc", "dec"):
        r.at = mark
        return None
    r.at += 1
    number = number or r.number()
    if r.low() in STITCHES:
        r.at += 1
    where = r.at
    if number is None or not r.accept("evenly"):
        r.at = mark
        return None
    while r.here.kind not in _ENDS and r.at - where <= _LONGEST:
        r.at += 1
    if r.here.kind not in _ENDS:
        r.at = mark
        return None
    make = Make(str(stitch.value), number, place=r.place(mark, where))
    into = Into("evenly", bound=Bound("words", words=r.text(where)), place=r.place(where))
    return [Work((make,), into, place=r.place(mark))]


def read_work_to_last(r: Reading) -> list[Step] | None:
    """`work to within last 3 sc`: such stitches up to there; None where the limit names no kind of stitch."""
    mark = r.at
    if not r.accept("work", "working"):
        return None
    start = r.at
    r.accept("even")
    bound = read_bound(r)
    thing = bound.thing if bound is not None and bound.to == "last" else None
    known = stitches().get(thing.name) if thing is not None else None
    if known is None or not known.height or not r.at_break():
        r.at = mark
        return None
    make = Make(known.id, place=r.place(mark, start))
    return [Work((make,), Into("each", (Thing("st"),), bound=bound, place=r.place(start)), place=r.place(mark))]
