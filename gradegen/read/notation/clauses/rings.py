"""Rows that begin with a ring and don't say again that they go into it: `MR, 6 sc`, `Ch 4, join in a ring, 11 dc`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from gradegen.design.rows import Aside, Chain, Into, Join, Repeat, Slip, Step, Turn, Work

_RING = re.compile(r"\b(?:mr|adj(?:ustable)? (?:ring|loop)|magic (?:ring|circle|loop))\b", re.IGNORECASE)


def ring_closed(steps: list[Step]) -> list[Step]:
    """A join straight behind the chain that begins a row closes a ring."""
    begin = _first_work(steps)
    if begin + 1 >= len(steps) or not isinstance(steps[begin], Chain):
        return steps
    join = steps[begin + 1]
    if isinstance(join, Join) and join.to != "ring":
        steps = [*steps[: begin + 1], replace(join, to="ring", nth=None), *steps[begin + 2 :]]
    return steps


def worked_into_ring(steps: list[Step]) -> list[Step]:
    """Behind a ring that begins a row, stitches with no place of their own go into it, when none has another place."""
    begin = _first_work(steps)
    rings = makes_ring(steps[:begin]) or _begins_in_ring(steps[begin:])
    if not rings and begin + 1 < len(steps) and _is_ring(steps[begin + 1]):
        begin += 2
    elif not rings:
        return steps
    if not all(_fits_ring(step) for step in steps[begin:]):
        return steps
    return [*steps[:begin], *(_into_ring(step) for step in steps[begin:])]


def _begins_in_ring(steps: Sequence[Step]) -> bool:
    """True for `in magic ring: 3 tr, 3 dc, ch 1, tr`: what follows the first stitches goes there too."""
    first = steps[0] if steps else None
    return isinstance(first, Work) and first.into.which == "ring"


def makes_ring(steps: Sequence[Step]) -> bool:
    """True where a remark among these steps is the making of a magic ring."""
    return any(isinstance(step, Aside) and _RING.search(step.text) for step in steps)


def _is_ring(step: Step) -> bool:
    return isinstance(step, Join) and step.to == "ring"


def _fits_ring(step: Step) -> bool:
    """True for a step that a ring can take, or that needs no place."""
    if isinstance(step, Repeat):
        return (
            step.times.how == "in all"
            and step.times.number is not None
            and all(_fits_ring(inner) for inner in step.body)
        )
    if isinstance(step, Work):
        return step.into.which == "ring" or (step.bare and step.into.which == "next" and len(step.makes) == 1)
    return isinstance(step, (Aside, Chain, Join, Slip, Turn))


def _first_work(steps: list[Step]) -> int:
    begin = 0
    while begin < len(steps) and isinstance(steps[begin], Aside):
        begin += 1
    return begin


def _into_ring(step: Step) -> Step:
    if isinstance(step, Repeat):
        return replace(step, body=tuple(_into_ring(inner) for inner in step.body))
    if not isinstance(step, Work) or step.into.which == "ring":
        return step
    make = step.makes[0] if step.into.number is None else replace(step.makes[0], times=step.into.number)
    return replace(step, makes=(make,), into=Into("ring", (), place=step.place), bare=False)
