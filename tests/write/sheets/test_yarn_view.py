"""Yarn as printed: rounded up, both units, what it rests on."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file
from gradegen.reckon import YarnAmount, stitch_census, yarn_per_size
from gradegen.write.sheets.yarn_view import (
    aligned,
    amount_text,
    money,
    needed_line,
    percent,
    substitution_line,
    up,
    yarn_table,
)
from gradegen.write.sheets.yarn_view_text import census_text, hours_text, yarn_json, yarn_text

DEMOS = Path(__file__).parents[3] / "shared" / "patterns"


@pytest.fixture(scope="module")
def wrap() -> Checked:
    found = check_file(DEMOS / "skerrywick-wrap.yaml").checked
    assert found is not None
    return found


def test_amounts_are_rounded_up() -> None:
    assert up(Fraction(3148, 10)) == "315"
    assert up(Fraction(315)) == "315"
    assert up(None) == "–"
    assert amount_text(YarnAmount(Fraction(36 * 100), Fraction(50))) == "100 yd (92 m), 50 g (1.8 oz)"
    assert amount_text(YarnAmount(Fraction(36 * 100), None), metric=True) == "92 m (100 yd)"


@pytest.mark.parametrize(
    ("minutes", "text"), [(44, "45 min"), (3, "5 min"), (119, "120 min"), (570, "9½ h"), (605, "10 h")]
)
def test_hours(minutes: int, text: str) -> None:
    assert hours_text(Fraction(minutes)) == text


def test_money_and_percent() -> None:
    assert money(Fraction(17)) == "17.00"
    assert money(Fraction(255, 10)) == "25.50"
    assert percent(Fraction(1, 3)) == "33 %"


def test_columns_line_up() -> None:
    assert aligned(("size", "yd"), [("XS", "9"), ("M", "100")]) == "size   yd\nXS      9\nM     100"


def test_a_line_per_size_with_the_evidence(wrap: Checked) -> None:
    (need,), _ = yarn_per_size(wrap)
    table = yarn_table(need, wrap)
    assert [line[0] for line in table.lines] == [size.name for size in wrap.sizes]
    assert any("sample in size M, 168 g" in note and "unravelled" in note for note in table.notes)
    assert any(note.startswith("The evidence lies between") for note in table.notes)
    assert {"from", "to"} <= set(table.heads)


def test_a_single_piece_of_evidence_leaves_the_spread_unknown(wrap: Checked) -> None:
    alone = replace(wrap.pattern.yarns[0], unravelled={})
    copy = replace(wrap, pattern=replace(wrap.pattern, yarns=(alone,)))
    (need,), _ = yarn_per_size(copy)
    table = yarn_table(need, copy)
    assert any("not known" in note for note in table.notes)
    assert "from" not in table.heads


def test_what_is_printed_agrees_with_itself(wrap: Checked) -> None:
    """Yards, metres and skeins of the table: 1 yd = 0.9144 m, skeins of 200 yd; every printed figure by itself."""
    (need,), _ = yarn_per_size(wrap)
    table = yarn_table(need, wrap)
    at = {head: spot for spot, head in enumerate(table.heads)}
    for line in table.lines:
        yards, metres, skeins = (int(line[at[head]]) for head in ("with margin yd", "m", "skeins"))
        assert abs(yards * Fraction(9144, 10000) - metres) <= 1
        assert skeins == -(-yards // 200)


def test_the_line_for_the_materials(wrap: Checked) -> None:
    (need,), _ = yarn_per_size(wrap)
    line = needed_line(need, wrap.sizes)
    first, last = need.sizes[0].wanted, need.sizes[-1].wanted
    assert line.startswith(f"You need {up(first.yards)} (")
    assert f" {up(last.yards)}) yd / {up(first.metres)} (" in line
    l_size = need.sizes[3].wanted
    one = needed_line(need, wrap.sizes[3:4])
    assert one.startswith(f"You need {up(l_size.yards)} yd ({up(l_size.metres)} m), 3 skeins")
    assert one.endswith("with a margin of 10\N{NO-BREAK SPACE}%.")


def test_a_voice_says_all_of_a_size_before_the_next(wrap: Checked) -> None:
    (need,), _ = yarn_per_size(wrap)
    first = need.sizes[0]
    line = needed_line(need, wrap.sizes, is_spoken=True)
    own = f"size {first.size}: {up(first.wanted.yards)} yd ({up(first.wanted.metres)} m), {first.skeins} skeins; size"
    assert line.startswith(f"You need, with a margin of 10\N{NO-BREAK SPACE}%: {own}")
    one = wrap.sizes[3:4]
    assert needed_line(need, one, is_spoken=True) == needed_line(need, one)


def test_metres_first_where_centimetres_come_first(wrap: Checked) -> None:
    metric = replace(wrap, pattern=replace(wrap.pattern, units="centimetres first"))
    (need,), _ = yarn_per_size(metric)
    wanted = need.sizes[3].wanted
    assert needed_line(need, wrap.sizes[3:4], metric=True).startswith(
        f"You need {up(wanted.metres)} m ({up(wanted.yards)} yd), 3 skeins"
    )
    table = yarn_table(need, metric)
    assert [head for head in table.heads if head.split()[-1] in ("m", "yd")] == ["used m", "with margin m", "yd"]
    assert table.lines[3][table.heads.index("with margin m")] == up(wanted.metres)
    assert f"{up(need.sizes[0].wanted.metres)} (" in substitution_line(metric, metric.pattern.yarns[0], need)
    text, _ = yarn_text(metric)
    assert "Meters per finished centimeter of width" in text
    assert " in of hdc" in text  # as it was measured


def test_the_line_for_another_yarn(wrap: Checked) -> None:
    assert substitution_line(wrap, wrap.pattern.yarns[0], None) == (
        "Another yarn of category 4 (medium) that gives 14 sts in 4 in will do."
    )


def test_the_whole_text(wrap: Checked) -> None:
    text, findings = yarn_text(wrap)
    assert "skeins" in text
    assert "Yards per finished inch of width" in text
    assert "yarn-in-proportion" in {one.rule for one in findings}


def test_the_census_as_text(wrap: Checked) -> None:
    text = census_text(wrap)
    census = stitch_census(wrap)
    line = next(line.split() for line in text.splitlines() if line.startswith("hdc "))
    assert [int(number) for number in line[1:]] == [census.of(size.name)["hdc"] for size in wrap.sizes]


def test_for_a_program(wrap: Checked) -> None:
    text, _ = yarn_json(wrap)
    answer = json.loads(text)
    assert answer["yarn"]["A"]["sizes"]["M"]["used"]["grams"] == 168
    assert answer["stitches"]["M"] == dict(stitch_census(wrap).of("M"))
