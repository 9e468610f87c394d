"""Where everything of a chart stands: along its row by what it is worked into and what goes into it, and how high.

Positions are (along, up): along the row in units of the drawing (in turns for a round), up from the foundation (from
the middle for a round). All of it is for the pen; nothing is counted with it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from gradegen.write.chart.rows import ChartRow, ChartRows, Ref, Thing, height_of
from gradegen.write.chart.spread import spread

CHAIN = 7.2  # the length of one chain
GAP = 2.0  # between the top of a stitch and the foot of the one above it
SC_HIGH = 9.8
BASE_HIGH = 4.0  # from the middle of a foundation chain to the foot above it
BASE_WIDE = 9.4
_STILL = 0.04  # units: when nothing moves farther in a sweep, all is settled
_EVEN, _CORNER = 0.45, 12.0  # how much a thing of a round wants its even share of the way; and a corner its place
SEAM = 15.0  # of a round: room for its number and its starting chain


def stem(thing: Thing) -> float:
    """How high a thing is from its foot to its top."""
    if thing.what == "upright":
        return CHAIN * max(1, thing.length)
    chains = height_of(thing.name)
    return SC_HIGH if chains <= 1 else CHAIN * chains


def room(thing: Thing) -> float:
    """How much of the row a thing takes."""
    if thing.what == "base":
        return BASE_WIDE
    if thing.what == "sp":
        return 8.5 if thing.length <= 1 else min(6.0 + 3.0 * thing.length, 5.4 * thing.length)
    if thing.what == "picot":
        return 4.0
    if thing.what == "upright":
        return 6.5
    return 9.0 if height_of(thing.name) <= 1 else 8.4


def gap_between(one: Thing, other: Thing) -> float:
    """Room from the middle of one thing to the middle of the next."""
    together = bool(one.feet) and one.feet == other.feet
    return (room(one) + room(other)) / 2 * (0.9 if together else 1.0)


def with_room(row: ChartRow) -> list[int]:
    """The things of a row that take room, from left to right (from the seam on, anticlockwise)."""
    found = [at for at, thing in enumerate(row.things) if thing.has_room]
    return found if row.ahead == 1 else found[::-1]


@dataclass(slots=True)
class Pull:
    """What pulls at the things of each row, found once: the fan each stands in, what is below it and what above."""

    order: list[list[int]]
    offsets: list[list[float]]
    fans: list[list[tuple[Ref, ...]]]
    above: dict[Ref, list[Ref]]
    gaps: list[list[float]]


def pulls(chart: ChartRows) -> Pull:
    """The ties between the rows."""
    order = [with_room(row) for row in chart.rows]
    offsets, fans = [], []
    above: dict[Ref, list[Ref]] = {}
    for at, row in enumerate(chart.rows):
        beside, feet = _fans(row, order[at])
        offsets.append(beside)
        fans.append(feet)
        for thing in order[at]:
            for foot in row.things[thing].feet:
                above.setdefault(foot, []).append((at, thing))
    gaps = [
        [gap_between(row.things[one], row.things[other]) for one, other in pairwise(places)]
        for row, places in zip(chart.rows, order, strict=True)
    ]
    return Pull(order, offsets, fans, above, gaps)


def _fans(row: ChartRow, order: Sequence[int]) -> tuple[list[float], list[tuple[Ref, ...]]]:
    """How far beside its foot each thing wants to stand, and that foot; chains between two of one fan belong to it."""
    offsets = [0.0] * len(row.things)
    feet = [thing.feet for thing in row.things]
    start = 0
    while start < len(order):
        foot = row.things[order[start]].feet
        last = start
        for at in range(start + 1, len(order)):
            here = row.things[order[at]]
            if foot and here.feet == foot:
                last = at
            elif here.feet or here.what == "upright":
                break
        members = [row.things[order[at]] for at in range(start, last + 1)]
        places = [0.0]
        for one, other in pairwise(members):
            places.append(places[-1] + gap_between(one, other))
        for at, place in zip(range(start, last + 1), places, strict=True):
            offsets[order[at]] = place - places[-1] / 2
            feet[order[at]] = foot
        start = last + 1
    return offsets, feet


@dataclass(slots=True)
class Layout:
    """Along and up of every thing that takes room. `unit`: how much of `along` one unit is, row by row (flat: 1)."""

    chart: ChartRows
    pull: Pull
    along: list[list[float]]
    up: list[list[float]]
    unit: list[float]

    def feet_up(self, thing: Thing) -> list[float]:
        """How high each foot of a thing stands."""
        return [self.top_of((row, at)) for row, at in thing.feet]

    def near(self, along: float, here: float) -> float:
        """The same place, in a round as many turns on or back as bring it nearest to here."""
        return along + round(here - along) if self.chart.is_round else along

    def top_of(self, ref: Ref) -> float:
        """Where a stitch worked into this begins."""
        row, at = ref
        return self.up[row][at] + (BASE_HIGH if self.chart.rows[row].is_base else GAP)


def start_layout(chart: ChartRows) -> Layout:
    """Everything in order, one beside the other; nothing settled yet."""
    pull = pulls(chart)
    along = [[0.0] * len(row.things) for row in chart.rows]
    for places, order in zip(along, pull.order, strict=True):
        for at, thing in enumerate(order):
            places[thing] = at * BASE_WIDE
    up = [[0.0] * len(row.things) for row in chart.rows]
    return Layout(chart, pull, along, up, [1.0] * len(chart.rows))


Even = list[tuple[float, float]]  # where each thing would stand, and how much it wants that


@dataclass(slots=True)
class Seam:
    """Where a round begins and ends, in turns, and the corners it must keep: thing -> where it stands."""

    start: float
    end: float
    corners: Mapping[int, float]


def settle_along(layout: Layout, sweeps: int, seams: Sequence[Seam] | None = None, first: int = 0) -> None:
    """Ties settled in sweeps up and down, in rounds between the two sides of their seam, until nothing moves much.

    `first`: rows before it stay where they are.
    """
    number = len(layout.chart.rows)
    even = [evenly(layout, at, seams[at]) for at in range(number)] if seams else []
    for sweep in range(sweeps):
        moved = 0.0
        for at in range(first, number) if sweep % 2 == 0 else range(number - 1, first - 1, -1):
            seam = (seams[at], even[at]) if seams else None
            moved = max(moved, _settle_row(layout, at, seam, with_above=sweep > 0) / layout.unit[at])
        if sweep > 1 and moved < _STILL:
            return


def _settle_row(layout: Layout, at: int, seam: tuple[Seam, Even] | None, *, with_above: bool) -> float:
    """Settles one row; how far the thing moved that moved most."""
    along, order, unit = layout.along[at], layout.pull.order[at], layout.unit[at]
    pairs = [_wanted(layout, (at, thing), with_above=with_above) for thing in order]
    bounds = (-1e9, 1e9)
    if seam is not None:
        pairs = [_both(*pair, *even) for pair, even in zip(pairs, seam[1], strict=True)]
        bounds = (seam[0].start, seam[0].end)
    wanted, weights = [want for want, _ in pairs], [weight for _, weight in pairs]
    _between(wanted, weights, 8.0 * unit)
    gaps = [gap * unit for gap in layout.pull.gaps[at]]
    moved = 0.0
    for thing, place in zip(order, spread(wanted, weights, gaps, *bounds), strict=True):
        moved = max(moved, abs(along[thing] - place))
        along[thing] = place
    return moved


def evenly(layout: Layout, at: int, seam: Seam) -> Even:
    """Where the things of a round would stand if nothing pulled at them, and how much they want that.

    Each has its share of the way from seam to seam, or from corner to corner.
    """
    order = layout.pull.order[at]
    rooms = [room(layout.chart.rows[at].things[thing]) for thing in order]
    middles = [before + each / 2 for before, each in zip(accumulate(rooms, initial=0.0), rooms, strict=False)]
    knots = [(0.0, seam.start), (sum(rooms), seam.end)]
    knots += [(middles[order.index(thing)], where) for thing, where in seam.corners.items()]
    knots.sort()
    found = []
    for thing, middle in zip(order, middles, strict=True):
        right = next(at for at in range(1, len(knots)) if knots[at][0] >= middle or at == len(knots) - 1)
        (low, start), (high, end) = knots[right - 1], knots[right]
        place = start + (end - start) * (middle - low) / ((high - low) or 1.0)
        found.append((seam.corners.get(thing, place), _CORNER if thing in seam.corners else _EVEN))
    return found


def _both(want: float, weight: float, even: float, more: float) -> tuple[float, float]:
    return (want * weight + even * more) / (weight + more), weight + more


def _wanted(layout: Layout, ref: Ref, *, with_above: bool) -> tuple[float, float]:
    """Where a thing wants to stand and how much; weight 0: only between its neighbours."""
    at, thing = ref
    pull, along = layout.pull, layout.along
    here = along[at][thing]
    feet = pull.fans[at][thing]
    total, weight = 0.0, 0.0
    if feet:
        below = sum(layout.near(along[row][one], here) for row, one in feet) / len(feet)
        total, weight = below + pull.offsets[at][thing] * layout.unit[at], 1.0
    for row, one in pull.above.get(ref, ()) if with_above else ():
        share = 1 / len(pull.fans[row][one])
        others = [layout.near(along[r][o], here) for r, o in pull.fans[row][one] if (r, o) != ref]
        mine = layout.near(along[row][one], here) - pull.offsets[row][one] * layout.unit[row]
        mine = mine / share - sum(others) if others else mine
        total, weight = total + 0.7 * share * mine, weight + 0.7 * share
    if not feet and at == 0:
        total, weight = total + 0.02 * here, weight + 0.02
    return (total / weight, weight) if weight else (0.0, 0.0)


def _between(wanted: list[float], weights: list[float], step: float) -> None:
    """Things that want nothing themselves stand between their neighbours, and give way easily."""
    sure = [at for at, weight in enumerate(weights) if weight]
    for at, weight in enumerate(weights) if sure else ():
        if weight:
            continue
        left = max((one for one in sure if one < at), default=None)
        right = min((one for one in sure if one > at), default=None)
        if left is not None and right is not None:
            wanted[at] = wanted[left] + (wanted[right] - wanted[left]) * (at - left) / (right - left)
        else:
            near = sure[0] if left is None else left
            wanted[at] = wanted[near] + (at - near) * step
        weights[at] = 0.05


# how high -------------------------------------------------------------------------------------------------------------


def raise_row(layout: Layout, at: int, floor: float) -> None:
    """How high everything of a row stands: each stitch its own height above its foot; `floor`: where none has one."""
    row, up = layout.chart.rows[at], layout.up[at]
    if row.is_base:
        return
    for thing in layout.pull.order[at]:
        one = row.things[thing]
        if one.what in ("st", "upright"):
            feet = layout.feet_up(one)
            up[thing] = (sum(feet) / len(feet) if feet else foot_beside(layout, at, thing, floor)) + stem(one)


def foot_beside(layout: Layout, at: int, thing: int, floor: float) -> float:
    """How high a thing without a foot begins: as the nearest thing of the row below."""
    if at == 0:
        return floor
    below = layout.pull.order[at - 1]
    here = layout.along[at][thing]
    near = min(below, key=lambda one: abs(layout.near(layout.along[at - 1][one], here) - here), default=None)
    return floor if near is None else layout.top_of((at - 1, near))


def raise_spaces(layout: Layout, at: int) -> None:
    """Chain spaces hang between their neighbours' tops, and bulge as far as their chains are longer than the way."""
    row, up = layout.chart.rows[at], layout.up[at]
    for thing in layout.pull.order[at]:
        one = row.things[thing]
        if one.what not in ("sp", "picot"):
            continue
        (left, left_up), (right, right_up) = ends_of(layout, at, thing)
        level = (left_up + right_up) / 2
        if one.what == "sp":
            level += bulge(one.length * CHAIN, abs(right - left) / layout.unit[at])
        up[thing] = level + (1.0 if one.what == "picot" else 1.6)


Standing = tuple[float, float]  # along and up


def ends_of(layout: Layout, at: int, thing: int) -> tuple[Standing, Standing]:
    """Where the chains of a space begin and end, from left to right: at the tops of the solid things beside it."""
    row, order = layout.chart.rows[at], layout.pull.order[at]
    place = order.index(thing)
    solid = [row.things[one].what in ("st", "upright", "base") for one in order]
    left = next((one for one in range(place - 1, -1, -1) if solid[one]), None)
    right = next((one for one in range(place + 1, len(order)) if solid[one]), None)
    known = [one for one in (left, right) if one is not None]
    if not known:
        here = layout.along[at][thing]
        return (here - 4 * layout.unit[at], 0.0), (here + 4 * layout.unit[at], 0.0)
    sides = [_end(layout, at, one, thing, known[0]) for one in (left, right)]
    return sides[0], sides[1]


def _end(layout: Layout, at: int, side: int | None, thing: int, other: int) -> Standing:
    """The top of a solid thing; where none is there, the row closes: at the top of its first thing, one turn on."""
    along, up, order = layout.along[at], layout.up[at], layout.pull.order[at]
    if side is not None:
        return along[order[side]], up[order[side]]
    row = layout.chart.rows[at]
    solid = [one for one in order if row.things[one].what in ("st", "upright")]
    far = solid[0] if along[order[other]] < along[thing] else solid[-1]
    if layout.chart.is_round:
        return along[far] + (1.0 if along[order[other]] < along[thing] else -1.0), up[far]
    way = along[thing] - along[order[other]]
    first = solid[0] if row.ahead == 1 else solid[-1]
    return along[thing] + way, up[first]


def bulge(length: float, way: float) -> float:
    """How far a chain of this length rises above the straight way between its ends."""
    if length <= way:
        return 0.0
    return min(math.sqrt(3 * way * (length - way) / 8), 0.42 * length)
