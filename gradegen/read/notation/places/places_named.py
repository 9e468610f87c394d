"""Where a step goes: `in next 3 sts`, `in each dc around`, `in same sp`, `in 2nd ch from hook`."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Into, Number, Thing
from gradegen.read.notation.places.bounds import read_bound
from gradegen.read.notation.places.place_words import (
    JUST_MADE,
    LOOPS_OF,
    PLURALS,
    counting_spaces,
    has_tip,
    is_chain,
    is_thing_ahead,
    number_of_places,
    pass_as_phrase,
    pass_of_row,
    pass_which,
    read_free_loop,
    read_loop,
    read_one_thing,
    read_rest,
    read_things,
    read_turning,
    top_of,
)
from gradegen.read.notation.places.places_apart import read_apart, read_marked, read_skipped
from gradegen.read.notation.places.things import SPACES, STITCHES, is_space, read_thing
from gradegen.read.notation.words.reading import FURTHEST, ORDINALS, Reading, unless_one
from gradegen.read.notation.words.word_lists import phrases, words

_PREPOSITIONS = words(
    "using in into around over on through under across along inside to at from between to within onto"
)
_BEHIND_ROUND = words("next each every the same first last stem post stems posts")
_LIKE_NEXT, _REMAINING = words("any following adjacent the"), words("rem remaining unused other free")


def read_place(r: Reading, *, to: bool = False) -> Into | None:
    """The place after a preposition here (`to`: also after "to"); None when none is named."""
    mark = r.at
    r.at += r.low() == "worked" and r.low(1) in ("in", "into", "over")
    if r.low() == "round" and r.low(1) in _BEHIND_ROUND and not to:
        pass  # `RtrF round next st`
    elif r.here.kind != "word" or r.here.low not in _PREPOSITIONS or (r.here.low in ("to", "from", "at") and not to):
        return None
    preposition = r.here.low
    r.at += 1
    if r.here.low in ("in", "into", "under", "within") and preposition in ("to", "in", "over"):
        r.at += 1
    into = read_target(r, between=preposition == "between")
    if into is not None:
        return replace(into, place=r.place(mark))
    r.at = mark
    return None


def read_target(r: Reading, *, between: bool = False) -> Into | None:
    """The place named here, without its preposition; None when none is."""
    mark = r.at
    if r.low() == "this" and r.low(1) in STITCHES | SPACES:
        return _same(r, mark)
    loop = read_loop(r)
    if loop and r.low() == "in":
        r.at += 1  # `sc in BLO in each st`
    if loop and r.at > mark and not _begins_target(r):
        return Into("next", (Thing("st"),), loop=loop, loosely=True, place=r.place(mark))
    r.accept("the", "a", "an", "that", "this")
    r.phrase(phrases("post of the|post of|posts of"))
    if r.phrase(LOOPS_OF):
        r.accept("the")
    into = _between(r, mark) if between else _target(r, mark)
    if into is None:
        r.at = mark
        return None
    after = read_loop(r) if loop is None else None
    return replace(into, loop=loop or after, place=r.place(mark))


def _begins_target(r: Reading) -> bool:
    token = r.here
    return token.kind in ("word", "stitch", "ordinal", "chain", "number", "count") and token.low not in (
        "and",
        "then",
        "only",
    )


def _target(r: Reading, mark: int) -> Into | None:
    return read_apart(r, mark) or _usual_target(r, mark)


def _usual_target(r: Reading, mark: int) -> Into | None:
    if (rest := read_rest(r, mark)) is not None:
        return rest
    word = r.low()
    if word == "next" or word in _LIKE_NEXT:
        r.at += 1
        return _next(r, mark)
    if word in ("each", "every", "all", "ea"):
        return _each(r, mark)
    if (word in _REMAINING or word in ("opposite", "underside", "bottom")) and (free := read_free_loop(r)) is not None:
        return Into("each", (free,), bound=read_bound(r), place=r.place(mark))
    if word == "same":
        return _same(r, mark)
    if word in ("last", "final") or (word == "end" and is_thing_ahead(r)):
        return _last(r, mark)
    if (
        word in ("center", "centre", "middle", "top", "base", "tip", "side")
        and (inner := _part_of(r, mark)) is not None
    ):
        return inner
    if word in ("ring", "circle", "mc") or (word == "center" and r.low(1) == "ring"):
        r.at += 1 + (word == "center")
        return Into("ring", place=r.place(mark))
    if word in ("beg", "beginning", "starting", "initial") and r.peek().kind == "stitch" and r.peek().value != "ch":
        r.at += 1
        return Into("first", read_one_thing(r) or (Thing("st"),), place=r.place(mark))  # `sl st in beg sc`
    if word in ("turning", "tch", "t-ch", "beg", "beginning", "starting"):
        return read_turning(r, mark)
    if word in ("marked", "st") and (word == "marked" or r.low(1) in ("with", "marked")):
        return read_marked(r, mark)
    if word in ("skipped", "unworked", "missed", "held"):
        return read_skipped(r, mark, "next", None, None)
    if r.here.kind == "ordinal" or word in ORDINALS:
        return _ordinal(r, mark)
    return _loose(r, mark)


# ---- next, each, same, last ------------------------------------------------------------


def _next(r: Reading, mark: int) -> Into | None:
    r.accept("next", "following")
    pass_which(r)
    number = number_of_places(r)
    if r.low() in ("skipped", "unworked", "held"):
        return read_skipped(r, mark, "next", number, None)
    things = read_one_thing(r)
    if not things:
        if number is None and not r.at_break():
            return None
        things = (Thing("st"),)
    if things[0] == Thing("sp") and r.low() == "between" and any(t.low == "any" for t in r.tokens[mark : r.at]):
        r.at += 1  # `any space between dc`
        return _between(r, mark)
    of = _of(r) or _in_gap(r)
    things = counting_spaces(r, things)
    return Into("next", things, unless_one(number), of=of, place=r.place(mark))


def _in_gap(r: Reading) -> Into | None:
    """`in dc between next 2 clusters`: where that dc stands."""
    mark = r.at
    if r.within >= FURTHEST or not r.accept("between"):
        return None
    r.within += 1
    gap = _between(r, mark)
    r.within -= 1
    if gap is None:
        r.at = mark
    return gap


def _each(r: Reading, mark: int) -> Into | None:
    everything = r.low() == "all"
    r.at += 1
    r.accept("of")
    r.accept("the", "these", "those")
    number = number_of_places(r)
    r.accept("of") and r.accept("the")
    last = r.low() == "last"
    first = r.here.low in ("first", "1st")
    if r.accept("next", "last", "first", "1st", "following"):
        number = number or number_of_places(r)
    if r.low() in ("skipped", "unworked", "missed", "held"):
        return read_skipped(r, mark, "each", number, read_bound)
    if r.low() == "other" and not everything:
        return None
    while r.low() in _REMAINING and r.low(1) not in ("loop", "loops", "lp", "lps"):
        r.at += 1
    number = number or number_of_places(r)
    free = read_free_loop(r)
    things = (free,) if free else read_things(r)
    if not things:
        if number is None and not r.at_break() and r.low() not in ("around", "across"):
            return None
        things = (Thing("st"),)
    of = _of(r)
    pass_of_row(r)
    things = counting_spaces(r, things)
    bound = read_bound(r)
    things = counting_spaces(r, things)
    which = "last" if last and number is not None else "first" if first and number is not None else "each"
    if which != "each":
        return Into(which, things, unless_one(number), of=of, bound=bound, place=r.place(mark))  # type: ignore[arg-type]
    return Into("each", things, number, of=of, bound=None if number is not None else bound, place=r.place(mark))


def _same(r: Reading, mark: int) -> Into:
    r.at += 1
    number = number_of_places(r)
    things = read_one_thing(r)
    if not things and r.low() in ("place", "space"):
        r.at += 1
    of = _of(r) if things else None
    goes_first = things and r.low() == "as" and r.low(1) in ("beginning", "beg") and r.tokens[r.at + 2].kind != "stitch"
    pass_as_phrase(r)
    if goes_first:  # `in same space as beginning`
        return Into("first", (Thing("st"),), place=r.place(mark))
    return Into("same", things, unless_one(number), of=of, place=r.place(mark))


def _last(r: Reading, mark: int) -> Into | None:
    r.at += 1
    number = number_of_places(r)
    r.accept("rem", "remaining")
    things = read_one_thing(r)
    if not things:
        if number is None and not r.at_break():
            return None
        things = (Thing("st"),)
    if number is None and r.phrase(JUST_MADE):
        return Into("same", things, place=r.place(mark))
    of = _of(r)
    pass_of_row(r)
    pass_as_phrase(r)
    return Into("last", things, unless_one(number), of=of, place=r.place(mark))


# ---- parts and numbered places ------------------------------------------------------------


def _of(r: Reading) -> Into | None:
    """`of next shell`, `of turning ch`, `of shell below`, `on ch-2 sp`: the larger thing a place is part of."""
    if r.within >= FURTHEST:
        return None
    r.within += 1
    inner = _larger(r)
    r.within -= 1
    return inner


def _larger(r: Reading) -> Into | None:
    mark = r.at
    if r.low() not in ("of", "on", "in", "at") or (r.low() == "in" and r.low(1) not in ("next",)):
        return None
    at = r.low() == "at"
    r.at += 1
    r.accept("the")
    if at and not (r.accept("tip", "base", "top", "point", "center", "centre") and r.accept("of")):
        r.at = mark
        return None
    r.accept("the", "any")
    if r.phrase(phrases("previous row|previous rnd|previous round|last row|last rnd")):
        return None
    if r.phrase(phrases("row below|rnd below|round below")):
        return None
    start = r.at
    inner = read_turning(r, start) or (_next(r, start) if r.accept("next") else None)
    if inner is None and r.at == start:
        is_last = r.low() == "last" or (r.low() == "end" and is_thing_ahead(r))
        inner = _last(r, start) if is_last else _same(r, start) if r.low() == "same" else None
    if inner is None and r.at == start and (r.here.kind == "ordinal" or r.low() in ORDINALS):
        inner = _ordinal(r, start)
    if inner is None and r.at == start:
        inner = _each(r, start) if r.low() in ("each", "every", "ea") else _loose(r, start)
    if inner is None:
        r.at = mark
        return None
    r.accept("below")
    r.phrase(phrases("at beginning|at beg|at beginning of rnd|at beg of rnd"))
    return inner


def _part_of(r: Reading, mark: int) -> Into | None:
    """`center of shell`, `center st of next loop`, `center dc of 5 dc group`, `top of ch-3`, `center loop`."""
    part = r.low()
    r.at += 1
    thing = read_thing(r) if part in ("center", "centre", "middle", "top") and r.low() != "of" else None
    of = _of(r)
    if of is None and thing is None:
        r.at = mark
        return None
    if of is not None and of.things == (Thing("corner"),) and (thing is None or not is_space(thing)):
        return of  # `center st of each corner`: what makes it a corner
    if part == "top" and of is not None and of.which == "last" and of.number is None and of.of is None:
        return Into("same", of.things, place=r.place(mark))  # `in top of last tr`: the one just made
    if part in ("top", "base", "tip", "side"):
        return top_of(r, mark, of) if of is not None and (part == "top" or has_tip(part, of)) else None
    return Into("of", (thing,) if thing else (), of=of, place=r.place(mark))


def _ordinal(r: Reading, mark: int) -> Into | None:
    """`2nd ch from hook`, `first st`, `3rd dc of next fan`, `3rd ch of ch-4`, `3rd and 4th ch from hook`."""
    nth = r.ordinal()
    if nth is None:
        return None
    more = 1
    while r.low() == "and" and (r.peek().kind == "ordinal" or r.low(1) == "second"):
        r.at += 2
        more += 1
    number = number_of_places(r)
    if r.low() in ("skipped", "unworked", "held"):
        return read_skipped(r, mark, "first" if nth.values == (1,) else "next", number, None)
    things = read_one_thing(r)
    if not things and number is None and r.low() == "of":
        things = (Thing("ch"),)  # `3rd of 3 ch`
        of = _of(r)
        return _numbered(r, mark, nth, None, things, of) if of is not None and is_chain(of) else None
    if not things and number is None:
        return None
    if r.phrase(phrases("from hook|from the hook|from your hook|away from hook")):
        span = r.whole(more, r.tokens[mark].start, r.here.start) if more > 1 else None
        return Into("from hook", (Thing("ch"),), span, nth, place=r.place(mark))
    of = _of(r)
    if more > 1 and nth.values == (1,):
        number = number or r.whole(more, r.tokens[mark].start, r.here.start)  # `in first and second sts`
    return _numbered(r, mark, nth, number, things, of)


def _numbered(
    r: Reading, mark: int, nth: Number, number: Number | None, things: tuple[Thing, ...], of: Into | None
) -> Into | None:
    if of is not None and (of.which == "tch" or is_chain(of)) and things and things[0].name in ("ch", "st"):
        return Into("tch", nth=nth, place=r.place(mark))
    if of is not None:
        return Into("of", things, unless_one(number), nth, of, place=r.place(mark))
    if nth.values == (1,):
        return Into("first", things or (Thing("st"),), unless_one(number), place=r.place(mark))
    return Into("of", things, unless_one(number), nth, place=r.place(mark))


def _between(r: Reading, mark: int) -> Into | None:
    """`between next 2 dc`, `between shells`, `between 2nd and 3rd dc`."""
    r.accept("the")
    which = "first" if r.low() == "first" else "next"
    if r.here.low == "1st" and r.peek().kind == "number":
        r.at += 1
        which = "first"
    elif r.here.kind == "ordinal" or (which == "first" and r.low(1) == "and"):
        nth = r.ordinal()
        if not r.accept("and") or r.ordinal() is None:
            return None
        things = read_things(r)
        of = _of(r)
        return Into("of", (_gap(things),), None, nth, of, place=r.place(mark)) if things else None
    r.accept("next", "first", "last", "each", "these", "every")
    r.number()
    things = read_things(r)
    if not things:
        return None
    of = _of(r)
    return Into(which, (_gap(things),), of=of, loosely=True, place=r.place(mark))  # type: ignore[arg-type]


def _gap(things: tuple[Thing, ...]) -> Thing:
    """The place between two of these."""
    return Thing("gap", of=things[0].name if things[0].name != "st" else None)


def _loose(r: Reading, mark: int) -> Into | None:
    """A place without "next": `in sp`, `in shell`, `over 3 sts`, `along edge of ch-2`, `in sp between 2 dc`."""
    if r.accept_all("edge", "of") or r.accept_all("top", "of"):
        r.accept("the")
    number = number_of_places(r)
    if number is not None and r.low() in ("skipped", "unworked", "held"):
        return read_skipped(r, mark, "next", number, None)
    things = read_one_thing(r)
    counted = unless_one(number) is not None and r.tokens[r.at - 2].low in ("in", "into") and r.at_break()
    if not things and number is not None and counted:
        things = (Thing("st"),)  # `hdc in 12, ch 8`
    if not things:
        return None
    if things[0].name in ("sp", "place") and r.low() in ("between", "before", "after"):
        r.at += 1
        return _between(r, mark)
    if things[0].name in ("ring", "tch"):
        return Into("ring" if things[0].name == "ring" else "tch", place=r.place(mark))
    of = _of(r)
    of = of or _in_gap(r)
    things = counting_spaces(r, things)
    if r.low() == "where":
        pass_as_phrase(r)
    if number is None and of is None and r.phrase(JUST_MADE):
        return Into("same", things, place=r.place(mark))
    several = number is None and of is None and r.tokens[r.at - 1].low in PLURALS  # `2 sc in ch-1 sps around`
    if several and (bound := read_bound(r)) is not None:
        return Into("each", things, bound=bound, place=r.place(mark))
    if number is None and things[0].name == "sp" and of is not None and of.which == "each" and of.number is None:
        return Into("each", things, bound=of.bound, place=r.place(mark))  # `in ch-1 sp of each V-st around`
    return Into("next", things, unless_one(number), of=of, loosely=True, place=r.place(mark))
