"""Which function works which kind of step; each module of this room signs up its own."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, TypeVar

from gradegen.design.rows import Either, Step
from gradegen.work.along.tracing import note_step
from gradegen.work.along.walk import Walk

Doing = Callable[[Walk, Any], None]
_HOW: dict[type, Doing] = {}
D = TypeVar("D", bound=Doing)


def works(*kinds: type) -> Callable[[D], D]:
    """Sign up a function as the one that works these kinds of step."""

    def sign(doing: D) -> D:
        _HOW.update(dict.fromkeys(kinds, doing))
        return doing

    return sign


def do(walk: Walk, step: Step) -> None:
    """Work one step."""
    walk.at = step.place
    if walk.placing is not None:
        walk.placing.begin(step)
    if walk.trace is None:
        _HOW[type(step)](walk, step)
    else:
        note_step(walk, step, _HOW[type(step)])


def run(walk: Walk, steps: Sequence[Step]) -> None:
    """Work steps in order, with no look ahead."""
    for step in steps:
        do(walk, step)


def reading_tried(walk: Walk, step: Either) -> tuple[Step, ...]:
    """The steps of the reading that is being tried."""
    key = f"either {step.place.line}:{step.place.column}"
    return step.readings[walk.site.choose(key, "wording", step.why, step.place)]
