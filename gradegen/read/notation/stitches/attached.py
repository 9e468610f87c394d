"""Yarn joined before the work begins: `attach thread in any loop`, `join B with sc in first st`."""

from __future__ import annotations

from gradegen.design.rows import Aside, Into, Make, OtherSide, Slip, Step, Thing, Work
from gradegen.read.notation.places.places_named import read_place
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases, words


def read_attach(r: Reading) -> list[Step] | None:
    """`attach thread in any loop`, `join yarn in first skipped st`: an aside, and where the work begins."""
    mark = r.at
    if not r.accept("attach", "join", "rejoin", "reattach"):
        r.at = mark
        return None
    words = 0
    while r.here.kind in ("word", "stitch", "number") and words < 8:
        if r.low() in ("in", "into", "to", "at", "between", "with", "on", "from"):
            break
        if r.here.kind == "stitch" or (r.low() == "and" and not _is_colour_and(r)):
            break
        r.at += 1
        words += 1
        if r.here.kind == "." and r.tokens[r.at - 1].low in ("dk", "lt", "med"):
            r.at += 1
    if words == 0 and not goes_on_from(r):
        r.at = mark
        return None
    aside = Aside(r.text(mark), place=r.place(mark))
    made: list[Step] = []
    if r.accept("with"):
        r.accept("a")
        r.accept("standing")
        if not (r.here.kind == "stitch" and r.here.value in ("sl st", *_JOINED_WITH)):
            r.at = mark
            return None
        if r.here.value != "sl st":
            made = [_standing(r)]
        r.at += 1
    start = r.at
    if _at_other_edge(r):
        return [Aside(r.text(mark), place=r.place(mark)), *made]
    if r.phrase(
        phrases(
            "to opposite side of chain|to other side of chain|to opposite side of ch|to other side of ch|"
            "to opposite side of foundation chain"
        )
    ) or (r.phrase(phrases("to opposite side of|to other side of")) and r.here.value == "ch"):
        r.at += r.here.value == "ch"
        return [aside, OtherSide(place=r.place(start))]
    r.at = start
    if r.phrase(phrases("in joining|at joining|in join|at join|in same place as joining")):
        return [Aside(r.text(mark), place=r.place(mark))]
    place = _beside_middle(r) or read_place(r, to=True)
    if place is None:
        if r.at_break() or _pass_spot(r):
            return [Aside(r.text(mark), place=r.place(mark))]
        r.at = mark
        return None
    if not made and r.accept("with"):  # `join B to any st with a ss`
        r.accept("a")
        if r.here.value != "sl st":
            r.at = mark
            return None
        r.at += 1
    return [aside, Slip(place, to=True, place=r.place(start)), *made]


def goes_on_from(r: Reading) -> bool:
    """True for `with sl st in next st, ch 1, ...`: no round is closed there, the row begins there."""
    slip = r.at + 1 + (r.low(1) == "a")
    end = r.next_break(r.at)
    joins = r.low() == "with" and r.tokens[slip].value == "sl st" and r.tokens[slip + 1].low in ("in", "into", "to")
    return joins and r.tokens[slip + 2].low == "next" and r.tokens[end].kind == "," and r.tokens[end + 1].value == "ch"


def _pass_spot(r: Reading) -> bool:
    """Passes `at centre underarm`, `at left front edge`: words that name a spot of the garment, no stitch."""
    end = r.next_break(r.at)
    said = r.tokens[r.at + 1 : end]
    if r.low() not in ("at", "to", "in") or not 1 <= len(said) <= 6 or any(token.kind != "word" for token in said):
        return False
    if not {token.low for token in said} & _SPOTS or any(token.low in STITCHES for token in said):
        return False
    r.at = end
    return True


_SPOTS = words(
    "underarm armhole neck neckline shoulder hem edge side seam front back centre center corner bottom top sleeve cuff"
)


def _beside_middle(r: Reading) -> Into | None:
    """`in 8th st to right of center`: some stitch of a round that goes on all around from there."""
    mark = r.at
    if r.accept("in", "to") and r.here.kind == "ordinal" and r.peek().low in STITCHES:
        r.at += 2
        if r.accept_all("to") and (r.accept("the") or True) and r.accept("right", "left") and r.accept("of"):
            r.accept("the")
            if r.accept("center", "centre", "middle", "marker"):
                return Into("next", (Thing("st"),), loosely=True, place=r.place(mark))
    r.at = mark
    return None


_JOINED_WITH = ("sc", "hdc", "dc", "tr")


def _standing(r: Reading) -> Work:
    """The stitch a yarn is joined with, `join B with sc in first st`, worked where it is joined."""
    here = r.place(r.at, r.at + 1)
    return Work((Make(str(r.here.value), place=here),), Into("same", (Thing("st"),), place=here), place=here)


def _is_colour_and(r: Reading) -> bool:
    """`Gold & Silver`, `Purple and Silver Spangle`; not `and work 1 sc`."""
    after = r.peek()
    return r.written.text[r.here.start] == "&" or (
        after.kind == "word" and after.low not in ("work", "make", "working", "sc")
    )


def _at_other_edge(r: Reading) -> bool:
    """Passes `at other long edge`, `to one short end`; else False."""
    mark = r.at
    if r.accept("in", "to", "at", "on"):
        r.accept("the")
        start = r.at
        while r.low() in _SIDES:
            r.at += 1
        if r.at > start and r.accept("edge", "end") and r.at_break():
            return True
    r.at = mark
    return False


_SIDES = words("one other opposite remaining either long short side lower upper bottom top left right cast straight")
