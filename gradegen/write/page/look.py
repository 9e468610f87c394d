"""A designer's look as pages take it: colours in place of the house's own, and the typefaces they are set in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from markupsafe import Markup

from gradegen.design.look import Look
from gradegen.trade.contrast import hex_of, mixed, rgb_of
from gradegen.trade.typefaces import TYPEFACES
from gradegen.write.drawing.sketch import ACCENT, TINT
from gradegen.write.editions.edition import Style
from gradegen.write.page.assets import OURS
from gradegen.write.view.whole import Document, Drawing, Face, LookView, Stroke

_TINTS, _RULES = ("#f3f6f5", "#f2f6f5"), ("#b9c4c2", "#d3dcda")  # of the house's style sheet
_FACES = {
    "Serif": (("serif", "", "normal"), ("serif-italic", "", "italic")),
    "Large": (("large", "400", "normal"), ("large-bold", "700", "normal")),
}


def with_look(document: Document, look: Look | None, style: Style) -> Document:
    """The document in its designer's look; large print keeps its own type and black, low ink keeps to greys."""
    if look is None or style in ("large-print", "spoken"):
        return document
    view = look_view(look, has_colour=style != "low-ink")
    drawings = document.drawings
    if view.lines:
        drawings = tuple(_drawn(each, view) for each in drawings)
    return replace(document, look=view, drawings=drawings)


def look_view(look: Look, *, has_colour: bool) -> LookView:
    """The look as strings for the templates."""
    text, headings = (TYPEFACES[name or "Inter"] for name in (look.text, look.headings or look.text))
    accent = look.accent if has_colour else None
    colour = rgb_of(accent.words) if accent is not None else None
    return LookView(
        words=accent.words if accent is not None else "",
        lines=accent.lines if accent is not None else "",
        tint=hex_of(mixed(colour, 6)) if colour is not None else "",
        rule=hex_of(mixed(colour, 32)) if colour is not None else "",
        text=_stack(text.family),
        headings=_stack(headings.family),
        title_weight="300" if headings.light else "400",
        faces=tuple(_faces(dict.fromkeys((text.family, headings.family)))),
    )


def coloured(sheet: str, look: LookView | None) -> Markup:
    """A style sheet with the look's colours where the house's own stood."""
    if look is not None and look.words:
        sheet = sheet.replace(f"solid {ACCENT}", f"solid {look.lines}").replace(ACCENT, look.words)
        for house, own in ((_TINTS, look.tint), (_RULES, look.rule)):
            for each in house:
                sheet = sheet.replace(each, own)
    return Markup(sheet)


def _stack(family: str) -> str:
    """The family, and behind it the one that has every sign a pattern prints."""
    return family if family == "Body" else f"{family}, Body"


def _faces(families: dict[str, None]) -> Iterator[Face]:
    for family in families:
        for file, weight, style in _FACES.get(family, ()):
            yield Face(family, f"{OURS}fonts/{file}.ttf", weight, style)


def _drawn(drawing: Drawing, look: LookView) -> Drawing:
    colour = rgb_of(look.words)
    inks = {ACCENT: look.lines, TINT: hex_of(mixed(colour, 14)) if colour is not None else TINT}

    def inked(stroke: Stroke) -> Stroke:
        return replace(stroke, colour=inks.get(stroke.colour, stroke.colour), fill=inks.get(stroke.fill, stroke.fill))

    return replace(drawing, strokes=tuple(map(inked, drawing.strokes)))
