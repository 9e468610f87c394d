"""What each step took and made, kept for `explain`."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from gradegen.design.rows import Step, Turn
from gradegen.design.worked import WorkedStep
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import stitches, tidy, words
from gradegen.work.edge.kinds import ANY_STITCH


def note_step(walk: Walk, step: Step, doing: Callable[[Walk, Any], None]) -> None:
    """Work a step and keep a line about it, before the lines of the steps inside it."""
    trace = walk.trace
    assert trace is not None
    if walk.muted:
        doing(walk, step)
        return
    before, made, at = walk.remaining(ANY_STITCH), len(walk.out), len(trace)
    walk.depth += 1
    try:
        doing(walk, step)
    finally:
        walk.depth -= 1
        new = tidy(walk.out[made:])
        left = walk.remaining(ANY_STITCH)
        if not isinstance(step, Turn):
            takes = max(0, before - left)
            trace.insert(
                at,
                WorkedStep(
                    "", 1, takes, f"{takes} sts", stitches(new), words(new) if new else "", left, step.place, walk.depth
                ),
            )
