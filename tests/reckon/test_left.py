"""Yarn left after a row: what the rest takes, how far the yarn goes, and the last repeat it allows."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.design.formula import Amount
from gradegen.findings import Place
from gradegen.pipeline import check_file
from gradegen.reckon import stitch_census, yarn_per_size
from gradegen.reckon.census.census import total
from gradegen.reckon.census.row_by_row import all_rows, find_rows, single_rows
from gradegen.reckon.yarn.left import YarnLeft, yarn_left

DEMOS = Path(__file__).parents[2] / "shared" / "patterns"
HERE = Place("--left", 1, 1, 1, 1)


@pytest.fixture(scope="module")
def wrap() -> Checked:
    found = check_file(DEMOS / "skerrywick-wrap.yaml").checked
    assert found is not None
    return found


def left(checked: Checked, size: str, at: str, amount: Fraction | int, unit: str = "g") -> YarnLeft:
    found, findings = yarn_left(checked, size, at, Amount(Fraction(amount), unit, HERE))
    assert found is not None, findings
    return found


def test_single_rows_add_up_to_the_census(wrap: Checked) -> None:
    census = stitch_census(wrap)
    for size in wrap.sizes:
        rows = single_rows(wrap, size.name)
        total: dict[str, int] = {}
        for row in rows:
            for name, number in row.census.items():
                total[name] = total.get(name, 0) + number
        assert total == census.of(size.name)
        assert [row.number for row in rows[1:]] == list(range(1, size.counts["rounds"].n + 1))


@pytest.mark.parametrize("said", ["Rnd 7", "rnd 7", "Round 7", "7", "Rnd. 7", "rnd 7:"])
def test_a_row_by_any_of_its_names(wrap: Checked, said: str) -> None:
    rows = single_rows(wrap, "M")
    (spot,) = find_rows(rows, said)
    assert rows[spot].number == 7


def test_used_and_needed_are_the_whole(wrap: Checked) -> None:
    (need,), _ = yarn_per_size(wrap)
    whole = need.of("M")
    assert whole is not None
    for rnd in range(1, 12):
        found = left(wrap, "M", f"Rnd {rnd}", 500)
        assert found.used.plus(found.needed) == whole.used
        assert found.is_enough


def test_exactly_enough_and_a_hair_less(wrap: Checked) -> None:
    needed = left(wrap, "M", "Rnd 6", 500).needed.grams
    assert needed is not None
    assert left(wrap, "M", "Rnd 6", needed).is_enough
    short = left(wrap, "M", "Rnd 6", needed - Fraction(1, 1000))
    assert not short.is_enough
    assert short.reaches == "Rnd 10"


def test_the_repeats_it_allows(wrap: Checked) -> None:
    """After Rnd 6 of 11 one more pair is planned; closing rounds stay affordable with just so many pairs."""
    plan = left(wrap, "M", "Rnd 6", 500).repeat
    assert plan is not None
    assert plan.planned == 1
    assert plan.is_even
    each, closing = plan.each.grams, plan.closing.grams
    assert each is not None
    assert closing is not None
    for pairs in range(5):
        enough = left(wrap, "M", "Rnd 6", closing + pairs * each).repeat
        assert enough is not None
        assert enough.allowed == pairs
        assert enough.last == f"Rnd {6 + 2 * pairs}"
        nearly = left(wrap, "M", "Rnd 6", closing + pairs * each - Fraction(1, 100)).repeat
        assert nearly is not None
        assert nearly.allowed == max(0, pairs - 1)
    none = left(wrap, "M", "Rnd 6", closing - 1).repeat
    assert none is not None
    assert none.last is None


def test_in_the_middle_of_a_repeat_it_is_finished_first(wrap: Checked) -> None:
    middle, end = left(wrap, "M", "Rnd 5", 500).repeat, left(wrap, "M", "Rnd 6", 500).repeat
    assert middle is not None
    assert end is not None
    assert middle.planned == end.planned == 1


def test_after_the_last_repeat_there_is_none(wrap: Checked) -> None:
    assert left(wrap, "M", "Rnd 8", 500).repeat is None


def test_yards_as_well_as_grams(wrap: Checked) -> None:
    by_weight, by_length = left(wrap, "M", "Rnd 6", 50), left(wrap, "M", "Rnd 6", 100, "yd")
    assert by_weight.left == by_length.left  # 200 yd to 100 g


def test_rows_that_grow_are_an_estimate(tmp_path: Path) -> None:
    path = tmp_path / "shawl.yaml"
    path.write_text(
        "title: Triangle\nterms: US\nsizes: {table: women, for: [M]}\n"
        "yarn:\n  A: {skein: 400 yd / 100 g, unravelled: {sc: 2 in, ch: 1 in}}\n"
        "gauge:\n  plain: {stitches: 16, rows: 18, over: 4 in}\n"
        "pieces:\n  - name: Shawl\n    shape: flat\n    rows: |\n"
        "      Row 1: Ch 2. 3 sc in 2nd ch from hook. (3 sc)\n"
        "      Row 2: Ch 1, turn, 2 sc in first st, sc in each st to last st, 2 sc in last st. (5 sc)\n"
        "      Rows 3-40: Rep Row 2.\n",
        encoding="utf-8",
    )
    checked = check_file(path).checked
    assert checked is not None
    rows = single_rows(checked, "M")
    assert [row.made for row in rows] == [2 * number + 1 for number in range(1, 41)]
    repeat = left(checked, "M", "Row 30", 400, "yd").repeat
    assert repeat is not None
    assert not repeat.is_even
    assert repeat.planned == 10
    spent, rest = 0, 400 * 36  # each row is two stitches longer than the one before, and one chain
    while rest >= (2 * (31 + spent) + 1) * 2 + 1:
        rest -= (2 * (31 + spent) + 1) * 2 + 1
        spent += 1
    assert repeat.allowed == spent


def test_a_row_that_is_not_there(wrap: Checked) -> None:
    found, findings = yarn_left(wrap, "M", "Rnd 99", Amount(Fraction(38), "g", HERE))
    assert found is None
    assert [one.rule for one in findings] == ["row-not-found"]


def test_yarn_of_which_nothing_is_known(wrap: Checked) -> None:
    from dataclasses import replace

    bare = replace(wrap.pattern.yarns[0], sample_size=None, sample_used=None, unravelled={})
    checked = replace(wrap, pattern=replace(wrap.pattern, yarns=(bare,)))
    found, findings = yarn_left(checked, "M", "Rnd 4", Amount(Fraction(38), "g", HERE))
    assert found is None
    assert [(one.rule, str(one.severity)) for one in findings] == [("yarn-not-known", "error")]


SLEEVES = """title: Sleeves
terms: US
sizes: {table: women, for: [M]}
yarn:
  A: {skein: 400 yd / 100 g, unravelled: {sc: 2 in, ch: 1 in}}
gauge:
  plain: {stitches: 16, rows: 18, over: 4 in}
pieces:
  - name: Body
    shape: flat
    rows: |
      Row 1: Ch 21. Sc in 2nd ch from hook, sc in each ch across. (20 sc)
      Row 2: Ch 1, turn, sc in each st across. (20 sc)
  - name: Sleeve
    shape: flat
    notes: [Make two.]
    rows: |
      Row 1: Ch 11. Sc in 2nd ch from hook, sc in each ch across. (10 sc)
"""


def test_a_piece_that_is_made_twice(tmp_path: Path) -> None:
    path = tmp_path / "sleeves.yaml"
    path.write_text(SLEEVES, encoding="utf-8")
    checked = check_file(path).checked
    assert checked is not None
    assert stitch_census(checked).of("M") == {"ch": 22 + 2 * 11, "sc": 40 + 2 * 10}
    found = left(checked, "M", "Body Row 2", 2, "yd")
    assert found.needed.inches == 2 * (11 + 20)
    assert left(checked, "M", "Sleeve, no. 1 Row 1", 2, "yd").needed.inches == 31
    none, findings = yarn_left(checked, "M", "Row 1", Amount(Fraction(2), "yd", HERE))
    assert none is None
    assert [one.rule for one in findings] == ["row-not-found"]
    assert "Body Row 1" in (findings[0].hint or "")


@pytest.mark.parametrize("name", ["gunwale-pullover", "limpet-pullover", "slipway-cardigan"])
def test_rows_of_a_garment_add_up_to_its_census(name: str) -> None:
    """Rows that a shaping works at once are there one by one, and so are pieces that are made twice."""
    checked = check_file(DEMOS / f"{name}.yaml").checked
    assert checked is not None
    census = stitch_census(checked)
    for size in checked.sizes[::4]:
        rows = all_rows(checked, size.name)
        assert total(one.by_colour.get("A", {}) for one in rows) == census.of(size.name)
        assert not any("{" in one.name for one in rows)


def test_rows_of_a_garment_are_named_with_their_piece() -> None:
    checked = check_file(DEMOS / "gunwale-pullover.yaml").checked
    assert checked is not None
    found = left(checked, "M", "Sleeves, no. 2 Rnd 1", 20, "g")
    assert found.at == "Sleeves, no. 2 Rnd 1"
    assert found.reaches.startswith("Sleeves, no. 2 Next rnds, no. ")
    assert found.repeat is None  # decreases and ribbing without numbers are worked as often as they say
    assert [row.split(" ")[0] for _, row in found.quarters] == ["Yoke", "Body", "Sleeves,"]
    whole = yarn_per_size(checked)[0][0].of("M")
    assert whole is not None
    assert found.used.plus(found.needed) == whole.used
