"""The finished pieces drawn to scale from their shapes and measures: all sizes nested, or one size alone."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.write.drawing.band import draw_band, draw_flat
from gradegen.write.drawing.round import draw_round
from gradegen.write.drawing.sketch import Dimensions, Extent
from gradegen.write.view.measures import drawn_letters
from gradegen.write.view.whole import Drawing
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import lengths_text

_GAP = 2 * "\N{NO-BREAK SPACE}"


def piece_drawings(checked: Checked, printing: Printing) -> tuple[Drawing, ...]:
    """A drawing of every piece whose two measures are known."""
    letters = drawn_letters(checked)
    drawn = (_draw(piece, checked, printing, letters) for piece in checked.pattern.pieces)
    return tuple(drawing for drawing in drawn if drawing is not None)


def _draw(piece: Piece, checked: Checked, printing: Printing, letters: Mapping[str, str]) -> Drawing | None:
    if piece.width is None or piece.length is None:
        return None
    width, length = piece.width.text, piece.length.text
    sizes = [size for size in printing.sizes if width in size.measures and length in size.measures]
    extents = [_extent(size, width, length) for size in sizes]
    if not extents or any(extent.width <= 0 or extent.length <= 0 for extent in extents):
        return None
    dimensions = _dimensions(width, length, letters, printing)
    name = piece.name.text
    if piece.shape == "half-twist band":
        return draw_band(name, extents, dimensions)
    if piece.shape == "flat":
        return draw_flat(name, extents, dimensions)
    return draw_round(piece, extents, dimensions, checked, sizes)


def _extent(size: GradedSize, width: str, length: str) -> Extent:
    return Extent(size.name, _drawn(size.measures[width].printed), _drawn(size.measures[length].printed))


def _drawn(length: Fraction) -> float:
    """A length for the pen; nothing is counted with it."""
    return length.numerator / length.denominator


def _dimensions(width: str, length: str, letters: Mapping[str, str], printing: Printing) -> Dimensions:
    labels = [_label(name, letters, printing) for name in (width, length)]
    return Dimensions(labels[0], labels[1], f"{labels[0]}, {labels[1]}".replace(_GAP, " "))


def _label(name: str, letters: Mapping[str, str], printing: Printing) -> str:
    """`A  around`, and on one size's pages its measure in both units."""
    said = f"{letters[name]}{_GAP}{name}" if name in letters else name
    if not printing.is_one_size:
        return said
    return f"{said}{_GAP}{lengths_text([printing.sizes[0].measures[name].printed], printing.style)}"
