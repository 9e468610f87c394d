"""What goes into one place: `2 dc`, `sc 5`, `(2 dc, ch 2, 2 dc)`, `dc2/ch2/dc2`, `dc, ch 4 and dc`."""

from __future__ import annotations

from typing import NamedTuple

from gradegen.design.rows import Definition, Make, Number, Thing
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading, plain, unless_one
from gradegen.read.notation.words.word_lists import phrases
from gradegen.trade.stitches import stitches

MOST_SPELLED_OUT = 40  # stitches of `7 tr with ch 1 between each`
_GROUPED = frozenset({"cluster", "shell", "popcorn", "puff", "bobble", "fan", "V-st"})
_DRAWN = frozenset({"cluster", "popcorn", "puff", "bobble"})
_STRETCHED = frozenset({"long", "elongated", "tall", "dropped", "spike", "spiked"})
_ARTICLES = frozenset({"a", "an"})


class Item(NamedTuple):
    """One make and how it was counted: "before" (`2 sc`), "after" (`sc 2`), "" (uncounted); `tight`: without blank."""

    make: Make
    counted: str
    tight: bool


def read_item(r: Reading) -> Item | None:
    """One stitch with its count here; None when no stitch stands here."""
    mark = r.at
    if r.low() in _ARTICLES and r.peek().kind == "stitch":
        r.at += 1
    if (
        r.low() in ("beg", "beginning", "first", "starting")
        and r.peek().kind == "stitch"
        and r.peek().value in _GROUPED
    ):
        r.at += 1  # `beg cluster`
    number = r.number()
    if number is not None and r.here.kind == "-" and str(r.peek().value)[:1].isdigit() and r.peek().kind == "stitch":
        r.at += 1  # `2-3 tr cluster sts` are two, of 3 tr each
    if r.low() in _STRETCHED and r.peek().kind == "stitch" and r.peek().value not in ("ch", "sl st"):
        r.at += 1  # `long sc`
    if number is not None and r.low() in ("more", "additional") and r.peek().kind == "stitch":
        r.at += 1  # `make 4 more sps`
    token = r.here
    if number is None and token.value == "ch" and r.peek().kind == "number" and r.peek(2).value == "picot":
        r.at += 2  # `ch 3 picot` is a picot
        token = r.here
    if token.kind != "stitch":
        r.at = mark
        return None
    r.at += 1
    if token.value in _DRAWN and r.low() == "of" and r.peek().kind == "number" and r.peek(2).kind == "stitch":
        r.at += 3  # `cluster of 3 dc`
    counted = "before" if number is not None else ""
    tight = number is not None and token.start == r.tokens[r.at - 2].end
    if r.low() in STITCHES and r.here.start > token.end and not _ends_place(r):
        r.at += 1
    if number is None:
        number = _count_after(r, token.value == "ch")
        if number is not None:
            counted = "after"
            tight = token.value != "ch" and r.tokens[r.at - 1].start == token.end
        elif token.value != "ch" and r.low() == "twice" and r.low(1) in ("in", "into"):
            r.at += 1
            number, counted = r.whole(2, *r.span(r.at - 1)), "after"
    make = Make(str(token.value), unless_one(number), place=r.place(mark))
    return Item(make, counted, tight)


def _ends_place(r: Reading) -> bool:
    """`dc st` names a stitch; `sc sts` after a count of places does not occur."""
    return False


def _count_after(r: Reading, chain: bool) -> Number | None:
    """The 5 of `sc 5`; not the 6 of `dec 6 times` or `dec x 6`."""
    mark = r.at
    number = r.number()
    if number is None:
        return None
    after = r.here
    often = after.low in ("times", "more", "time", "rows", "rnds") or (after.kind == "-" and r.peek().kind == "stitch")
    if often and not chain and after.start - r.tokens[r.at - 1].end < 2:
        r.at = mark
        return None
    if after.kind == "x" and after.start == r.tokens[r.at - 1].end and not chain:
        r.at = mark
        return None
    return number


def read_slashed(r: Reading, first: Item) -> list[Item] | None:
    """`dc2/ch2/dc2` after its first item; None when no slash follows."""
    if r.here.kind != "/":
        return None
    mark = r.at
    items = [first]
    while r.here.kind == "/":
        r.at += 1
        item = read_item(r)
        if item is None:
            r.at = mark
            return None
        items.append(item)
    return items


def read_group(r: Reading, stop: int) -> list[Item] | None:
    """The makes between here and the token at `stop`, and nothing else; None when there is more."""
    mark = r.at
    items: list[Item] = []
    while r.at < stop:
        item = read_item(r)
        if item is None:
            break
        items.append(item)
        _same_place(r)
        if r.at < stop and not (r.here.kind in (",", "/", ";") or r.low() in ("and", "then")):
            break
        while r.at < stop and (r.here.kind in (",", "/", ";") or r.low() in ("and", "then")):
            r.at += 1
    if r.at != stop or not items:
        r.at = mark
        return None
    return items


def _same_place(r: Reading) -> None:
    """Passes "all in same st", which says no more than the brackets do."""
    r.accept("all")
    r.phrase(phrases("in same st|in same sp|in same place"))


def read_listed(r: Reading, *, everything: bool = False) -> list[Item] | None:
    """`d c, ch 2 and 2 d c` after "in same sp make": with the item behind "and", or to the end of the clause."""
    start = r.at
    first = read_item(r)
    if first is None:
        return None
    items = [first]
    if not _and_follows(r):
        r.at = start
        return _all_items(r) if everything else _chained_items(r)
    while True:
        mark = r.at
        last = r.accept("and")
        if not last and not (r.accept(",") or r.accept("/")):
            return items
        last = last or r.accept("and")
        item = read_item(r)
        if item is None or not (r.at_break() or r.here.kind == "/" or r.low() == "with"):
            r.at = mark
            return items
        if not last and not _and_follows(r):
            r.at = mark
            return items
        items.append(item)
        if last and not _and_follows(r):
            return items


def _all_items(r: Reading) -> list[Item]:
    """`sc, 3 dc, sc` in each place: everything up to the next thing that is no make."""
    items: list[Item] = []
    item = read_item(r)
    while item is not None:
        items.append(item)
        mark = r.at
        item = read_item(r) if r.accept(",", "/") else None
        if item is None or not r.at_break():
            r.at = mark
            return items
    return items


def _chained_items(r: Reading) -> list[Item]:
    """`cluster, ch 3, cluster`, `dc, picot, 2 dc`: as long as chain or picot and stitch take turns."""
    items: list[Item] = []
    first = read_item(r)
    while first is not None:
        items.append(first)
        mark = r.at
        chain = read_item(r) if r.accept(",", "/") else None
        after = read_item(r) if chain is not None and _parts(r, chain.make) and r.accept(",", "/") else None
        if chain is None or after is None or after.make.stitch in ("ch", "sl st") or not r.at_break():
            r.at = mark
            return items
        items.append(chain)
        first = after
    return items


def _parts(r: Reading, make: Make) -> bool:
    """True for a chain and for a picot, the pattern's own too."""
    own = r.names.definitions.get(make.stitch)
    made = own.makes[0].stitch if own is not None and len(own.makes) == 1 else make.stitch
    return made in ("ch", "picot")


def _and_follows(r: Reading) -> bool:
    """True when the list of makes goes on to its "and": `dc, ch 4 and dc`."""
    i = r.at
    for _ in range(24):
        token = r.tokens[i]
        if token.low == "and" and token.kind == "word":
            return r.tokens[i + 1].kind in ("stitch", "number", "count")
        if token.kind not in ("stitch", "number", "count", ",", "/", "chain") and token.low not in STITCHES:
            return False
        i += 1
    return False


def makes_of(items: list[Item]) -> tuple[Make, ...]:
    """The makes of the items; a chain without a number is one chain."""
    return tuple(item.make for item in items)


def read_between(r: Reading) -> Make | None:
    """`with ch 2 between each st` as the chain made between; else None."""
    mark = r.at
    if not r.accept("with", "having"):
        return None
    r.accept("a")
    item = read_item(r)
    if item is None or item.make.stitch not in ("ch", "picot") or not r.accept("between"):
        r.at = mark
        return None
    r.accept("each", "them", "every", "the")
    if r.here.kind == "stitch" and r.here.value != "ch":
        r.at += 1
    if r.low() in STITCHES or r.low() in ("group", "groups"):
        r.at += 1
    return item.make


def spaced_out(makes: tuple[Make, ...], between: Make) -> tuple[Make, ...] | None:
    """The makes one by one, `between` after each but the last; None when a count differs by size or is too large."""
    out: list[Make] = []
    for make in makes:
        times = 1 if make.times is None else plain(make.times)
        if times is None or not 1 <= times <= MOST_SPELLED_OUT:
            return None
        for _ in range(times):
            out += [Make(make.stitch, place=make.place), between]
    return tuple(out[:-1])


def takes_several(r: Reading, name: str) -> bool:
    """True for stitches that use up more than one place: dc2tog, dec."""
    own: Definition | None = r.names.definitions.get(name)
    if own is not None:
        return bool(own.takes and own.takes > 1) or any(takes_several_known(make.stitch) for make in own.makes)
    return takes_several_known(name)


def takes_several_known(name: str) -> bool:
    """The same for stitches of the trade."""
    known = stitches().get(name)
    return known is not None and known.takes > 1


def own_space(r: Reading, make: Make) -> tuple[Thing, ...] | None:
    """The spaces an own stitch always goes into, as its definition says."""
    own = r.names.definitions.get(make.stitch)
    return own.into.things if own is not None and own.into is not None else None
