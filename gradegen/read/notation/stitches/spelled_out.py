"""Stitches told by what the hook does: `insert hook in last st, pull loop through, pull yarn through both loops`.

The wraps before the hook goes in tell the stitch: none sc, one dc, two tr, three dtr.
"""

from __future__ import annotations

from gradegen.design.rows import Into, Make, Thing, Work
from gradegen.read.notation.places.places_named import read_place
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.read.notation.words.times import read_often
from gradegen.read.notation.words.word_lists import phrases, words
from gradegen.trade.stitches import stitches

_BY_WRAPS = {0: "sc", 1: "dc", 2: "tr", 3: "dtr"}
_WRAP = phrases("thread over hook|thread over|yarn over hook|yarn over|yo hook|yo|y o")
_MOST_CLAUSES = 8  # of one stitch told in full
_HANDS = words("pull draw thread yarn yo y drop work off insert pick and")


def read_spelled_out(r: Reading) -> Work | None:
    """One stitch, or one cluster of several begun in a star, as the hook makes it; None for anything else."""
    mark = r.at
    starred = r.here.kind == "star"
    r.at += starred
    wraps = _wraps(r)
    into = _inserted(r) if wraps is not None else None
    if wraps is None or into is None:
        r.at = mark
        return None
    legs = _legs(r) if starred else 1
    if legs is None or not _worked_off(r):
        r.at = mark
        return None
    stitch = _BY_WRAPS.get(wraps, "tr")
    return _work(r, mark, stitch, legs, into)


def _wraps(r: Reading) -> int | None:
    """How often the yarn goes round the hook before it is inserted."""
    if r.low() == "insert":
        return 0
    if not r.phrase(_WRAP):
        return None
    often = read_often(r)
    r.accept(",")
    r.accept("and")
    return (plain(often.number) or 1) if often is not None else 1


def _inserted(r: Reading) -> Into | None:
    """`insert hook in next st`."""
    if not r.accept("insert"):
        return None
    r.accept("hook")
    return read_place(r)


def _legs(r: Reading) -> int | None:
    """How many legs the cluster has: the steps up to `repeat from *`, and how often it says."""
    for _ in range(_MOST_CLAUSES):
        while r.here.kind not in (",", ";", ".", "end", "star", "open"):
            r.at += 1
        if r.here.kind in ("end", "star", "open"):
            return None
        r.at += 1
        if r.accept("repeat", "rep"):
            if not r.accept("from") or r.here.kind != "star":
                return None
            r.at += 1
            often = read_often(r)
            return 1 + ((plain(often.number) or 1) if often is not None else 1)
    return None


def _worked_off(r: Reading) -> bool:
    """Passes `, pull loop through, drop Black, pull Green through both loops on hook`; else False."""
    for _ in range(_MOST_CLAUSES):
        if r.here.kind not in (",", ";") and r.low() != "and":
            return False
        r.at += 1
        r.accept("and", "then")
        if r.low() not in _HANDS:
            return False
        start = r.at
        while r.here.kind not in (",", ";", ".", "end", "close", "star", "open"):
            r.at += 1
        said = {token.low for token in r.tokens[start : r.at]}
        if "loops" in said and said & {"both", "all", "3", "remaining"} and not said & {"twice"}:
            return True
    return False


def _work(r: Reading, mark: int, stitch: str, legs: int, into: Into) -> Work | None:
    if legs == 1:
        return Work((Make(stitch, place=r.place(mark)),), into, place=r.place(mark))
    cluster, together = f"{legs}-{stitch} cluster", f"{stitch}{legs}tog"
    moves_on = into.which == "next" and not into.loosely and not (into.things and into.things[0].name == "sp")
    name = together if moves_on else cluster
    if name not in stitches():
        return None
    if moves_on:
        into = Into("next", into.things or (Thing("st"),), r.whole(legs, *_span(r, mark)), place=into.place)
    return Work((Make(name, place=r.place(mark)),), into, place=r.place(mark))


def _span(r: Reading, mark: int) -> tuple[int, int]:
    return r.tokens[mark].start, r.tokens[mark].end
