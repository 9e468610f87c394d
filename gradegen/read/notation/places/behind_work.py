"""Work that goes on behind what is made already: `sc in back of work between next 2 petals`.

The words say on which side of the flower the hook goes; where the stitch goes is said by the place behind them.
"""

from __future__ import annotations

from gradegen.design.rows import Aside
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases, words

_BEHIND = phrases(
    "in back of work|in the back of work|in back of the work|at back of work|at the back of work|"
    "at the back of the work|on back of work|behind the work|behind work|in front of work|in front of the work"
)
_BOTH_LOOPS = phrases("in both loops only|through both loops only|in both loops|through both loops|under both loops")
_PLACES = frozenset({"between", "in", "into", "over", "around", "through"})


def pass_behind(r: Reading) -> None:
    """Passes the words where a place stands behind them, and those that say no more than `through both loops`."""
    mark = r.at
    if r.phrase(_BOTH_LOOPS):
        if r.low() == "of":
            r.at = mark
        return
    if r.phrase(_BEHIND) and r.low() not in _PLACES:
        r.at = mark


def to_other_piece(r: Reading, mark: int) -> Aside | None:
    """`sl st in next 2 neck sts, turn`: what a row is fastened to at its end is not on its own edge; else None."""
    start = r.at
    if r.accept("in", "into", "to") and r.accept("next", "the", "following", "same"):
        r.number()
        if r.low() in _OTHER_PIECES and r.low(1) in (*STITCHES, "row", "edge"):
            end = r.next_break(r.at)
            behind = r.tokens[end + 1] if r.tokens[end].kind in (",", ";", ".") else r.tokens[end]
            if end == r.at + 2 and (behind.low == "turn" or behind.kind in ("open", "end", "=")):
                r.at = end
                return Aside(r.text(mark), place=r.place(mark))
    r.at = start
    return None


_OTHER_PIECES = words(
    "head leg arm tail ear wing foot neck body yoke armhole sleeve hem main collar cuff hat brim front back"
)
