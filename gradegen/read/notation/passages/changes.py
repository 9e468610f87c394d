"""Loose changes and even work: `increasing 4 sts evenly`, `dec 1 st at each end`, `work even in sc`."""

from __future__ import annotations

from typing import Literal

from gradegen.design.rows import Change, Even, Number
from gradegen.read.notation.places.bounds import read_bound
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import ROWS, phrases, words

_UP = words("inc increase increasing inc'g")
_DOWN = words("dec decrease decreasing")


def read_change(r: Reading) -> Change | None:
    """A loose change; None when its places are given or nothing is changed."""
    mark = r.at
    r.phrase(phrases("cont to|continue to|continuing to|cont|continue|continuing"))
    r.accept("spacing", "evenly")
    token = r.here
    up = token.low in _UP
    if not up and token.low not in _DOWN and token.low != "spacing":
        r.at = mark
        return None
    r.at += 1
    r.accept_all("evenly")
    number = r.number()
    if r.accept("a", "an") and number is None:
        number = r.whole(1, *r.span(r.at - 1))
    if number is None:
        r.at = mark
        return None
    r.accept("more")
    if r.low() in STITCHES or r.here.kind == "stitch":
        r.at += 1
    at, alone = r.at, r.at_break() and token.low in ("increasing", "decreasing")
    where = _where(r)
    if where is None and alone:
        r.at, where = at, "evenly"  # `dc in each st around, increasing 6 sts`
    if where is None:
        r.at = mark
        return None
    return Change(1 if up else -1, number, where, place=r.place(mark))


def _where(r: Reading) -> Literal["evenly", "each end", "one end"] | None:
    r.accept(",")
    if r.accept("evenly"):
        r.phrase(phrases("spaced|across row|around row|across the row|in rnd|in row"))
        mark = r.at
        if read_bound(r) is None or not r.at_break():
            r.at = mark
            _spread_over(r)
        return "evenly"
    if r.phrase(phrases("spaced evenly|spaced out evenly")):
        read_bound(r)
        return "evenly"
    if r.phrase(phrases("around evenly|across evenly|around row evenly|across row evenly")):
        return "evenly"
    if r.phrase(
        phrases(
            "in rnd|in row|in round|in this rnd|in this row|in each rnd|in each row|in every rnd|in every row|"
            "every rnd|every row|every round|each rnd|each row|each round|per rnd|per row|per round|on each rnd|"
            "on each row|on every rnd|on every row|around|across"
        )
    ):
        if not r.at_break() and r.tokens[r.at - 1].low in ("around", "across"):
            r.at -= 1
            _spread_over(r)
        return "evenly"
    if r.phrase(
        phrases(
            "at beg and end of row|at beginning and end of row|at beg and end|at both edges|at each end of row|"
            "at each end|each end of row|each end|at both ends of row|at both ends|each side|at each side|"
            "at each edge"
        )
    ):
        return "each end"
    if r.phrase(
        phrases(
            "at neck edge|at side edge|at arm edge|at armhole edge|at end of row|at beg of row|at beginning of row|"
            "at one end|at end|at front edge"
        )
    ):
        return "one end"
    return "evenly" if _spread_over(r) else None


def _spread_over(r: Reading) -> bool:
    """`over the toe`, `across toe and heel`: the part of the row it happens in, in a few words."""
    mark = r.at
    if not r.accept("over", "across", "around", "along", "at", "on"):
        return False
    while (r.here.kind == "word" and r.at - mark <= _PART and not r.at_break()) or r.low() == "and":
        r.at += 1
    if r.at > mark + 1 and r.at_break():
        return True
    r.at = mark
    return False


_PART = 5  # words of the part a change is spread over


def read_even(r: Reading) -> Even | None:
    """`work even`, `continue in pattern`, `work even in hdc`, `sc even`; else None."""
    mark = r.at
    stitch = _even_stitch(r)
    if (stitch is not None and r.at_break()) or r.low() == "until":
        pass
    elif r.at > mark:
        r.at = mark
    if r.at == mark:
        stitch = _worked_even(r)
    if r.at == mark:
        return None
    _for_rows(r)
    return Even(stitch or None, place=r.place(mark))


def _for_rows(r: Reading) -> None:
    """Passes `for 6 rows`: the count stays what it was."""
    mark = r.at
    if r.accept("for") and r.number() is not None and r.accept(*ROWS):
        return
    r.at = mark


def _even_stitch(r: Reading) -> str | None:
    """`sc even`."""
    if r.here.kind == "stitch" and r.low(1) == "even":
        r.at += 2
        stitch = str(r.tokens[r.at - 2].value)
        read_bound(r)
        return stitch
    return None


def _worked_even(r: Reading) -> str | None:
    mark = r.at
    if r.accept("work") and r.number() is not None and r.accept(*ROWS) and r.accept("even"):
        return None
    r.at = mark
    if r.phrase(
        phrases("continue in this manner|continue in same manner|continue in this way|continue in like manner")
    ):
        if r.low() in (*_UP, *_DOWN) or (r.here.kind == "," and r.low(1) in (*_UP, *_DOWN)):
            return None
        r.at = mark
    evenly = r.phrase(
        phrases(
            "work even|working even|work around|work across|"
            "work in each st as set|work in pattern as set|work in pattern as established|"
            "work in established pattern|working in established pattern|keeping in pattern|keeping to pattern|"
            "work in pattern|work in pat|work as set|work as established|continue in pattern|continue in pat|"
            "continue in established pattern|continue even|continue as set|cont in pattern|cont in pat|cont even|"
            "in pattern across"
        )
    )
    if not evenly and r.phrase(phrases("continue in|cont in|continue working in")):
        if r.here.kind != "stitch" or r.here.value == "ch":
            r.at = mark
            return None
        r.at += 1
        return str(r.tokens[r.at - 1].value)
    if not evenly:
        return None
    stitch = None
    if r.low() in ("in", "with") and r.peek().kind == "stitch":
        r.at += 2
        stitch = str(r.tokens[r.at - 1].value)
    bound = read_bound(r)
    if bound is not None and bound.to != "end":  # `work in pattern to last st, 2 sc in last st`
        r.at = mark
        return None
    return stitch


def evened_count(r: Reading) -> tuple[Number, str] | None:
    """The `15 d c` of `work even on 15 d c`; else None."""
    mark = r.at
    if r.accept("on", "over") or counts_even(r):
        r.accept("these", "the")
        number = r.number()
        if number is not None and (r.here.kind == "stitch" or r.low() in STITCHES):
            r.at += 1
            token = r.tokens[r.at - 1]
            return number, str(token.value) if token.kind == "stitch" else "st"
    r.at = mark
    return None


def counts_even(r: Reading) -> bool:
    """`work even across 41 hdc`: behind that "across"."""
    return r.tokens[r.at - 1].low == "across" and r.here.kind in ("number", "count")
