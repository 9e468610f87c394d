"""Drawings as the styles of an edition show them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from gradegen.write.drawing.sketch import ACCENT, PALE
from gradegen.write.editions.edition import Style
from gradegen.write.view.whole import Drawing, Stroke


def drawings_for(style: Style, drawings: Iterable[Drawing]) -> tuple[Drawing, ...]:
    """The drawings without fills for little ink, with large letters and heavy lines for large print."""
    if style == "low-ink":
        return tuple(replace(each, strokes=tuple(map(_without_fill, each.strokes))) for each in drawings)
    if style == "large-print":
        return tuple(map(_enlarged, drawings))
    return tuple(drawings)


def _without_fill(stroke: Stroke) -> Stroke:
    """What was filled is white, so that lines behind stay hidden; lines are black, and so are the heads of arrows."""
    if stroke.fill == stroke.colour == ACCENT:
        return replace(stroke, fill="#000000", colour="#000000")
    fill = stroke.fill if stroke.fill == "none" else PALE
    return replace(stroke, fill=fill, colour=PALE if stroke.colour == stroke.fill else "#000000")


def _enlarged(drawing: Drawing) -> Drawing:
    """The letters of the measures alone; the caption says what they stand for."""
    letters = tuple(replace(word, weight="700") for word in drawing.letterings if len(word.of) == 1)
    strokes = tuple(map(_heavy, (each for each in drawing.strokes if not each.of.startswith("scale"))))
    return replace(drawing, letterings=letters, strokes=strokes, tight="", wide="")


def _heavy(stroke: Stroke) -> Stroke:
    return replace(stroke, width="2" if stroke.of.startswith("size") else "1.2", colour=_dark(stroke))


def _dark(stroke: Stroke) -> str:
    return stroke.colour if stroke.colour == stroke.fill else "#000000"
