"""Charts in the round: from the middle outwards, as a disc, or with corners where the rounds have some."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from gradegen.write.chart.frames import Around
from gradegen.write.chart.layout import (
    CHAIN,
    GAP,
    Layout,
    Seam,
    raise_row,
    raise_spaces,
    room,
    settle_along,
    start_layout,
)
from gradegen.write.chart.rows import ChartRows

SEAM, NARROW_SEAM = 20.0, 13.0  # where a round begins: room for its number, and for a starting chain where one is
RING = 5.0
_SWEEPS, _PASSES = 40, 3
_FEWEST, _MOST = 3, 8  # corners that a motif may have


def lay_round(chart: ChartRows) -> tuple[Layout, Around]:
    """Where everything of a chart in the round stands."""
    layout = start_layout(chart)
    corners = corners_of(layout)
    frame = Around()
    starts = [0.0] * len(chart.rows)
    for turn in range(_PASSES):
        for at in range(len(chart.rows)):
            if turn == 0:
                starts[at] = _start(layout, at, starts)
                _line_up(layout, at, starts[at])
            raise_round(layout, at, frame, ring_radius(chart) + GAP)
            starts[at] = _start(layout, at, starts)
            if turn == 0:
                _line_up(layout, at, starts[at])
        seams = [_seam(layout, at, starts[at], corners, frame) for at in range(len(chart.rows))]
        settle_along(layout, _SWEEPS, seams)
        if corners:
            frame = Around(len(next(iter(corners.values()))), _first_corner(layout, corners))
    for at in range(len(chart.rows)):
        raise_round(layout, at, frame, ring_radius(chart) + GAP)
    return layout, frame


def _line_up(layout: Layout, at: int, start: float) -> None:
    """The things of a round one after the other from its beginning on."""
    order = layout.pull.order[at]
    for place, thing in enumerate(order):
        layout.along[at][thing] = start + (place + 0.5) / len(order)


def _start(layout: Layout, at: int, starts: Sequence[float]) -> float:
    """Where a round begins: where the one before did, or farther on, where slip stitches have led to."""
    order = layout.pull.order[at]
    if at == 0 or not order:
        return 0.0
    row, below = layout.chart.rows[at], layout.pull.order[at - 1]
    first = order[0] if row.ahead == 1 else order[-1]
    feet = layout.pull.fans[at][first]
    if not feet or feet[0][1] in (*below[:2], *below[-2:]):
        return starts[at - 1]
    here = layout.along[at - 1][feet[0][1]] + layout.pull.offsets[at][first] * layout.unit[at]
    aside = seam_of(layout.chart) / 2 * layout.unit[at]
    return here - aside if row.ahead == 1 else here + aside - 1


def _seam(layout: Layout, at: int, start: float, corners: Mapping[int, Sequence[int]], frame: Around) -> Seam:
    half = seam_of(layout.chart) / 2 * layout.unit[at]
    kept = {}
    for thing in corners.get(at, ()) if frame.corners else ():
        here = layout.along[at][thing]
        kept[thing] = frame.first + round((here - frame.first) * frame.corners) / frame.corners
    return Seam(start + half, start + 1 - half, kept)


def corners_of(layout: Layout) -> dict[int, list[int]]:
    """The corner spaces of each round, from the first round that has any: equally many, each in the one below.

    {} where the rounds have none, or do not keep them.
    """
    found: dict[int, list[int]] = {}
    for at, row in enumerate(layout.chart.rows):
        spaces = [thing for thing in layout.pull.order[at] if row.things[thing].what == "sp"]
        longest = max((row.things[thing].length for thing in spaces), default=0)
        corners = [thing for thing in spaces if row.things[thing].length == longest]
        if not found and not _FEWEST <= len(corners) <= _MOST:
            continue
        below = found.get(at - 1)
        if below is not None and not _stand_on(layout, at, corners, below):
            return {}
        found[at] = corners
    return found if len(found) > 1 else {}


def _stand_on(layout: Layout, at: int, corners: Sequence[int], below: Sequence[int]) -> bool:
    fans = [layout.pull.fans[at][thing] for thing in corners]
    return sorted(fans) == sorted(((at - 1, thing),) for thing in below)


def _first_corner(layout: Layout, corners: Mapping[int, Sequence[int]]) -> float:
    """Where in a side's length, in turns, the corners lie on the whole."""
    at = max(corners)
    number = len(corners[at])
    x = sum(math.cos(2 * math.pi * number * layout.along[at][thing]) for thing in corners[at])
    y = sum(math.sin(2 * math.pi * number * layout.along[at][thing]) for thing in corners[at])
    return math.atan2(y, x) / (2 * math.pi * number)


def seam_of(chart: ChartRows) -> float:
    """How much room is left where the rounds begin."""
    beside = any(thing.what == "join" or not thing.has_room for row in chart.rows for thing in row.things)
    return SEAM if beside else NARROW_SEAM


def ring_radius(chart: ChartRows) -> float:
    """How large the ring in the middle is."""
    return max(RING, chart.middle_chains * CHAIN / (2 * math.pi))


def raise_round(layout: Layout, at: int, frame: Around, floor: float) -> None:
    """The round's stitches on the one before; farther out where they would not find room. `floor`: of the first."""
    raise_row(layout, at, floor)
    row, order, up = layout.chart.rows[at], layout.pull.order[at], layout.up[at]
    solid = [thing for thing in order if row.things[thing].what in ("st", "upright")]
    if solid:
        usual = sum(up[thing] for thing in solid) / len(solid)
        needed = seam_of(layout.chart) + sum(layout.pull.gaps[at]) + room(row.things[order[0]])
        farther = max(0.0, frame.up_for(needed) - usual)
        for thing in solid:
            up[thing] += farther
        layout.unit[at] = 1 / frame.perimeter(usual + farther)
    raise_spaces(layout, at)
