"""Chains, joins, slip stitches, skips and turns."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from gradegen.design.rows import Chain, Into, Join, Number, OtherSide, Slip, Step, Thing, Turn
from gradegen.read.notation.places.behind_work import pass_behind, to_other_piece
from gradegen.read.notation.places.places_named import read_place, read_target
from gradegen.read.notation.places.things import STITCHES, is_space
from gradegen.read.notation.stitches.attached import goes_on_from
from gradegen.read.notation.stitches.counting import read_counts
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases, words

JoinedTo = Literal["ring", "first st", "top of chain", ""]
_TWIST = phrases(
    "|".join(
        f"{warning}{chain}"
        for warning in (
            "being careful not to twist",
            "taking care not to twist",
            "making sure not to twist",
            "careful not to twist",
            "without twisting",
            "do not twist",
        )
        for chain in (" the chain", " the ch", " your chain", " chain", " ch", " it", "")
    )
)

_YARN = words(
    "yarn thread new color colour contrast main mc cc a b c d white another second next work motif "
    "motifs squares flower"
)


def read_chain(r: Reading) -> list[Step] | None:
    """`ch 3`, `ch 3 (counts as dc)`, `ch 2 to turn`; None when it is no chain step."""
    chain = _chain(r)
    if chain is None:
        return None
    start = r.at
    if r.phrase(phrases("to turn|for turning|to turn work")):
        for_all = r.phrase(phrases("all rows|all rnds|all rounds|each row|each rnd|each round|every row|throughout"))
        return [replace(chain, for_all=bool(for_all)), Turn(place=r.place(start))]
    return [chain]


def _chain(r: Reading) -> Chain | None:
    mark = r.at
    r.accept("loosely")
    r.accept("a") and r.accept("foundation")
    if r.here.kind == "chain" and not (r.low(1)):
        token = r.here
        r.at += 1
        number: Number | None = r.chain_length(token)
    elif r.here.kind == "stitch" and r.here.value == "ch":
        r.at += 1
        r.accept("of")
        number = r.number()
        r.accept("sts", "ch")
    else:
        number = r.number()
        if number is None or not (r.here.kind == "stitch" and r.here.value == "ch"):
            r.at = mark
            return None
        r.at += 1
        if r.here.kind == "word" and r.low() not in ("and", "then"):
            r.at = mark
            return None
    if number is None:
        r.at = mark
        return None
    if r.phrase(phrases("loosely|more")):
        pass
    chain = Chain(number, place=r.place(mark))
    counts = read_counts(r)
    return replace(chain, counts=counts) if counts is not None else chain


def read_turn(r: Reading) -> Turn | None:
    """`turn`, `turn work`, `turning`; None when more is said."""
    mark = r.at
    if not r.accept("turn", "tn"):
        return None
    r.phrase(phrases("your work|the work|work|each round|each row|each rnd"))
    if not (r.at_break() or r.here.kind in ("stitch", "number") or r.low() in ("leave", "leaving")):
        r.at = mark
        return None
    return Turn(place=r.place(mark))


def _half_turns() -> str:
    """`give one end of the chain a half twist`, `twist the ch once`, `turn one end over`, in all their forms."""
    ends = [
        f"{end}{of}"
        for end in ("one end", "1 end")
        for of in ("", " of the chain", " of chain", " of the ch", " of ch")
    ]
    ends += ["the chain", "chain", "the ch", "ch", "the foundation", "the foundation chain", "the foundation ch", "it"]
    given = [
        f"give {end} {turn}" for end in ends for turn in ("a half turn", "a half twist", "one half turn", "1 half turn")
    ]
    turned = [
        f"{verb} {end}{how}"
        for verb in ("twist", "turn")
        for end in ends
        for how in (" once", " over once", " over", " by half a turn", " over by half a turn", " once by half a turn")
    ]
    given += [f"{half} {end}" for end in ends for half in ("half twist", "half-twist", "half turn")]
    return "|".join((*given, *turned, "with a half twist", "with a half turn", "make a half twist", "make a half turn"))


_HALF_TURN = phrases(_half_turns())


def read_half_turn(r: Reading) -> Join | None:
    """`give one end a half turn and join with sl st in first ch`, `turn one end over once and join ...`."""
    mark = r.at
    turned = r.phrase(_HALF_TURN)
    if not turned:
        return None
    r.accept("in", "the")
    r.accept(",")
    r.accept("and")
    r.accept("then")
    join = read_join(r) or _slipped_together(r)
    if join is None:
        r.at = mark
        return None
    return Join("ring", join.nth, half_twist=True, place=r.place(mark))


def _slipped_together(r: Reading) -> Join | None:
    """`sl st in first ch`, `sl st in first ch to join`: two ends made one."""
    found = read_slip(r)
    if found is None or len(found) != 1:
        return None
    only = found[0]
    if isinstance(only, Join):
        return only
    is_first = isinstance(only, Slip) and only.into.which == "first"
    return Join("ring", place=only.place) if is_first else None


def read_join(r: Reading) -> Join | None:
    """`join`, `join to top of ch-3`, `join with sl st to form ring`; None when other things are joined."""
    mark = r.at
    closing = r.low() == "close" and r.low(1) in ("with", "by", "rnd", "round", "the")
    if not (r.accept("join", "joining") or (closing and r.accept("close"))):
        return None
    if r.here.low in _YARN or goes_on_from(r):
        r.at = mark
        return None
    r.phrase(phrases("rnd|round|ends|the round|the rnd|ring|work"))
    r.phrase(_TWIST)
    if r.accept("with", "by"):
        r.accept("a", "an")
        if not _slip(r):
            r.at = mark
            return None
    elif r.sees("in", "sl st") or (r.low() == "in" and r.peek().value == "sl st"):
        r.at += 2
    to, nth = _joined_to(r)
    if to and r.low() in ("with", "using", "by"):  # `join into a ring with sl st`, `join to first ch with sl st`
        r.accept("with", "using", "by")
        r.accept("a", "an")
        if not _slip(r):
            r.at = mark
            return None
    r.accept(",") if r.low(1) in ("being", "without", "taking", "making") else None
    r.phrase(_TWIST)
    return Join(to, nth, place=r.place(mark))


def _slip(r: Reading) -> bool:
    if r.here.value == "sl st" and r.here.kind == "stitch":
        r.at += 1
        return True
    if r.here.kind == "stitch" and r.here.value == "sc":
        r.at += 1
        return True
    return r.accept_all("slit", "stitch")


_RING = phrases(
    "to form a ring|to form ring|to form circle|to form a circle|to make ring|to make a ring|into a ring|"
    "into ring|in a ring|in ring|a ring|ring|to form a loop|to form loop|to make a loop|to make a circle|"
    "to make circle|into a circle|into a loop|in a circle|to form a tube|to work in the round|"
    "to work in rounds|to work in rnds|to begin working in the round|to begin working in rounds|"
    "to start working in the round|in the round|in rnd|to form a round|to make a round|to close into a ring|"
    "into a round|into round|into a tube|into the round|to begin the round"
)


def _joined_to(r: Reading) -> tuple[JoinedTo, Number | None]:
    """Where a join goes, as far as it is said."""
    mark = r.at
    if r.phrase(_RING):
        return "ring", None
    place = read_place(r, to=True)
    if place is not None and r.phrase(_RING):  # `join with sl st in first ch to form a ring`
        return "ring", None
    if place is None:
        if r.phrase(phrases("to beg|to beginning|to start|to first|at beg")):
            return "first st", None
        r.at = mark
        return "", None
    if place.which == "tch":
        return "top of chain", place.nth
    if place.which == "of" and place.things and place.things[0].name in ("ch", "st") and place.of is None:
        return "top of chain", place.nth
    if place.which in ("first", "same", "marked", "next"):
        return "first st", None
    return "", None


def read_slip(r: Reading) -> list[Step] | None:
    """`sl st in next 3 sts`, `sl st to centre of first loop`, `sl st to join`; else None."""
    mark = r.at
    r.accept("a")
    number = r.number()
    if not (r.here.kind == "stitch" and r.here.value == "sl st") and not r.sees("slit", "stitch"):
        r.at = mark
        return None
    r.at += 2 if r.here.low == "slit" else 1
    number = number or r.number()
    if r.phrase(phrases("to join|to close|and join|to form ring|to form a ring")):
        is_ring = r.tokens[r.at - 1].low == "ring"
        if is_ring:
            return [Join("ring", place=r.place(mark))]
        to, nth = _joined_to(r)
        return [Join(to, nth, place=r.place(mark))]
    if r.low() in ("over", "across", "along") and r.low(1) == "to":
        r.at += 1  # `sl st over to corner sp`
    to_start = r.low() in ("to", "into")
    if r.phrase(_RING):
        r.phrase(_TWIST)
        return [Join("ring", place=r.place(mark))]
    pass_behind(r)
    if (fixed := to_other_piece(r, mark)) is not None:
        return [fixed]
    into = read_place(r, to=True)
    if into is None:
        if number is not None or not r.at_break():
            r.at = mark
            return None
        return [Slip(Into("next", (Thing("st"),), loosely=True, place=r.place(mark)), place=r.place(mark))]
    if into.which == "same" and r.tokens[r.at - 1].low == "made":
        into = Into("from hook", place=into.place)  # `ch 3, sl st in last sc made`
    r.phrase(phrases("just made|first made"))
    if r.phrase(
        phrases("for picot|to form picot|to make picot|for a picot|to form a picot|to make a picot")
    ) or _is_picot(r):
        if into.which == "same":
            into = Into("from hook", place=into.place)  # `ch 3, sl st in top of last sc for picot`
        return [Slip(into, place=r.place(mark))]
    along = into.of is not None and into.of.things and into.things and into.things[0].name == "ch"
    if along and into.of is not None and is_space(into.of.things[0]):  # `in each of first 3 ch of next loop`
        return [Slip(into.of, to=True, place=r.place(mark))]
    if number is None and r.phrase(_RING):  # `sl st in first ch to form a ring`
        r.accept(",") if r.low(1) in ("being", "without", "taking", "making") else None
        r.phrase(_TWIST)
        return [Join("ring", place=r.place(mark))]
    r.phrase(phrases("to join|to close|to close rnd|to close the rnd|to join rnd|to join the rnd"))
    if number is not None and into.number is None and into.which in ("next", "first"):
        into = replace(into, number=number)
    moves = (
        (to_start and into.which != "from hook")
        or (bool(into.things) and is_space(into.things[0]))
        or into.which == "of"
    )
    slip = Slip(into, to=moves and into.number is None, place=r.place(mark))
    return [slip, *_slip_on(r)]


def _is_picot(r: Reading) -> bool:
    """Passes `(picot)`, `(picot made)`; else False."""
    mark = r.at
    if r.accept("(") and r.here.value == "picot":
        r.at += 1
        r.accept("made")
        if r.accept(")"):
            return True
    r.at = mark
    return False


def _slip_on(r: Reading) -> list[Step]:
    """`... to ch-3 sp`, `... and in next sp`, behind the first place of a slip stitch."""
    mark = r.at
    if r.low() == "to":
        into = read_place(r, to=True)
        if into is not None and r.at_break():
            return [Slip(into, to=True, place=r.place(mark))]
        r.at = mark
    elif r.low() == "and":
        named = r.low(1) in ("in", "into", "to")
        r.at += 1
        into = read_place(r, to=True) or read_target(r)
        to = into is not None and bool(into.things) and is_space(into.things[0])
        if into is not None and r.at_break() and (named or to):
            return [Slip(into, to=to, place=r.place(mark))]
        r.at = mark
    return []


def read_other_side(r: Reading) -> Step | None:
    """`working along other side of ch`; else None."""
    mark = r.at
    if r.phrase(phrases("turn the work so|turn work so|turn so|rotate so|rotate the work so|flip the work so")):
        end = r.next_break(r.at)
        said = {token.low for token in r.tokens[r.at : end]}
        if said & {"side", "underside", "bottom"} and said & {"ch", "chain", "foundation"}:
            r.at = end
            return OtherSide(place=r.place(mark))
        r.at = mark
        return None
    r.phrase(phrases("rotate to|rotate and|turn to|now"))
    if r.low() not in ("working", "work", "continue", "along", "on", "continuing"):
        r.at = mark
        return None
    r.accept("working", "work", "continue", "continuing")
    r.accept("back")
    r.accept("along", "on", "in", "across", "into", "down", "up")
    r.accept("the")
    if not (
        (r.accept("other", "opposite", "second") and r.accept("side", "edge"))
        or r.accept("underside")
        or r.phrase(phrases("bottom loops|bottom loop|bottom edge|bottom"))
        or (r.accept("free", "unused", "remaining") and r.accept("loops", "loop", "lps"))
    ):
        r.at = mark
        return None
    if r.accept("of"):
        r.accept("the")
        r.accept("foundation", "starting", "beginning", "beg", "base")
        if r.here.kind == "stitch" and r.here.value == "ch":
            r.at += 1
        elif not r.accept("foundation", "row", "base"):
            r.at = mark
            return None
    if r.low() in STITCHES:
        r.at += 1
    return OtherSide(place=r.place(mark))
