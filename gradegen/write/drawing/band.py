"""Plain rectangles, and bands with a half twist: as a loop, and as the strip before its ends are joined."""

from __future__ import annotations

import math
from collections.abc import Sequence

from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.write.drawing.nest import Label, Sheet, draw_outlines, extent
from gradegen.write.drawing.outline import Outline, Point, Span, drawn
from gradegen.write.drawing.sketch import ACCENT, INK, PALE, QUIET, SHEET, SMALL_SIZE, TINT, Sketch

_LOOP_WIDTH = 136.0
_TALLEST, _STRIP = 150.0, 250.0  # points


def plain_outline(piece: Piece, size: GradedSize, times: int = 1) -> Outline | None:
    """A rectangle as wide and long as the piece's measures; None where one of them is missing or nothing."""
    if piece.width is None or piece.length is None:
        return None
    width, length = (size.measures.get(text.text) for text in (piece.width, piece.length))
    if width is None or length is None or width.printed <= 0 or length.printed <= 0:
        return None
    wide, high = drawn(width.printed) / times, drawn(length.printed)
    spans = (
        Span(width.name, width.printed, ((0.0, high), (wide, high)), "below", times),
        Span(length.name, length.printed, ((0.0, 0.0), (0.0, high)), "left"),
    )
    return Outline(size.name, ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)), spans, (0.0, high / 2))


def draw_band(sketch: Sketch, outlines: Sequence[Outline], label: Label) -> None:
    """The joined band as a loop on the left; on the right its strips to scale around the foundation chain."""
    left, top, right, bottom = extent(outlines)
    scale = min(_STRIP / (right - left), _TALLEST / (bottom - top))
    sheet = Sheet(scale, (SHEET - 14 - right * scale, 14 - top * scale), SHEET)
    draw_outlines(sketch, outlines, sheet, label)
    x, middle = sheet.spot
    end = x + right * scale
    sketch.line([(x, middle), (end, middle)], QUIET, 0.8, "4 3")
    narrow = min(outline.box[2] for outline in outlines) * scale
    sketch.write("foundation chain", (x + narrow / 2, middle - 4), size=SMALL_SIZE)
    least = min(outline.box[3] for outline in outlines) * scale * 0.6
    sketch.arrow((x, middle + least), (x, middle - least))
    sketch.arrow((end, middle - least), (end, middle + least))
    _draw_loop(sketch, outlines[len(outlines) // 2], (_LOOP_WIDTH / 2 + 10, middle))


_STEPS = 96
_TILT = math.radians(24)
_FROM = math.radians(-118)  # where the half turn lies, seen from the front


def _draw_loop(sketch: Sketch, outline: Outline, centre: Point) -> None:
    """A half-twist band in parallel projection, its far parts drawn first; no wider than still looks like a loop."""
    left, top, right, bottom = outline.box
    radius = (right - left) / (2 * math.pi)
    half = min((bottom - top) / 2, 0.42 * radius)
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
