"""Flat charts: rows one above the other, the foundation at the bottom."""

from __future__ import annotations

from gradegen.write.chart.frames import Straight
from gradegen.write.chart.layout import Layout, raise_row, raise_spaces, settle_along, start_layout
from gradegen.write.chart.rows import ChartRows

_SWEEPS = 80


def lay_flat(chart: ChartRows) -> tuple[Layout, Straight]:
    """Where everything of a flat chart stands."""
    layout = start_layout(chart)
    settle_along(layout, _SWEEPS)
    for at in range(len(chart.rows)):
        raise_row(layout, at, 0.0)
        raise_spaces(layout, at)
    return layout, Straight()
