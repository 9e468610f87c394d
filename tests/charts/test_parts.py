"""The parts of charts one by one: places along a row, marks of every glyph, frames, and pages with charts."""

from __future__ import annotations

import math
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pieces import worked

from gradegen import pipeline
from gradegen.trade.chart_glyphs import OWN, glyph_of, glyphs, marks, slashes_of, stems_of
from gradegen.trade.stitches import stitches
from gradegen.trade.tables import read_table
from gradegen.write.chart.frames import Around, Straight
from gradegen.write.chart.glyphs import Pen, draw_stitch
from gradegen.write.chart.spread import spread
from gradegen.write.editions.edition import Edition
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.pdf import pdf_bytes
from gradegen.write.pattern import pattern_html

DEMOS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
PLACES = st.lists(st.tuples(st.floats(-50, 50), st.floats(0.1, 5), st.floats(0, 9)), min_size=1, max_size=7)


def cost(wanted: list[float], weights: list[float], places: list[float]) -> float:
    return sum(weight * (want - place) ** 2 for want, weight, place in zip(wanted, weights, places, strict=True))


@settings(derandomize=True, max_examples=120, deadline=None)
@given(PLACES, st.lists(st.floats(-3, 3), min_size=7, max_size=7))
def test_places_keep_their_gaps_and_nothing_near_is_better(
    drawn: list[tuple[float, float, float]], nudge: list[float]
) -> None:
    wanted, weights, gaps = (list(each) for each in zip(*drawn, strict=True))
    gaps = gaps[1:]
    places = spread(wanted, weights, gaps)
    assert all(other - one >= gap - 1e-6 for (one, other), gap in zip(pairwise(places), gaps, strict=True))
    moved = [place + by for place, by in zip(places, nudge, strict=False)]
    if all(other - one >= gap for (one, other), gap in zip(pairwise(moved), gaps, strict=True)):
        assert cost(wanted, weights, moved) >= cost(wanted, weights, places) - 1e-6


def test_nothing_stands_beyond_its_bounds() -> None:
    assert spread([-5, 0, 50], [1, 1, 1], [2, 2], 0, 10) == [0, 2, 10]


def test_every_glyph_of_the_stitch_table_can_be_drawn() -> None:
    named = set(read_table("stitches")["glyphs"])
    assert named == set(glyphs())
    for stitch in stitches().values():
        glyph = glyph_of(stitch.id)
        parts = {part for part in (glyph.top, glyph.middle, glyph.foot) if part}
        assert parts <= set(marks())
        feet = [(4.0 * at, 0.0) for at in range(max(1, stitch.takes))]
        assert list(draw_stitch(Pen(letters=(stitch.id,)), stitch.id, feet, (0.0, -20.0)))


@pytest.mark.parametrize(
    ("stitch", "slashes"), [("hdc", 0), ("dc", 1), ("tr", 2), ("dtr", 3), ("dc2tog", 1), ("FPtr", 2)]
)
def test_a_slash_for_each_yarn_over(stitch: str, slashes: int) -> None:
    """Craft Yarn Council, Crochet Chart Symbols (2018), p. 3: each slash on the stem is one yarn over."""
    assert slashes_of(stitch) == slashes
    drawn = "".join(draw_stitch(Pen(), stitch, [(0.0, 0.0)], (0.0, -20.0)))
    assert drawn.count('"#slash"') == slashes


def test_stems_of_a_cluster_are_its_number() -> None:
    assert (stems_of("3-dc cluster"), stems_of("5-dc popcorn"), stems_of("puff"), stems_of("dc")) == (3, 5, 3, 1)
    assert glyph_of("spike sc") is OWN


def test_a_disc_goes_round_and_a_square_has_sides() -> None:
    disc, square = Around(), Around(4, 0.125)
    assert math.isclose(math.hypot(*disc.point(0.3, 50)), 50)
    assert disc.point(0.25, 50)[0] < -49  # a quarter turn on, against the clock: on the left
    assert math.isclose(square.perimeter(80), 640)
    tops = [square.point(-0.125 + 0.25 * share, 80) for share in (0.2, 0.5, 0.8)]
    assert len({round(y, 3) for _, y in tops}) == 1  # one straight side, at the top
    assert Straight().point(3, 4) == (3, -4)


def test_a_page_with_charts_is_typeset_without_a_word(tmp_path: Path) -> None:
    outcome = pipeline.check_file(DEMOS / "slipway-cardigan.yaml")
    assert outcome.checked is not None
    html = pattern_html(outcome.checked, Edition(tmp_path))
    data, findings = pdf_bytes(html, PageFiles(tmp_path), outcome.checked.pattern.place)
    assert data is not None
    assert findings == ()
    assert "Stitch chart of the Back" in html


@pytest.mark.parametrize("style", ["large-print", "spoken"])
def test_where_a_drawing_cannot_be_read_it_is_left_out_and_said(style: str, tmp_path: Path) -> None:
    checked = worked(tmp_path, "shells").checked
    assert checked is not None
    from gradegen.write.page.document import document_view

    edition = Edition(tmp_path, style=style)  # type: ignore[arg-type]
    (piece,) = document_view(checked, edition).pieces
    assert piece.chart is not None
    assert piece.chart.svg == ""
    assert piece.chart.spoken == ()  # what it is drawn with is no size's count
    (said,) = ("".join(part.text for part in line) for line in piece.chart.reads)
    assert said == "The chart is left out of this edition; the rows above say everything it shows."


def test_low_ink_has_no_tint(tmp_path: Path) -> None:
    checked = worked(tmp_path, "shells").checked
    assert checked is not None
    assert "polygon" in pattern_html(checked, Edition(tmp_path))
    html = pattern_html(checked, Edition(tmp_path, style="low-ink"))
    assert "polygon" not in html
    assert "repeat of 6 sts" in html
