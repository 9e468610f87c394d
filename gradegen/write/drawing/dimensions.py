"""Dimension lines around a drawing: level ones above and below it, upright ones beside it, in lanes."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from gradegen.write.drawing.outline import Point, Side
from gradegen.write.drawing.sketch import ACCENT, INK, LETTER_SIZE, QUIET, Sketch, room_for


@dataclass(frozen=True, slots=True)
class Spacing:
    """Points: from the drawing to the first dimension line, from one to the next, and how large letters are."""

    first: float = 11.0
    lane: float = 13.0
    letters: float = LETTER_SIZE

    @property
    def drop(self) -> float:
        """From the middle of a letter down to the line it stands on."""
        return 0.36 * self.letters


USUAL, LARGE = Spacing(), Spacing(26.0, 31.0, 23.5)


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measure as it is drawn: its letter, what stands in its line, and the points it runs through on the sheet."""

    letter: str
    text: str
    points: tuple[Point, ...]
    side: Side

    @property
    def is_level(self) -> bool:
        """True for widths."""
        return self.side in ("above", "below")

    @property
    def ends(self) -> tuple[float, float]:
        """From where to where it runs, along its line."""
        along = [point[0 if self.is_level else 1] for point in (self.points[0], self.points[-1])]
        return min(along), max(along)


def lanes_of(dimensions: Iterable[Dimension], side: Side) -> list[list[Dimension]]:
    """The lanes of one side, the shortest dimensions nearest to the drawing; in one lane they only touch."""
    lanes: list[list[Dimension]] = []
    wanted = [one for one in dimensions if one.side == side]
    for one in sorted(wanted, key=lambda each: (each.ends[1] - each.ends[0], each.ends)):
        low, high = one.ends
        free = next(
            (
                lane
                for lane in reversed(lanes[-1:])
                if all(high <= other.ends[0] + 0.1 or low >= other.ends[1] - 0.1 for other in lane)
            ),
            None,
        )
        if free is None:
            lanes.append([one])
        else:
            free.append(one)
    return lanes


def room_beside(dimensions: Sequence[Dimension], side: Side, spacing: Spacing) -> float:
    """How much room the dimension lines of one side take."""
    lanes = len(lanes_of(dimensions, side))
    return spacing.first + spacing.lane * lanes if lanes else 4.0


def draw_dimensions(
    sketch: Sketch, dimensions: Sequence[Dimension], box: tuple[float, float, float, float], spacing: Spacing
) -> None:
    """All of them around the box of the drawing (left, top, right, bottom); those inside and along where they are."""
    left, top, right, bottom = box
    starts: dict[Side, tuple[float, int]] = {
        "left": (left, -1), "right": (right, 1), "above": (top, -1), "below": (bottom, 1)
    }  # fmt: skip
    for side, (edge, way) in starts.items():
        for at, lane in enumerate(lanes_of(dimensions, side)):
            for one in lane:
                _draw(sketch, one, edge + way * (spacing.first + spacing.lane * at), spacing)
    for one in dimensions:
        if one.side == "inside":
            _draw(sketch, one, one.points[0][0], spacing)
        elif one.side == "along":
            _draw_along(sketch, one, spacing)
        elif one.side == "around":
            _draw_around(sketch, one, spacing)


def _draw(sketch: Sketch, one: Dimension, lane: float, spacing: Spacing) -> None:
    """One dimension: thin lines from the drawing to it, its line with ticks, its letter in a gap of the line."""
    start, end = one.points[0], one.points[-1]
    level = one.is_level
    ends = [(start[0], lane), (end[0], lane)] if level else [(lane, start[1]), (lane, end[1])]
    if one.side != "inside":
        for place, to in zip((start, end), ends, strict=True):
            sketch.line([_towards(place, to, 2.0), _towards(to, place, -2.5)], QUIET, 0.3)
    for x, y in ends:
        sketch.line([(x - 2, y + 2), (x + 2, y - 2)], INK, 0.7)
    length = math.dist(*ends)
    text = one.text if room_for(one.text, spacing.letters) + 12 <= length else one.letter
    middle = ((ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2)
    gap = room_for(text, spacing.letters) + 4 if level or len(text) > 2 else spacing.letters + 1
    of = f"measure {one.letter}"
    if gap + 8 > length:
        sketch.line(ends, ACCENT if one.side == "inside" else QUIET, 0.6, of=of)
        _write(sketch, one, text, _off(one, middle, lane, spacing), spacing)
        return
    _broken(sketch, ends, gap, of)
    turn = 0 if level or len(text) <= 2 else -90
    drop = spacing.drop
    at = (middle[0], middle[1] + drop) if not turn else (middle[0] + drop, middle[1])
    _write(sketch, one, text, at, spacing, turn=turn)


def _off(one: Dimension, middle: Point, lane: float, spacing: Spacing) -> Point:
    """Beside the middle of a dimension line that has no room for a gap, away from the drawing."""
    drop = spacing.drop
    if one.is_level:
        return middle[0], lane + 7 + drop if one.side == "below" else lane - 3.5
    return lane + (5 + drop) * (1 if one.side == "right" else -1), middle[1] + drop


def _write(
    sketch: Sketch, one: Dimension, text: str, at: Point, spacing: Spacing, *, turn: float = 0, anchor: str = "middle"
) -> None:
    sketch.write(text, at, size=spacing.letters, anchor=anchor, bold=True, turn=turn, of=one.letter)


def _broken(sketch: Sketch, ends: Sequence[Point], gap: float, of: str) -> None:
    """The dimension line in two parts, the lettering's place left free; the first part is named, with its whole."""
    (x, y), (to_x, to_y) = ends
    length = math.dist(*ends)
    share = (length - gap) / 2 / length - 0.5 / length
    near = (x + (to_x - x) * share, y + (to_y - y) * share)
    far = (to_x - (to_x - x) * share, to_y - (to_y - y) * share)
    sketch.line([ends[0], near], QUIET, 0.6, of=of)
    sketch.line([far, ends[1]], QUIET, 0.6, of=of)


def _towards(place: Point, to: Point, by: float) -> Point:
    """So many points from one place in the direction of another; away from it below 0."""
    far = math.dist(place, to)
    if far < 0.01:
        return place
    return place[0] + (to[0] - place[0]) * by / far, place[1] + (to[1] - place[1]) * by / far


# along an edge ----------------------------------------------------------------------------------------------------


def _draw_along(sketch: Sketch, one: Dimension, spacing: Spacing) -> None:
    """A measure taken along an edge: a line that keeps its distance from it, the letter at two thirds of it."""
    apart = [beside(one.points, at, 7.0) for at in range(len(one.points))]
    sketch.line(apart, QUIET, 0.6)
    for at in (0, len(one.points) - 1):
        sketch.line([beside(one.points, at, 4.0), beside(one.points, at, 10.0)], INK, 0.7)
    places = [(a[0] + b[0]) / 2 for a, b in pairwise(apart)]
    at = min(range(len(places)), key=lambda each: abs(each - len(places) // 2))
    middle = ((apart[at][0] + apart[at + 1][0]) / 2, (apart[at][1] + apart[at + 1][1]) / 2)
    outer = beside(one.points, at, 7.0 + spacing.letters)
    away = _towards(middle, (outer[0] + middle[0] - apart[at][0], outer[1] + middle[1] - apart[at][1]), spacing.letters)
    anchor = "middle" if abs(away[0] - middle[0]) < 5 else "end" if away[0] < middle[0] else "start"
    place = (away[0], away[1] + spacing.drop)
    is_clear = anchor != "middle" or not _is_met(place, room_for(one.text, spacing.letters), apart, spacing)
    _write(sketch, one, one.text if is_clear else one.letter, place, spacing, anchor=anchor)


def _is_met(place: Point, wide: float, line: Sequence[Point], spacing: Spacing) -> bool:
    """True when the line runs through words of this width that stand about a place, as a hollow one does."""
    steps = [share / 16 for share in range(17)]
    places = [(a[0] + (b[0] - a[0]) * by, a[1] + (b[1] - a[1]) * by) for a, b in pairwise(line) for by in steps]
    near = [y for x, y in places if abs(x - place[0]) <= wide / 2 + 1]
    return any(place[1] - spacing.letters <= y <= place[1] + 2 for y in near)


def _draw_around(sketch: Sketch, one: Dimension, spacing: Spacing) -> None:
    """A measure taken around a piece seen from the side: the half of it that is seen, the letter below its middle."""
    sketch.line(one.points, ACCENT, 0.9, "3 2.5", of=f"measure {one.letter}")
    x, y = one.points[len(one.points) // 2]
    wide = abs(one.points[-1][0] - one.points[0][0])
    text = one.text if room_for(one.text, spacing.letters) + 4 <= wide else one.letter
    _write(sketch, one, text, (x, y + 3 + spacing.letters), spacing)


def beside(line: Sequence[Point], at: int, distance: float) -> Point:
    """A point at that distance from a line, square to it, to the left of its way as it is seen."""
    before, after = line[max(at - 1, 0)], line[min(at + 1, len(line) - 1)]
    x, y = after[0] - before[0], after[1] - before[1]
    length = math.hypot(x, y) or 1.0
    return line[at][0] + y / length * distance, line[at][1] - x / length * distance
