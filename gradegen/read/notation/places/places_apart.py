"""Places that do not come one after the other along the edge: rows below, loops of several rows, skipped, marked."""

from __future__ import annotations

from gradegen.design.rows import Into, Number, Thing, Which
from gradegen.read.notation.places.bounds import read_bound
from gradegen.read.notation.places.place_words import read_one_thing
from gradegen.read.notation.places.things import read_thing
from gradegen.read.notation.words.reading import Reading, unless_one
from gradegen.read.notation.words.word_lists import phrases


def read_apart(r: Reading, mark: int) -> Into | None:
    """A place told by another row, a picot or the join; None when none is."""
    return (
        _loops_of_rows(r, mark)
        or _beside_picot(r, mark)
        or _rows_below(r, mark)
        or _joining(r, mark)
        or _ends_of_rows(r, mark)
        or _base_of_chain(r, mark)
        or _loops_left(r, mark)
        or _it(r, mark)
    )


def _it(r: Reading, mark: int) -> Into | None:
    """`dc in each dc to the ch-2 sp, (2 dc, ch 2, 2 dc) in it`: where the run before stopped."""
    if r.stop is None or not r.accept("it"):
        return None
    return Into("next", (r.stop,), place=r.place(mark))


def _loops_left(r: Reading, mark: int) -> Into | None:
    """`each front loop of Rnd 30`, `in each unused front loop around`: loops that an earlier round left free."""
    start = r.at
    each = r.accept("each", "every", "all", "ea") or r.accept("any")
    which: Which = "each" if each and r.tokens[start].low != "any" else "next"
    if not each:
        which = "first" if r.accept("first") else which
        r.accept("next")
    r.accept("of")
    r.accept("the")
    number = r.number()
    said = r.accept("free", "unused", "remaining", "rem", "leftover", "unworked", "exposed")
    if not (r.accept("front", "back") and r.accept("loop", "loops", "lp", "lps")):
        r.at = start
        return None
    plural = r.tokens[r.at - 1].low in ("loops", "lps")
    named = r.phrase(_OF_ROUND) and r.number() is not None
    if not (named or (said and plural) or (each and r.low() in ("around", "across"))):
        r.at = start
        return None
    if plural and number is None:
        which = "each"
    bound = read_bound(r) if which == "each" and number is None else None
    return Into(which, (Thing("unworked"),), unless_one(number), bound=bound, place=r.place(mark))


_OF_ROUND = phrases(
    "of rnd|of round|of row|from rnd|from round|from row|left from rnd|left from round|left in rnd|left in round|"
    "on rnd|on round|left from row|in rnd|in round"
)


_AT_BASE = phrases(
    "st at base of|st at the base of|same st at base of|same st at the base of|stitch at base of|"
    "stitch at the base of|base of|st below|same st as"
)


def _base_of_chain(r: Reading, mark: int) -> Into | None:
    """`in st at base of ch`: where the starting chain stands."""
    start = r.at
    if r.phrase(_AT_BASE):
        r.accept("the", "beg", "beginning", "starting", "turning")
        length = r.number() if r.peek().value == "ch" else None
        if r.here.kind == "chain" or r.here.value == "ch":
            r.at += 1
            if length is None and r.here.kind == "number":
                r.at += 1
            return Into("same", (Thing("st"),), place=r.place(mark))
    r.at = start
    return None


_ROW_ENDS = phrases(
    "end of each row|end of every row|ends of each row|ends of rows|end of rows|side of each row|side of every row|"
    "edge of each row|ends of the rows|row ends|each row end|every row end|row end of each row"
)
_END_OF_ROW = phrases("end of|side of|edge of")


def _ends_of_rows(r: Reading, mark: int) -> Into | None:
    """`in the end of each row`: each of the row ends."""
    if r.phrase(_ROW_ENDS):
        return Into("each", (Thing("row end"),), bound=read_bound(r), place=r.place(mark))
    start = r.at
    if r.phrase(_END_OF_ROW) and r.accept_all("each", "of"):
        r.accept("the", "next")
        number = r.number()
        if number is not None and r.accept("row", "rows"):
            return Into("next", (Thing("row end"),), number, place=r.place(mark))  # `2 sc over end of each of 46 rows`
    r.at = start
    which = "first" if r.tokens[start + 2].low in ("first", "1st") else r.low(2)
    if r.phrase(_END_OF_ROW) and r.accept("next", "first", "1st", "last"):
        number = r.number()
        if r.accept("row", "rows") and r.at_break():
            return Into(which, (Thing("row end"),), unless_one(number), place=r.place(mark))  # type: ignore[arg-type]
    r.at = start
    return None


def _loops_of_rows(r: Reading, mark: int) -> Into | None:
    """`over next loops of 2 previous rows`: the loop that lies uppermost, and those below it with it."""
    for i in range(r.at, r.at + 10):
        if r.tokens[i].kind not in ("word", "number", "ordinal"):
            break
        if r.tokens[i].low in ("loop", "loops", "sp", "sps"):
            said = [token.low for token in r.tokens[i + 1 : i + 5]]
            if said[:1] == ["of"] and "previous" in said and said[-1] in ("rows", "rnds", "rounds"):
                r.at = i + 5
                return Into("next", (Thing("sp", said="loop"),), place=r.place(mark))
    return None


def _beside_picot(r: Reading, mark: int) -> Into | None:
    """`in next loop to right of picot`, `in next loop to left of picot`: one loop, before and behind its picot."""
    start = r.at
    same = r.accept("same")
    if (same or r.accept("next")) and r.accept("loop", "lp") and r.accept("to"):
        r.accept("the")
        side = r.low()
        r.at += 1
        if side in ("right", "left") and r.accept("of") and (r.accept("the") or True) and r.here.value == "picot":
            r.at += 1
            which = "same" if same or side == "left" else "next"
            return Into(which, (Thing("sp", said="loop"),), place=r.place(mark))  # type: ignore[arg-type]
    r.at = start
    return None


def _rows_below(r: Reading, mark: int) -> Into | None:
    """`in next sc 4 rows below`, `2 rows below`: a place of an earlier row."""
    start = r.at
    r.accept("next", "corresponding", "same")
    things = read_one_thing(r) if r.here.kind != "number" else ()
    number = r.number()
    if number is not None and r.accept("row", "rows", "rnd", "rnds", "rounds", "round") and r.accept("below"):
        return Into("next", (Thing("below", of=things[0].name if things else "st"),), place=r.place(mark))
    r.at = start
    return None


def _joining(r: Reading, mark: int) -> Into | None:
    """`dc in joining`: where the round before was joined."""
    start = r.at
    if r.phrase(phrases("joining st|joining stitch|joining|st of joining|join st|joined st")) and r.at_break():
        return Into("same", place=r.place(mark))
    r.at = start
    return None


def read_marked(r: Reading, mark: int) -> Into | None:
    """`marked st`, `st with marker`."""
    r.accept("marked")
    if read_thing(r) is None:
        return None
    r.phrase(phrases("with marker|with a marker"))
    return Into("marked", place=r.place(mark))


def read_skipped(r: Reading, mark: int, which: str, number: Number | None, bound: object) -> Into | None:
    """`first skipped st`, `each of the 8 skipped sts`."""
    r.at += 1
    thing = read_thing(r)
    if thing is None:
        return None
    limit = read_bound(r) if bound is not None else None
    return Into(which, (Thing("unworked"),), unless_one(number), bound=limit, place=r.place(mark))  # type: ignore[arg-type]
