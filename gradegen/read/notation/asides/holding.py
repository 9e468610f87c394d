"""Stitches put on hold in the middle of a row: `place next 30 sts on hold for sleeve`, `leave next 30 sts unworked`."""

from __future__ import annotations

from gradegen.design.rows import Into, Skip, Step, Thing
from gradegen.read.notation.places.places_named import read_target
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases

_HELD = phrases("on hold|unworked|on a stitch holder|on a holder|on holder|on a marker|on scrap yarn|on waste yarn")
_FOR = phrases(
    "for the sleeve|for sleeve|for the armhole|for armhole|for the underarm|for underarm|for the neck|for neck|"
    "for the thumb|for thumb|for the left sleeve|for the right sleeve|for left sleeve|for right sleeve|"
    "for first sleeve|for second sleeve|for the heel|for heel|for later"
)


def read_hold(r: Reading) -> list[Step] | None:
    """A stretch that stays for a later piece; None for other words, and where all the rest is left."""
    mark = r.at
    named = r.accept("place", "put", "leave", "leaving", "slip")
    if not named or not (r.low() in ("next", "the", "each") or r.here.kind in ("number", "count")):
        r.at = mark
        return None
    r.accept("the")
    if r.low() in ("remaining", "rem", "other", "rest"):
        r.at = mark
        return None
    start = r.at
    target = read_target(r)
    if target is None and (number := r.number()) is not None:
        target = Into("next", (Thing("st"),), number, loosely=True, place=r.place(start))
    r.phrase(_FOR)
    if target is None or target.which != "next" or not r.phrase(_HELD):
        r.at = mark
        return None
    r.phrase(_FOR)
    if not r.at_break():
        r.at = mark
        return None
    return [Skip(target, held=True, place=r.place(mark))]
