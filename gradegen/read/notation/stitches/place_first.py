"""A place before what goes into it: `in next ch-2 sp make 2 dc, ch 2 and 2 dc`, `into ring work ch 4, dc, ch 2, dc`."""

from __future__ import annotations

from gradegen.design.rows import Aside, Chain, Into, Step, Work
from gradegen.read.notation.places.bounds import count_is_behind_end
from gradegen.read.notation.places.places_named import read_place
from gradegen.read.notation.stitches.makes import (
    MOST_SPELLED_OUT,
    Item,
    makes_of,
    read_between,
    read_group,
    read_item,
    read_listed,
    spaced_out,
)
from gradegen.read.notation.stitches.works import read_name_remark
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.read.notation.words.times import read_multiplier
from gradegen.read.notation.words.word_lists import phrases, words

_VERBS = words("make work do put")


def read_place_first(r: Reading) -> list[Step] | None:
    """`in next ch-2 sp make 2 dc, ch 2 and 2 dc`; else None."""
    mark = r.at
    into = read_place(r)
    if into is None or (into.which == "each" and count_is_behind_end(r)):
        r.at = mark
        return None
    if into.which == "ring" and (ring := _ring_made(r, mark)) is not None:
        return [ring]
    r.accept(",", ":")
    if r.low() in _VERBS:
        r.at += 1
    if into.which == "ring" and (all_in_ring := _in_ring(r, mark, into)) is not None:
        return all_in_ring
    everything = into.which == "each"
    items = _bracketed(r, everything) if r.here.kind == "open" else read_listed(r, everything=everything)
    if not items:
        r.at = mark
        return None
    called = read_name_remark(r)
    between = read_between(r)
    makes = makes_of(items)
    if between is not None:
        spaced = spaced_out(makes, between)
        if spaced is None:
            r.at = mark
            return None
        makes = spaced
    r.phrase(phrases("all in same place|in same place|in it"))
    return [Work(makes, into, called=called, place=r.place(mark))]


def _ring_made(r: Reading, mark: int) -> Aside | None:
    """`In a magic ring,` where a chain begins what follows: the ring is made, and what names no place goes there."""
    behind = r.at
    if mark > 0 or r.tokens[behind - 1].value != "magic ring":
        return None
    while r.here.kind in (",", ":") or r.low() in _VERBS:
        r.at += 1
    begins = r.here.value == "ch" and r.here.kind == "stitch"
    r.at = behind
    if r.low() in _VERBS and r.peek().kind == ":":
        r.at += 1
    return Aside(r.text(mark), place=r.place(mark)) if begins else None


def _in_ring(r: Reading, mark: int, into: Into) -> list[Step] | None:
    """`into ring work ch 4, dc, ch 2, dc`: the starting chain, and all the rest in the ring."""
    start = r.at
    items: list[Item] = []
    end = start
    while (item := read_item(r)) is not None and item.make.stitch != "sl st" and r.at_break():
        items.append(item)
        end = r.at
        if not (r.accept(",") or r.accept("and")):
            break
        r.accept("and")
    if len(items) < 2 or items[0].make.stitch != "ch":
        r.at = start
        return None
    r.at = end
    chain = Chain(items[0].make.times or r.whole(1, *r.span(start)), place=items[0].make.place)
    return [chain, Work(makes_of(items[1:]), into, place=r.place(mark))]


def _bracketed(r: Reading, everything: bool) -> list[Item] | None:
    """`(sc, hdc, dc)`, `(cluster, ch 5) 4 times and cluster`; in each place, `(3 sc, picot) twice, 3 sc`."""
    close = r.partner(r.at)
    if close is None:
        return None
    r.at += 1
    items = read_group(r, close)
    r.at = close + 1
    times = plain(read_multiplier(r))
    if items is None or (times is not None and not 1 <= times <= MOST_SPELLED_OUT):
        return None
    items = items * (times or 1)
    mark = r.at
    goes_on = times is not None and (r.accept("and") or (everything and r.accept(",")))
    if goes_on and (last := read_item(r)) is not None and r.at_break():
        return [*items, last]
    r.at = mark
    return items
