"""The two edges of a piece from its first row to its last: where they run, in stitches and rows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.write.drawing.courses import Course, Event, events_in

Corner = tuple[Fraction, int]  # stitches from the left end of the first row, rows up


@dataclass(slots=True)
class Sides:
    """Both edges as they grow; `shaped`: for each course, which edges it moves; `steps`: stitches left at once."""

    left: list[Corner]
    right: list[Corner]
    shaped: list[set[str]] = field(default_factory=list)
    steps: dict[int, list[tuple[Corner, Corner]]] = field(default_factory=dict)

    def width(self) -> Fraction:
        """Stitches across the last row."""
        return self.right[-1][0] - self.left[-1][0]

    def at(self, rows: int, *, below: bool = False) -> tuple[Fraction, Fraction]:
        """Where both edges are after so many rows; of a step what lies above it, or below it."""
        return _where(self.left, rows, below), _where(self.right, rows, below)


def find_sides(courses: Sequence[Course], checked: Checked, size: GradedSize, *, is_flat: bool) -> Sides:
    """The edges of a piece, its shaping where its schedules put it."""
    wide = Fraction(courses[0].after)
    sides = Sides([(Fraction(0), 0)], [(wide, 0)])
    edges: dict[str, str] = {}
    begins = 0
    for at, course in enumerate(courses):
        events = events_in(course, checked, size, edges, is_flat=is_flat) if at else ()
        sides.shaped.append({name for event in events for name in ("left", "right") if getattr(event, name)})
        _grow(sides, at, events, begins)
        begins += course.rows
        for track in (sides.left, sides.right):
            _add(track, (track[-1][0], begins))
    return sides


def _grow(sides: Sides, at: int, events: Sequence[Event], begins: int) -> None:
    for name, track, way in (("left", sides.left, -1), ("right", sides.right, 1)):
        for event in events:
            change = getattr(event, name) * way
            if not change:
                continue
            before, row = track[-1][0], begins + event.row
            if event.is_step:
                _add(track, (before, row - 1))
                _add(track, (before + change, row - 1))
                sides.steps.setdefault(at, []).append(((before, row - 1), (before + change, row - 1)))
            else:
                _add(track, (before + change, row))


def _add(track: list[Corner], corner: Corner) -> None:
    """One corner more; one that lies on the line between its neighbours is left out."""
    if corner == track[-1]:
        return
    if len(track) > 1 and _in_line(track[-2], track[-1], corner):
        track.pop()
    track.append(corner)


def _in_line(a: Corner, b: Corner, c: Corner) -> bool:
    straight = (b[0] - a[0]) * (c[1] - b[1]) == (c[0] - b[0]) * (b[1] - a[1])
    return straight and (c[1] - b[1]) * (b[1] - a[1]) >= 0 and (c[0] - b[0]) * (b[0] - a[0]) >= 0


def _where(track: Sequence[Corner], rows: int, below: bool) -> Fraction:
    place = track[0][0]
    for (x, low), (to, high) in pairwise(track):
        if below and low == high == rows and rows:
            return x
        if high <= rows:
            place = to
        elif low <= rows:
            return x + (to - x) * (rows - low) / (high - low)
    return place
