"""Pieces worked in the round, drawn from the side: their outline follows the counts of the worked rounds."""

from __future__ import annotations

import math
from collections.abc import Sequence

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.write.drawing.profile import Profile, round_profile
from gradegen.write.drawing.sketch import (
    ACCENT,
    INK,
    PALE,
    QUIET,
    SHEET,
    SMALL_SIZE,
    TINT,
    Dimensions,
    Extent,
    Point,
    Sketch,
    arc_points,
)
from gradegen.write.view.whole import Drawing

_TALLEST, _WIDEST = 110.0, 230.0
_LEAN = 0.17  # how far an edge seen a little from above bends down, by its half width


def draw_round(
    piece: Piece, extents: Sequence[Extent], dimensions: Dimensions, checked: Checked, sizes: Sequence[GradedSize]
) -> Drawing:
    """The silhouettes of all sizes nested from the beginning of the work."""
    profiles = [
        round_profile(piece, extent.width, extent.length, checked, size)
        for extent, size in zip(extents, sizes, strict=True)
    ]
    scale = min(_TALLEST / max(each.height for each in profiles), _WIDEST / 2 / max(each.widest for each in profiles))
    sketch, centre, top = Sketch(), SHEET / 2, 14.0
    order = sorted(range(len(profiles)), key=lambda at: -profiles[at].size_of_outline)
    for at in order:
        fill = TINT if at == order[-1] else PALE
        sketch.outline(_outline(profiles[at], scale, centre, top), INK, 0.7, fill)
    largest = profiles[order[0]]
    _draw_opening(sketch, largest, scale, centre, top)
    _letter_sizes(sketch, [extent.size for extent in extents], profiles, scale, centre, top)
    _draw_measures(sketch, largest, scale, (centre, top), dimensions)
    name = piece.name.text
    many = "" if len(extents) == 1 else f" in {len(extents)} sizes, one outline inside the other"
    shows = (
        f"Schematic of the {name.lower()}, worked in the round{many}, seen from the side. Measures: {dimensions.words}."
    )
    how = "to scale from its worked rounds" if largest.is_worked else "to scale"
    return sketch.drawing(shows, f"{name}, seen from the side, {how}.")


def _side(profile: Profile, scale: float, centre: float, top: float, way: int) -> list[Point]:
    return [(centre + way * out * scale, top + down * scale) for out, down in profile.points]


def _outline(profile: Profile, scale: float, centre: float, top: float) -> list[Point]:
    """Down the right side, along the front of the lower edge, up the left side."""
    out, down = profile.points[-1]
    front = arc_points((centre, top + down * scale), out * scale, out * scale * _LEAN, 0, 180)
    right = _side(profile, scale, centre, top, 1)
    upper = profile.points[0]
    back = arc_points((centre, top + upper[1] * scale), upper[0] * scale, upper[0] * scale * _LEAN, 180, 360)
    return right + front + list(reversed(_side(profile, scale, centre, top, -1))) + (back if upper[0] else [])


def _draw_opening(sketch: Sketch, profile: Profile, scale: float, centre: float, top: float) -> None:
    """The upper edge of a tube, or nothing where the work begins in one point."""
    out, down = profile.points[0]
    if out:
        sketch.line(arc_points((centre, top + down * scale), out * scale, out * scale * _LEAN, 0, 180), QUIET, 0.6)


def _letter_sizes(
    sketch: Sketch, names: Sequence[str], profiles: Sequence[Profile], scale: float, centre: float, top: float
) -> None:
    """The sizes in a column to the right, each with a thin line to its own outline."""
    if len(names) < 2:
        return
    ends = sorted(
        (
            (centre + p.points[-1][0] * scale, top + p.points[-1][1] * scale, n)
            for n, p in zip(names, profiles, strict=True)
        ),
        key=lambda end: end[1],
    )
    column = max(end[0] for end in ends) + 34
    step = 10.0
    start = (ends[0][1] + ends[-1][1]) / 2 - step * (len(ends) - 1) / 2
    for at, (x, y, name) in enumerate(ends):
        level = start + at * step
        sketch.line([(x, y), (column - 4, level)], QUIET, 0.4)
        sketch.write(name, (column, level + 2.5), size=SMALL_SIZE, anchor="start")


def _draw_measures(sketch: Sketch, profile: Profile, scale: float, corner: Point, dimensions: Dimensions) -> None:
    centre, top = corner
    out, down = profile.band
    sketch.line(
        arc_points((centre, top + down * scale), out * scale, out * scale * _LEAN, 0, 180), ACCENT, 0.9, "3 2.5"
    )
    sketch.write(dimensions.width, (centre, top + (down + out * _LEAN) * scale + 10), bold=True)
    first, last = profile.measured
    line = [(centre - o * scale - 12, top + d * scale) for o, d in profile.points[first : last + 1]]
    if profile.runs_along:
        _draw_along(
            sketch, [(centre - o * scale, top + d * scale) for o, d in profile.points[first : last + 1]], dimensions
        )
        return
    x = centre - profile.widest * scale - 14
    sketch.measure(dimensions.length, (x, line[0][1]), (x, line[-1][1]))


def _draw_along(sketch: Sketch, side: Sequence[Point], dimensions: Dimensions) -> None:
    """A measure taken along the fabric: a line that keeps its distance from the outline."""
    apart = [_beside(side, at, 9.0) for at in range(len(side))]
    sketch.line(apart, QUIET, 0.6)
    for at in (0, len(side) - 1):
        inner, outer = _beside(side, at, 6.0), _beside(side, at, 12.0)
        sketch.line([inner, outer], QUIET, 0.6)
    x, y = _beside(side, len(side) * 2 // 3, 14.0)
    sketch.write(dimensions.length, (x, y), anchor="end", bold=True)


def _beside(side: Sequence[Point], at: int, distance: float) -> Point:
    """A point at that distance outside the left outline, square to it."""
    before, after = side[max(at - 1, 0)], side[min(at + 1, len(side) - 1)]
    x, y = after[0] - before[0], after[1] - before[1]
    length = math.hypot(x, y) or 1.0
    return side[at][0] - y / length * distance, side[at][1] + x / length * distance
