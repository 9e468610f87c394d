"""Outlines from rows: where edges run, how high rows are, and which measures are found on them."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from gradegen import pipeline
from gradegen.design.checked import Checked
from gradegen.write.drawing.outline import Outline
from gradegen.write.drawing.piece_outline import Fabric, lay_out, outline_of
from gradegen.write.drawing.stretches import Gauges
from gradegen.write.drawing.yoke import yoke_outline

PATTERNS = Path(__file__).resolve().parents[3] / "shared" / "patterns"
CARDIGAN = (PATTERNS / "slipway-cardigan.yaml").read_text("utf-8")


def checked_of(text: str, folder: Path) -> Checked:
    path = folder / "pattern.yaml"
    path.write_text(text, "utf-8")
    checked = pipeline.check_file(path).checked
    assert checked is not None
    return checked


def laid(checked: Checked, piece: int, size: str) -> Fabric:
    one = next(each for each in checked.sizes if each.name == size)
    fabric = lay_out(checked.pattern.pieces[piece], checked, one, Gauges.of(checked.pattern))
    assert fabric is not None
    return fabric


def spans(outline: Outline) -> dict[str, Fraction]:
    return {span.name: span.length for span in outline.spans}


def test_rows_are_as_high_as_the_gauge_they_are_counted_by() -> None:
    """Ribbing at 10 rows to 4 in below single crochet at 17: 5 rows of it are 2 in (arithmetic)."""
    checked = pipeline.check_file(PATTERNS / "gunwale-pullover.yaml").checked
    assert checked is not None
    fabric = laid(checked, 1, "M")
    body, rib = fabric.size.counts["body rounds"].n, fabric.size.counts["rib rounds"].n
    assert fabric.heights.at(body) == Fraction(body * 4, 17)
    assert fabric.heights.at(body + rib) - fabric.heights.at(body) == Fraction(rib * 4, 10)
    assert fabric.from_top


def test_a_shoulder_slopes_by_its_short_rows(tmp_path: Path) -> None:
    text = CARDIGAN.replace(
        "shaping:\n",
        "shaping:\n  slope: {way: short rows, from: cross, to: neck, drop: 1 in, gauge: half double crochet}\n",
        1,
    )
    line = next(line for line in text.splitlines() if "{back armhole}. (" in line)
    text = text.replace(line, f"{line}\n      Next rows: {{slope}}. ({{neck}} hdc)", 1)
    fabric = laid(checked_of(text, tmp_path), 0, "M")
    neck, cross = (fabric.size.counts[name].n for name in ("neck", "cross"))
    top = [fabric.sides.at(row) for row in (fabric.rows - 6, fabric.rows)]
    assert [right - left for left, right in top] == [cross, neck]
    assert not fabric.sides.steps.get(4)  # no step: the slope rises from the armhole to the neck
    outline = outline_of(fabric)
    ys = [y for _, y in outline.points]
    assert spans(outline)["neck width"] == fabric.size.measures["neck width"].printed
    assert sum(y == min(ys) for y in ys) == 2


def test_a_measure_is_named_only_where_the_drawing_says_the_same(tmp_path: Path) -> None:
    """A row fewer below the armhole than the side asks for, and `side` is no longer written on the back."""
    whole = outline_of(laid(checked_of(CARDIGAN, tmp_path), 0, "M"))
    fewer = outline_of(
        laid(checked_of(CARDIGAN.replace("Rows 6-{side rows}:", "Rows 6-{side rows - 1}:", 1), tmp_path), 0, "M")
    )
    assert "side" in spans(whole)
    assert "side" not in spans(fewer)
    assert {"back width", "armhole"} <= set(spans(fewer))


def test_one_edge_is_shaped_where_the_words_say_and_the_other_stays() -> None:
    checked = pipeline.check_file(PATTERNS / "slipway-cardigan.yaml").checked
    assert checked is not None
    fabric = laid(checked, 1, "XL")
    armhole, neck = fabric.sides.shaped[-2:]
    assert (armhole, neck) == ({"left"}, {"right"})
    assert fabric.sides.width() == fabric.size.counts["shoulder"].n


@pytest.mark.parametrize(("name", "lines"), [("gunwale-pullover", 2), ("limpet-pullover", 4)])
def test_yokes_show_their_lines_or_rings(name: str, lines: int) -> None:
    checked = pipeline.check_file(PATTERNS / f"{name}.yaml").checked
    assert checked is not None
    for size in checked.sizes:
        yoke = yoke_outline(laid(checked, 0, size.name))
        assert yoke is not None
        assert len(yoke.lines) == lines
        assert yoke_outline(laid(checked, 1, size.name)) is None  # a body is no yoke
