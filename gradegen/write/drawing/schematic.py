"""The pieces drawn to scale from their worked rows: all sizes nested, or one size alone."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.write.drawing.band import draw_band, plain_outline
from gradegen.write.drawing.nest import Label, draw_outlines, is_narrow, lay_sheet
from gradegen.write.drawing.outline import Outline, Schematic, Schematics
from gradegen.write.drawing.piece_outline import lay_out, outline_of
from gradegen.write.drawing.round import hat_outline
from gradegen.write.drawing.sketch import Sketch
from gradegen.write.drawing.stretches import Gauges
from gradegen.write.drawing.yoke import yoke_outline
from gradegen.write.view.whole import Drawing
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import lengths_text

_HOW = {
    "flat": "flat",
    "tube": "laid flat; widths are half of what is measured around",
    "yoke": "laid flat; the front, with half of each sleeve beside it",
    "ring": "laid flat, folded at its sides",
    "hat": "seen from the side",
    "band": "joined on the left; laid flat on the right. One end is turned over so that the arrows meet",
}


def find_schematics(checked: Checked, printing: Printing) -> Schematics:
    """Every piece that can be drawn in all printed sizes, and the letters of its measures in order."""
    gauges = Gauges.of(checked.pattern)
    pieces = [one for piece in checked.pattern.pieces if (one := _schematic(piece, checked, printing, gauges))]
    names = [span.name for piece in pieces for outline in piece.outlines for span in outline.spans]
    letters = {name: _LETTERS[at] for at, name in enumerate(dict.fromkeys(names)) if at < len(_LETTERS)}
    return Schematics(tuple(pieces), letters)


_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # no I and no O: on a drawing they are a line and a ring


def _schematic(piece: Piece, checked: Checked, printing: Printing, gauges: Gauges) -> Schematic | None:
    kinds = [_outline(piece, checked, size, gauges) for size in printing.sizes]
    found = [each for each in kinds if each is not None]
    if not found or len(found) != len(kinds) or len({kind for kind, _ in found}) > 1:
        return None
    outlines = tuple(outline for _, outline in found)
    if not all(_is_told(outline) for outline in outlines):
        return None
    return Schematic(piece.name.text, found[0][0], outlines)


def _is_told(outline: Outline) -> bool:
    """True when something is measured across it and something along it."""
    across = any(span.side in ("above", "below", "around", "along") for span in outline.spans)
    return across and any(span.side in ("left", "right", "inside", "along") for span in outline.spans)


def _outline(piece: Piece, checked: Checked, size: GradedSize, gauges: Gauges) -> tuple[str, Outline] | None:
    """What kind of drawing a piece has in one size, and its outline."""
    if piece.width is None and piece.length is None:
        return None
    if piece.shape == "half-twist band":
        return _kind("band", plain_outline(piece, size))
    if piece.shape == "flat":
        fabric = lay_out(piece, checked, size, gauges)
        drawn = outline_of(fabric) if fabric is not None else None
        if drawn is not None and _says(drawn, piece, size):
            return "flat", drawn
        return _kind("flat", plain_outline(piece, size))
    hat = hat_outline(piece, checked, size)
    if hat is not None:
        return "hat", hat
    fabric = lay_out(piece, checked, size, gauges)
    if fabric is None:
        return _kind("tube", plain_outline(piece, size, times=2))
    yoke = yoke_outline(fabric)
    if yoke is not None:
        return ("yoke" if len(yoke.points) < 12 else "ring"), yoke
    return "tube", outline_of(fabric)


def _kind(name: str, outline: Outline | None) -> tuple[str, Outline] | None:
    return None if outline is None else (name, outline)


def _says(outline: Outline, piece: Piece, size: GradedSize) -> bool:
    """True when the measures that the designer wants drawn are on it."""
    wanted = {text.text for text in (piece.width, piece.length) if text and text.text in size.measures}
    return wanted <= {span.name for span in outline.spans}


def piece_drawings(schematics: Schematics, printing: Printing) -> tuple[Drawing, ...]:
    """A drawing of every schematic; narrow ones stand beside each other in pairs."""
    label = Label(schematics.letters, printing)
    pieces = schematics.pieces
    halves = [False] * len(pieces) if label.is_large else _halves(pieces)
    return tuple(_draw(piece, label, half=half) for piece, half in zip(pieces, halves, strict=True))


def _halves(pieces: Sequence[Schematic]) -> list[bool]:
    """Which drawings take half a sheet: two narrow ones in a row."""
    found: list[bool] = []
    for at, piece in enumerate(pieces):
        beside = len(found) > 0 and found[-1] and sum(found) % 2 == 1
        narrow = piece.kind in ("flat", "tube") and is_narrow(piece.outlines)
        later = pieces[at + 1] if at + 1 < len(pieces) else None
        opens = later is not None and later.kind in ("flat", "tube") and is_narrow(later.outlines)
        found.append(narrow and (beside or opens))
    return found


def _draw(piece: Schematic, label: Label, *, half: bool) -> Drawing:
    sketch = Sketch()
    outlines = piece.outlines
    if label.is_large and len(outlines) > 1:  # large print: twelve lines are no help to weak eyes
        outlines = outlines[len(outlines) // 2 : len(outlines) // 2 + 1]
    if piece.kind == "band":
        draw_band(sketch, outlines, label)
    else:
        draw_outlines(sketch, outlines, lay_sheet(outlines, label, half=half), label)
    return sketch.drawing(_shows(piece, outlines, label), _caption(piece, outlines, label))


def _caption(piece: Schematic, outlines: Sequence[Outline], label: Label) -> str:
    size = f" in size {outlines[0].size}" if len(outlines) == 1 < len(label.printing.sizes) else ""
    said = [f"{label.letters.get(name, '')} {name}".strip() for name in _names(outlines)]
    return f"{piece.name}{size}, to scale, {_HOW[piece.kind]}. {', '.join(said)}."


def _names(outlines: Sequence[Outline]) -> list[str]:
    return list(dict.fromkeys(span.name for outline in outlines for span in outline.spans))


def _shows(piece: Schematic, outlines: Sequence[Outline], label: Label) -> str:
    """What the drawing shows, with its measures: of one size each, of several from the first size to the last."""
    many = "" if len(outlines) == 1 else f" in {len(outlines)} sizes, one outline inside the other"
    said = [
        f"{label.letters.get(name, '')} {name}: {_range(name, outlines, label)}".strip() for name in _names(outlines)
    ]
    return f"Schematic of the {piece.name.lower()}{many}. {'; '.join(said)}."


def _range(name: str, outlines: Sequence[Outline], label: Label) -> str:
    found = [(one.size, span.length) for one in outlines for span in one.spans if span.name == name]
    (first, low), (last, high) = found[0], found[-1]
    text, to = (lengths_text([length], label.printing.style) for length in (low, high))
    if len(found) == 1:
        return text
    return (
        f"{text} in every size"
        if text == to and len(set(found)) == 1
        else f"{text} in size {first} to {to} in size {last}"
    )
