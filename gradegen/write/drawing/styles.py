"""Drawings as the styles of an edition show them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from gradegen.write.editions.edition import Style
from gradegen.write.view.whole import Drawing, Lettering, Stroke

_LARGE = "23.5"  # on a sheet 470 wide, set as wide as the column of large print: a little over 22 pt
_GAP = 2 * "\N{NO-BREAK SPACE}"


def drawings_for(style: Style, drawings: Iterable[Drawing]) -> tuple[Drawing, ...]:
    """The drawings without fills for little ink, with large letters for large print."""
    if style == "low-ink":
        return tuple(replace(each, strokes=tuple(map(_without_fill, each.strokes))) for each in drawings)
    if style == "large-print":
        return tuple(map(_enlarged, drawings))
    return tuple(drawings)


def _without_fill(stroke: Stroke) -> Stroke:
    """What was filled is white, so that lines behind stay hidden; lines are black."""
    fill = stroke.fill if stroke.fill == "none" else "#ffffff"
    return replace(stroke, fill=fill, colour="#ffffff" if stroke.colour == stroke.fill else "#000000")


def _enlarged(drawing: Drawing) -> Drawing:
    """The letters of the measures alone, large; what they stand for is said in the caption."""
    letters = [word for word in drawing.letterings if _letter(word)]
    said = ", ".join(f"{_letter(word)} is {_name(word)}" for word in sorted(letters, key=_letter))
    caption = f"{drawing.caption} {said}." if said else drawing.caption
    return replace(drawing, letterings=tuple(_large(letters)), caption=caption, tight="", wide="")


def _letter(word: Lettering) -> str:
    """The letter a measure has on the drawing; "" for other words."""
    letter, gap, _ = word.text.partition(_GAP)
    return letter if gap and len(letter) == 1 else ""


def _name(word: Lettering) -> str:
    return word.text.split(_GAP)[1]


def _large(letters: Iterable[Lettering]) -> Iterator[Lettering]:
    for word in letters:
        yield replace(word, text=_letter(word), size=_LARGE, weight="700")
