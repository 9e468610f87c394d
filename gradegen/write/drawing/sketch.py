"""Lines and lettering gathered into one drawing; coordinates in points, y downwards, a sheet as wide as the text."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from gradegen.write.view.whole import Drawing, Lettering, Stroke

Point = tuple[float, float]

SHEET = 470.0  # points: about the width of the text on A4, less the margins of its panel
INK = "#20302f"
QUIET = "#7d8a88"
ACCENT = "#2d5a57"
TINT = "#dfe9e7"
PALE = "#ffffff"
LETTER_SIZE = 8.0
SMALL_SIZE = 7.0


def number(value: float) -> str:
    """A coordinate as written into a drawing: one decimal, so that every machine writes the same."""
    text = f"{value:.1f}"
    return "0" if text in ("-0.0", "0.0") else text.removesuffix(".0")


def path_of(points: Sequence[Point], *, closed: bool = False) -> str:
    """A line through the points, in SVG's notation."""
    steps = [f"{'L' if at else 'M'}{number(x)} {number(y)}" for at, (x, y) in enumerate(points)]
    return " ".join(steps) + (" Z" if closed else "")


def arc_points(centre: Point, across: float, down: float, start: float, end: float, steps: int = 40) -> list[Point]:
    """Points along part of an ellipse, angles in degrees, clockwise as y grows downwards."""
    turns = [math.radians(start + (end - start) * step / steps) for step in range(steps + 1)]
    return [(centre[0] + across * math.cos(turn), centre[1] + down * math.sin(turn)) for turn in turns]


@dataclass(frozen=True, slots=True)
class Extent:
    """One size of a piece: its name, and its width and length in inches."""

    size: str
    width: float
    length: float


@dataclass(frozen=True, slots=True)
class Dimensions:
    """What stands beside the two dimension lines, and the same in words."""

    width: str
    length: str
    words: str


@dataclass(slots=True)
class Sketch:
    """A drawing while it is being made."""

    strokes: list[Stroke] = field(default_factory=list)
    letterings: list[Lettering] = field(default_factory=list)
    points: list[Point] = field(default_factory=list)
    lines: list[tuple[float, float]] = field(default_factory=list)  # where lettering stands, and how large
    sides: list[float] = field(default_factory=list)  # how far lettering reaches to the left and to the right

    def line(self, points: Sequence[Point], colour: str = INK, width: float = 0.7, dashes: str = "none") -> None:
        """An open line."""
        self.points += points
        self.strokes.append(Stroke(path_of(points), colour, number(width), "none", dashes))

    def outline(self, points: Sequence[Point], colour: str = INK, width: float = 0.7, fill: str = "none") -> None:
        """A closed outline."""
        self.points += points
        self.strokes.append(Stroke(path_of(points, closed=True), colour, f"{width:g}", fill))

    def write(
        self,
        text: str,
        at: Point,
        *,
        size: float = LETTER_SIZE,
        anchor: str = "middle",
        bold: bool = False,
        turn: float = 0,
    ) -> None:
        """One word or line of lettering, standing on its point."""
        turned = f"rotate({number(turn)} {number(at[0])} {number(at[1])})" if turn else ""
        self.lines.append((at[1], size if not turn else 0.4 * size * len(text)))
        self.sides += _reach(text, at[0], size, anchor, is_upright=bool(turn))
        weight = "600" if bold else "400"
        self.letterings.append(Lettering(text, number(at[0]), number(at[1]), number(size), anchor, weight, turned))

    def measure(self, text: str, start: Point, end: Point) -> None:
        """A dimension line between two points, level or upright, with ticks at its ends and its measure beside it."""
        level = start[1] == end[1]
        tick = (0.0, 3.0) if level else (3.0, 0.0)
        self.line([start, end], QUIET, 0.6)
        for x, y in (start, end):
            self.line([(x - tick[0], y - tick[1]), (x + tick[0], y + tick[1])], QUIET, 0.6)
        middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
        if level:
            self.write(text, (middle[0], middle[1] + 11), bold=True)
        else:
            self.write(text, (middle[0] - 5, middle[1]), bold=True, turn=-90)

    def arrow(self, start: Point, end: Point, colour: str = ACCENT) -> None:
        """A line with a head at its end."""
        self.line([start, end], colour, 1.2)
        along = math.atan2(end[1] - start[1], end[0] - start[0])
        wings = [(end[0] - 6 * math.cos(along + by), end[1] - 6 * math.sin(along + by)) for by in (0.45, -0.45)]
        self.strokes.append(Stroke(path_of([wings[0], end, wings[1]], closed=True), colour, "0.6", colour))

    def drawing(self, shows: str, caption: str) -> Drawing:
        """The finished drawing, on a sheet as wide as the text and as high as what is on it."""
        heights = [y for _, y in self.points] + [edge for y, size in self.lines for edge in (y - size, y + 0.3 * size)]
        top, bottom = min(heights) - 3, max(heights) + 3
        box = f"0 {number(top)} {number(SHEET)} {number(bottom - top)}"
        reach = [x for x, _ in self.points] + self.sides
        left, wide = min(reach) - 2, max(reach) - min(reach) + 4
        tight = f"{number(left)} {number(top)} {number(wide)} {number(bottom - top)}"
        return Drawing(box, shows, caption, tuple(self.strokes), tuple(self.letterings), tight, number(wide))


def _reach(text: str, x: float, size: float, anchor: str, *, is_upright: bool) -> tuple[float, float]:
    """About how far a line of lettering reaches to both sides of its point."""
    if is_upright:
        return x - size, x + 0.3 * size
    wide = 0.6 * size * len(text)
    left = x - wide * {"start": 0, "middle": 0.5, "end": 1}[anchor]
    return left, left + wide


def with_room(names: Iterable[tuple[str, float]], gap: float) -> list[tuple[str, float]]:
    """Those of the (name, place) pairs, in order of place, that have room for lettering; first and last always."""
    ordered = list(names)
    kept: list[tuple[str, float]] = []
    for at, (name, place) in enumerate(ordered):
        is_end = at in (0, len(ordered) - 1)
        if not kept or place - kept[-1][1] >= gap:
            kept.append((name, place))
        elif is_end:
            kept[-1:] = [(name, place)] if len(kept) > 1 else [kept[-1]]
    return kept
