from collections import Counter
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.write.drawing.dimensions import USUAL, Dimension, draw_dimensions
from gradegen.write.drawing.schematic import find_schematics, piece_drawings
from gradegen.write.drawing.sketch import Sketch
from gradegen.write.drawing.styles import drawings_for
from gradegen.write.view.whole import Drawing
from gradegen.write.words.marks import marks_of
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style


def drawings(checked: Checked, *names: str, columns: int | None = None) -> tuple[Drawing, ...]:
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    printing = Printing(checked.sizes, sizes, length_style(checked.pattern), columns)
    return piece_drawings(find_schematics(checked, printing), printing)


def drawn(checked: Checked, *names: str) -> Drawing:
    (drawing,) = drawings(checked, *names)
    return drawing


def corners(path: str) -> list[tuple[float, float]]:
    steps = [part[1:] for part in path.replace(" Z", "").replace(" L", "|L").split("|")]
    return [(float(x), float(y)) for x, y in (step.split(" ") for step in steps)]


def boxes(drawing: Drawing) -> dict[str, tuple[float, float]]:
    """Width and height of every size's outline, in points."""
    found = {}
    for stroke in drawing.strokes:
        if stroke.of.startswith("size "):
            xs, ys = zip(*corners(stroke.path), strict=True)
            found[stroke.of.removeprefix("size ")] = (max(xs) - min(xs), max(ys) - min(ys))
    return found


def flat(checked: Checked) -> Checked:
    piece = replace(checked.pattern.pieces[0], shape="flat")
    return replace(checked, pattern=replace(checked.pattern, pieces=(piece,)))


def test_words_that_a_hollow_line_would_run_through_give_way_to_their_letter() -> None:
    """The neck of a round yoke bends up at both ends of what would stand over its middle."""
    sketch = Sketch()
    hollow = ((0.0, -25.0), (30.0, 0.0), (70.0, 0.0), (100.0, -25.0))
    level = tuple((float(x), 0.0) for x in range(0, 101, 5))
    box = (0.0, -25.0, 100.0, 0.0)
    for line, said in ((hollow, "B"), (level, "B  20 in (51 cm)")):
        draw_dimensions(sketch, [Dimension("B", "B  20 in (51 cm)", line, "along")], box, USUAL)
        assert sketch.letterings[-1].text.replace("\N{NO-BREAK SPACE}", " ") == said


@pytest.mark.parametrize("shape", ["flat", "half-twist band"])
def test_every_size_is_drawn_to_one_scale(wrap: Checked, shape: str) -> None:
    found = boxes(drawn(flat(wrap) if shape == "flat" else wrap))
    assert set(found) == {size.name for size in wrap.sizes}
    scales = [found[size.name][0] / size.measures["around"].printed for size in wrap.sizes]
    scales += [found[size.name][1] / size.measures["depth"].printed for size in wrap.sizes]
    assert max(scales) - min(scales) < 0.01  # points to the inch; coordinates have two decimals


def test_many_sizes_have_letters_marks_and_names(wrap: Checked) -> None:
    words = Counter(lettering.text for lettering in drawn(wrap).letterings)
    assert {"A", "B", "XS", "5X", "foundation chain"} <= set(words)
    for mark in marks_of(wrap.sizes, wrap.sizes):
        assert words[mark] >= 2, mark  # in the key, and on the size's own line


def test_marks_keep_clear_of_each_other(hat: Checked, wrap: Checked) -> None:
    for checked in (hat, wrap):
        marks = set(marks_of(checked.sizes, checked.sizes))
        places = [(float(word.x), float(word.y)) for word in drawn(checked).letterings if word.text in marks]
        for at, one in enumerate(places):
            assert all(abs(one[0] - other[0]) + abs(one[1] - other[1]) > 7 for other in places[at + 1 :])


def test_lines_of_neighbours_differ_in_width_or_dashes(hat: Checked) -> None:
    """In grey and without any mark two sizes beside each other can be told apart."""
    lines = {stroke.of: (stroke.width, stroke.dashes) for stroke in drawn(hat).strokes if stroke.of.startswith("size")}
    ordered = [lines[f"size {size.name}"] for size in hat.sizes]
    assert all(one != other for one, other in pairwise(ordered))
    assert len({stroke.colour for stroke in drawn(hat).strokes if stroke.of.startswith("size")}) == 1


def test_one_size_has_its_measures_in_both_units(wrap: Checked) -> None:
    words = [lettering.text.replace("\N{NO-BREAK SPACE}", " ") for lettering in drawn(wrap, "M").letterings]
    assert "A  40½ in (103 cm)" in words
    assert "XS" not in words
    assert "M" not in words


def test_what_it_shows_in_words(wrap: Checked, hat: Checked) -> None:
    assert drawn(wrap).shows.replace("\N{NO-BREAK SPACE}", " ") == (
        "Schematic of the band in 9 sizes, one outline inside the other. A around: 32 in (81.5 cm) in size XS to "
        "64 in (162.5 cm) in size 5X; B depth: 10¾ in (27.5 cm) in size XS to 14¾ in (37.5 cm) in size 5X."
    )
    assert "A around: " in drawn(hat, "M").shows
    assert drawn(wrap).shows != drawn(wrap).caption  # equal texts would be spoken twice


def test_a_hat_from_the_side(hat: Checked) -> None:
    drawing = drawn(hat)
    assert len(boxes(drawing)) == len(hat.sizes)
    assert {size.name for size in hat.sizes} <= {lettering.text for lettering in drawing.letterings}
    assert "seen from the side" in drawing.caption


def test_large_print_draws_one_size_with_large_letters(wrap: Checked) -> None:
    (drawing,) = drawings_for("large-print", drawings(wrap, columns=3))
    assert list(boxes(drawing)) == ["1X"]
    assert "in size 1X" in drawing.caption
    assert {(word.text, word.size) for word in drawing.letterings} == {("A", "23.5"), ("B", "23.5")}


def test_low_ink_has_no_fills(wrap: Checked) -> None:
    (drawing,) = drawings_for("low-ink", drawings(wrap, "M"))
    black = [stroke for stroke in drawing.strokes if stroke.fill not in ("none", "#ffffff")]
    assert [stroke.fill for stroke in black] == ["#000000"] * 2  # the heads of the two arrows


def test_two_pieces_two_drawings(wrap: Checked, samples: Any) -> None:
    piece = wrap.pattern.pieces[0]
    pieces = (piece, replace(piece, name=samples["text"]("Strap"), shape="flat"), replace(piece, width=None))
    both = replace(wrap, pattern=replace(wrap.pattern, pieces=pieces))
    assert [drawing.caption.split(",")[0].split(":")[0] for drawing in drawings(both)] == ["Band", "Strap"]


def test_nothing_is_drawn_without_measures(wrap: Checked) -> None:
    none = tuple(replace(size, measures={}) for size in wrap.sizes)
    assert drawings(replace(wrap, sizes=none)) == ()
    nothing = replace(wrap.sizes[0].measures["depth"], target=Fraction(0), finished=Fraction(0))
    flatter = tuple(replace(size, measures={**size.measures, "depth": nothing}) for size in wrap.sizes)
    assert drawings(replace(wrap, sizes=flatter)) == ()


def test_no_other_size_is_asked(wrap: Checked) -> None:
    """One size's drawing stays the same, point for point, when every other size has other measures."""
    around = replace(wrap.sizes[0].measures["around"], target=Fraction(9))
    other = tuple(size if size.name == "M" else replace(size, measures={"around": around}) for size in wrap.sizes)
    assert drawn(wrap, "M") == drawn(replace(wrap, sizes=other), "M")
