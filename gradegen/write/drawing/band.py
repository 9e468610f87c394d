"""Flat pieces, and bands with a half twist: as a loop, and as the strip it is before its ends are joined."""

from __future__ import annotations

import math
from collections.abc import Sequence

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
    with_room,
)
from gradegen.write.view.whole import Drawing

_TALLEST = 150.0  # points
_LOOP_WIDTH = 136.0


def draw_flat(name: str, extents: Sequence[Extent], dimensions: Dimensions) -> Drawing:
    """Rectangles to scale, nested on their lower edge."""
    sketch = Sketch()
    scale = _scale(extents, 380)
    left = (SHEET - max(extent.width for extent in extents) * scale) / 2
    base = 16 + max(extent.length for extent in extents) * scale
    for extent in _largest_first(extents):
        high, wide = extent.length * scale, extent.width * scale
        sketch.outline(_box(left, base - high, wide, high), fill=_fill(extent, extents))
    _letter_below(sketch, extents, left, base, scale, dimensions)
    sketch.measure(dimensions.length, (left - 12, base - _most(extents, "length") * scale), (left - 12, base))
    return sketch.drawing(_shows(name, "a flat piece", extents, dimensions), f"{name}, flat, to scale.")


def draw_band(name: str, extents: Sequence[Extent], dimensions: Dimensions) -> Drawing:
    """The joined band as a loop on the left; on the right its strips to scale around the foundation chain."""
    sketch = Sketch()
    scale = _scale(extents, 262)
    left = SHEET - 8 - _most(extents, "width") * scale
    tallest = _most(extents, "length") * scale
    middle = 24 + tallest / 2
    for extent in _largest_first(extents):
        high, wide = extent.length * scale, extent.width * scale
        sketch.outline(_box(left, middle - high / 2, wide, high), fill=_fill(extent, extents))
    widest = _most(extents, "width") * scale
    sketch.line([(left, middle), (left + widest, middle)], QUIET, 0.8, "4 3")
    sketch.write("foundation chain", (left + _least(extents, "width") * scale / 2, middle - 4), size=SMALL_SIZE)
    least = _least(extents, "length") * scale * 0.3
    sketch.arrow((left, middle + least), (left, middle - least))
    sketch.arrow((left + widest, middle - least), (left + widest, middle + least))
    _letter_below(sketch, extents, left, middle + tallest / 2, scale, dimensions)
    sketch.measure(dimensions.length, (left - 14, middle - tallest / 2), (left - 14, middle + tallest / 2))
    _draw_loop(sketch, extents[len(extents) // 2], (_LOOP_WIDTH / 2 + 10, middle))
    caption = (
        f"{name}: joined on the left; laid flat on the right, to scale. One end is turned over so that the arrows meet."
    )
    return sketch.drawing(_shows(name, "a band joined with a half twist", extents, dimensions), caption)


def _scale(extents: Sequence[Extent], widest: float) -> float:
    return min(widest / _most(extents, "width"), _TALLEST / _most(extents, "length"))


def _most(extents: Sequence[Extent], what: str) -> float:
    return max(extent.width if what == "width" else extent.length for extent in extents)


def _least(extents: Sequence[Extent], what: str) -> float:
    return min(extent.width if what == "width" else extent.length for extent in extents)


def _largest_first(extents: Sequence[Extent]) -> list[Extent]:
    return sorted(extents, key=lambda extent: -extent.width * extent.length)


def _fill(extent: Extent, extents: Sequence[Extent]) -> str:
    """The smallest size is tinted, the room the others add is paler."""
    return TINT if extent is _largest_first(extents)[-1] else PALE


def _box(left: float, top: float, wide: float, high: float) -> list[Point]:
    return [(left, top), (left + wide, top), (left + wide, top + high), (left, top + high)]


def _letter_below(
    sketch: Sketch, extents: Sequence[Extent], left: float, base: float, scale: float, dimensions: Dimensions
) -> None:
    """The sizes under their right-hand edges, the dimension line under them."""
    below = base
    if len(extents) > 1:
        below += 10
        places = [(extent.size, left + extent.width * scale) for extent in sorted(extents, key=lambda each: each.width)]
        for name, x in with_room(places, 4.6 * max(len(name) for name, _ in places) + 3):
            sketch.write(name, (x, below), size=SMALL_SIZE)
    sketch.measure(dimensions.width, (left, below + 9), (left + _most(extents, "width") * scale, below + 9))


def _shows(name: str, what: str, extents: Sequence[Extent], dimensions: Dimensions) -> str:
    sizes = "" if len(extents) == 1 else f" in {len(extents)} sizes, one outline inside the other"
    return f"Schematic of the {name.lower()}, {what}{sizes}. Measures: {dimensions.words}."


_STEPS = 96
_TILT = math.radians(24)
_FROM = math.radians(-118)  # where the half turn lies, seen from the front


def _draw_loop(sketch: Sketch, extent: Extent, centre: Point) -> None:
    """A half-twist band in parallel projection, its far parts drawn first; no wider than still looks like a loop."""
    radius = extent.width / (2 * math.pi)
    half = min(extent.length / 2, 0.42 * radius)
    scale = _LOOP_WIDTH / (2 * (radius + half * 0.75))
    facets = sorted((_facet(step, radius, half) for step in range(_STEPS)), key=lambda facet: facet[0])
    for _, corners, shade, cross in facets:
        placed = [(centre[0] + x * scale, centre[1] - y * scale) for x, y in corners]
        sketch.outline(placed, shade, 0.4, shade)
        sketch.line([placed[0], placed[1]], INK, 0.7)
        sketch.line([placed[3], placed[2]], INK, 0.7)
        middle = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in ((placed[0], placed[3]), (placed[1], placed[2]))]
        if cross % 2 == 0:
            sketch.line(middle, ACCENT, 0.5)


Facet = tuple[float, list[Point], str, int]


def _facet(step: int, radius: float, half: float) -> Facet:
    """One small piece of the band: how near it is, its corners, its shade, its number."""
    turns = [2 * math.pi * (step + by) / _STEPS for by in (0, 1)]
    solid = [_on_band(turns[0], half, radius), _on_band(turns[1], half, radius)]
    solid += [_on_band(turns[1], -half, radius), _on_band(turns[0], -half, radius)]
    flat = [(x, z * math.cos(_TILT) + y * math.sin(_TILT)) for x, y, z in solid]
    near = -sum(y * math.cos(_TILT) - z * math.sin(_TILT) for _, y, z in solid)
    area = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(flat, flat[1:] + flat[:1], strict=True))
    return near, flat, TINT if area > 0 else PALE, step


def _on_band(turn: float, across: float, radius: float) -> tuple[float, float, float]:
    """A point of the band: half a turn of its cross line on the way round."""
    lean = turn / 2 + math.pi / 2
    out = radius + across * math.cos(lean)
    return out * math.cos(turn + _FROM), out * math.sin(turn + _FROM), across * math.sin(lean)
