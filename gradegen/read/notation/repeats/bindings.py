"""Rows without brackets: `3 sc, inc x 6`, `sc, inc around`, `sc BLO` bind the last stitch or the whole row."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Aside, Bound, Chain, Either, Join, Repeat, Step, Times, Turn, Work
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import words


def with_whole_row(r: Reading, steps: list[Step]) -> list[Step]:
    """The steps; where the last one's times may bind all before it, both readings."""
    begin = 0
    while begin < len(steps) and isinstance(steps[begin], (Aside, Chain, Turn)):
        begin += 1
    end = len(steps)
    while end > begin and isinstance(steps[end - 1], (Aside, Join, Turn)):
        end -= 1
    part = steps[begin:end]
    if part and (left := _until_so_many_remain(r, part[-1])) is not None:
        return [*steps[: end - 1], left, *steps[end:]]
    if len(part) == 1 and (alone := _alone(r, part[0])) is not None:
        return [*steps[:begin], alone, *steps[end:]]
    if len(part) < 2 or not all(isinstance(step, Work) and step.bare for step in part[:-1]):
        return steps
    last = part[-1]
    if isinstance(last, Work):
        either = _running_on(r, part, last)
        return steps if either is None else [*steps[:begin], either, *steps[end:]]
    if not isinstance(last, Repeat) or not _has_no_bracket(r, last):
        return steps
    whole = Repeat((*part[:-1], *last.body), last.times, "(", place=part[0].place)
    why = ("the times belong to the last stitch only", "the times belong to the whole row")
    either = Either((tuple(part), (whole,)), why, place=part[0].place)
    return [*steps[:begin], either, *steps[end:]]


def _until_so_many_remain(r: Reading, last: Step) -> Step | None:
    """`sc2tog around until 6 sts remain`, with nothing behind it: what is left of the round, which only words tell."""
    bound = last.into.bound if isinstance(last, Work) else last.times.bound if isinstance(last, Repeat) else None
    works = [step for step in (last.body if isinstance(last, Repeat) else (last,)) if isinstance(step, Work)]
    decreases = any(make.stitch == "dec" or make.stitch.endswith("tog") for work in works for make in work.makes)
    at = next((i for i, token in enumerate(r.tokens) if token.low in ("until", "till")), None)
    if bound is None or bound.to != "last" or not decreases or at is None:
        return None
    words_ = Bound("words", words=r.text(at, r.next_break(at)))
    if isinstance(last, Repeat):
        return replace(last, times=replace(last.times, bound=words_))
    assert isinstance(last, Work)
    return replace(last, into=replace(last.into, bound=words_))


def _alone(r: Reading, step: Step) -> Either | None:
    """`sc BLO`, `inc` as all that a row says: in each stitch of it, or in one; a decrease so written is one."""
    if not isinstance(step, Work) or not step.bare or step.into.number is not None or step.into.bound is not None:
        return None
    if step.into.which != "next" or len(step.makes) != 1 or step.called or not _begins_row(r, step):
        return None
    if step.makes[0].stitch in ("picot", "magic ring", "dec") or step.makes[0].stitch.endswith("tog"):
        return None
    each = replace(step, into=replace(step.into, which="each", bound=Bound("end")))
    return Either(((each,), (step,)), ("in each stitch", "in one stitch"), place=step.place)


def _begins_row(r: Reading, step: Work) -> bool:
    """True where nothing but a chain, a turn or the loop stands before the stitch, and nothing but a count behind."""
    lows = [token for token in r.tokens if token.kind not in ("end", ".", ",", ":", ";")]
    said = [token for token in lows if token.kind in ("word", "stitch", "chain") and token.low not in _AROUND_IT]
    works = [token for token in said if token.kind == "stitch" and token.value not in ("ch", "sl st")]
    others = [token for token in said if token.kind == "word"]
    return bool(works) and works[0].value == step.makes[0].stitch and not others


_AROUND_IT = words("blo flo bl fl in the back front loop loops lp only turn join st sts stitches total")


def _running_on(r: Reading, part: list[Step], last: Work) -> Either | None:
    """`sc, inc around`, `dec, sc 3 around`: the limit belongs to the last stitch, or to all of them over and over."""
    each = last.bare and last.into.which == "each" and last.into.bound == Bound("end")
    if not each and last.place not in r.ran_on:
        return None
    once = replace(last, into=replace(last.into, which="next", bound=None)) if each else last
    whole = Repeat((*part[:-1], once), Times("bound", bound=Bound("end")), "(", place=part[0].place)
    readings: list[tuple[tuple[Step, ...], str]] = [
        ((whole,), "all of it over and over"),
        (tuple(part), "the last stitch alone goes on"),
    ]
    if not any(isinstance(step, Work) and _shapes(step) for step in part):
        readings.reverse()
    return Either(tuple(steps for steps, _ in readings), tuple(why for _, why in readings), place=part[0].place)


def _shapes(work: Work) -> bool:
    return any(make.stitch in ("inc", "dec") or make.stitch.endswith("tog") or make.times for make in work.makes)


def _has_no_bracket(r: Reading, repeat: Repeat) -> bool:
    """True for `inc x 6`, `inc 6 times`; not for `(inc) x 6`, `inc twice`, `dec 6`."""
    if len(repeat.body) != 1 or repeat.times.how != "in all" or repeat.times.number is None:
        return False
    if repeat.place.column != repeat.body[0].place.column or repeat.place.line != repeat.body[0].place.line:
        return False
    place = repeat.times.number.place
    for i, token in enumerate(r.tokens):
        if token.kind == "end":
            break
        if token.kind in ("number", "count") and r.written.place(token.start, token.end) == place:
            return r.tokens[i - 1].kind == "x" or r.tokens[i + 1].kind == "x" or r.tokens[i + 1].low == "times"
    return False
