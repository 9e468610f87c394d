"""How often: `x 6`, `6 times`, `twice`, `2 more times`, `5x`, `repeat 7 times`."""

from __future__ import annotations

from typing import Literal, NamedTuple

from gradegen.design.rows import Number
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases

_WORDS = {"once": 1, "twice": 2, "thrice": 3}


class Often(NamedTuple):
    """A number of times; `how`: "more" where the words say besides the first, "in all" for altogether, else ""."""

    number: Number
    how: Literal["more", "in all", ""]


def read_multiplier(r: Reading) -> Number | None:
    """The 6 of `x 6`, `6x`, `6 times`, `twice`; None when none stands here."""
    mark = r.at
    if r.here.kind == "x":
        r.at += 1
        number = r.number()
        if number is not None:
            r.accept("times", "time")
            _round(r)
            return number
        r.at = mark
        return None
    often = read_often(r)
    if often is None or often.how == "more":
        r.at = mark
        return None
    return often.number


def read_often(r: Reading) -> Often | None:
    """`once`, `twice more`, `2 more times`, `6 times in all`, `x 6`, `6x`; else None."""
    mark = r.at
    r.accept_all("for", "a", "total", "of") or r.accept_all("a", "total", "of") or r.accept("for")
    total = r.at > mark
    token = r.here
    if token.low in _WORDS:
        r.at += 1
        number = r.whole(_WORDS[token.low], token.start, token.end)
        return Often(number, _how(r, total, "more" if r.accept("more") else ""))
    if r.here.kind == "x":
        r.at += 1
        after = r.number()
        if after is not None:
            r.accept("times")
            return Often(after, _how(r, total, ""))
        r.at = mark
        return None
    further = r.accept_all("a", "further") or r.accept("another", "further")
    counted = r.number()
    if counted is None:
        r.at = mark
        return None
    said: Literal["more", ""] = "more" if r.accept("more", "additional") or further else ""
    if r.here.kind == "x" and r.peek().kind != "number":
        r.at += 1
    elif not r.accept("times", "time"):
        r.at = mark
        return None
    if r.accept("more"):
        said = "more"
    return Often(counted, _how(r, total, said))


def _how(r: Reading, total: bool, said: Literal["more", ""]) -> Literal["more", "in all", ""]:
    if r.phrase(phrases("in all|in total|total|altogether")):
        return "in all"
    _round(r)
    return "in all" if total and not said else said


def _round(r: Reading) -> None:
    r.phrase(phrases("all around|all round|around|across"))
