"""Shaping schedules: worked out per size, put into the rows as a sentence, read back from it and proved."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from gradegen.design.passages import Shaping
from gradegen.design.schedule import Schedule
from gradegen.findings import Severity
from gradegen.grade.shaping.schedules import sentence, shaping_table
from gradegen.pipeline import Outcome, check_file

HEAD = """
title: Schedule Example
version: "1.0"
designer: {name: Demo House, help: help@example.org, year: 2026}
terms: US
sizes: {table: women, for: [S, M, L], by: bust}
gauge:
  sc: {stitches: 16, rows: 20, over: 4 in, hook: 5 mm, state: blocked}
measures:
  half: "[18, 20, 22] in"
  cross: "[14, 15, 15.5] in"
  neck width: "[7, 7.5, 8] in"
counts:
  back: {across: half, gauge: sc, parity: even}
  cross back: {across: cross, gauge: sc, parity: even}
  neck: {across: neck width, gauge: sc, parity: even}
"""
ROWS = """
pieces:
  - name: Back
    shape: SHAPE
    rows: |
      Row 1: Ch {FROM + 1}. Sc in 2nd ch from hook, sc in each ch across. ({FROM} sc)
      Rows 2-{1 + ROOM}: {it}. ({TO} sc)
"""
Check = Callable[..., Outcome]


@pytest.fixture
def shaped(tmp_path: Path) -> Check:
    """A pattern whose rows hold one schedule, `it`, from `start` to `to` stitches over `over` rows."""

    def check(
        rule: str, start: str = "back", to: str = "cross back", over: int = 40, shape: str = "flat", more: str = ""
    ) -> Outcome:
        rows = ROWS.replace("FROM", start).replace("TO", to).replace("ROOM", str(over)).replace("SHAPE", shape)
        words = f"{{from: {start}, to: {to}, over: {over}{', ' if rule else ''}{rule}}}"
        path = tmp_path / "pattern.yaml"
        path.write_text(f"{HEAD}{more}shaping:\n  it: {words}\n{rows}", encoding="utf-8")
        return check_file(path)

    return check


def schedules(outcome: Outcome, name: str = "it") -> list[Schedule]:
    assert outcome.checked is not None
    found = outcome.checked.pattern.scheduled[name].sizes
    assert all(found)
    return [one for one in found if one is not None]


def words(outcome: Outcome, size: str | None = None, name: str = "it") -> str:
    assert outcome.checked is not None
    return sentence(outcome.checked.pattern.scheduled[name], size)


def errors(outcome: Outcome) -> set[tuple[str, str | None]]:
    return {(finding.rule, finding.size) for finding in outcome.findings if finding.severity is Severity.ERROR}


def is_proved(outcome: Outcome) -> bool:
    counts = outcome.proved
    return counts.proved > 0 and counts.wrong == counts.not_checked == 0 and not errors(outcome)


def test_straight_schedule_in_the_trades_words(shaped: Check) -> None:
    outcome = shaped("")  # 72, 80, 88 to 56, 60, 62 over 40 rows: 8, 10, 13 events
    assert words(outcome) == (
        "dec 1 st at each end of every 5th (4th, 3rd) row 8 (10, 12) times, "
        "then every 5th (4th, 4th) row 0 (0, 1) times (S and M: skip this part)"
    )
    assert words(outcome, "M") == "dec 1 st at each end of every 4th row 10 times"
    assert words(outcome, "L") == "dec 1 st at each end of every 3rd row 12 times, then every 4th row once"
    assert is_proved(outcome)


def test_every_schedule_ends_where_it_should(shaped: Check) -> None:
    for one in schedules(shaped("on: RS rows, tail: one interval, leave: '[2, 3, 4]', first: next row")):
        assert one.before + sum(delta for _, delta in one.events()) == one.to
        assert one.used + one.plain == one.rows == 40


@pytest.mark.parametrize(
    "rule",
    [
        "",
        "order: interleaved",
        "on: RS rows",
        "tail: one interval",
        "first: next row",
        "leave: '[2, 3, 4]'",
        "leave: '[0, 2, 4]'",
        "curve: hollow",
        "curve: round",
        "curve: cap",
        "curve: hollow, on: RS rows",
        "rates: [2, 4]",
        "rates: [1, 2, 4]",
        "rates: [1, 2, 4], curve: hollow, leave: 3",
        'slope: ["1 in by 0.5 in", "1.5 in by 2 in", "1.75 in by 6 in"]',
        "each: one end, edge: neck edge",
        "each: evenly, by: 2",
        "by: 2, each: one end",
    ],
)
def test_every_kind_is_read_back_worked_and_proved(shaped: Check, rule: str) -> None:
    assert is_proved(shaped(rule))


@pytest.mark.parametrize("rule", ["", "first: next row", "curve: hollow", "rates: [2, 4]", "leave: 2"])
def test_increases_too(shaped: Check, rule: str) -> None:
    outcome = shaped(rule, "cross back", "back")
    if rule.startswith("leave"):
        assert {rule for rule, _ in errors(outcome)} == {"shaping-total-differs"}
    else:
        assert is_proved(outcome)
        assert "inc 1 st" in words(outcome)


def test_the_sentence_in_the_row_is_the_one_that_was_read(shaped: Check) -> None:
    outcome = shaped("rates: [2, 4], leave: 3")
    assert outcome.checked is not None
    row = outcome.checked.pattern.pieces[0].rows[1]
    whole = words(outcome)
    assert whole[0].upper() + whole[1:] in row.text
    (stretch,) = row.sentences
    assert row.text[stretch.start : stretch.end] == whole[0].upper() + whole[1:]
    assert [one.casefold() for one in stretch.each] == [words(outcome, size).casefold() for size in ("S", "M", "L")]
    assert [step for step in row.steps if isinstance(step, Shaping)]
    assert "{it}" in outcome.checked.pattern.pieces[0].written.text  # type: ignore[union-attr]


def test_one_size_alone_reads_as_the_same_rows(shaped: Check) -> None:
    from gradegen import check_row

    outcome = shaped("curve: hollow, leave: '[2, 3, 4]'")
    for at, (size, one) in enumerate(zip(("S", "M", "L"), schedules(outcome), strict=True)):
        alone = check_row(f"{words(outcome, size)}. ({one.to} sts)", prior=one.before, worked="flat", sizes=(size,))
        assert alone.status == "proved", (at, words(outcome, size))
        assert alone.times == (one.rows,)


def test_a_number_changed_in_the_rows_is_found(shaped: Check, tmp_path: Path) -> None:
    shaped("")
    path = tmp_path / "pattern.yaml"
    path.write_text(path.read_text("utf-8").replace("{it}. ({cross back} sc)", "{it}. ({cross back + 2} sc)"), "utf-8")
    assert {rule for rule, _ in errors(check_file(path))} == {"shaping-total-differs"}


# ---- what cannot be -------------------------------------------------------------------------------------------------


def test_too_dense(shaped: Check) -> None:
    outcome = shaped("", over=9)
    assert errors(outcome) >= {("shaping-too-dense", "M"), ("shaping-too-dense", "L")}
    assert ("shaping-too-dense", "S") not in errors(outcome)
    finding = next(one for one in outcome.findings if one.rule == "shaping-too-dense" and one.size == "L")
    assert (finding.expected, finding.found) == ("13 rows or more", "9 rows")
    assert "by:" in (finding.hint or "")


def test_rates_that_need_more_rows(shaped: Check) -> None:
    assert ("shaping-longer-than-section", "L") in errors(shaped("rates: [4, 6]", over=50))


def test_an_odd_change(shaped: Check) -> None:
    outcome = shaped("", to="cross back - 1")
    assert errors(outcome) == {("odd-change-at-both-ends", size) for size in ("S", "M", "L")}


def test_more_left_than_taken_away(shaped: Check) -> None:
    assert ("shaping-total-differs", "S") in errors(shaped("leave: 9"))


def test_names_must_be_known_and_free(shaped: Check, tmp_path: Path) -> None:
    shaped("")
    path = tmp_path / "pattern.yaml"
    sound = path.read_text("utf-8")
    path.write_text(sound.replace("shaping:\n  it:", "shaping:\n  back:"), "utf-8")
    assert ("name-taken", None) in errors(check_file(path))
    path.write_text(sound.replace("pieces:", "  both: {together: [it, neck line]}\npieces:"), "utf-8")
    assert ("unknown-schedule", None) in errors(check_file(path))
    path.write_text(sound.replace("over: 40", "ovr: 40"), "utf-8")
    assert {rule for rule, _ in errors(check_file(path))} == {"unknown-key"}
    path.write_text(sound.replace(", over: 40", ""), "utf-8")
    assert ("schedule-incomplete", None) in errors(check_file(path))


# ---- slopes that are no schedule of rows ----------------------------------------------------------------------------

SLOPES = """
shaping:
  slope: {way: short rows, from: cross back, to: neck, steps: STEPS}
  heights: {way: stitch heights, from: (cross back - neck) / 2, heights: [sc, hdc, dc]}
  thin: {way: one row, from: back, to: cross back}
  wide: {way: one row, from: cross back, to: back}
  dart: {way: bust, from: back, to: neck, drop: 2 in, inset: 1 in}
pieces:
  - name: Back
    shape: flat
    rows: |
      Row 1: Ch {back + 1}. Sc in 2nd ch from hook, sc in each ch across. ({back} sc)
      Dart: {dart}. ({back} sc)
      Next row: Ch 1 (does not count as a st), turn, {thin}. ({cross back} sc)
      Next row: Ch 1 (does not count as a st), turn, {wide}. ({back} sc)
      Next row: Ch 1 (does not count as a st), turn, {thin}. ({cross back} sc)
      Next row: Ch 1 (does not count as a st), turn, {heights}, leave rem sts unworked. ({(cross back - neck) / 2} sts)
  - name: Front
    shape: flat
    rows: |
      Row 1: Ch {cross back + 1}. Sc in 2nd ch from hook, sc in each ch across. ({cross back} sc)
      Shoulder: {slope}. ({neck} sc)
"""


def sloped(tmp_path: Path, steps: str = "3") -> Outcome:
    path = tmp_path / "pattern.yaml"
    path.write_text(HEAD.replace("[14, 15, 15.5]", "[14, 15, 16]") + SLOPES.replace("STEPS", steps), "utf-8")
    return check_file(path)


def test_slopes_are_proved(tmp_path: Path) -> None:
    outcome = sloped(tmp_path)
    assert errors(outcome) == set()
    assert is_proved(outcome)
    assert words(outcome, "S", "slope") == (
        "leave 4 sts unworked at end of next 2 rows, then 5 sts at end of next 4 rows"
    )
    assert words(outcome, "S", "thin") == "(sc in next 3 sts, sc2tog) 8 times, (sc in next 2 sts, sc2tog) 8 times"
    assert words(outcome, "S", "heights") == "sc in next 4 sts, hdc in next 5 sts, dc in next 5 sts"
    assert [group for group in schedules(outcome, "dart")[0].groups] == [(4, 1), (4, 3), (6, 1)] or sum(
        number * times for number, times in schedules(outcome, "dart")[0].groups
    ) == (72 - 28) // 2


def test_short_rows_that_do_not_add_up(tmp_path: Path) -> None:
    outcome = sloped(tmp_path, "3, by: 5")
    assert {rule for rule, _ in errors(outcome)} == {"short-rows-do-not-add-up"}
    finding = next(one for one in outcome.findings if one.rule == "short-rows-do-not-add-up")
    assert finding.found == "15 sts"


# ---- at the same time -----------------------------------------------------------------------------------------------

TOGETHER = """
shaping:
  armhole: {from: back / 2, to: back / 2 - 8, over: 40, each: one end, edge: armhole edge, rates: [2]}
  neck line: {from: back / 2 - 8, to: back / 2 - 14, over: 20, each: one end, edge: neck edge, rates: [1], after: AFTER}
  front: {together: [armhole, neck line]}
pieces:
  - name: Front
    shape: flat
    rows: |
      Row 1: Ch {back / 2 + 1}. Sc in 2nd ch from hook, sc in each ch across. ({back / 2} sc)
      Shaping: {front}. ({back / 2 - 14} sc)
"""


def together(tmp_path: Path, after: str) -> Outcome:
    path = tmp_path / "pattern.yaml"
    path.write_text(HEAD + TOGETHER.replace("AFTER", after), "utf-8")
    return check_file(path)


def test_schedules_worked_at_the_same_time(tmp_path: Path) -> None:
    outcome = together(tmp_path, "'[10, 12, 14]'")
    assert outcome.checked is not None
    text = outcome.checked.pattern.pieces[0].rows[1].text
    assert "at the same time, beg with row 11 (13, 15) of these, dec 1 st at neck edge" in text
    assert {row.status for rows in outcome.checked.worked.values() for row in rows} == {"proved"}
    armhole, neck = (schedules(outcome, name)[0] for name in ("armhole", "neck line"))
    table = shaping_table([armhole, neck])
    assert [row.row for row in table][:6] == [2, 4, 6, 8, 10, 11]
    assert table[-1].stitches == 36 - 14
    assert table[5].what == ("neck line: 1 fewer",)
    assert next(row for row in table if row.row == 12).what == ("armhole: 1 fewer", "neck line: 1 fewer")


def test_the_order_of_events_flips_in_a_size(tmp_path: Path) -> None:
    outcome = together(tmp_path, "'[10, 12, 18]'")
    flips = {(finding.rule, finding.size) for finding in outcome.findings if finding.rule == "shaping-order-flips"}
    assert flips == {("shaping-order-flips", "L")}
    assert not [one for one in together(tmp_path, "'[10, 12, 14]'").findings if one.rule == "shaping-order-flips"]


def test_an_unprinted_pair_is_looked_at_too(tmp_path: Path) -> None:
    together(tmp_path, "'[10, 12, 18]'")
    path = tmp_path / "pattern.yaml"
    path.write_text(path.read_text("utf-8").replace("Shaping: {front}. ({back / 2 - 14} sc)", "Fasten off."), "utf-8")
    found = [finding for finding in check_file(path).findings if finding.rule == "shaping-order-flips"]
    assert {finding.size for finding in found} == {"L"}


# ---- what cannot be worked out --------------------------------------------------------------------------------------


def test_a_shaping_that_goes_both_ways_is_told_once(shaped: Check) -> None:
    """In S and M decreases, in L increases: one sentence cannot say both."""
    outcome = shaped("", start="back", to="turn", more="  turn: {across: '[14, 15, 30] in', gauge: sc, parity: even}\n")
    found = [one for one in outcome.findings if one.severity is Severity.ERROR]
    assert [one.rule for one in found] == ["shaping-goes-both-ways"]
    assert "L" in found[0].message
    assert (outcome.proved.wrong, outcome.proved.not_checked) == (0, 3)


def test_rows_after_a_shaping_that_cannot_be_are_no_flood(shaped: Check) -> None:
    outcome = shaped("by: 7", over=40)
    assert {rule for rule, _ in errors(outcome)} == {"shaping-total-differs"}
    assert outcome.proved.wrong == 0
