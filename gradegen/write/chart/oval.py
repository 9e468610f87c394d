"""Charts of ovals: rounds that go along one side of a chain, around its end, and back along its other side."""

from __future__ import annotations

import math

from gradegen.write.chart.frames import Oval
from gradegen.write.chart.layout import BASE_WIDE, GAP, Layout, Seam, settle_along, start_layout, stem
from gradegen.write.chart.round import raise_round, seam_of
from gradegen.write.chart.rows import ChartRows

_SWEEPS, _PASSES = 40, 2
_MIDDLE = 0.6  # of the way out: there equal steps around an end and along a side are equal ways


def lay_oval(chart: ChartRows) -> tuple[Layout, Oval]:
    """Where everything of an oval stands; its chain lies level in the middle and is met from both sides."""
    layout = start_layout(chart)
    number = sum(not thing.again for thing in chart.rows[0].things)
    frame = _frame(chart, number)
    layout.along[0] = [frame.side * (number - 0.5 - at) / number for at in range(number)]
    layout.along[0] += [frame.side + frame.turn + frame.side * (at + 0.5) / number for at in range(number)]
    layout.along[0] = layout.along[0][: len(chart.rows[0].things)]
    start = -frame.turn / 2
    for at in range(1, len(chart.rows)):
        order = layout.pull.order[at]
        for place, thing in enumerate(order):
            layout.along[at][thing] = start + (place + 0.5) / len(order)
    for _ in range(_PASSES):
        for at in range(1, len(chart.rows)):
            raise_round(layout, at, frame, GAP)
        halves = [seam_of(chart) / 2 * unit for unit in layout.unit]
        settle_along(layout, _SWEEPS, [Seam(start + half, start + 1 - half, {}) for half in halves], first=1)
    for at in range(1, len(chart.rows)):
        raise_round(layout, at, frame, GAP)
    return layout, frame


def _frame(chart: ChartRows, number: int) -> Oval:
    """Half the chain, and how much of the way around each side and each end takes."""
    half = number * BASE_WIDE / 2
    high = sum(max((stem(thing) for thing in row.things), default=0.0) + GAP for row in chart.rows[1:])
    around = 4 * half + 2 * math.pi * _MIDDLE * high
    side = 2 * half / around
    return Oval(half=half, side=side, turn=0.5 - side)
