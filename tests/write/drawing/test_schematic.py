from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.write.drawing.schematic import piece_drawings
from gradegen.write.view.whole import Drawing, Stroke
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style


def drawn(checked: Checked, *names: str) -> Drawing:
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    (drawing,) = piece_drawings(checked, Printing(checked.sizes, sizes, length_style(checked.pattern)))
    return drawing


def corners(stroke: Stroke) -> list[tuple[float, float]]:
    steps = [part[1:] for part in stroke.path.replace(" Z", "").replace(" L", "|L").split("|")]
    return [(float(x), float(y)) for x, y in (step.split(" ") for step in steps)]


def boxes(drawing: Drawing) -> list[tuple[float, float]]:
    """Width and height of every rectangle, in points."""
    closed = [
        corners(stroke) for stroke in drawing.strokes if stroke.path.endswith("Z") and stroke.path.count("L") == 3
    ]
    level = [box for box in closed if box[0][1] == box[1][1] and box[0][0] == box[3][0]]
    return [(box[1][0] - box[0][0], box[3][1] - box[0][1]) for box in level]


def flat(checked: Checked) -> Checked:
    piece = replace(checked.pattern.pieces[0], shape="flat")
    return replace(checked, pattern=replace(checked.pattern, pieces=(piece,)))


@pytest.mark.parametrize("shape", ["flat", "half-twist band"])
def test_every_size_is_drawn_to_one_scale(wrap: Checked, shape: str) -> None:
    found = boxes(drawn(flat(wrap) if shape == "flat" else wrap))
    assert len(found) == len(wrap.sizes)
    largest_first = list(reversed(wrap.sizes))
    scales = [wide / size.measures["around"].printed for (wide, _), size in zip(found, largest_first, strict=True)]
    scales += [high / size.measures["depth"].printed for (_, high), size in zip(found, largest_first, strict=True)]
    assert max(scales) - min(scales) < 0.05  # points to the inch; coordinates have one decimal


def test_many_sizes_have_letters_and_names(wrap: Checked) -> None:
    words = [lettering.text.replace("\N{NO-BREAK SPACE}", " ") for lettering in drawn(wrap).letterings]
    assert {"A  around", "B  depth", "XS", "5X", "foundation chain"} <= set(words)


def test_one_size_has_its_measures_in_both_units(wrap: Checked) -> None:
    words = [lettering.text.replace("\N{NO-BREAK SPACE}", " ") for lettering in drawn(wrap, "M").letterings]
    assert "A  around  40½ in (103 cm)" in words
    assert "XS" not in words
    assert "M" not in words


def test_what_it_shows_in_words(wrap: Checked, hat: Checked) -> None:
    assert drawn(wrap).shows == (
        "Schematic of the band, a band joined with a half twist in 9 sizes, one outline inside the other. "
        "Measures: A around, B depth."
    )
    assert "worked in the round" in drawn(hat).shows
    assert drawn(wrap).shows != drawn(wrap).caption  # equal texts would be spoken twice


def test_a_hat_from_the_side(hat: Checked) -> None:
    drawing = drawn(hat)
    outlines = [stroke for stroke in drawing.strokes if stroke.path.endswith("Z")]
    assert len(outlines) == len(hat.sizes)
    assert {size.name for size in hat.sizes} <= {lettering.text for lettering in drawing.letterings}
    assert "from its worked rounds" in drawing.caption


def test_two_pieces_two_drawings(wrap: Checked, samples: Any) -> None:
    piece = wrap.pattern.pieces[0]
    pieces = (piece, replace(piece, name=samples["text"]("Strap"), shape="flat"), replace(piece, width=None))
    both = replace(wrap, pattern=replace(wrap.pattern, pieces=pieces))
    drawings = piece_drawings(both, Printing(wrap.sizes, wrap.sizes, length_style(wrap.pattern)))
    assert [drawing.caption.split(",")[0].split(":")[0] for drawing in drawings] == ["Band", "Strap"]


def test_nothing_is_drawn_without_measures(wrap: Checked) -> None:
    none = tuple(replace(size, measures={}) for size in wrap.sizes)
    assert piece_drawings(wrap, Printing(none, none, length_style(wrap.pattern))) == ()
    nothing = replace(wrap.sizes[0].measures["depth"], target=Fraction(0), finished=Fraction(0))
    flatter = tuple(replace(size, measures={**size.measures, "depth": nothing}) for size in wrap.sizes)
    assert piece_drawings(wrap, Printing(flatter, flatter, length_style(wrap.pattern))) == ()
