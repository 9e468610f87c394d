"""So many stitches along an edge, wherever they find room: `work 30 sc evenly around the row ends`."""

from __future__ import annotations

from gradegen.design.rows import Bound, Into, Make, Step, Work
from gradegen.read.notation.reading import Reading
from gradegen.read.notation.things import STITCHES
from gradegen.read.notation.word_lists import phrases

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
