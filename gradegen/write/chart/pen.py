"""Lines and marks of a chart put on paper: SVG fragments, one decimal, so that every machine writes the same."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from gradegen.trade.chart_glyphs import marks
from gradegen.write.drawing.sketch import Point, number

_FINE = 2


def fine(value: float) -> str:
    """A coordinate with two decimals at most."""
    text = f"{value:.{_FINE}f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def mark(name: str, at: Point, turn: float = 0.0, kind: str = "", prefix: str | None = "") -> str:
    """A mark of the chart's own, put at a point, turned clockwise by degrees; `kind`: what it counts as.

    `prefix` None: with its outline, for a drawing that does not define it once for all.
    """
    turned = f" rotate({number(turn)})" if abs(turn) >= 0.05 else ""
    kind = f' class="{kind}"' if kind else ""
    place = f'transform="translate({fine(at[0])} {fine(at[1])}){turned}"'
    if prefix is None:
        known = marks()[name]
        fill = "" if known.is_filled else ' fill="none"'
        return f'<path{kind} d="{known.outline}"{fill} {place}/>'
    return f'<use{kind} href="#{prefix}{name.replace(" ", "-")}" {place}/>'


def line(points: Sequence[Point]) -> str:
    """A line through points."""
    steps = [f"{'L' if at else 'M'}{fine(x)} {fine(y)}" for at, (x, y) in enumerate(points)]
    return f'<path d="{"".join(steps)}"/>'


def curve(start: Point, control: Point, end: Point) -> str:
    """A bent line."""
    a, b, c = (f"{fine(x)} {fine(y)}" for x, y in (start, control, end))
    return f'<path fill="none" d="M{a}Q{b} {c}"/>'


def between(start: Point, end: Point, share: float) -> Point:
    """The point so far along the way."""
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


def lean(start: Point, end: Point) -> float:
    """How far a stem leans clockwise from upright, in degrees; y grows downwards."""
    return math.degrees(math.atan2(end[0] - start[0], start[1] - end[1]))


def distance(start: Point, end: Point) -> float:
    """The straight way."""
    return math.hypot(end[0] - start[0], end[1] - start[1])


def beside(start: Point, end: Point, share: float, aside: float) -> Point:
    """A point along the way and so far to the right of it."""
    x, y = between(start, end, share)
    long = distance(start, end) or 1.0
    return x - (end[1] - start[1]) / long * aside, y + (end[0] - start[0]) / long * aside


def arch(start: Point, end: Point, rise: float, away: Point, steps: int = 24) -> list[Point]:
    """Points along a parabola from start to end that rises towards `away` (a direction of length 1)."""
    found = []
    for at in range(steps + 1):
        share = at / steps
        x, y = between(start, end, share)
        high = 4 * rise * share * (1 - share)
        found.append((x + away[0] * high, y + away[1] * high))
    return found


def along(points: Sequence[Point], shares: Sequence[float]) -> list[tuple[Point, float]]:
    """The points that lie so far along a line, each with the direction of the line there, in degrees."""
    ways = [0.0]
    for one, other in pairwise(points):
        ways.append(ways[-1] + distance(one, other))
    found = []
    for share in shares:
        wanted = share * ways[-1]
        at = next((at for at in range(1, len(ways)) if ways[at] >= wanted - 1e-9), len(ways) - 1)
        step = ways[at] - ways[at - 1] or 1.0
        place = between(points[at - 1], points[at], (wanted - ways[at - 1]) / step)
        (x, y), (to_x, to_y) = points[at - 1], points[at]
        found.append((place, math.degrees(math.atan2(to_y - y, to_x - x))))
    return found
