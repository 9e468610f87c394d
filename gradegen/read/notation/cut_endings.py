"""`repeat from * around, ending last repeat with ch 2, join`: the ending stands in place of the last run's own end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from gradegen.design.rows import Chain, Repeat, Skip, Step, Turn, Work


def with_cut_endings(steps: list[Step]) -> list[Step]:
    """The steps, each repeat whose ending begins as a later part of its body knowing where that is."""
    out: list[Step] = []
    for i, step in enumerate(steps):
        cut = _cut(step, steps[i + 1 : i + 3]) if isinstance(step, Repeat) else None
        if cut is not None and isinstance(step, Repeat):
            step = replace(step, times=replace(step.times, cut=cut))
        out.append(step)
    return out


def _cut(repeat: Repeat, ending: Sequence[Step]) -> int | None:
    """Where in the body the ending begins; None where it begins nowhere, or only as the whole body does."""
    times = repeat.times
    to_end = times.bound is not None and times.bound.to == "end" and times.stop_at is None
    vague = times.corresponds and not times.end_named
    if not to_end or vague or not ending or not isinstance(ending[0], Chain) or isinstance(ending[-1], Turn):
        return None
    for at in range(len(repeat.body) - 1, 0, -1):
        if repeat.body[at] == ending[0]:
            both = _takes(repeat.body[:at]) and _takes(repeat.body[at:])
            return at if both or times.corresponds else None
    return None


def _takes(steps: Sequence[Step]) -> bool:
    return any(isinstance(step, (Work, Skip)) and step.into.which == "next" for step in steps)
