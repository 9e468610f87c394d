"""Repeats: how often, how far, and where the last one stops."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from gradegen.design.rows import Bound, Repeat, Skip, Step, Times, Work
from gradegen.read.notation.places.bounds import read_bound
from gradegen.read.notation.places.in_words import bound_from_end, bound_in_words
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.times import Often, read_multiplier, read_often
from gradegen.read.notation.words.word_lists import phrases


@dataclass(slots=True)
class Star:
    """An open star: its sign, where its body begins among the steps, and its token."""

    mark: str
    begins: int
    token: int
    stop_at: int | None = None
    body_end: int | None = None


@dataclass(frozen=True, slots=True)
class From:
    """`repeat from ** to *`: which star, or "beginning"; `nth`: the first, second star of that sign."""

    mark: str
    nth: int | None
    to_star: bool


def read_from(r: Reading) -> From | None:
    """`rep from *`, `repeat from * to *`, `rep *-*`, `repeat from beginning of rnd`; else None."""
    mark = r.at
    if not r.accept("rep", "repeat", "repeating"):
        return None
    r.accept(".")
    if r.low() in ("around", "across") or _only_often(r, mark):
        return From("nearest", None, False)
    between = r.accept("between")
    r.accept("from")
    nth = r.ordinal()
    if nth is None and r.accept("last"):
        pass
    if r.here.kind == "star":
        sign = r.here.low
        r.at += 1
        r.accept("s")  # `between *s`
        if between and r.here.kind == "star":
            r.at += 1  # `between * *`
    elif r.accept("star", "asterisk", "stars", "asterisks"):
        sign = "*"
    elif r.phrase(phrases("beginning|beg|start")):
        r.phrase(phrases("of rnd|of row|of round|of the rnd|of the row"))
        return From("beginning", None, False)
    else:
        r.at = mark
        return None
    to_star = False
    start = r.at
    if r.accept("to", "-", "and", "through") and r.here.kind == "star":
        r.at += 1
        to_star = True
    elif r.tokens[start].kind == "-" or r.at > start:
        r.at = start
    return From(sign, nth.values[0] if nth and nth.values else None, to_star)


def _only_often(r: Reading, mark: int) -> bool:
    """`dec, sc 4; rep 4 times`: no star, within the sentence."""
    often = r.here.kind in ("number", "count") and r.low(1) == "times"
    return often and mark > 0 and r.tokens[mark - 1].kind not in (".", "close", "star")


def read_times(r: Reading, starred: bool = True) -> Times | None:
    """How often, behind a repeat; None when nothing is said. `starred`: "5 times" may be in all or more."""
    bound = read_bound(r)
    if bound is not None:
        _manner(r)
        return Times("bound", bound=bound_from_end(r) or bound)
    often = read_often(r)
    if often is not None:
        _manner(r)
        return _times(often, starred)
    bound = bound_from_end(r)
    if bound is not None:
        return Times("bound", bound=bound)
    if r.phrase(phrases("to opposite side|as needed")):
        return Times("bound", bound=Bound("end"))
    bound = bound_in_words(r)
    return Times("bound", bound=bound) if bound is not None else None


def _times(often: Often, starred: bool) -> Times:
    if often.how == "more":
        return Times("more", often.number)
    if often.how == "in all" or not starred:
        return Times("in all", often.number)
    return Times("more" if often.number.values == (1,) else "unsure", often.number)


def _manner(r: Reading) -> None:
    """Passes `in same manner`, `in pattern` behind a repeat."""
    while r.phrase(
        phrases(
            "in same manner|in this manner|in like manner|in same way|in pattern|as before|round|around|across|row|rnd"
        )
    ):
        pass


def read_after_bracket(r: Reading) -> Times | None:
    """`x 6`, `6 times`, `6`, `around`, `repeat 7 times`, behind a closing bracket; else None."""
    mark = r.at
    number = read_multiplier(r)
    if number is not None:
        _manner(r)
        return Times("in all", number)
    bound = read_bound(r)
    if bound is not None:
        return Times("bound", bound=bound)
    if r.accept("rep", "repeat", "repeated", "work", "worked"):
        r.accept("this", "these")
        often = read_often(r)
        if often is not None:
            return Times("more" if often.how == "more" else "in all", often.number)
        bound = read_bound(r)
        if bound is not None:
            return Times("bound", bound=bound)
        r.at = mark
        return None
    often = read_often(r)
    if often is not None:
        return Times("more" if often.how == "more" else "in all", often.number)
    number = r.number()
    if number is not None and (
        r.here.kind in ("open", ",", ";", ".", "end", "close", "=", "-", "star") or r.low() == "and"
    ):
        return Times("in all", number)
    r.at = mark
    return None


def stop_of(r: Reading, body: Sequence[Step], star: Star | None, times: Times) -> Times:
    """The times with where the last run stops: `ending last rep at **`, `omitting last corner`."""
    times = _but(r, times)
    mark = r.at
    r.accept(",", ";")
    r.accept("but", "and")
    if r.accept("ending", "end", "stopping", "stop"):
        r.accept("the")
        if r.phrase(phrases("last rep with|last repeat with|final repeat with")) and times.how == "bound":
            return replace(times, corresponds=True, end_named=True)
        r.phrase(phrases("last rep|last repeat|final rep|final repeat|last time|with last rep|row|rnd|round"))
        if r.phrase(phrases("to correspond|in pattern as established|in pattern")) and times.how == "bound":
            return replace(times, corresponds=True)
        if r.accept("at") and r.here.kind == "star":
            r.at += 1
            if star is not None and star.stop_at is not None:
                return replace(times, stop_at=star.stop_at)
    elif r.accept("omitting", "omit", "eliminating"):
        r.accept("the")
        stop = _omitted(r, body)
        if stop is not None:
            return replace(times, stop_at=stop)
    r.at = mark
    return times


def _but(r: Reading, times: Times) -> Times:
    """`working all corners same as 1st corner`: what some of the runs do otherwise."""
    mark = r.at
    r.accept(",", ";")
    r.accept("and")
    start = r.at
    end = r.next_break(start)
    said = [token.low for token in r.tokens[start:end]]
    if r.low() not in ("working", "work") or ("same", "as") not in pairwise(said) or "corner" not in "".join(said):
        r.at = mark
        return times
    r.at = end
    return replace(times, but=r.text(start))


def _omitted(r: Reading, body: Sequence[Step]) -> int | None:
    """How many steps the last run keeps when its end is left out; None when the words name none of its last steps."""
    start = r.at
    while r.here.kind not in (",", ";", ".", "end", "close", "star"):
        if r.low() in ("join", "and"):
            break
        r.at += 1
    said = [token for token in r.tokens[start : r.at]]
    names = [str(token.value) for token in said if token.kind == "stitch"]
    words = {token.low for token in said}
    for back in range(1, min(4, len(body)) + 1):
        step = body[-back]
        if isinstance(step, Repeat) and any(_is_named(inner, names, words) for inner in step.body):
            break  # only a part of what runs several times: no step of the body
        if _is_named(step, names, words):
            return len(body) - back or None
    r.at = start
    return None


def _is_named(step: Step, names: list[str], words: set[str]) -> bool:
    from gradegen.design.rows import Chain

    if isinstance(step, Work):
        made = {make.stitch for make in step.makes}
        return (
            bool(made & set(names))
            or (step.called in words and bool(step.called))
            or ("corner" in words and len(step.makes) > 1)
        )
    if isinstance(step, Chain):
        return "ch" in names
    return isinstance(step, Skip) and bool(words & {"sk", "skip"})


def closed(body: Sequence[Step], times: Times, mark: str, r: Reading, begin: int) -> Repeat:
    """The repeat of a body that began at the token `begin`."""
    return Repeat(tuple(body), times, mark, place=r.place(begin))  # type: ignore[arg-type]
