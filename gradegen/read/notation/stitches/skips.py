"""Places passed over: `sk next 2 sts`, `skip ch-2 sp and next dc`, `skip st behind dc just made`."""

from __future__ import annotations

from gradegen.design.rows import Aside, Into, Skip, Step, Thing
from gradegen.read.notation.places.place_words import JUST_MADE
from gradegen.read.notation.places.places_named import read_target
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases


def read_skip(r: Reading) -> list[Step] | None:
    """`sk next 2 sts`, `skip 1 loop`, `skip the ch-2 sp`; None when it is no skip."""
    mark = r.at
    if not r.accept("sk", "skip", "skipping", "miss", "missing", "leave") or r.tokens[mark].low == "leave":
        r.at = mark
        return None
    start = r.at
    if r.phrase(phrases("the joining|joining|joining st|joining sl st|the joining sl st")) and r.at_break():
        return [Aside(r.text(mark), place=r.place(mark))]
    r.at = start
    target = read_target(r)
    if target is None and (number := r.number()) is not None:
        along_ends = any(token.low in ("end", "ends") for token in r.tokens) and r.accept("row", "rows")
        thing = Thing("row end" if along_ends else "st")  # `sc over end of first row, * ch 5, skip 1 row, ...`
        target = Into("next", (thing,), number, loosely=True, place=r.place(start))
    if target is None:
        r.at = mark
        return None
    purpose = r.at
    r.phrase(phrases("for sleeve|for thumb|for armhole|for neck|for underarm")) or _behind_stitch(r)
    if not r.at_break():
        r.at = purpose
    skips: list[Step] = [Skip(target, place=r.place(mark))]
    while (further := _skip_on(r)) is not None:
        skips.append(further)
    return skips


def _behind_stitch(r: Reading) -> bool:
    """`skip st behind dc just made`: the stitch that one worked into a row below stands in front of."""
    if not r.accept("behind"):
        return False
    r.accept("the", "that", "this")
    r.accept("long", "spike")
    named = r.here.kind == "stitch" or r.low() in STITCHES
    r.at += named
    r.phrase(JUST_MADE)
    return named


def _skip_on(r: Reading) -> Skip | None:
    """`..., next sp and next dc` behind what is skipped first; None when something else is said."""
    mark = r.at
    r.accept(",")
    joined = r.accept("and")
    start = r.at
    more = joined or (r.low() in ("next", "first", "last") and start > mark)
    second = read_target(r) if more else None
    if second is None or second.of is not None or not (r.at_break() or r.here.kind in (",", ";")):
        r.at = mark
        return None
    return Skip(second, place=r.place(start))
