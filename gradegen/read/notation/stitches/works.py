"""Stitches and where they go: `2 sc in next st`, `sc in each dc and 2 sc in each sp`, `3 sc`, `sc across`."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Chain, Either, Into, Make, Mixed, Number, Repeat, Step, Thing, Times, Work
from gradegen.read.notation.places.behind_work import pass_behind
from gradegen.read.notation.places.bounds import read_bound
from gradegen.read.notation.places.place_words import read_loop, read_rest
from gradegen.read.notation.places.places_named import read_place, read_target
from gradegen.read.notation.places.things import STITCHES, is_space
from gradegen.read.notation.stitches.clusters import cluster_over_several, read_worked_together
from gradegen.read.notation.stitches.every_other import read_every_other
from gradegen.read.notation.stitches.legs import read_legs
from gradegen.read.notation.stitches.makes import (
    Item,
    makes_of,
    own_space,
    read_between,
    read_item,
    read_slashed,
    spaced_out,
    takes_several,
)
from gradegen.read.notation.words.reading import FURTHEST, Reading, is_one, plain
from gradegen.read.notation.words.times import read_multiplier
from gradegen.read.notation.words.word_lists import phrases, words

_ST = (Thing("st"),)


def read_work(r: Reading) -> list[Step] | None:
    """The stitches worked here; None when the words are not a whole step."""
    mark = r.at
    named = _shell_of(r)
    first = read_item(r)
    if first is None or first.make.stitch in ("ch", "sl st", "magic ring") or r.here.kind == "chain":
        r.at = mark
        return None
    slashed = read_slashed(r, first)
    items = slashed or [first]
    if not slashed and (every := read_every_other(r, mark, first)) is not None:
        return [every]
    called = read_name_remark(r) or named
    between = read_between(r)
    loop = r.loop
    pass_behind(r)
    into = read_place(r) or _behind_loop(r) or _from_hook(r)
    if into is None:
        if slashed or between:
            r.at = mark
            return None
        return _bare(r, mark, first, called)
    return _placed(r, mark, items, into if into.loop or not loop else replace(into, loop=loop), between, called)


def _shell_of(r: Reading) -> str:
    """The name in `shell of 5 dc in next st`; "" where the stitches stand alone."""
    mark = r.at
    r.accept("a", "an", "1")
    name = str(r.here.value) if r.here.kind == "stitch" else r.low()
    if name in ("shell", "fan", "group") and r.low(1) == "of" and r.peek(2).kind == "number":
        r.at += 2
        return name
    r.at = mark
    return ""


def _behind_loop(r: Reading) -> Into | None:
    """`sc blo in each st`."""
    mark = r.at
    loop = read_loop(r)
    into = read_place(r) if loop is not None else None
    if into is None:
        r.at = mark
        return None
    return replace(into, loop=into.loop or loop)


def _from_hook(r: Reading) -> Into | None:
    """`sc 2nd ch from hook`, its "in" left out."""
    mark = r.at
    into = read_target(r) if r.here.kind == "ordinal" else None
    if into is None or into.which != "from hook":
        r.at = mark
        return None
    return into


def read_name_remark(r: Reading) -> str:
    """The name in `(shell)`, `(half shell)`: what the text calls the stitches before it; "" without one."""
    mark = r.at
    if r.here.kind != "open":
        return ""
    close = r.partner(r.at)
    if close is None or not 2 <= close - r.at <= 5:
        return ""
    r.at += 1
    r.accept("a", "an", "another", "the", "makes", "made", "forms")
    start = r.at
    words = r.tokens[start:close]
    if len(words) > 1 and words[-1].low == "made":
        words = words[:-1]  # `(cluster made)`
    if len(words) == 3 and [t.kind for t in words[:2]] == ["number", "stitch"]:
        words = words[-1:]  # `(2 dc shell)`
    is_name = words and all(t.kind in ("word", "stitch") or (t.kind == "number" and t.value == 1) for t in words)
    names_group = is_name and any(t.kind == "stitch" and t.value not in ("ch", "sl st") for t in words)
    names_group = names_group or (is_name and words[-1].low in _GROUPS)
    between = r.tokens[close + 1].low in ("in", "into")  # `2 dc, ch 2, 2 dc (crown) in next st`
    names_group = names_group or (is_name and between and len(words) == 1)
    after = r.tokens[close + 1]
    if (after.kind in ("number", "count", "x") and r.tokens[close + 2].kind != "stitch") or after.low in (
        "times",
        "twice",
        "once",
        "rep",
        "repeat",
        "around",
        "across",
    ):
        names_group = False
    names_group = names_group and words[-1].value not in ("inc", "dec")
    if not names_group or any(t.low in ("made", "counts", "only", "worked", "row", "rnd", "in") for t in words):
        r.at = mark
        return ""
    name = " ".join(str(t.value) if t.kind == "stitch" else t.low for t in words if t.kind != "number")
    r.at = close + 1
    return name


_GROUPS = words(
    "sp space mesh loop block bl shell picot group scallop petal point st fan corner dec inc spaces blocks leaf"
)


# ---- without a place ------------------------------------------------------------


def _bare(r: Reading, mark: int, item: Item, called: str) -> list[Step] | None:
    """`3 sc`, `sc 5`, `sc across`, `sc to last 2 sts`, `25 sc BLO`, `inc x 6`, `sc next 2 sts tog`."""
    if item.counted == "" and (together := _next_together(r, mark, item.make)) is not None:
        return [together]
    make, number = Make(item.make.stitch, place=item.make.place), item.make.times
    if item.counted == "" and r.here.kind in ("number", "count") and r.tokens[r.at + 1].low in STITCHES:
        return None
    if (
        item.counted == ""
        and r.low() in ("the", "rem", "remaining", "all")
        and (rest := read_rest(r, r.at)) is not None
    ):
        return [Work((make,), rest, place=r.place(mark))]  # `sc the remaining 16 sts`
    if item.counted == "after" and r.low() in STITCHES:
        r.at += 1
    loop = _loop_behind(r) or r.loop
    bound = read_bound(r)
    runs_on = number is not None and bound is not None
    if number is not None:
        bound = None  # `158 sc across`
    things = own_space(r, make) or _ST
    if bound is not None:
        into = Into("each", things, bound=bound, loop=loop, place=r.place(mark))
        return [Work((make,), into, bare=True, called=called, place=r.place(mark))]
    if number is not None and takes_several(r, make.stitch):
        one = Work((make,), Into("next", _ST, loop=loop, place=item.make.place), bare=True, place=item.make.place)
        return [Repeat((one,), Times("in all", number), place=r.place(mark))]
    if item.tight and item.counted and _may_be_in_one(number):
        r.uses_tight = True
        if r.tight_in_one:
            make = replace(make, times=number)
            number = None
    into = Into("next", things, number, loop=loop, place=r.place(mark))
    work = Work((make,), into, bare=True, called=called, place=r.place(mark))
    if runs_on:
        r.ran_on.append(work.place)
    return [_multiplied(r, mark, work)]


def _may_be_in_one(number: Number | None) -> bool:
    value = plain(number)
    return value is not None and 2 <= value <= 5


def _loop_behind(r: Reading):  # type: ignore[no-untyped-def]
    mark = r.at
    r.accept("in")
    loop = read_loop(r)
    if loop is None:
        r.at = mark
    return loop


def _next_together(r: Reading, mark: int, make: Make) -> Work | None:
    """`sc next 2 sts tog`, `sc 2 sts together`."""
    start = r.at
    r.accept("the")
    r.accept("next")
    number = r.number()
    if number is None or plain(number) is None:
        r.at = start
        return None
    target_mark = r.at
    if not (r.low() in STITCHES or r.here.kind == "stitch"):
        r.at = start
        return None
    thing = Thing("st") if r.low() in STITCHES else Thing(str(r.here.value))
    r.at += 1
    if not r.phrase(phrases("tog|together")):
        r.at = start
        return None
    into = Into("next", (thing,), number, place=r.place(target_mark))
    return Work((Make(f"{make.stitch}{plain(number)}tog", place=make.place),), into, place=r.place(mark))


def _multiplied(r: Reading, mark: int, work: Work) -> Step:
    """The work `x 6`, `6 times`, `twice`."""
    number = read_multiplier(r)
    if number is None:
        return work
    return Repeat((work,), Times("in all", number), place=r.place(mark))


# ---- with a place ------------------------------------------------------------


def _placed(
    r: Reading, mark: int, items: list[Item], into: Into, between: Make | None, called: str
) -> list[Step] | None:
    between = between or read_between(r)
    makes = makes_of(items)
    if into.which == "next" and into.number is not None and len(items) == 1 and takes_several(r, makes[0].stitch):
        bound = read_bound(r)  # `X-st over next 2 sts across`
        if bound is not None:
            into = replace(into, which="each", number=None, bound=bound)
    if len(items) == 1:
        makes, into = _one_each(items[0], makes, into)
        if _is_one_over_several(r, mark, items[0], into):
            makes = (Make(f"{makes[0].stitch}{plain(into.number)}tog", place=makes[0].place),)
        makes, into = cluster_over_several(r, mark, makes, into)
    if between is not None:
        spaced = _with_between(r, mark, makes, into, between, called)
        if spaced is None:
            r.at = mark
        return spaced
    called = called or read_name_remark(r)
    work = Work(makes, into, called=called, place=r.place(mark))
    if len(items) == 1 and _may_be_one_each(items[0], into) and r.at_break():
        return [_either_each(work)]
    together = read_worked_together(r, work, mark)
    if together is not None:
        return [together]
    if (over := read_legs(r, work, mark)) is not None:
        return over
    more = _more_places(r, work)
    if more:
        return [work, *more] if isinstance(more, list) else [more]
    return [_multiplied(r, mark, work)]


def _may_be_one_each(item: Item, into: Into) -> bool:
    """True for `3 dc in next 3 sts`: three in each, or one in each."""
    count = plain(into.number)
    same = count is not None and item.make.times is not None and plain(item.make.times) == count
    return same and item.counted == "before" and into.which in ("next", "last", "first")


def _either_each(work: Work) -> Either:
    """Both readings; two in each of two is likely meant, three in each of three is not."""
    one_each = replace(work, makes=tuple(replace(make, times=None) for make in work.makes))
    readings = [(one_each, "one in each"), (work, "so many in each")]
    if plain(work.into.number) == 2:
        readings.reverse()
    return Either(tuple((step,) for step, _ in readings), tuple(why for _, why in readings), place=work.place)


def _is_one_over_several(r: Reading, mark: int, item: Item, into: Into) -> bool:
    """`1 sc over next 2 sts` is a decrease."""
    count = plain(into.number)
    said = any(token.low == "over" for token in r.tokens[mark : r.at])
    one = item.counted == "before" and item.make.times is None
    return said and one and into.which == "next" and count is not None and 2 <= count <= 9


def _one_each(item: Item, makes: tuple[Make, ...], into: Into) -> tuple[tuple[Make, ...], Into]:
    """`dc 3 in last 3 st` is one in each."""
    number = into.number
    along = into.things == (Thing("ch"),) and into.which == "next" and into.loosely
    if along and number is None and item.make.times is not None:  # `work 124 sc on ch`
        return (Make(item.make.stitch, place=item.make.place),), replace(into, number=item.make.times, loosely=False)
    if item.counted == "after" and number is not None and number == item.make.times and not is_one(number):
        return (Make(item.make.stitch, place=item.make.place),), into
    return makes, into


def _with_between(
    r: Reading, mark: int, makes: tuple[Make, ...], into: Into, between: Make, called: str
) -> list[Step] | None:
    """`5 tr with ch 1 between each in next sp`; over several places, one work and a repeat of chain and work."""
    if into.which == "each" or into.number is not None:
        if len(makes) != 1 or makes[0].times is not None or into.which not in ("each", "next"):
            return None
        one = Work(makes, Into("next", into.things, loop=into.loop, place=into.place), place=makes[0].place)
        chain = Chain(between.times or r.whole(1, *r.span(mark)), place=between.place)
        if into.number is None:
            from gradegen.design.rows import Bound

            times = Times("bound", bound=into.bound or Bound("end"))
        else:
            count = plain(into.number)
            if count is None or count < 2 or between.stitch != "ch":
                return None
            times = Times("in all", r.whole(count - 1, *r.span(mark)))
        return [one, Repeat((chain, one), times, place=r.place(mark))]
    spaced = spaced_out(makes, between)
    return None if spaced is None else [Work(spaced, into, called=called, place=r.place(mark))]


def _more_places(r: Reading, work: Work) -> Mixed | list[Step] | None:
    """`... and in next dc`, `... and each st across`, `... and 2 sc in each loop around`."""
    if r.within >= FURTHEST:
        return None
    r.within += 1
    more = _and_places(r, work)
    r.within -= 1
    return more


def _and_places(r: Reading, work: Work) -> Mixed | list[Step] | None:
    mark = r.at
    if r.here.kind == "," and r.low(1) == "and":
        r.at += 1
    if not r.accept("and"):
        r.at = mark
        return None
    r.accept("then")
    start = r.at
    place = _along_chain(r, work) or read_place(r)
    named = r.low() in ("next", "each", "every", "last", "first", "same") or r.here.kind == "ordinal"
    if place is None and named:
        place = read_target(r)
    if place is not None and r.at_break():
        made = Work(work.makes, replace(place, loop=place.loop or work.into.loop), place=r.place(start))
        more = _more_places(r, made)
        return [made, *more] if isinstance(more, list) else [made]
    r.at = start
    if work.into.which == "each" and work.into.number is None and work.into.bound is None:
        mixed = _mixed(r, work)
        if mixed is not None:
            return mixed
    r.at = mark
    return None


def _along_chain(r: Reading, work: Work) -> Into | None:
    """`sc in 2nd ch from hook and across`: in each of the chains behind it."""
    bound = read_bound(r) if work.into.which == "from hook" else None
    return Into("each", (Thing("ch"),), bound=bound, place=r.place(r.at - 1)) if bound is not None else None


def _is_the_space(into: Into) -> bool:
    """`and 4 hdc in ch-4 sp` behind `hdc in each hdc`."""
    return (
        into.which == "next" and into.loosely and into.number is None and into.of is None and is_space(into.things[0])
    )


def _mixed(r: Reading, work: Work) -> Mixed | None:
    item = read_item(r)
    into = read_place(r) if item is not None else None
    if item is None or into is None or not (into.which == "each" or _is_the_space(into)):
        return None
    if is_space(work.into.things[0]) == is_space(into.things[0]) and work.into.things == into.things:
        return None
    second = Work((item.make,), replace(into, which="each", bound=None, loosely=False), place=item.make.place)
    return Mixed((work, second), into.bound or read_bound(r), place=r.place(0))
