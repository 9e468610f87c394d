"""`repeat from * around, ending last repeat with ch 2, join`: the ending stands in place of the last run's own end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from gradegen.design.rows import Chain, Either, Repeat, Skip, Step, Turn, Work
from gradegen.read.notation.words.reading import plain


def with_cut_endings(steps: list[Step]) -> list[Step]:
    """The steps, each repeat whose ending begins as a later part of its body knowing what that leaves of a run."""
    out: list[Step] = []
    for i, step in enumerate(steps):
        if isinstance(step, Repeat) and (last_run := _last_run(step, steps[i + 1 : i + 3])):
            step = replace(step, times=replace(step.times, last_run=last_run))
        out.append(step)
    return out


def _last_run(repeat: Repeat, ending: Sequence[Step]) -> tuple[Step, ...]:
    """The body up to where the ending begins; () where it begins nowhere, or only as the whole body does."""
    times = repeat.times
    to_end = times.bound is not None and times.bound.to == "end" and times.stop_at is None
    vague = times.corresponds and not times.end_named
    if not to_end or vague or not ending or (_is_for_next_row(ending) and not times.end_named):
        return ()
    body = _last_opened(repeat.body)
    for is_like in (_is_same, _is_in_place_of) if times.end_named else (_is_same,):
        for at in range(len(body) - 1, 0, -1):
            if is_like(body[at], ending[0]):
                both = _takes(body[:at]) and _takes(body[at:])
                return body[:at] if both or times.corresponds else ()
    return ()


def _is_for_next_row(ending: Sequence[Step]) -> bool:
    """`rep from * across, ch 3, turn`: the chain is no end of this row."""
    return isinstance(ending[0], Chain) and isinstance(ending[-1], Turn)


def _is_same(step: Step, ending: Step) -> bool:
    """True for the same chain, and for the same stitches in the next place and in the last one or the turning chain."""
    if isinstance(ending, Either):
        ending = ending.readings[0][0]
    if isinstance(step, Work) and isinstance(ending, Work):
        return _goes_where(step, ending) and _stitches(step) == _stitches(ending)
    return isinstance(step, Chain) and step == ending


def _is_in_place_of(step: Step, ending: Step) -> bool:
    """`shell in next sc; rep from * across, ending last rep with 3 dc in last sc`: other stitches in such a place."""
    if not isinstance(step, Work) or not isinstance(ending, Work):
        return False
    return _goes_where(step, ending) and (ending.into.which == "tch" or ending.into.number is None)


def _goes_where(step: Work, ending: Work) -> bool:
    """True for the next place of a kind and the last one, or the turning chain."""
    last = ending.into.which == "last" and step.into.things == ending.into.things
    return step.into.which == "next" and (last or ending.into.which == "tch")


def _stitches(work: Work) -> tuple[str, ...]:
    return tuple(make.stitch for make in work.makes)


def _last_opened(body: tuple[Step, ...]) -> tuple[Step, ...]:
    """`ch 4, sc in next loop, (ch 5, sc in next loop) 10 times` with the last of the ten by itself."""
    last = body[-1]
    times = plain(last.times.number) if isinstance(last, Repeat) and last.times.how == "in all" else None
    if not isinstance(last, Repeat) or times is None or times < 2 or last.times.number is None:
        return body
    fewer = replace(last.times, number=replace(last.times.number, values=(times - 1,)))
    return (*body[:-1], replace(last, times=fewer), *last.body)


def _takes(steps: Sequence[Step]) -> bool:
    return any(
        _takes(step.body) if isinstance(step, Repeat) else isinstance(step, (Work, Skip)) and step.into.which == "next"
        for step in steps
    )
