"""Small parts of a place: its loop, number and kinds, and the words behind it that say no more."""

from __future__ import annotations

from gradegen.design.rows import Into, Number, Thing
from gradegen.read.notation.places.bounds import read_bound
from gradegen.read.notation.places.things import SPACES, STITCHES, read_thing
from gradegen.read.notation.words.reading import Loop, Reading
from gradegen.read.notation.words.word_lists import phrases, words

_LOOPS: dict[str, Loop] = {
    "blo": "back",
    "flo": "front",
    "bl": "back",
    "fl": "front",
    "blp": "back",
    "flp": "front",
    "tbl": "back",
    "tfl": "front",
}


JUST_MADE = phrases(
    "just made|just worked|just completed|just formed|you just made|you just worked|last made|made last|made|worked"
)
LOOPS_OF = phrases(
    "third loop of|3rd loop of|third loops of|both loops of|third loop only of|third lp of|back bumps of|back bump of|"
    "back ridge of|back hump of|bottom bump of|bump of|back bar of"
)


def read_loop(r: Reading) -> Loop | None:
    """`BLO of`, `back loops only of`, `front lp`: which loop, or None and nothing read."""
    mark = r.at
    if r.accept_all("through"):
        pass
    r.accept("the")
    side = _LOOPS.get(r.low())
    if side is not None and r.low() in ("bl", "fl") and r.low(1) not in ("only", "of") and r.peek().kind != "stitch":
        side = None  # `BL sc`, `bl only`; `3 bl` are blocks
    if side is not None:
        r.at += 1
        r.accept("only")
    elif r.low() in ("front", "back") and r.low(1) in ("loop", "loops", "lp", "lps"):
        side = "front" if r.low() == "front" else "back"
        r.at += 2
        r.accept("only")
    if side is None:
        r.at = mark
        return None
    r.accept("of")
    return side


def is_thing_ahead(r: Reading) -> bool:
    """True when the word behind this one names a place: `end loop`, `end group`."""
    after = r.peek()
    return after.kind in ("stitch", "chain") or after.low in SPACES or after.low in STITCHES or after.low == "group"


def has_tip(part: str, of: Into) -> bool:
    """True for the tip of a cluster or the like, which is its one top."""
    name = of.things[0].name if of.things else ""
    return part == "tip" and name.split(" ")[-1] in ("cluster", "popcorn", "puff", "bobble")


def number_of_places(r: Reading) -> Number | None:
    """A number that is not the start of `3-dc group`, `2 ch sp`."""
    mark = r.at
    number = r.number()
    if number is not None and (r.here.kind == "-" or r.tokens[r.at + 1].low in ("group", "groups")):
        r.at = mark
        return None
    if number is not None and r.here.kind == "stitch" and r.here.value == "ch" and r.low(1) in SPACES:
        after = r.tokens[r.at + 1]
        if after.low not in ("loops", "sps", "spaces", "lps", "meshes"):  # `next 2 ch loop` is one loop of 2 ch
            r.at = mark
            return None
    return number


def read_free_loop(r: Reading) -> Thing | None:
    """`unused loop of each ch`, `free loops of foundation ch`, `other side of ch`."""
    mark = r.at
    if r.phrase(phrases("other side of|opposite side of|underside of")):
        r.accept("the", "each", "foundation", "beg", "beginning")
        r.accept("foundation", "beg", "beginning", "starting")
        if r.here.kind == "stitch" and r.here.value == "ch":
            r.at += 1
            return Thing("free loop")
        r.at = mark
        return None
    if r.low() in ("unused", "free", "remaining", "rem", "other", "bottom") and r.low(1) in (
        "loop",
        "loops",
        "lp",
        "lps",
    ):
        r.at += 2
        r.accept("of", "from")
        r.accept("the")
        r.accept("each", "every")
        r.accept("foundation", "beginning", "beg", "starting", "base")
        if (r.here.kind == "stitch" and r.here.value == "ch") or r.low() in STITCHES:
            r.at += 1
            return Thing("free loop")
    r.at = mark
    return None


def pass_as_phrase(r: Reading) -> None:
    """Passes `as join`, `as last dc`, `as d tr c just made`, `with last sc`."""
    mark = r.at
    if r.phrase(phrases("just made|already worked in|already worked|already worked into")):
        return
    if r.low() == "where":
        end = next(
            (
                i
                for i in range(r.at, r.at + 9)
                if r.tokens[i].low in ("made", "worked") or r.tokens[i].kind in (",", "end")
            ),
            None,
        )
        if end is not None and r.tokens[end].kind == "word":
            r.at = end + 1
        return
    if not r.accept("as", "with"):
        return
    r.accept("the")
    while r.low() in ("last", "joining", "join", "sl", "previous", "turning", "beginning", "first", "beg"):
        r.at += 1
    if r.here.kind == "ordinal":
        r.at += 1
    r.number()
    if r.here.kind in ("stitch", "chain"):
        read_thing(r)
    elif r.low() in STITCHES:
        r.at += 1
    r.phrase(phrases("just made|was made|was worked|made|worked"))
    if r.at == mark + 1:
        r.at = mark


def pass_of_row(r: Reading) -> None:
    """Passes `of row`, `of previous rnd`."""
    r.phrase(
        phrases(
            "of row|of rnd|of round|of previous row|of previous rnd|of previous round|of the row|of the rnd|"
            "of thumb opening|of the thumb opening|of opening|of thumb hole|of thumbhole|of buttonhole|of armhole|"
            "of the round|of last row|of last rnd|of last round|of the previous row|of the previous rnd"
        )
    )


def read_one_thing(r: Reading) -> tuple[Thing, ...]:
    """One kind of place, or ()."""
    thing = read_thing(r)
    return () if thing is None else (thing,)


def read_things(r: Reading) -> tuple[Thing, ...]:
    """One kind of place, or several: `st and sp`, `dc and popcorn`, `dc and in each ch-1 sp`."""
    first = read_thing(r)
    if first is None:
        return ()
    found = [first]
    while (more := _another(r)) is not None:
        found.append(more)
    return tuple(found)


def _another(r: Reading) -> Thing | None:
    mark = r.at
    if r.here.kind == "," and r.peek().kind in ("stitch", "chain"):
        r.at += 1
        listed = read_thing(r)
        r.at += r.here.kind == "," and r.low(1) == "and"
        if listed is not None and listed.name != "ch" and r.low() == "and":
            return listed  # `in each dc, popcorn and ch-1 sp`
        r.at = mark
    if not r.accept("and"):
        return None
    said_each = r.phrase(phrases("in each|into each|each|in every|in ea"))
    thing = None
    if said_each or r.tokens[r.at].kind in ("word", "stitch", "chain"):
        thing = read_thing(r)
    worked = r.low() in ("in", "into") or (
        r.low() in ("around", "over") and r.low(1) in ("each", "every", "next", "the")
    )
    if thing is None or worked or (thing.name == "ch" and not said_each and r.here.kind == "number"):
        r.at = mark
        return None
    if not said_each and r.here.kind in ("number", "count"):
        r.at = mark
        return None
    return thing


def counting_spaces(r: Reading, things: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """Adds the space of `(count each ch-1 as a st)` to the places."""
    mark = r.at
    if r.here.kind == "open" and r.peek().low in ("count", "counting"):
        r.at += 2
        r.accept("each", "every", "the")
        thing = read_thing(r)
        if thing is not None and r.accept("as") and (r.accept("a", "an") or r.accept("one", "1")):
            if r.low() in STITCHES or r.here.kind == "stitch":
                r.at += 1
            if r.here.kind == "close":
                r.at += 1
                return (*things, thing)
    r.at = mark
    return things


PLURALS = words("sts stitches sps spaces loops lps meshes arches")


def read_rest(r: Reading, mark: int) -> Into | None:
    """`the remaining sts`, `any remaining dc`, `rem 16 sts`: each of those not worked yet; else None."""
    start = r.at
    r.accept("any", "all")
    r.accept("of")
    r.accept("the")
    if r.accept("rem", "remaining"):
        number = number_of_places(r)
        things = read_one_thing(r)
        several = number is not None or r.tokens[r.at - 1].low in PLURALS or r.tokens[start].low in ("any", "all")
        if things and several and things[0].name != "free loop":
            return Into("each", things, number, bound=None if number else read_bound(r), place=r.place(mark))
    r.at = start
    return None


def top_of(r: Reading, mark: int, of: Into) -> Into:
    """The top of a chain is the chain as a stitch; of anything else, the thing itself."""
    thing = of.things[0] if of.things else None
    if of.which == "tch" or (thing is not None and thing.name in ("ch", "tch")):
        return Into("tch", place=r.place(mark))
    if thing is not None and thing.name == "sp" and thing.said == "ch":
        return Into("tch", place=r.place(mark))
    return of


def is_chain(into: Into) -> bool:
    """True for a chain, whole or as a space."""
    thing = into.things[0] if into.things else None
    return thing is not None and (thing.name in ("ch", "tch") or (thing.name == "sp" and thing.said == "ch"))


_WHICH = words("corner center centre middle end underarm raglan marked")


def pass_which(r: Reading) -> None:
    """The remark in `in next (corner) dc`: which one it is, told beside."""
    close = r.partner(r.at) if r.here.kind == "open" else None
    if close == r.at + 2 and r.low(1) in _WHICH and r.tokens[close + 1].kind in ("stitch", "word"):
        r.at = close + 1


def read_turning(r: Reading, mark: int) -> Into | None:
    """`tch`, `end ch`, `turning chain`: the chain that begins or ends a row."""
    if r.low() in ("tch", "t-ch"):
        r.at += 1
        return Into("tch", place=r.place(mark))
    if r.low() == "end" and r.peek().value == "ch":
        r.at += 2
        return Into("tch", place=r.place(mark))
    thing = read_thing(r) if r.low() in ("turning", "beg", "beginning", "starting") else None
    if thing is None or thing.name != "tch":
        r.at = mark
        return None
    return Into("tch", place=r.place(mark))
