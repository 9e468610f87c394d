"""How far a run goes: `around`, `across`, `to end`, `to last 2 sts`, `to next ch-1 sp`, `to 1 st before marker`."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from gradegen.design.rows import Bound, Thing
from gradegen.read.notation.places.things import STITCHES, read_thing
from gradegen.read.notation.words.reading import Reading, plain, unless_one
from gradegen.read.notation.words.word_lists import phrases, words

_TO_END = phrases(
    "all the way round the band|all the way around the band|all the way round|all the way around|"
    "all around|all round|all across|around entire round|around ring|around edge|around band|around row|"
    "around rnd|around round|around|round|across row|across rnd|across round|across top|across the row|"
    "across entire row|across ch|across chain|around ch|across|along the row|to end of row|to end of rnd|"
    "to end of round|to end of ch|to end of chain|to the end of the row|to the end of the rnd|"
    "to the end of the round|to the end of row|to the end of rnd|to the end|to end|till end of row|"
    "till end of rnd|till end|until end of row|until end|to join|to joining|to beg of rnd|"
    "to beginning of rnd|to beg|to beginning|to start|back to start|back to beg|"
    "along the underside back to start|along the underside|along underside|along the other side of ch|"
    "along the other side of chain|along the other side|along other side of ch|along other side of chain|"
    "along other side|along opposite side of ch|along opposite side|along opposite edge|"
    "along the opposite edge|on the other side of ch|on other side of ch|on opposite side of ch|"
    "on opposite side|on other side|along top"
)

_LAST_SIDE = phrases(
    "along second side|along the second side|along remaining side|along the remaining side|along last side|"
    "along the last side|along second half|along the second half|down second side|down the second side|"
    "down other side|down the other side|up second side|up the second side|along rest of row|along the rest of the row"
)
_STARTS = frozenset(_TO_END) | frozenset(_LAST_SIDE) | {"along", "to", "until", "up"}
_COMING_TO = phrases("you reach|reaching|you come to|you get to|you are at|there are only|there are|there is|only")
_AFTER = phrases("back to start|to end|to start|around|across|to end of rnd|to join")


def read_bound(r: Reading) -> Bound | None:
    """The limit written here; None when there is none."""
    if r.low() not in _STARTS:
        return None
    mark = r.at
    if r.phrase(_LAST_SIDE):
        behind = [token.low for token in r.tokens[r.at :]]
        if {"corner", "corners"} & set(behind) or ("third", "side") in pairwise(behind):
            r.at = mark  # one side of several
            return None
        return Bound("end")
    if r.accept("along"):
        if r.at_break():
            return Bound("end")  # `1 sc in every ch along`
        r.at = mark
    if r.low() in ("across", "around") and r.low(1) in ("to", "until"):
        r.at += 1
        further = read_bound(r)
        if further is not None:
            return further
        r.at = mark
    if r.phrase(_TO_END):
        if r.tokens[r.at - 1].low in ("row", "rnd", "round"):
            r.number()  # `to end of Row 3`
        if r.low() in ("to", "until") and r.low(1) in ("within", "last"):  # `across row to within last 2 sts`
            further = read_bound(r)
            if further is not None:
                return further
        while r.phrase(_AFTER):
            pass
        _pass_part(r)
        return _until_made(r) or Bound("end")
    if (made := _until_made(r)) is not None:
        return made
    if r.accept("up"):
        pass
    if not r.accept("to", "until"):
        r.at = mark
        return None
    r.accept("within")
    r.phrase(_COMING_TO)
    r.accept("the")
    bound = _last(r) or _before_marker(r) or _before_centre(r) or _before_thing(r) or _thing(r)
    if bound is None:
        r.at = mark
    return bound


def _pass_part(r: Reading) -> None:
    """Passes the part that is gone around: `sc in each st around neck edge`."""
    mark = r.at
    if r.tokens[mark - 1].low not in ("around", "across", "along") or not _in_each(r):
        return
    r.accept("the", "entire", "whole")
    start = r.at
    while r.low() in _PARTS:
        r.at += 1
    if r.at == start or not r.at_break():
        r.at = mark


def _in_each(r: Reading) -> bool:
    """True where every place is worked into, by this clause: `sc around neck edge` says nothing of places."""
    for token in reversed(r.tokens[max(0, r.at - 12) : r.at]):
        if token.kind in (",", ";", ".", ":", "star", "open"):
            return False
        if token.low in ("each", "every", "all"):
            return True
    return False


_PARTS = words(
    "armhole armholes neck neckline edge opening thumb hem sleeve body hat brim cuff piece blanket square front back "
    "yoke bottom top hole foot leg heel ankle wrist hand toe bag basket cowl outer inner"
)


def count_is_behind_end(r: Reading) -> bool:
    """True for `hdc in each ch across 33 hdc`, a count with no sign before it: the row has come to its end."""
    behind = r.tokens[r.at - 1].low in ("across", "around", "round", "end")
    return behind and r.here.kind in ("number", "count") and r.tokens[r.next_break(r.at)].kind in ("end", ".", ",", ";")


def _until_made(r: Reading) -> Bound | None:
    """`until 12 sps are made`; `until there are 12 sps`."""
    mark = r.at
    if r.accept("until", "till"):
        there = r.accept_all("there", "are")
        number = r.number()
        thing = read_thing(r) if number is not None else None
        if thing is not None and (r.phrase(_MADE) or (there and r.at_break())):
            return Bound("made", number, thing)
    r.at = mark
    return None


_MADE = phrases(
    "are made|are completed|are worked|have been made|have been completed|have been worked|made|completed|worked"
)


def _last(r: Reading) -> Bound | None:
    mark = r.at
    if (left := _nth_from_end(r)) is not None:
        return left
    has_last = r.accept("last", "final")
    if has_last and r.here.kind in (",", ";"):
        return Bound("last", None, Thing("st"))  # `hdc in each hdc to last, 2 hdc in last`
    number = r.number()
    r.accept("rem", "remaining")
    thing = read_thing(r)
    if not has_last:
        if number is None or not r.phrase(_LEFT):
            r.at = mark
            return None
    elif number is None and thing is None:
        r.at = mark
        return None
    r.phrase(phrases("of row|of rnd|of round|of the row|of the rnd|of the round|of ch|of chain|rem|remain"))
    return Bound("last", unless_one(number), thing or Thing("st"))


_LEFT = phrases(
    "rem|remain|remains|are left|is left|left|are remaining|is remaining|remaining|are unworked|is unworked|"
    "from end|of end|of the end|from the end|before end|before the end"
)


def _nth_from_end(r: Reading) -> Bound | None:
    """`to 2nd loop from end`: whether that one is worked too shows in what the words behind work last, else None."""
    mark = r.at
    nth = r.ordinal() if r.here.kind == "ordinal" else None
    thing = read_thing(r) if nth is not None else None
    if thing is None or nth is None or not r.phrase(phrases("from end|from the end|from end of row|from end of rnd")):
        r.at = mark
        return None
    place, left = plain(nth), _worked_last(r)
    if place is None or left is None or not 1 <= left <= place <= left + 1:
        r.at = mark
        return None
    return Bound("last", None if left == 1 else r.whole(left, r.tokens[mark].start, r.here.start), thing)


def _worked_last(r: Reading) -> int | None:
    """How many places the words up to the full stop work at the end: 1 for `in last loop`, 2 for `in last 2 loops`."""
    for i in range(r.at, len(r.tokens) - 1):
        token, after = r.tokens[i], r.tokens[i + 1]
        if token.kind in (".", "end"):
            return None
        if token.low == "last":
            value = after.value if after.kind == "number" else 1
            return value if isinstance(value, int) else None
    return None


def _before_marker(r: Reading) -> Bound | None:
    """`1 st before marker`, `marker`, `marked st`."""
    mark = r.at
    number = r.number()
    if number is not None:
        thing = read_thing(r)
        if thing is None or not r.accept("before"):
            r.at = mark
            return None
    r.accept("the", "next", "first", "each")
    r.accept("side", "next", "stitch", "st", "corner", "second", "last", "marked")
    if r.low() in ("marker", "markers", "m", "pm", "mark"):
        r.at += 1
        return Bound("before marker", number)
    if r.tokens[r.at - 1].low == "marked" and r.low() in STITCHES:
        r.at += 1
        return Bound("before marker", number)
    r.at = mark
    return None


def _before_centre(r: Reading) -> Bound | None:
    """`1 st before centre st`, `center stitch`."""
    mark = r.at
    number = r.number()
    if number is None or (read_thing(r) is not None and r.accept("before")):
        r.accept("the")
        if r.accept("center", "centre", "middle") and r.accept("st", "stitch") and r.low() != "of":
            return Bound("before centre", number)
    r.at = mark
    return None


def _before_thing(r: Reading) -> Bound | None:
    """`1 st before ch-2 sp`, `2 sts before the next corner`."""
    mark = r.at
    number = r.number()
    named = read_thing(r) if number is not None else None
    if named == Thing("st") and r.accept("before"):
        r.accept("the")
        if (bound := _thing(r)) is not None:
            return replace(bound, number=number)
    r.at = mark
    return None


def _centre_named_behind(r: Reading) -> Bound | None:
    """`V-st in each ch-1 sp to centre, (V-st, ch 2, V-st) in ch-2 sp`: the space that what follows goes into."""
    mark = r.at
    if r.tokens[mark - 1].low not in ("center", "centre", "middle"):
        return None
    while r.low() not in ("in", "into") and r.here.kind not in (";", ".", "end"):
        r.at += 1
    r.at += r.here.kind == "word"
    r.accept("the", "center", "centre", "next", "middle")
    thing = read_thing(r)
    r.at = mark
    return Bound("thing", thing=thing) if thing is not None and thing.name == "sp" else None


def _thing(r: Reading) -> Bound | None:
    """`to next ch-1 sp`, `to corner`, `to underarm`, `to centre ch-2 sp`."""
    if r.accept("next", "first", "each", "center", "centre", "middle") and r.here.kind == ",":
        return _centre_named_behind(r)
    if r.low() == "underarm" and r.tokens[r.at + 1].kind not in ("stitch", "chain"):
        r.at += 1
        return Bound("thing", thing=Thing("ch"))
    central = r.tokens[r.at - 1].low in ("center", "centre", "middle")
    thing = read_thing(r)
    if thing is not None and central and r.accept("of"):
        r.accept("the", "next", "each", "first")
        thing = corner if (corner := read_thing(r)) == Thing("corner") else None
    if thing is None:
        return None
    r.stop = thing
    return Bound("thing", thing=thing)
