"""Stitches whose places or whose kind go without saying: `work 30 sc evenly around`, `work to within last 3 sc`."""

from __future__ import annotations

from gradegen.design.rows import Bound, Into, Make, Number, Step, Thing, Work
from gradegen.read.notation.places.bounds import read_bound
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading, unless_one
from gradegen.read.notation.words.tokens import Token
from gradegen.read.notation.words.word_lists import phrases, words
from gradegen.trade.stitches import stitches


def _by_rows(r: Reading) -> list[Step] | None:
    """`sc evenly along the long edge, 1 sc per row end`: one in the end of each row; else None."""
    mark = r.at
    r.accept("work")
    stitch = r.here
    if not _is_spread(stitch):
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


def _around(r: Reading) -> list[Step] | None:
    """`sc evenly around`, with no number: one in each stitch is meant where nothing speaks against it; else None."""
    mark = r.at
    r.accept("work")
    stitch = r.here
    if not _is_spread(stitch):
        return None
    r.at += 1
    said = r.accept("evenly")
    bound = read_bound(r) if said else None
    if bound is None or bound.to != "end" or not r.at_break():
        r.at = mark
        return None
    into = Into("each", (Thing("st"),), bound=bound, loosely=True, place=r.place(mark))
    return [Work((Make(str(stitch.value), place=r.place(mark, mark + 1)),), into, place=r.place(mark))]


def _is_spread(token: Token) -> bool:
    """True for a stitch that can be worked evenly along an edge."""
    return token.kind == "stitch" and token.value not in ("ch", "sl st", "magic ring", "inc", "dec")


_A_ROW = phrases(
    "per row end|per row|for each row|for every row|for each row end|in each row end|in every row end|in each row|"
    "in every row|in the end of each row|in end of each row|into each row end|into each row|for each row of edge"
)
_ENDS = frozenset({",", ";", ".", "end", "close", "open", "star"})
_LONGEST = 10  # words


def read_evenly(r: Reading) -> list[Step] | None:
    """`work 30 sc evenly along the edge`, `sc evenly, 1 sc per row`, `sc evenly around`; None for anything else."""
    return _numbered(r) or _by_rows(r) or _in_total(r) or _around(r)


def _in_total(r: Reading) -> list[Step] | None:
    """`sc evenly around armhole, working 72 sc in total`, `sc evenly along edge: 72 sc`: the number behind."""
    mark = r.at
    r.accept("work")
    stitch = r.here
    if not _is_spread(stitch) or r.low(1) != "evenly":
        return None
    r.at += 1
    where, end = r.at, r.next_break(r.at)
    words_ = r.text(where, end)
    r.at = end
    told = r.here.kind == ":"
    r.accept(",", ";", ":")
    r.accept("working", "making", "for")
    r.phrase(phrases("a total of|total of|about"))
    number = r.number()
    named = r.here.value == stitch.value or r.low() in STITCHES
    r.at += named
    total = r.phrase(phrases("in total|total|in all|altogether"))
    if number is None or not named or not r.at_break() or not (total or told or r.tokens[end + 1].low in _TOTALS):
        r.at = mark
        return None
    make = Make(str(stitch.value), number, place=r.place(mark, mark + 1))
    return [
        Work((make,), Into("evenly", bound=Bound("words", words=words_), place=r.place(where)), place=r.place(mark))
    ]


_TOTALS = frozenset({"working", "making", "for"})


def _numbered(r: Reading) -> list[Step] | None:
    """The stitches in no counted places; None when no number is spread here."""
    mark = r.at
    r.phrase(phrases("pick up and|join yarn and|work|evenly"))
    number = r.number()
    stitch = r.here
    if not _is_spread(stitch):
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


def read_beside(r: Reading) -> list[Step] | None:
    """`120 sc down the side`, `sc in each of the 12 sts of first leg`: so many on an edge that only words name."""
    mark = r.at
    r.accept("work", "make")
    number = r.number()
    stitch = r.here
    if not _is_spread(stitch):
        r.at = mark
        return None
    r.at += 1
    where = r.at
    number = _other_side(r) if number is None else number
    if r.at == where:
        number = number or _number_of(r)
        where = r.at
        if number is None or not r.accept(*_ALONG) or not _pass_edge(r):
            r.at = mark
            return None
    make = Make(str(stitch.value), number, place=r.place(mark, where))
    into = Into("evenly", bound=Bound("words", words=r.text(where)), place=r.place(where))
    return [Work((make,), into, place=r.place(mark))]


def read_along_ends(r: Reading) -> list[Step] | None:
    """`24 sc along the row ends`: so many in all; before the other forms, which would see so many in each."""
    start = r.at + (r.low() in ("work", "make"))
    tokens = r.tokens[start : start + 3]
    along = len(tokens) == 3 and tokens[0].kind in ("number", "count") and tokens[1].kind == "stitch"
    return read_beside(r) if along and tokens[2].low in ("along", "across", "down", "up", "over") else None


def _other_side(r: Reading) -> Number | None:
    """The 3 of `in other side of 3 ch`: chains between two limbs."""
    mark = r.at
    r.accept("in", "into", "on", "along")
    r.accept("the")
    said = r.phrase(phrases("other side of|opposite side of"))
    r.phrase(phrases("each of"))
    r.accept("the", "same")
    number = r.number() if said else None
    if number is None or r.here.value != "ch":
        r.at = mark
        return None
    r.at += 1
    if not r.at_break():
        r.at = mark
        return None
    return number


def _number_of(r: Reading) -> Number | None:
    """The 12 of `in each of the 12 sts of`, `in next 12 sts of`, `12 around`."""
    if r.accept("in", "into", "on"):
        r.phrase(phrases("each of|each"))
        r.accept("the")
        r.accept("next", "first", "last")
        number = r.number()
        if number is None or not (r.here.kind == "stitch" or r.low() in STITCHES):
            return None
        r.at += 1
        return number
    return r.number()


def _pass_edge(r: Reading) -> bool:
    """Passes words up to the end of the clause, one of which is an edge or a limb."""
    end = r.next_break(r.at)
    joined = (i for i in range(r.at, end) if r.tokens[i].low == "and" and r.tokens[i + 1].kind in ("number", "count"))
    end = next(joined, end)
    said = r.tokens[r.at : end]
    if not 1 <= len(said) <= _LONGEST or any(token.kind not in ("word", "ordinal") for token in said):
        return False
    r.at = end
    return any(token.low in _EDGES for token in said)


_ALONG = ("along", "down", "up", "across", "over", "around", "round", "of", "on", "from")
_EDGES = words(
    "edge edges side sides top bottom neck neckline front end ends armhole armholes band border hem cuff seam flap "
    "strap leg legs arm arms ear ears wing wings foot feet tail piece half opening unworked held"
)


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
