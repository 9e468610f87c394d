"""Yarn, skeins and lengths against published worked examples; beside each its source."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.formula import Amount
from gradegen.findings import Place, Severity
from gradegen.pipeline import Outcome, check_file
from gradegen.reckon import yarn_per_size
from gradegen.reckon.yarn.amounts import YarnAmount
from gradegen.reckon.yarn.least_squares import best_factor
from gradegen.reckon.yarn.left import yarn_left
from gradegen.reckon.yarn.per_stitch import Proportions, Weight, fit_stitches
from gradegen.reckon.yarn.put_up import PutUp
from gradegen.trade.yarn_use import one_stitch_uses, piece_ranges, relative_use

HERE = Place("test", 1, 1, 1, 1)


def yards(number: int) -> YarnAmount:
    return YarnAmount(Fraction(36 * number), None)


# Yarnspirations sheet CAK0129-035211M, and a free published nine-colour sheet: skeins of 481 yd, rounded up.
@pytest.mark.parametrize(
    ("wanted", "skeins"),
    [
        *zip((475, 550, 700, 910, 1200, 1350), (1, 2, 2, 2, 3, 3), strict=True),
        *zip((780, 905, 979, 1075, 1200, 1360), (2, 2, 3, 3, 3, 3), strict=True),
    ],
)
def test_skeins_of_481_yards(wanted: int, skeins: int) -> None:
    assert PutUp(Fraction(481 * 36), None).skeins(yards(wanted)) == skeins


def test_780_yards_are_713_metres() -> None:
    """The right figure beside the misprint 755 m on a free published sheet; 1 yd = 0.9144 m, the international yard."""
    metres = yards(780).metres
    assert metres is not None
    assert round(metres) == 713
    assert metres == Fraction(780 * 9144, 10000)


def test_ounce() -> None:
    """1 oz = 28.349523125 g (avoirdupois, 1959)."""
    assert YarnAmount(None, Fraction(28349523125, 1000000000)).ounces == 1


def test_four_grams_of_a_50_g_87_yd_skein() -> None:
    """Yarn Nomads (2016): a swatch of 36 sq in weighs 4 g of a 50 g / 87 yd skein, that is 6.96 yd."""
    put_up = PutUp(Fraction(87 * 36), Fraction(50))
    swatch = put_up.measured(Amount(Fraction(4), "g", HERE))
    assert swatch.yards == Fraction(696, 100)
    blanket = swatch.times(Fraction(60 * 60, 36))
    assert blanket.yards == 696  # printed as 720: 0.2 yd to the square inch, rounded up first
    assert abs(blanket.yards - 720) < Fraction(5, 100) * 720


def test_stitches_by_weight() -> None:
    """Get Knitting, yarn quantities: 130 800 sts at 70 g for 10 000 sts are 915.6 g."""
    fitted = fit_stitches([Weight({"sc": 10_000}, Fraction(70))], {}, Proportions({}))
    assert fitted is not None
    assert fitted.total({"sc": 130_800}) == Fraction(9156, 10)


def test_proportions_are_the_strip_test() -> None:
    """Windchilde: 10.6, 15.7 and 20.4 inches of yarn to the inch of a one-row strip of sc, hdc, dc (worsted, 5 mm)."""
    for name, inches in (("sc", "10.6"), ("hdc", "15.7"), ("dc", "20.4")):
        use = relative_use(name)
        assert use is not None
        assert abs(use - 100 * Fraction(inches) / Fraction("10.6")) < 1
        assert one_stitch_uses()[name].trust == "published copy seen"


def test_published_ranges() -> None:
    """Dummies: medium 800-1500 yd for an adult sweater; Crochet Current: beanie 150-200, scarf 250-350."""
    by_name = {one.what: one for one in piece_ranges()}
    assert by_name["adult sweater"].yards[4] == (800, 1500)
    assert by_name["adult sweater"].yards[1] == (1500, 3200)
    assert by_name["beanie"].yards[None] == (150, 200)
    assert by_name["scarf"].yards[None] == (250, 350)


SHAWL = """
title: Plain triangle
terms: US
sizes: {table: women, for: [M]}
yarn:
  A: {weight: light, skein: 400 yd / 100 g, sample: {size: M, used: 300 g}}
gauge:
  plain: {stitches: 16, rows: 18, over: 4 in}
measures:
  depth: 44 in
counts:
  rows: {along: depth, gauge: plain}
pieces:
  - name: Shawl
    shape: flat
    rows: |
      Row 1: Ch 2. 3 sc in 2nd ch from hook. (3 sc)
      Row 2: Ch 1, turn, 2 sc in first st, sc in each st to last st, 2 sc in last st. (5 sc)
      Rows 3-200: Rep Row 2.
"""


def test_half_the_rows_of_a_triangle_are_a_quarter_of_it(tmp_path: Path) -> None:
    """Cromulent Knitter (2006): half the rows of a shawl that grows evenly are a quarter of it; 70 % are half."""
    path = tmp_path / "shawl.yaml"
    path.write_text(SHAWL.lstrip(), encoding="utf-8")
    checked = check_file(path).checked
    assert checked is not None
    found, _ = yarn_left(checked, "M", "Row 100", Amount(Fraction(200), "g", HERE))
    assert found is not None
    assert abs(found.share - Fraction(1, 4)) < Fraction(1, 100)
    half = next(row for share, row in found.quarters if share == Fraction(1, 2))
    assert half in ("Row 140", "Row 141", "Row 142")


SHEET = """
title: A sheet with three faults
version: "1.0"
about: The yarn block of a free published sheet over rows of our own.
designer: {name: Demo House, help: help@example.org, year: 2026}
terms: US
level: easy
units: inches first
rounding: 1/4 in
sizes: {table: women, for: [S, M, L, XL, 2X, 3X], by: bust, take: middle}
yarn:
  A:
    weight: medium
    skein: 481 yd
    stated:
      yards: [780, 905, 979, 1075, 1200, 1360]
      metres: [755, 828, 895, 983, 1097, 1244]
      skeins: [2, 2, 2, 3, 3, 3]
  B:
    weight: medium
    skein: 481 yd
    stated:
      yards: [780, 905, 979, 1075, 1200, 1360]
      metres: [713, 828, 895, 983, 1097, 1244]
      skeins: [2, 2, 3, 3, 3, 4]
notions:
  - tapestry needle
gauge:
  plain: {stitches: 14, rows: 16, over: 4 in, hook: 5.5 mm, state: blocked}
measures:
  around: bust + 3 in
  depth: "[14, 14.5, 15, 15, 15.5, 16] in"
counts:
  band: {across: around, gauge: plain, base extra: 1}
  rows: {along: depth, gauge: plain}
pieces:
  - name: Panel
    shape: flat
    width: around
    length: depth
    rows: |
      Row 1: Ch {band chain}. Sc in 2nd ch from hook, sc in each ch across. ({band} sc)
      Rows 2-{rows}: Ch 1, turn, sc in each st across. ({band} sc)
finishing:
  - Weave in the ends.
licence: You may sell what you make.
"""


@pytest.fixture
def sheet(tmp_path: Path) -> Outcome:
    path = tmp_path / "sheet.yaml"
    path.write_text(SHEET.lstrip(), encoding="utf-8")
    return check_file(path)


def test_two_wrong_skein_cells_and_one_wrong_metre_figure(sheet: Outcome) -> None:
    """All three found at their own cells, and nothing else flagged."""
    told = [one for one in sheet.findings if one.severity != Severity.NOTE]
    lines = SHEET.lstrip().splitlines()
    cells = {
        (one.rule, one.size, lines[one.place.line - 1][one.place.column - 1 : one.place.end_column - 1], one.expected)
        for one in told
    }
    assert cells == {
        ("skeins-differ", "L", "2", "3"),
        ("skeins-differ", "3X", "4", "3"),
        ("yards-and-metres-differ", "S", "755", "713 m"),
    }
    assert len(told) == 3


def test_a_sheet_with_nothing_weighed_claims_nothing(sheet: Outcome) -> None:
    assert sheet.checked is not None
    needs, findings = yarn_per_size(sheet.checked)
    assert needs == ()
    assert [one.rule for one in findings] == ["yarn-not-known", "yarn-not-known"]


def test_one_factor_over_two_weights() -> None:
    """Two testers, 168 g for 1000 and 190 g for 1100: (1000*168 + 1100*190) / (1000^2 + 1100^2). Arithmetic."""
    found = best_factor([Fraction(1000), Fraction(1100)], [Fraction(168), Fraction(190)])
    assert found == Fraction(1000 * 168 + 1100 * 190, 1000**2 + 1100**2)
