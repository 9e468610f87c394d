"""Stitches worked together in words: `keeping last loop of each on hook, yarn over and through all loops`."""

from __future__ import annotations

import re
from dataclasses import replace

from gradegen.design.rows import Into, Make, Thing, Work
from gradegen.read.notation.places.places_named import read_place
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.stitches.makes import read_item
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.read.notation.words.word_lists import phrases, words
from gradegen.trade.stitches import stitches

_ST = (Thing("st"),)
_HOLD = words("keeping holding leaving retaining hold keep leave")
_THROUGH = words(
    "thread yarn over and pull draw work off through all loops loop lps on hook at one time together the "
    "yo in once remaining both 3 4 5 6 2 three four five to complete cluster"
)


def read_holding(r: Reading) -> bool:
    """Passes `keeping last loop of each dc on hook`; else False."""
    mark = r.at
    if r.low() not in _HOLD:
        return False
    r.at += 1
    r.accept("back")
    if r.accept("on"):
        r.accept("hook")
    r.accept("the")
    if not (r.accept("last") and r.accept("loop", "lp")):
        r.at = mark
        return False
    r.accept("of")
    r.accept("each", "every")
    if r.here.kind == "stitch" or r.low() in STITCHES:
        r.at += 1
    r.accept("on") and r.accept("hook")
    return True


def read_through_all(r: Reading) -> bool:
    """Passes `, thread over and through all loops`; else False."""
    mark = r.at
    r.accept(",", ";")
    r.accept("and", "then")
    if r.low() not in ("thread", "yarn", "yo", "draw", "pull", "work"):
        r.at = mark
        return False
    said_loops = False
    for _ in range(24):
        if r.here.kind not in ("word", "number") or r.here.low not in _THROUGH:
            break
        if r.low() in ("loops", "loop", "lps"):
            said_loops = True
        r.at += 1
    if not said_loops:
        r.at = mark
    return said_loops


def read_worked_together(r: Reading, work: Work, mark: int) -> Work | None:
    """The work as one cluster or one decrease, when the words after it hold its loops back; None otherwise."""
    start = r.at
    r.accept(",")
    if not read_holding(r):
        r.at = start
        return None
    if not read_through_all(r):
        r.at = start
        return None
    joined = _together(work)
    if joined is None:
        r.at = start
        return None
    return replace(joined, place=r.place(mark))


def read_held_first(r: Reading) -> Work | None:
    """`holding back last loop of each dc, 3 dc in next st, yarn over and through all loops`; else None."""
    mark = r.at
    if not read_holding(r):
        return None
    r.accept(",")
    r.accept("make", "work")
    item = read_item(r)
    into = read_place(r) if item else None
    if item is None or into is None or not read_through_all(r):
        r.at = mark
        return None
    joined = _together(Work((item.make,), into, place=r.place(mark)))
    if joined is None:
        r.at = mark
        return None
    return replace(joined, place=r.place(mark))


def _together(work: Work) -> Work | None:
    if len(work.makes) != 1:
        return None
    make, into = work.makes[0], work.into
    held, places = plain(make.times) if make.times else 1, plain(into.number) if into.number else 1
    if held is None or places is None:
        return None
    if held == 1 and places > 1:
        name = f"{make.stitch}{places}tog"
        return replace(work, makes=(Make(name, place=make.place),), into=replace(into, which="next"))
    if held > 1 and places == 1:
        name = f"{held}-{make.stitch} cluster"
        return replace(work, makes=(Make(name if name in stitches() else "cluster", place=make.place),))
    return None


def read_off_as_one(r: Reading) -> Work | None:
    """`work off next 2 sc as 1 sc`, `work next 2 sts together`; else None."""
    mark = r.at
    if not r.accept("work", "working", "crochet"):
        return None
    r.accept("off")
    r.accept("the")
    r.accept("next", "last", "first")
    which = r.tokens[r.at - 1].low
    number = r.number()
    count = plain(number)
    token = r.here
    if count is None or count < 2 or not (token.kind == "stitch" or token.low in STITCHES):
        r.at = mark
        return None
    r.at += 1
    if r.phrase(phrases("as 1|as one")):
        made = r.here
        r.at += made.kind == "stitch" or made.low in STITCHES
        stitch = made.value if made.kind == "stitch" else token.value
    elif r.phrase(phrases("tog|together")):
        stitch = token.value
    else:
        r.at = mark
        return None
    things = (Thing(str(token.value) if token.kind == "stitch" else "st"),)
    name = f"{stitch}{count}tog" if stitch else "dec"
    kind = which if which in ("last", "first") else "next"
    into = Into(kind, things, number, place=r.place(mark))  # type: ignore[arg-type]
    return Work((Make(name, place=r.place(mark)),), into, place=r.place(mark))


def read_decrease_over(r: Reading) -> Work | None:
    """`decrease 1 sc over next 2 dc`: two as one; None where the numbers do not say so."""
    mark = r.at
    if r.here.low not in ("decrease", "dec", "decreasing"):
        return None
    r.at += 1
    number = r.number()
    less = plain(number) if number is not None else 1 if r.accept("a") else None
    token = r.here
    if less is None or not (token.kind == "stitch" or token.low in STITCHES):
        r.at = mark
        return None
    r.at += 1
    into = read_place(r) if r.low() in ("over", "in", "on") else None
    places = plain(into.number) if into is not None and into.number is not None else None
    if into is None or into.which not in ("next", "last", "first") or places != less + 1:
        r.at = mark
        return None
    name = f"{token.value}{places}tog" if token.kind == "stitch" else "dec"
    if name not in stitches():
        r.at = mark
        return None
    return Work((Make(name, place=r.place(mark)),), into, place=r.place(mark))


_CLUSTER = re.compile(r"(\d+)-(\S+) cluster$")
_MOST = 9  # stitches in one cluster


def cluster_over_several(r: Reading, mark: int, makes: tuple[Make, ...], into: Into) -> tuple[tuple[Make, ...], Into]:
    """`2 tr cluster over next 2 tr`, `cluster over next 5 dc`: one stitch over all of them."""
    said = any(token.low in ("over", "across") for token in r.tokens[mark : r.at])
    if not said or makes[0].times is not None:
        return makes, into
    if makes[0].stitch == "cluster":
        return _unnamed_over_several(r, makes, into)
    found = _CLUSTER.match(makes[0].stitch)
    together = f"{found[2]}{found[1]}tog" if found else ""
    over_group = any(thing.name == "group" for thing in into.things)
    if found is None or together not in stitches() or not (over_group or plain(into.number) == int(found[1])):
        return makes, into
    if over_group:
        into = replace(into, things=_ST, number=r.whole(int(found[1]), *r.span(mark)))
    return (replace(makes[0], stitch=together),), into


def _unnamed_over_several(r: Reading, makes: tuple[Make, ...], into: Into) -> tuple[tuple[Make, ...], Into]:
    """A cluster that no note explains is of the stitches it goes over."""
    count, of = plain(into.number), [thing.name for thing in into.things]
    together = f"{of[0]}{count}tog" if len(of) == 1 else ""
    plainly = into.which == "next" and count is not None and 2 <= count <= _MOST
    if not plainly or together not in stitches() or "cluster" in r.names.definitions:
        return makes, into
    return (replace(makes[0], stitch=together),), into
