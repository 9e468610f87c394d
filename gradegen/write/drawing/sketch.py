"""Lines and lettering gathered into one drawing; coordinates in points, y downwards."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from gradegen.write.view.whole import Drawing, Lettering, Stroke

Point = tuple[float, float]

SHEET = 470.0  # points: about the width of the text on A4, less the margins of its panel
HALF_SHEET = 216.0  # of two drawings beside each other
INK = "#20302f"
QUIET = "#6b7977"
ACCENT = "#2d5a57"
TINT = "#dfe9e7"
PALE = "#ffffff"
LETTER_SIZE = 8.0
SMALL_SIZE = 7.0


def number(value: float) -> str:
    """A coordinate as written into a drawing: two decimals, so that every machine writes the same."""
    text = f"{value:.2f}".rstrip("0").removesuffix(".")
    return "0" if text in ("-0", "") else text


def path_of(points: Sequence[Point], *, closed: bool = False) -> str:
    """A line through the points, in SVG's notation."""
    steps = [f"{'L' if at else 'M'}{number(x)} {number(y)}" for at, (x, y) in enumerate(points)]
    return " ".join(steps) + (" Z" if closed else "")


def arc_points(centre: Point, across: float, down: float, start: float, end: float, steps: int = 40) -> list[Point]:
    """Points along part of an ellipse, angles in degrees, clockwise as y grows downwards."""
    turns = [math.radians(start + (end - start) * step / steps) for step in range(steps + 1)]
    return [(centre[0] + across * math.cos(turn), centre[1] + down * math.sin(turn)) for turn in turns]


def room_for(text: str, size: float = LETTER_SIZE) -> float:
    """About how wide lettering is."""
    return 0.56 * size * len(text)


@dataclass(slots=True)
class Sketch:
    """A drawing while it is being made."""

    strokes: list[Stroke] = field(default_factory=list)
    letterings: list[Lettering] = field(default_factory=list)
    points: list[Point] = field(default_factory=list)
    lines: list[tuple[float, float]] = field(default_factory=list)  # where lettering stands, and how large
    sides: list[float] = field(default_factory=list)  # how far lettering reaches to the left and to the right

    def line(
        self, points: Sequence[Point], colour: str = INK, width: float = 0.7, dashes: str = "none", of: str = ""
    ) -> None:
        """An open line; `of`: what it is the line of."""
        self.points += points
        self.strokes.append(Stroke(path_of(points), colour, number(width), "none", dashes, of))

    def outline(
        self,
        points: Sequence[Point],
        colour: str = INK,
        width: float = 0.7,
        fill: str = "none",
        dashes: str = "none",
        of: str = "",
    ) -> None:
        """A closed outline; `of`: the size that is drawn with it."""
        self.points += points
        self.strokes.append(Stroke(path_of(points, closed=True), colour, number(width), fill, dashes, of))

    def disc(self, at: Point, radius: float) -> None:
        """Clear ground for lettering that stands on a line."""
        self.strokes.append(Stroke(path_of(arc_points(at, radius, radius, 0, 360, 12), closed=True), PALE, "0.1", PALE))

    def write(
        self,
        text: str,
        at: Point,
        *,
        size: float = LETTER_SIZE,
        anchor: str = "middle",
        bold: bool = False,
        turn: float = 0,
        of: str = "",
    ) -> None:
        """One word or line of lettering, standing on its point; `of`: the letter of the measure it says."""
        turned = f"rotate({number(turn)} {number(at[0])} {number(at[1])})" if turn else ""
        self.lines.append((at[1], size if not turn else 0.4 * size * len(text)))
        self.sides += _reach(text, at[0], size, anchor, is_upright=bool(turn))
        weight = "600" if bold else "400"
        self.letterings.append(Lettering(text, number(at[0]), number(at[1]), number(size), anchor, weight, turned, of))

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
    wide = room_for(text, size)
    left = x - wide * {"start": 0, "middle": 0.5, "end": 1}[anchor]
    return left, left + wide
