"""Yarn per size: from every kind of evidence, with margin, skeins and slack; what must hold whatever the numbers."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file
from gradegen.reckon import YarnNeed, stitch_census, yarn_per_size

HEAD = """
title: Two squares
terms: US
sizes: {table: women, for: [S, M, L]}
gauge:
  plain: {stitches: 4, rows: 4, over: 4 in}
measures:
  width: "[20, 24, 28] in"
  depth: 10 in
counts:
  n: {across: width, gauge: plain}
"""
ROWS = """
pieces:
  - name: Square
    shape: flat
    width: width
    length: depth
    rows: |
      Row 1: Ch {n}. Sc in 2nd ch from hook, sc in each ch across.
      Row 2: Ch 3 (counts as dc), turn, sk first st, dc in each st across.
      Edging Row 1: Ch 1, turn, sc in each st across.
"""


def checked(tmp_path: Path, yarn: str, rows: str = ROWS) -> Checked:
    path = tmp_path / "pattern.yaml"
    path.write_text(f"{HEAD.strip()}\nyarn:\n{yarn}\n{rows.strip()}\n", encoding="utf-8")
    found = check_file(path).checked
    assert found is not None, check_file(path).findings
    return found


def only(needs: tuple[YarnNeed, ...]) -> YarnNeed:
    (need,) = needs
    return need


def test_without_its_edging_a_copy_takes_less_by_just_the_edging(tmp_path: Path) -> None:
    """Unravelled lengths make it exact: the difference is the edging's census times its stitches."""
    yarn = "  A: {weight: medium, skein: 200 yd / 100 g, unravelled: {ch: 1 in, sc: 2 in, dc: 4 in}}"
    whole = checked(tmp_path, yarn)
    bare = checked(tmp_path, yarn, ROWS[: ROWS.index("      Edging")])
    need, less = only(yarn_per_size(whole)[0]), only(yarn_per_size(bare)[0])
    for size in whole.sizes:
        parts = {part.part: part.stitches for part in stitch_census(whole).by_size[size.name]}
        edging = parts["edging"]
        lost = edging["ch"] * 1 + edging["sc"] * 2
        one, other = need.of(size.name), less.of(size.name)
        assert one is not None
        assert other is not None
        assert (one.used.inches or 0) - (other.used.inches or 0) == lost
        assert [line.what for line in one.lines if line.is_worked] == ["Square", "Square, edging"]


def test_unravelled_stitches_alone(tmp_path: Path) -> None:
    """n = 24: ch 24 + 3 + 1, sc 23 + 23, dc 22; 28*1 + 46*2 + 22*4 = 208 in. Arithmetic."""
    need = only(
        yarn_per_size(
            checked(tmp_path, "  A: {skein: 200 yd / 100 g, unravelled: {ch: 20 in / 20, sc: 2 in, dc: 4 in}}")
        )[0]
    )
    size = need.of("M")
    assert size is not None
    assert size.used.inches == 208
    assert need.basis == "measured lengths"


def test_a_swatch_with_its_stitches(tmp_path: Path) -> None:
    """One kind of stitch in swatch and evidence; the others follow in published proportion, and that is said."""
    yarn = "  A: {skein: 200 yd / 100 g, swatches: [{used: 5 g, stitches: {sc: 180}}]}"
    needs, findings = yarn_per_size(checked(tmp_path, yarn))
    need = only(needs)
    assert need.basis == "one factor"
    assert "yarn-in-proportion" in {one.rule for one in findings}
    assert need.evidence[0].used.grams == 5


def test_a_swatch_by_area(tmp_path: Path) -> None:
    """4 g for 36 sq in; M is 24 in by its printed depth. PRACTICE of yarn by area (Yarn Nomads, 2016)."""
    yarn = "  A: {skein: 87 yd / 50 g, swatches: [{used: 4 g, width: 6 in, height: 6 in}]}"
    pattern = checked(tmp_path, yarn)
    needs, findings = yarn_per_size(pattern)
    need = only(needs)
    size = need.of("M")
    assert size is not None
    area = pattern.sizes[1].measures["width"].printed * pattern.sizes[1].measures["depth"].printed
    assert size.used.grams == Fraction(4, 36) * area
    assert need.basis == "area"
    assert [one.rule for one in findings] == ["yarn-by-area"]


def test_unravelled_lengths_give_the_proportions_and_weights_the_level(tmp_path: Path) -> None:
    """M takes 208 in by its unravelled lengths (above); a sample of 234 in is an eighth more. Arithmetic."""
    yarn = "  A: {skein: 200 yd / 100 g, unravelled: {ch: 1 in, sc: 2 in, dc: 4 in}, sample: {size: M, used: 6.5 yd}}"
    need = only(yarn_per_size(checked(tmp_path, yarn))[0])
    m, small = need.of("M"), need.of("S")
    assert m is not None
    assert small is not None
    assert m.used.inches == 234
    assert need.basis == "lengths and weights"
    assert [one.ratio for one in need.evidence] == [1, Fraction(8, 9)]
    assert need.spread == (Fraction(8, 9), 1)
    assert small.used.inches == (24 * 1 + 38 * 2 + 18 * 4) * Fraction(9, 8)  # n = 20: ch 20 + 3 + 1, sc 19 + 19, dc 18


def test_few_unmeasured_stitches_do_not_carry_the_difference(tmp_path: Path) -> None:
    """Only chains were not unravelled: the sample's surplus goes over all stitches, not into the chains alone."""
    yarn = "  A: {skein: 200 yd / 100 g, unravelled: {sc: 2 in, dc: 4 in}, sample: {size: M, used: 5 yd}}"
    need = only(yarn_per_size(checked(tmp_path, yarn))[0])
    size = need.of("M")
    assert size is not None
    assert size.used.inches == 180
    assert need.basis == "lengths and weights"


WRITTEN = "  A: {skein: 200 yd / 100 g, sample: {size: M, used: 100 g, stitches: {ch: 28, sc: 46, dc: 22}}}"


def test_stitches_written_down_beside_a_weight_stand_for_the_size(tmp_path: Path) -> None:
    counted = checked(tmp_path, "  A: {skein: 200 yd / 100 g, sample: {size: M, used: 100 g}}")
    needs, before = yarn_per_size(counted)
    written, after = yarn_per_size(checked(tmp_path, WRITTEN))
    assert [size.used for size in only(needs).sizes] == [size.used for size in only(written).sizes]
    assert {one.rule for one in before} == {one.rule for one in after} == {"yarn-in-proportion"}


def test_a_size_changed_since_it_was_weighed_leaves_the_others_as_they_were(tmp_path: Path) -> None:
    """M is made 2 in wider: the other sizes keep their yarn, and a note says that M's stitches are others now."""
    text = f"{HEAD.strip()}\nyarn:\n{WRITTEN}\n{ROWS.strip()}\n"
    path = tmp_path / "wider.yaml"
    path.write_text(text.replace("[20, 24, 28] in", "[20, 26, 28] in"), encoding="utf-8")
    wider = check_file(path).checked
    assert wider is not None
    needs, findings = yarn_per_size(wider)
    old = only(yarn_per_size(checked(tmp_path, WRITTEN))[0])
    for name in ("S", "L"):
        assert only(needs).of(name) == old.of(name)
    (told,) = [one for one in findings if one.rule == "stitches-changed-since-weighing"]
    assert (told.size, told.found, told.expected) == ("M", "28 ch, 46 sc, 22 dc", "30 ch, 50 sc, 24 dc")


def test_testers_are_pooled_with_their_spread(tmp_path: Path) -> None:
    yarn = (
        "  A: {skein: 200 yd / 100 g, sample: {size: M, used: 100 g}, "
        "testers: [{size: M, used: 110 g}, {size: M, used: 90 g}]}"
    )
    need = only(yarn_per_size(checked(tmp_path, yarn))[0])
    size = need.of("M")
    assert size is not None
    assert size.used.grams == 100  # the mean of 100, 110 and 90 over the same stitches
    assert need.spread == (Fraction(9, 10), Fraction(11, 10))
    assert size.low is not None
    assert size.high is not None
    assert (size.low.grams, size.high.grams) == (90, 110)


def test_every_stitch_is_fitted_where_the_pieces_tell_them_apart(tmp_path: Path) -> None:
    """Three swatches that hold only sc, dc and ch settle all three; the sizes then follow exactly."""
    yarn = (
        "  A: {skein: 36 yd / 100 g, swatches: [{used: 1 yd, stitches: {sc: 18}}, {used: 2 yd, stitches: {dc: 18}}, "
        "{used: 1 yd, stitches: {ch: 36}}]}"
    )
    need = only(yarn_per_size(checked(tmp_path, yarn))[0])
    assert need.basis == "each stitch"
    size = need.of("M")
    assert size is not None
    assert size.used.inches == 28 * 1 + 46 * 2 + 22 * 4


def test_wild_fits_are_not_believed(tmp_path: Path) -> None:
    """Pieces that contradict each other would give dc less yarn than sc: one factor is taken instead."""
    yarn = (
        "  A: {skein: 36 yd / 100 g, swatches: [{used: 5 yd, stitches: {sc: 18}}, {used: 1 yd, stitches: {dc: 18}}, "
        "{used: 1 yd, stitches: {ch: 36}}]}"
    )
    assert only(yarn_per_size(checked(tmp_path, yarn))[0]).basis == "one factor"


def test_margin_price_and_what_is_needed_besides(tmp_path: Path) -> None:
    yarn = (
        "  A: {skein: 5 yd, unravelled: {ch: 1 in, sc: 2 in, dc: 4 in}, margin: 20, price: 8.50 EUR, "
        "besides: {seams: 22 in, swatch: 1 yd}, tails: 2}"
    )
    need = only(yarn_per_size(checked(tmp_path, yarn))[0])
    size = need.of("M")
    assert size is not None
    net = 208 + 22 + 36 + 12
    assert size.wanted.inches == net * Fraction(12, 10)
    assert size.skeins == -(-net * 12 // (10 * 180))
    assert size.cost == size.skeins * Fraction(17, 2)
    assert need.currency == "EUR"
    assert {line.what: line.amount.inches for line in size.lines if not line.is_worked} == {
        "seams": 22,
        "swatch": 36,
        "tails": 12,
    }


def test_grams_alone_give_skeins_by_weight(tmp_path: Path) -> None:
    need = only(yarn_per_size(checked(tmp_path, "  A: {skein: 50 g, sample: {size: M, used: 100 g}}"))[0])
    size = need.of("M")
    assert size is not None
    assert size.used.inches is None
    assert size.skeins == 3  # 100 g and a tenth


def test_one_loose_hand(tmp_path: Path) -> None:
    """No margin at all and 98 g of a 100 g skein: two parts in a hundred are left, and that is warned of."""
    _, findings = yarn_per_size(checked(tmp_path, "  A: {skein: 100 g, margin: 0, sample: {size: M, used: 98 g}}"))
    assert ("yarn-may-run-out", "M") in {(one.rule, one.size) for one in findings}


def test_rows_that_could_not_be_followed_are_said_to_be_missing(tmp_path: Path) -> None:
    rows = ROWS.replace("Edging Row 1: Ch 1, turn, sc in each st across.", "Row 3: Ch 1, turn, grumble in every nook.")
    pattern = checked(tmp_path, "  A: {skein: 100 g, unravelled: {ch: 1 in, sc: 2 in, dc: 4 in}}", rows)
    needs, findings = yarn_per_size(pattern)
    assert {one.rule for one in findings} >= {"rows-not-counted"}
    assert not any(size.is_whole for size in only(needs).sizes)


@pytest.mark.parametrize("price", ["nothing", "free of charge"])
def test_a_price_that_is_none(tmp_path: Path, price: str) -> None:
    _, findings = yarn_per_size(
        checked(tmp_path, f"  A: {{skein: 100 g, sample: {{size: M, used: 98 g}}, price: {price}}}")
    )
    assert "price-unreadable" in {one.rule for one in findings}


@pytest.mark.parametrize(("written", "said"), [("40 in / 20", "2 in of sc"), ("50 cm / 10", "5 cm of sc")])
def test_unravelled_lengths_are_said_in_the_unit_they_were_measured_in(tmp_path: Path, written: str, said: str) -> None:
    need = only(yarn_per_size(checked(tmp_path, f"  A: {{skein: 90 yd, unravelled: {{sc: {written}}}}}"))[0])
    assert [one.words for one in need.evidence] == [f"unravelled: {said}"]
