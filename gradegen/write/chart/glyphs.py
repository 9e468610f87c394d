"""Each thing of a chart as marks and lines: stems from the foot to the top, so that what stands on what can be seen."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gradegen.trade.chart_glyphs import OWN, Glyph, glyph_of, loop_mark, slashes_of, stems_of
from gradegen.write.chart.pen import along, arch, beside, between, curve, distance, fine, lean, line, mark
from gradegen.write.drawing.sketch import Point

CHAIN = 7.2  # the length of one chain
_CROSS_AT, _CROSS_APART = 0.58, 0.86  # of the way from the foot to the top; farther up beside others from one foot
_SLASH_STEP = 3.0
_APART = 2.6  # of stems in a bundle, half-way up


@dataclass(frozen=True, slots=True)
class Pen:
    """How this chart names its marks, and the letter of each stitch that has no published glyph.

    `prefix` None: every mark is drawn with its own outline.
    """

    prefix: str | None = ""
    letters: tuple[str, ...] = ()

    def mark(self, name: str, at: Point, turn: float = 0.0, kind: str = "") -> str:
        """A mark put at a point."""
        return mark(name, at, turn, kind, self.prefix)

    def letter(self, stitch: str) -> str:
        """The letter that stands for a stitch."""
        return chr(ord("A") + self.letters.index(stitch)) if stitch in self.letters else "?"


def draw_stitch(
    pen: Pen, stitch: str, feet: Sequence[Point], top: Point, loop: str | None = None, *, shares_foot: bool = False
) -> Iterator[str]:
    """One stitch from its feet to its top; a mark without a stem gets one where others go into the same place."""
    glyph = glyph_of(stitch)
    if glyph is OWN:
        yield from _own(pen, stitch, feet, top)
        return
    stems = list(_stems(glyph, stitch, feet, top))
    cross_at = _CROSS_APART if shares_foot else _CROSS_AT
    for stem in stems:
        yield from _stem(pen, glyph, stitch, stem, cross_at)
    if shares_foot and not glyph.stem:
        yield line((feet[0], between(feet[0], top, cross_at)))
    middle = (sum(x for x, _ in feet) / len(feet), sum(y for _, y in feet) / len(feet))
    if glyph.top:
        yield pen.mark(glyph.top, top, lean(middle, top))
    if glyph.foot:
        yield pen.mark(glyph.foot, feet[0], lean(feet[0], top))
    if loop is not None:
        for foot in dict.fromkeys(feet):
            low = between(foot, top, -0.5 / (distance(foot, top) or 1.0))
            yield pen.mark(loop_mark(loop), low, lean(foot, top))


Stem = tuple[Point, Point, Point]  # foot, bend, top


def _stems(glyph: Glyph, stitch: str, feet: Sequence[Point], top: Point) -> Iterator[Stem]:
    if glyph.stem in ("bundle", "spray"):
        number = stems_of(stitch)
        for at in range(number):
            aside = (at - (number - 1) / 2) * _APART
            if glyph.stem == "bundle":
                yield feet[0], beside(feet[0], top, 0.5, 2 * aside), top
            else:
                end = beside(feet[0], top, 0.94, aside)
                yield feet[0], between(feet[0], end, 0.5), end
        return
    for foot in feet:
        yield foot, between(foot, top, 0.5), top


def _stem(pen: Pen, glyph: Glyph, stitch: str, stem: Stem, cross_at: float) -> Iterator[str]:
    foot, bend, top = stem
    if glyph.stem == "bundle":
        yield curve(foot, bend, top)
    elif glyph.stem:
        yield line((foot, top))
    half = between(between(foot, bend, 0.5), between(bend, top, 0.5), 0.5)
    turn = lean(foot, top)
    if glyph.middle:
        yield pen.mark(glyph.middle, half if glyph.stem else between(foot, top, cross_at), turn)
    number = slashes_of(stitch) if glyph.slashed else 0
    long = distance(foot, top) or 1.0
    for at in range(number):
        aside = (at - (number - 1) / 2) * _SLASH_STEP / long
        centre = between(half, top, 2 * aside) if aside >= 0 else between(half, foot, -2 * aside)
        yield pen.mark("slash", centre, turn)


def _own(pen: Pen, stitch: str, feet: Sequence[Point], top: Point) -> Iterator[str]:
    """A sign with a letter, on a stem from each foot."""
    for foot in feet:
        yield line((foot, top))
    yield pen.mark("own", top, 0, "own")
    yield (
        f'<text x="{fine(top[0])}" y="{fine(top[1] + 2)}" font-size="5.6" text-anchor="middle" stroke="none">'
        f"{pen.letter(stitch)}</text>"
    )


def draw_upright(pen: Pen, number: int, foot: Point, top: Point, kind: str = "ch") -> Iterator[str]:
    """Chains one above the other."""
    turn = lean(foot, top) - 90
    for at in range(number):
        yield pen.mark("oval", between(foot, top, (at + 0.5) / number), turn, kind)


def draw_space(
    pen: Pen,
    number: int,
    ends: tuple[Point, Point],
    rise: float,
    away: Point,
    closing: tuple[str, Point] | None = None,
    kind: str = "ch",
) -> Iterator[str]:
    """Chains in an arch; `closing`: the stitch that stands for the last of them, and the foot it is worked into."""
    points = arch(ends[0], ends[1], rise, away)
    shares = [(at + 0.5) / number for at in range(number)]
    for place, turn in along(points, shares):
        yield pen.mark("oval", place, turn, kind)
    if closing is not None:
        yield from draw_stitch(pen, closing[0], [closing[1]], ends[1])


def draw_picot(pen: Pen, number: int, at: Point, away: Point) -> Iterator[str]:
    """A little ring of chains, closed by a dot."""
    count = max(2, number)
    radius = count * CHAIN * 0.5 / (2 * math.pi) + 1.6
    centre = (at[0] + away[0] * (radius + 1), at[1] + away[1] * (radius + 1))
    first = math.atan2(-away[1], -away[0])
    for place in range(count):
        turn = first + 2 * math.pi * (place + 1) / (count + 1)
        point = (centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn))
        yield pen.mark("small oval", point, math.degrees(turn) + 90)
    yield pen.mark("dot", (centre[0] - away[0] * radius, centre[1] - away[1] * radius))
