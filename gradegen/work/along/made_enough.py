"""`repeat from * across until 12 sps are made`: what is made says how often a repeat runs, not the edge."""

from __future__ import annotations

from collections.abc import Callable

from gradegen.design.rows import Bound, Repeat
from gradegen.work.along.judge import units_of
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import tally, tidy
from gradegen.work.edge.stops import Unclear


def run_until_made(walk: Walk, step: Repeat, bound: Bound, runs: Callable[[int], int]) -> None:
    """Runs until so many are made; what the edge has besides stays unworked."""
    wanted = walk.site.number(bound.number)
    start = _made(walk, bound)
    runs(1)
    each = _made(walk, bound) - start
    left = wanted - start - each
    if each <= 0 or left < 0 or left % each:
        raise Unclear("how often this repeat runs can't be told from what is made", step.place)
    runs(left // each)
    walk.unworked = True


def _made(walk: Walk, bound: Bound) -> int:
    """How many of the thing this row has made so far."""
    thing = bound.thing
    name = thing.name if thing is not None else "st"
    if thing is not None and thing.length is not None:
        name = f"ch-{walk.site.number(thing.length)} sp"
    standing = tally(tidy(walk.out))
    if name == "st":
        return sum(number for one, number in standing.items() if one.kind == "st")
    return units_of(standing).get(name, 0)
