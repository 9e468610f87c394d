"""Passages over rows as they are worked: rows, stitches, totals, and every fault by its name."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen import check_row
from gradegen.design.worked import RowResult
from gradegen.pipeline import Outcome, check_file

SIZES = ("S", "M", "L")
DEC_ROW = {"Dec Row": "Ch 1, turn, sc2tog, sc in each st to last 2 sts, sc2tog."}


def work(text: str, prior: int | Sequence[int | str] | str, label: str = "", **more: Any) -> RowResult:
    more.setdefault("worked", "flat")
    return check_row(text, prior=prior, sizes=SIZES, label=label, **more)


def rules(result: RowResult) -> set[tuple[str, str | None]]:
    return {(finding.rule, finding.size) for finding in result.findings}


def test_a_passage_is_followed_in_every_size() -> None:
    result = work(
        "Dec 1 st at each end of next row, then every 4th row 6 (7, 8) times, then every 6th row 3 (3, 4) times. "
        "(40 (44, 48) sts)",
        [60, 66, 74],
    )
    assert result.status == "proved"
    assert result.made == (40, 44, 48)
    assert result.times == (1 + 24 + 18, 1 + 28 + 18, 1 + 32 + 24)
    assert result.taken == (60, 66, 74)


def test_one_end_counts_once_and_both_ends_twice() -> None:
    assert work("Dec 1 st at neck edge every row 4 times.", 20).made == (16,) * 3
    assert work("Inc 2 sts at each end every other row 3 times.", 20).made == (32,) * 3


def test_rows_of_the_label_left_over_are_even() -> None:
    result = work("Dec 1 st at each end of every 4th row 6 times. (28 sts)", 40, "Rows 3-42")
    assert (result.status, result.made, result.times) == ("proved", (28,) * 3, (40,) * 3)


def test_too_few_rows_for_the_shaping() -> None:
    result = work("Dec 1 st at each end of every other row 6 times.", 40, "Rows 3-10")
    assert rules(result) == {("shaping-longer-than-section", size) for size in SIZES}
    assert result.findings[0].expected == "12 rows"
    assert result.findings[0].found == "8 rows"


def test_every_4th_row_may_begin_with_a_shaping_row_where_only_that_fits() -> None:
    result = work("Dec 1 st at each end of every 4th row 6 times. (28 sts)", 40, "Rows 3-23")
    assert (result.status, result.times) == ("proved", (21,) * 3)


def test_another_total_is_named_in_its_size_with_both_numbers() -> None:
    result = work("Dec 1 st at each end of every 4th row 6 times. (28 (28, 30) sts)", 40)
    (finding,) = result.findings
    assert (finding.rule, finding.size) == ("shaping-total-differs", "L")
    assert (finding.expected, finding.found) == ("28 sts", "30 sts")
    assert finding.place.column > 50
    assert "40" in (finding.because or "")


@pytest.mark.parametrize(
    ("text", "prior", "earlier"),
    [
        ("Dec 1 st at each end of next row, then every 4th row 6 more times. (48 sts)", 60, None),
        ("Rep Dec Row every 4th row 5 times. (30 sts)", 38, DEC_ROW),
        ("Rep Dec Row every 4th row 6 times in all. (26 sts)", 38, DEC_ROW),
    ],
)
def test_times_or_more_times(text: str, prior: int, earlier: dict[str, str] | None) -> None:
    assert rules(work(text, prior, earlier=earlier)) == {("times-or-more-times", size) for size in SIZES}


def test_next_and_every_foll_row_is_settled_by_the_count() -> None:
    six = work("Dec 1 st at each end on next and every foll 4th row 6 times. (48 sts)", 60)
    seven = work("Dec 1 st at each end on next and every foll 4th row 6 times. (46 sts)", 60)
    assert (six.status, six.times) == ("proved", (21,) * 3)
    assert (seven.status, seven.times) == ("proved", (25,) * 3)
    assert work("Dec 1 st at each end on next and every foll 4th row 6 times. (45 sts)", 60).status == "wrong"


def test_an_odd_change_cannot_be_the_same_at_both_ends() -> None:
    total = work("Inc 1 st at each end of every 10th row 5 times. (51 sts)", 40)
    until = work("Dec 1 st at each end on every alt row until 40 (41, 48) sts rem.", [60, 60, 50])
    assert rules(total) == {("odd-change-at-both-ends", size) for size in SIZES}
    assert rules(until) == {("odd-change-at-both-ends", "M")}
    assert until.made == (40, None, 48)


def test_a_count_on_the_wrong_side_is_never_reached() -> None:
    assert rules(work("Dec 1 st at each end on every alt row until 50 sts rem.", 40)) == {
        ("shaping-total-differs", size) for size in SIZES
    }


def test_no_stitches_are_left_for_the_edge() -> None:
    result = work("Bind off 15 (15, 5) sts at beg of next 2 rows, then 3 sts at beg of next 4 rows.", 40)
    assert rules(result) == {("edge-stitches-run-out", "S"), ("edge-stitches-run-out", "M")}


def test_too_many_for_one_row() -> None:
    result = work("Dec 25 sts evenly across next row.", [40, 50, 60])
    assert rules(result) == {("shaping-too-dense", "S")}
    assert rules(work("Inc 41 sts evenly across next row.", [40, 41, 60])) == {("shaping-too-dense", "S")}


def test_the_row_named_is_worked_stitch_for_stitch() -> None:
    result = work("Rep Dec Row every 4th row 5 more times. (28 sts)", 38, earlier=DEC_ROW)
    assert (result.status, result.times) == ("proved", (20,) * 3)
    broken = {"Dec Row": "Ch 1, turn, sc2tog, sc in each st to last 2 sts, sc3tog."}
    assert work("Rep Dec Row every 4th row 5 more times. (28 sts)", 38, earlier=broken).status == "wrong"
    lost = work("Rep Dec Row every 4th row 5 more times. (28 sts)", 38)
    assert (lost.status, lost.findings) == ("not-checked", ())


def test_shapings_at_the_same_time_are_merged() -> None:
    text = (
        "Dec 1 st at armhole edge every other row 6 times, at the same time, beg with row 9 (9, 11) of these, "
        "dec 1 st at neck edge every row 4 times. (30 sts)"
    )
    result = work(text, 40)
    assert (result.status, result.made, result.times) == ("proved", (30,) * 3, (12, 12, 14))
    assert not result.findings


def test_a_size_in_which_events_swap_places_is_told() -> None:
    text = (
        "Dec 1 st at armhole edge every other row 6 times, at the same time, beg with row 9 (9, 14) of these, "
        "dec 1 st at neck edge every row 4 times. (30 sts)"
    )
    assert rules(work(text, 40)) == {("shaping-order-flips", "L")}


def test_even_rows_keep_the_count() -> None:
    result = work("Work even in sc for 6 (7, 8) rows. (40 sts)", 40)
    assert (result.status, result.times) == ("proved", (6, 7, 8))
    assert rules(work("Work 5 rows even. (42 sts)", 40)) == {("stated-count-wrong", size) for size in SIZES}


def test_several_passages_follow_each_other() -> None:
    result = work(
        "Work even for 4 rows. Inc 1 st at each end of next row, then every 6th row 3 times. Work even for 2 rows. "
        "(48 sts)",
        40,
    )
    assert (result.status, result.times) == ("proved", (4 + 1 + 18 + 2,) * 3)


def test_short_rows_leave_stitches_that_come_back() -> None:
    text = "Leave 5 sts unworked at end of next 2 rows, then 6 sts at end of next 6 rows"
    assert work(f"{text}. (44 sts)", 90).status == "proved"
    assert work(f"{text}, then work even across all sts for 2 rows. (90 sts)", 90).status == "proved"


def test_a_passage_for_some_sizes_only() -> None:
    result = work("For size L only, dec 1 st at each end of every 4th row 3 times. (40 (40, 34) sts)", 40)
    assert result.made[2] == 34


def test_nothing_is_claimed_of_a_pattern_with_spaces() -> None:
    result = work("Dec 1 st at each end of every 4th row 3 times. (34 sts)", "10 x (dc, ch-1 sp), dc")
    assert (result.status, result.findings) == ("not-checked", ())


def test_rounds_do_not_turn() -> None:
    result = work("Inc 8 sts evenly every other rnd 5 times. (104 sts)", 64, "Rnds 2-11", worked="joined rounds")
    assert (result.status, result.times) == ("proved", (10,) * 3)


# ---- against a plain list -------------------------------------------------------------------------------------------


@given(
    start=st.integers(30, 300),
    rates=st.lists(st.tuples(st.integers(1, 12), st.integers(1, 12)), min_size=1, max_size=3),
    sign=st.sampled_from([1, -1]),
    both=st.booleans(),
    off=st.integers(-2, 2),
)
@settings(max_examples=120, derandomize=True, deadline=None)
def test_against_rows_written_out_one_by_one(
    start: int, rates: list[tuple[int, int]], sign: int, both: bool, off: int
) -> None:
    count, rows = start, 0
    for interval, times in rates:
        for _ in range(times):
            rows += interval
            count += sign * (2 if both else 1)
    words = ", then ".join(f"every {interval} rows {times} times" for interval, times in rates)
    text = f"{'inc' if sign > 0 else 'dec'} 1 st at {'each end' if both else 'neck edge'} {words}. ({count + off} sts)"
    result = check_row(text, prior=start, worked="flat", sizes=("one",))
    if count < 0:
        assert result.status == "wrong"
    elif off == 0:
        assert (result.status, result.made, result.times) == ("proved", (count,), (rows,)), text
    elif count + off >= 0:
        assert result.status == "wrong", text
        assert len(result.findings) == 1


# ---- rows up to a length --------------------------------------------------------------------------------------------

PATTERN = """
title: Length Example
designer: {name: Demo House, help: help@example.org, year: 2026}
version: "1.0"
terms: US
sizes: {table: women, for: [S, M], by: bust}
gauge:
  sc: {stitches: 14, rows: 16, over: 4 in, hook: 5.5 mm, state: blocked}
measures:
  length: "[10, 11] in"
pieces:
  - name: Back
    shape: flat
    length: length
    rows: |
ROWS
"""


def pattern(tmp_path: Path, rows: str, gauge: str = "") -> Outcome:
    text = PATTERN.replace("ROWS", "\n".join(f"      {row}" for row in rows.strip().split("\n")))
    if gauge:
        text = text.replace("measures:", f"  {gauge}\nmeasures:")
    path = tmp_path / "pattern.yaml"
    path.write_text(text, encoding="utf-8")
    return check_file(path)


BEGIN = """
Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
Row 2: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
Row 3: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
"""


def times(outcome: Outcome, at: int) -> list[int]:
    assert outcome.checked is not None
    return [rows[at].times for rows in outcome.checked.worked.values()]


def test_rows_up_to_a_length_by_the_row_gauge(tmp_path: Path) -> None:
    outcome = pattern(
        tmp_path, BEGIN + "Rep Rows 2 and 3 until piece measures {length}.\n" + "Next row: Sc2tog across. (15 sc)"
    )
    assert times(outcome, 3) == [38, 42]  # 10 in are 40 rows: 3 + 38 is the first whole repeat that reaches 39 1/2
    assert outcome.proved.not_checked == 0
    assert outcome.proved.wrong == 0


def test_even_rows_up_to_a_length_and_a_length_from_a_marked_row(tmp_path: Path) -> None:
    rows = (
        BEGIN
        + "Work even until piece measures 5 in.\n"
        + "Armhole: Dec 1 st at each end of next row. (28 sts)\n"
        + "Next row: Work even until armhole measures 2 in. (28 sts)"
    )
    outcome = pattern(tmp_path, rows)
    assert times(outcome, 3) == [17, 17]
    assert times(outcome, 5) == [7, 7]
    assert outcome.proved.not_checked == 0


def test_without_a_row_gauge_nothing_is_claimed(tmp_path: Path) -> None:
    outcome = pattern(
        tmp_path,
        BEGIN + "Rep Rows 2 and 3 until piece measures 10 in.",
        "dc: {stitches: 12, rows: 8, over: 4 in, hook: 5.5 mm, state: blocked}",
    )
    assert outcome.checked is not None
    assert [rows[3].status for rows in outcome.checked.worked.values()] == ["not-checked", "not-checked"]
    assert not [finding for finding in outcome.findings if finding.severity.name == "ERROR"]


def test_too_many_in_the_row_at_hand() -> None:
    assert rules(work("Sc in each st across, decreasing 21 sts evenly.", 40)) == {
        ("shaping-too-dense", s) for s in SIZES
    }
    assert work("Sc in each st across, decreasing 20 sts evenly. (20 sc)", 40).status == "proved"


def test_rows_told_one_by_one_fill_their_label() -> None:
    text = "Inc 1 st at each end of every 6th row 3 times, then work even for 4 rows. (46 sts)"
    assert work(text, 40, "Rows 2-23").status == "proved"
    assert rules(work(text, 40, "Rows 2-25")) == {("shaping-rows-differ", size) for size in SIZES}
    assert rules(work(text, 40, "Rows 2-20")) == {("shaping-longer-than-section", size) for size in SIZES}


def test_the_side_of_the_last_row_is_told(tmp_path: Path) -> None:
    rows = (
        BEGIN.replace("Row 3:", "Row 3 (RS):") + "Next rows: Dec 1 st at each end of every other row 3 times. (24 sc)\n"
    )
    pattern(tmp_path, rows)
    path = tmp_path / "pattern.yaml"
    line = next(at for at, text in enumerate(path.read_text("utf-8").split("\n"), 1) if "Next rows" in text)
    traced = check_file(path, tracing=line).checked
    assert traced is not None
    steps = [step.words for step in traced.worked["S"][3].steps]
    assert steps == ["dec 1 st at each end, every other row", "the last of 6 rows is a RS row"]
    assert traced.worked["S"][3].times == 6


def test_every_rs_row_begins_on_the_next_rs_row(tmp_path: Path) -> None:
    after_ws = (
        BEGIN.replace("Row 3:", "Row 3 (WS):") + "Next rows: Dec 1 st at each end of every RS row 3 times. (24 sc)"
    )
    after_rs = (
        BEGIN.replace("Row 3:", "Row 3 (RS):") + "Next rows: Dec 1 st at each end of every RS row 3 times. (24 sc)"
    )
    assert times(pattern(tmp_path, after_ws), 3) == [5, 5]
    assert times(pattern(tmp_path, after_rs), 3) == [6, 6]


def test_even_rows_of_unknown_number_leave_the_count_but_prove_nothing(tmp_path: Path) -> None:
    twice = "dc: {stitches: 12, rows: 8, over: 4 in, hook: 5.5 mm, state: blocked}"
    across = "Next row: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)"
    rows = f"{BEGIN}Work even until piece measures 5 in.\n{across}"
    outcome = pattern(tmp_path, rows, twice)
    assert outcome.checked is not None
    assert [row.status for row in outcome.checked.worked["S"]][3:] == ["not-checked", "proved"]
    unread = (
        BEGIN + "Next row: Inc in every so often as shown. Work 1 row even.\nNext row: Sc in each st across. (36 sc)"
    )
    assert pattern(tmp_path, unread).proved.wrong == 0
