"""The stretch of a chart that is one repeat: where it lies, and up to which row the rows repeat by it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from gradegen.design.rows import Repeat
from gradegen.write.chart.layout import Layout

_NEAR = 0.15


@dataclass(frozen=True, slots=True)
class Band:
    """One repeat: from left to right, in the first `rows` rows, over so many stitches.

    `goes_on`: it is worked to the end of the row, so a larger piece has more of it.
    """

    left: float
    right: float
    rows: int
    over: int
    goes_on: bool


def repeat_band(layout: Layout) -> Band | None:
    """The widest repeat in the middle of the first row that has it; None where no row repeats, and in ovals."""
    if layout.chart.is_oval:
        return None
    steps = {at: step for at in range(len(layout.chart.rows)) if (step := _step(layout, at)) is not None}
    if not steps:
        return None
    widest = max(steps.values())
    first = next(at for at, step in steps.items() if _fits(widest, step) and step > (1 - _NEAR) * widest)
    row = layout.chart.rows[first]
    starts = _starts(layout, first)
    at = (len(starts) - 1) // 2
    left, right = sorted((starts[at], starts[at + 1]))
    half = _half_gap(layout, first, row.runs[at + 1].start)
    rows = next((other for other, step in steps.items() if other > first and not _fits(right - left, step)), None)
    if row.ahead == -1:
        left, right = left + half, right + half
    else:
        left, right = left - half, right - half
    steps_of_row = row.source.row.steps if row.source is not None else ()
    goes_on = any(isinstance(step, Repeat) and step.times.how == "bound" for step in steps_of_row)
    return Band(left, right, rows if rows is not None else len(layout.chart.rows), row.runs[at].over, goes_on)


def _starts(layout: Layout, at: int) -> list[float]:
    row = layout.chart.rows[at]
    firsts = [next((one for one in range(run.start, run.end) if row.things[one].has_room), None) for run in row.runs]
    return [layout.along[at][one] for one in firsts if one is not None]


def _step(layout: Layout, at: int) -> float | None:
    """How far it is from one run of the row to the next; None where a row has fewer than two."""
    starts = _starts(layout, at)
    if len(starts) < 2 or len(starts) != len(layout.chart.rows[at].runs):
        return None
    ways = [abs(other - one) for one, other in pairwise(starts)]
    return sorted(ways)[len(ways) // 2]


def _fits(widest: float, step: float) -> bool:
    """True when a repeat goes into the widest one a whole number of times, as far as the eye can tell."""
    times = widest / step
    return abs(times - round(times)) < _NEAR


def _half_gap(layout: Layout, at: int, start: int) -> float:
    """Half the way from the thing before a run to its first."""
    row = layout.chart.rows[at]
    first = next(one for one in range(start, len(row.things)) if row.things[one].has_room)
    before = next((one for one in range(first - 1, -1, -1) if row.things[one].has_room), None)
    return 0.0 if before is None else abs(layout.along[at][first] - layout.along[at][before]) / 2
