"""Sewn seams: their lengths by hand in the demo garments, their yarn on a line of its own, and what is not known."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.findings import Finding
from gradegen.pipeline import check_file
from gradegen.reckon import SizeYarn, YarnNeed, yarn_per_size
from gradegen.reckon.any_size import any_size_sheet, usual_span
from gradegen.reckon.seams.sewn_seams import sewn_seams

PATTERNS = Path(__file__).parents[2] / "shared" / "patterns"
CARDIGAN = PATTERNS / "slipway-cardigan.yaml"
EACH = 3  # lengths of yarn to one of seam: common practice, no source
ROUND = ["gunwale-pullover", "limpet-pullover", "skerrywick-wrap", "bollard-hat"]  # nothing in them is sewn


@cache
def demo(name: str) -> Checked:
    return whole(PATTERNS / f"{name}.yaml")


def whole(path: Path) -> Checked:
    found = check_file(path).checked
    assert found is not None, check_file(path).findings
    return found


def copied(tmp_path: Path, text: str) -> Checked:
    path = tmp_path / "copy.yaml"
    path.write_text(text, encoding="utf-8")
    return whole(path)


def needs_of(checked: Checked) -> tuple[YarnNeed, ...]:
    return yarn_per_size(checked)[0]


def line(size: SizeYarn | None, what: str = "seams") -> Fraction | None:
    assert size is not None
    found = [one.amount.inches for one in size.lines if one.what == what]
    assert len(found) < 2
    return found[0] if found else None


def seam_notes(checked: Checked) -> list[Finding]:
    return [one for one in yarn_per_size(checked)[1] if one.rule == "seam-yarn-not-known"]


# the demo garments, by hand ------------------------------------------------------------------------------------------

# Size M at 15 sts and 12 rows over 4 in: 15/4 sts and 3 rows to the inch, from the counts its pages print.
BY_HAND = {
    "shoulder": 2 * Fraction(17 * 4, 15),
    "side": 2 * Fraction(40, 3),
    "underarm": 2 * Fraction(5 * 4, 15),
    "front underarm": 2 * Fraction(5 * 4, 15),
    "armholes": 4 * Fraction(25, 3),
    "sleeve seam": 2 * Fraction(50, 3),
    "button band": Fraction(56, 3),
    "buttonhole band": Fraction(56, 3),
}


def test_the_cardigan_in_m_by_hand() -> None:
    size = next(one for one in demo("slipway-cardigan").sizes if one.name == "M")
    assert {one.seam.name: one.inches for one in sewn_seams(demo("slipway-cardigan"), size)} == BY_HAND


def test_the_cardigan_in_every_size_by_its_counts() -> None:
    (need,) = needs_of(demo("slipway-cardigan"))
    for size in demo("slipway-cardigan").sizes:
        n = {name: count.n for name, count in size.counts.items()}
        stitches = 2 * n["shoulder"] + 4 * n["underarm"]
        rows = 2 * n["side rows"] + 4 * n["arm rows"] + 2 * n["sleeve rows"] + 2 * n["edge rows"]
        assert line(need.of(size.name)) == EACH * (Fraction(4 * stitches, 15) + Fraction(rows, 3))
    lengths = [line(size) or 0 for size in need.sizes]
    assert all(one <= other for one, other in pairwise(lengths))
    assert not seam_notes(demo("slipway-cardigan"))


@pytest.mark.parametrize("name", ROUND)
def test_what_is_worked_in_one_has_no_seams_and_nothing_is_said(name: str) -> None:
    assert all(line(size) is None for need in needs_of(demo(name)) for size in need.sizes)
    assert all(not list(sewn_seams(demo(name), size)) for size in demo(name).sizes)
    assert not seam_notes(demo(name))


@pytest.mark.parametrize("seam", BY_HAND)
def test_a_copy_without_a_seam_takes_less_by_just_its_yarn(seam: str, tmp_path: Path) -> None:
    text, times = re.subn(rf"  - {seam}: .*\n", "", CARDIGAN.read_text("utf-8"))
    assert times == 1
    (bare,), (need,) = needs_of(copied(tmp_path, text)), needs_of(demo("slipway-cardigan"))
    size, other = need.of("M"), bare.of("M")
    assert size is not None
    assert other is not None
    assert size.used == other.used
    assert total(size, ("tails",)) - total(other, ("tails",)) == EACH * BY_HAND[seam]
    if size.skeins == other.skeins:  # else a new skein less brings two ends less
        assert size.wanted.inches is not None
        assert other.wanted.inches is not None
        assert size.wanted.inches - other.wanted.inches == EACH * BY_HAND[seam] * Fraction(11, 10)


def total(size: SizeYarn, without: Sequence[str] = ()) -> Fraction:
    return sum((one.amount.inches or Fraction(0) for one in size.lines if one.what not in without), Fraction(0))


def test_seams_weigh_as_the_skein_says() -> None:
    """200 yd are 100 g, so an inch is 1/72 g."""
    (need,) = needs_of(demo("slipway-cardigan"))
    for size in need.sizes:
        (amount,) = [one.amount for one in size.lines if one.what == "seams"]
        assert amount.inches is not None
        assert amount.grams == amount.inches / 72


# small pieces of our own ---------------------------------------------------------------------------------------------

SMALL = """
title: Two panels
terms: US
sizes: {table: women, for: [S, M, L]}
gauge:
  plain: {stitches: 4, rows: 5, over: 4 in}
  thick: {stitches: 2, rows: 3, over: 4 in}
measures:
  width: "[20, 24, 28] in"
  depth: 10 in
counts:
  n: {across: width, gauge: plain}
  deep: {along: depth, gauge: plain, multiple: 2}
yarn:
  A: {skein: 200 yd / 100 g, unravelled: {ch: 1 in, sc: 2 in}YARN}
pieces:
  - name: Panels
    shape: flat
    width: width
    length: depth
    edges: {side: deep}
    notes: [Make two.]
    rows: |
      Row 1: Ch {n + 1}. Sc in 2nd ch from hook, sc in each ch across. ({n} sc)
      Rows 2-{deep}: Ch 1, turn, sc in each st across. ({n} sc)
seams:
"""


def small(tmp_path: Path, *seams: str, yarn: str = "", text: str = SMALL) -> Checked:
    body = text.strip().replace("YARN", yarn) + "".join(f"\n  - {seam}" for seam in seams) + "\n"
    return copied(tmp_path, body)


SIDE = Fraction(2 * 12 * 4, 5)  # two sides of 12 rows, 5 rows over 4 in


def test_two_sides(tmp_path: Path) -> None:
    """10 in are 12 or 13 rows at 5 over 4 in; 12 on a multiple of two."""
    (need,) = needs_of(small(tmp_path, "side: panels side = panels rows"))
    assert [line(size) for size in need.sizes] == [EACH * SIDE] * 3


@pytest.mark.parametrize(("seam", "inches"), [
    ("side: {join: panels side = panels rows, sewn: 1}", SIDE / 2),
    ("side: {join: panels side = panels rows, sewn: 0}", None),
    ("raglan: panels side = panels rows", None),
    ("width: panels start = panels end", None),
    ("{join: panels side = panels rows, sewn: 3}", SIDE * 3 / 2),
    ("band: {pick up: 15, along: deep, ratio: 5 for 4}", None),
    ("band: {pick up: 15, along: deep, ratio: 5 for 4, sewn: 2}", SIDE),
    ("sleeve: {join: panels side = 9 in, within: 1 in}", SIDE),  # eased in: by the longer, once
    ("sleeve: {join: panels side = 10 in, within: 1 in}", 20),
])  # fmt: skip
def test_how_many_are_sewn(seam: str, inches: Fraction | None, tmp_path: Path) -> None:
    checked = small(tmp_path, seam)
    (need,) = needs_of(checked)
    assert line(need.of("M")) == (None if inches is None else EACH * inches)
    assert not seam_notes(checked)


@pytest.mark.parametrize("seam", [
    "panels rows = deep",  # nobody says that it is sewn
    "shoulder: panels end = 2 * n / 2 + 0",  # two shoulders or one?
    "side: side of it = half of it",  # edges nobody knows
])  # fmt: skip
def test_what_is_not_known_is_said_once_and_not_guessed(seam: str, tmp_path: Path) -> None:
    checked = small(tmp_path, seam)
    (need,) = needs_of(checked)
    assert [line(size) for size in need.sizes] == [None] * 3
    (note,) = seam_notes(checked)
    assert note.place == checked.pattern.seams[0].place


def test_counts_of_two_gauges_have_no_length(tmp_path: Path) -> None:
    text = (
        SMALL.replace("deep: {along: depth, gauge: plain, multiple: 2}", "deep: {least: 12, most: 12}")
        .replace("    length: depth\n    edges: {side: deep}\n", "    edges: {side: rows}\n")
        .replace("  depth: 10 in\n", "")
        .replace("    width: width\n", "")
        .replace("{deep}", "12")
    )
    text = re.sub(r"  deep: .*\n", "", text)
    checked = small(tmp_path, "side: panels side = panels rows", text=text)
    assert line(needs_of(checked)[0].of("M")) is None
    assert len(seam_notes(checked)) == 1
    one_gauge = small(tmp_path, "side: panels side = panels rows", text=re.sub(r"  thick: .*\n", "", text))
    assert line(needs_of(one_gauge)[0].of("M")) == EACH * SIDE


def test_the_designers_own_amount_for_seams_replaces_it(tmp_path: Path) -> None:
    checked = small(tmp_path, "side: panels side = panels rows", yarn=", besides: {seams and ends: 5 yd}")
    (need,) = needs_of(checked)
    assert need.sewing is None
    assert {one.what for one in need.sizes[0].lines} == {"Panels", "seams and ends", "tails"}
    assert not seam_notes(small(tmp_path, "panels side = panels rows", yarn=", besides: {seams: 5 yd}"))


def test_how_much_yarn_a_seam_takes_is_the_designers_choice(tmp_path: Path) -> None:
    (need,) = needs_of(small(tmp_path, "side: panels side = panels rows", yarn=", sewing: 4.5"))
    assert line(need.of("M")) == Fraction(9, 2) * SIDE
    assert need.sewing is not None
    assert need.sewing.is_stated


def test_the_yarn_that_says_so_sews(tmp_path: Path) -> None:
    other = "}\n  B: {skein: 100 yd / 50 g, unravelled: {sc: 1 in}, sewing: 2"
    needs = needs_of(small(tmp_path, "side: panels side = panels rows", yarn=other))
    assert {need.letter: line(need.of("M")) for need in needs} == {"A": None, "B": 2 * SIDE}


def test_a_skein_without_a_length_is_said(tmp_path: Path) -> None:
    text = SMALL.replace(
        "skein: 200 yd / 100 g, unravelled: {ch: 1 in, sc: 2 in}", "skein: 50 g, sample: {size: M, used: 90 g}"
    )
    checked = small(tmp_path, "side: panels side = panels rows", text=text)
    (need,) = needs_of(checked)
    size = need.of("M")
    assert size is not None
    assert size.skeins == 2  # 90 g and a tenth
    assert line(size) is None
    assert len(seam_notes(checked)) == 1


def test_any_size_has_the_seams_of_its_own_count(tmp_path: Path) -> None:
    """A seam along the width grows with it: n stitches of one inch, sewn once."""
    checked = small(tmp_path, "top: {join: panels start = panels end, sewn: 1}")
    sheet, _ = any_size_sheet(checked, *usual_span(checked))
    assert sheet is not None
    assert len(sheet.sizes) > 5
    for one in sheet.sizes:
        assert line(one.yarn["A"]) == EACH * one.count
    (need,) = needs_of(checked)
    named = [one for one in sheet.sizes if one.named]
    assert len(named) == 3
    assert all(one.yarn["A"].wanted == known.wanted for one in named if (known := need.of(one.named[0])) is not None)
