"""Shaping against the outside: published examples, each written as rows or passages and worked by the engine.

Beside each stands its source. Where a schedule can be worked out from the numbers, its sentence is put through the same
engine: the published answer is what the rows come to, not what a formula says.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from gradegen import check_row
from gradegen.design.schedule import Schedule
from gradegen.design.worked import RowResult
from gradegen.grade.shaping.schedules import sentence
from gradegen.pipeline import Outcome, check_file, check_text

TEN = tuple(f"size {number}" for number in range(1, 11))


def listed(values: Sequence[int]) -> str:
    return f"{values[0]} ({', '.join(str(value) for value in values[1:])})" if len(set(values)) > 1 else str(values[0])


# ---- the ten-size raglan --------------------------------------------------------------------------------------------

# Free Vintage Knitting, leaflet 1729: raglan back and sleeves in ten sizes, repeats of the last 2 rows "times more".
START = (102, 108, 114, 120, 126, 86, 90, 96, 100, 106)
BIND_OFF = (7, 8, 9, 10, 11, 4, 4, 5, 5, 6)
MORE = (29, 30, 31, 32, 33, 25, 26, 27, 28, 29)
ENDS = (28, 30, 32, 34, 36, 26, 28, 30, 32, 34)
SLEEVE = (78, 82, 86, 90, 94, 64, 66, 70, 72, 76)


def raglan(tmp_path: Path, start: Sequence[int], ends: Sequence[int]) -> Outcome:
    """The published shaping as a text pattern, in crochet: slip-stitched in place of bound off."""
    after = [count - 2 * off for count, off in zip(start, BIND_OFF, strict=True)]
    text = f"""Ten Sizes

Sizes: {", ".join(TEN)}
US terms. Worked flat, in rows.

Row 1: Ch {listed([count + 1 for count in start])}. Sc in 2nd ch from hook, sc in each ch across. ({listed(start)} sc)
Row 2: Ch 1, turn, sl st in next {listed(BIND_OFF)} sts, sc in each st to last {listed(BIND_OFF)} sts, leave rem sts
  unworked. ({listed(after)} sc)
Row 3: Ch 1, turn, sc2tog, sc in each st to last 2 sts, sc2tog. ({listed([count - 2 for count in after])} sc)
Row 4: Ch 1, turn, sc in each st across. ({listed([count - 2 for count in after])} sc)
Next row: Rep Rows 3 and 4 {listed(MORE)} more times. ({listed(ends)} sc)
"""
    path = tmp_path / "ten.txt"
    path.write_text(text, encoding="utf-8")
    return check_text(path)


@pytest.mark.parametrize(("start", "ends"), [(START, ENDS), (SLEEVE, (4,) * 10)], ids=["back", "sleeve top"])
def test_ten_size_raglan_row_by_row(tmp_path: Path, start: tuple[int, ...], ends: tuple[int, ...]) -> None:
    """Free Vintage Knitting 1729: all ten sizes of the back, and all sleeve tops end at 4."""
    outcome = raglan(tmp_path, start, ends)
    assert outcome.checked is not None
    last = [rows[-1] for rows in outcome.checked.worked.values()]
    assert [row.made for row in last] == list(ends)
    assert [row.times for row in last] == [2 * more for more in MORE]
    assert (outcome.proved.wrong, outcome.proved.not_checked) == (0, 0)


def test_ten_size_raglan_as_a_passage() -> None:
    """The same numbers as the trade's sentence: one decrease row, then every other row so many more times."""
    result = check_row(
        f"Leave {listed(BIND_OFF)} sts unworked at each end of next row, then dec 1 st at each end of next row, "
        f"then every other row {listed(MORE)} more times. ({listed(ENDS)} sc)",
        prior=START,
        worked="flat",
        sizes=TEN,
    )
    assert (result.status, result.made) == ("proved", ENDS)
    assert result.times == tuple(2 + 2 * more for more in MORE)


@pytest.mark.parametrize("size", range(10))
def test_one_repeat_fewer_in_any_size_is_found_there(size: int) -> None:
    wrong = list(MORE)
    wrong[size] -= 1
    result = check_row(
        f"Leave {listed(BIND_OFF)} sts unworked at each end of next row, then dec 1 st at each end of next row, "
        f"then every other row {listed(wrong)} more times. ({listed(ENDS)} sc)",
        prior=START,
        worked="flat",
        sizes=TEN,
    )
    assert {(finding.rule, finding.size) for finding in result.findings} == {("shaping-total-differs", TEN[size])}


def test_its_front_neck() -> None:
    """Free Vintage Knitting 1729: 44..52 = 13 + centre + 13; each side then 13 - 8 - 3 = 2."""
    for whole, centre in zip((44, 46, 48, 50, 52), (18, 20, 22, 24, 26), strict=True):
        one = check_row(
            f"Sc in next 13 sts, leave rem sts unworked. ({whole - centre - 13} sc)",
            prior=whole,
            worked="flat",
            sizes=("one",),
        )
        assert one.made == (13,)
    side = check_row(
        "Dec 1 st at neck edge of next 8 rows, then at armhole edge every other row 3 times. (2 sc)",
        prior=13,
        worked="flat",
        sizes=("one",),
    )
    assert side.status == "proved"


# ---- schedules from numbers -----------------------------------------------------------------------------------------

PATTERN = """
title: Published Numbers
version: "1.0"
designer: {name: Demo House, help: help@example.org, year: 2026}
terms: US
sizes: {table: women, for: [S], by: bust}
gauge:
  sc: {stitches: GAUGE, rows: 20, over: 4 in, hook: 5 mm, state: blocked}
measures:
  top: MEASURES
counts:
COUNTS
shaping:
  it: RULE
pieces:
  - name: Piece
    shape: SHAPE
    rows: |
      ROWS
"""


def published(
    tmp_path: Path, rule: str, rows: str, *, counts: str = "  top sts: {across: top, gauge: sc}", shape: str = "flat",
    gauge: str = "20", top: str = "12 in",
) -> Outcome:  # fmt: skip
    text = PATTERN.replace("RULE", rule).replace("COUNTS", counts).replace("SHAPE", shape).replace("GAUGE", gauge)
    path = tmp_path / "published.yaml"
    lines = rows.strip().replace("\n", "\n      ")
    path.write_text(text.replace("MEASURES", top).replace("ROWS", lines), encoding="utf-8")
    return check_file(path)


def schedule(outcome: Outcome) -> Schedule:
    assert outcome.checked is not None
    found = outcome.checked.pattern.scheduled["it"].sizes[0]
    assert found is not None
    return found


def is_proved(outcome: Outcome) -> bool:
    return outcome.proved.proved > 0 and outcome.proved.wrong == outcome.proved.not_checked == 0


def over_rows(tmp_path: Path, start: int, to: int, rows: int, rule: str = "", end: str = "") -> Outcome:
    begin = f"Row 1: Ch {start + 1}. Sc in 2nd ch from hook, sc in each ch across. ({start} sc)"
    words = f"{{from: {start}, to: {to}, over: {rows}{rule}}}"
    return published(tmp_path, words, f"{begin}\nRows 2-{rows + 1}: {{it}}. ({to} sc){end}")


def test_magic_formula_over_140_rows(tmp_path: Path) -> None:
    """Get Knitting, Magic Formula: 140 rows, 36 increases a side: every 3rd row 4 times, every 4th 32; 72 sts more."""
    outcome = over_rows(tmp_path, 40, 112, 140)
    assert schedule(outcome).runs == ((3, 4), (4, 32))
    assert outcome.checked is not None
    said = sentence(outcome.checked.pattern.scheduled["it"])
    assert said == "inc 1 st at each end of every 3rd row 4 times, then every 4th row 32 times"
    assert is_proved(outcome)


def test_magic_formula_over_124(tmp_path: Path) -> None:
    """A. Budd, Magic Formula (2010): 124, 14 increases: every 8th twice, every 9th 12 times."""
    outcome = over_rows(tmp_path, 30, 44, 124, ", each: one end")
    assert schedule(outcome).runs == ((8, 2), (9, 12))
    assert is_proved(outcome)


def test_120_rows_with_a_tail(tmp_path: Path) -> None:
    """A knitting handbook: 28 increases in 120 rows, every 6th twice and every 4th 26 times, 4 rows plain."""
    outcome = over_rows(tmp_path, 40, 96, 120, ", on: RS rows, tail: one interval")
    found = schedule(outcome)
    assert dict(found.runs) == {6: 2, 4: 26}
    assert (found.used, found.plain) == (116, 4)
    assert is_proved(outcome)


def one_row(text: str, prior: int, label: str = "", worked: str = "flat") -> RowResult:
    return check_row(text, prior=prior, worked=worked, sizes=("one",), label=label)  # type: ignore[arg-type]


def test_108_rows_with_alternate_intervals() -> None:
    """The same handbook: 28 increases in 108 rows: every 4th 20 times, then alternately 2nd and 4th 8 times (104)."""
    text = "Inc 1 st at each end of every 4th row 20 times, then alternately every 2nd and 4th row 8 times. (96 sc)"
    assert one_row(text, 40).times == (104,)
    whole = one_row(text, 40, "Rows 1-108")
    assert (whole.status, whole.times) == ("proved", (108,))
    assert one_row(text, 40, "Rows 1-100").status == "wrong"


def test_sleeve_from_38_to_60(tmp_path: Path) -> None:
    """K. TenDyke, increase evenly (2014): 7 3/4 and 12 in at 5/in are 38 (for parity) and 60; 22 sts, 11 rows."""
    counts = "  cuff: {across: 7.75 in, gauge: sc, parity: even, tie: down}\n  top sts: {across: top, gauge: sc}"
    begin = "Row 1: Ch {cuff + 1}. Sc in 2nd ch from hook, sc in each ch across. ({cuff} sc)"
    rows = f"{begin}\nRows 2-78: {{it}}. ({{top sts}} sc)"
    outcome = published(tmp_path, "{from: cuff, to: top sts, over: 77}", rows, counts=counts)
    assert schedule(outcome).before == 38
    assert schedule(outcome).to == 60
    assert sum(times for _, times in schedule(outcome).runs) == 11
    assert is_proved(outcome)


def test_39_at_the_cuff_would_not_do(tmp_path: Path) -> None:
    """The same: shaping at both ends needs an even difference: 38, not 39, at a cuff whose top is 60."""
    outcome = over_rows(tmp_path, 39, 60, 77)
    assert "odd-change-at-both-ends" in {finding.rule for finding in outcome.findings}


def test_short_rows_of_75(tmp_path: Path) -> None:
    """Christina Creating (2013): 75 sts, three steps of 7, 8 and 8 each side, neck 29."""
    begin = "Row 1: Ch 76. Sc in 2nd ch from hook, sc in each ch across. (75 sc)"
    rule = "{way: short rows, from: 75, to: 29, steps: 3}"
    outcome = published(tmp_path, rule, f"{begin}\nShoulders: {{it}}. (29 sc)")
    assert schedule(outcome).groups == ((7, 1), (8, 2))
    assert is_proved(outcome)
    turns = (
        "Sc in each st to last 7 sts, turn. (68 sc)",
        "Sc in each st to last 7 sts, turn. (61 sc)",
        "Sc in each st to last 8 sts, turn. (53 sc)",
        "Sc in each st to last 8 sts, turn. (45 sc)",
        "Sc in each st to last 8 sts, turn. (37 sc)",
        "Sc in each st to last 8 sts, turn. (29 sc)",
    )
    there = 75
    for text in turns:
        result = one_row(text, there)
        assert result.status == "proved", text
        there = result.made[0] or 0
    assert there == 29


def across(tmp_path: Path, start: int, to: int, shape: str = "flat") -> Outcome:
    begin = f"Row 1: Ch {start + 1}. Sc in 2nd ch from hook, sc in each ch across. ({start} sc)"
    if shape != "flat":
        begin = f"Rnd 1: Ch {start}, join to form ring, ch 1, sc in each ch around, join. ({start} sc)"
    label = "Row 2: Ch 1, turn" if shape == "flat" else "Rnd 2: Ch 1"
    return published(
        tmp_path, f"{{way: one row, from: {start}, to: {to}}}", f"{begin}\n{label}, {{it}}. ({to} sc)", shape=shape
    )


def test_decreases_across_a_row(tmp_path: Path) -> None:
    """I Brake for Yarn (2008): 42 - 6 is (5 sc, dec) x 6; 75 - 10 is (6 sc, dec) x 5, (5 sc, dec) x 5."""
    six = across(tmp_path, 42, 36)
    assert schedule(six).groups == ((5, 6),)
    assert is_proved(six)
    ten = across(tmp_path, 75, 65)
    assert schedule(ten).groups == ((6, 5), (5, 5))
    assert is_proved(ten)


def places_of_increases(outcome: Outcome, *, flat: bool) -> list[int]:
    """After which stitch each increase of the second row stands, from the groups of the schedule."""
    found, stitch = [], 0
    groups = schedule(outcome).groups
    for plain, times in groups[: -1 if flat else None]:
        for _ in range(times):
            stitch += plain + 1
            found.append(stitch)
    return found


def test_increases_across_a_row_and_around(tmp_path: Path) -> None:
    """Woolpack: 51 + 4 in the round after 13, 26, 39, 51; flat, with half intervals at the edges, 6, 19, 32, 45."""
    flat = across(tmp_path, 51, 55)
    assert places_of_increases(flat, flat=True) == [6, 19, 32, 45]
    assert is_proved(flat)
    around = across(tmp_path, 51, 55, "joined rounds")
    assert places_of_increases(around, flat=False) == [13, 26, 39, 51]
    assert is_proved(around)


def test_a_top_down_raglan() -> None:
    """Pepper Knits (2007): 108 + 17 x 8 = 244, less 2 x 48 for the sleeves 148."""
    grown = one_row("Inc 8 sts evenly every other rnd 17 times. (244 sc)", 108, worked="joined rounds")
    assert grown.status == "proved"
    divided = one_row("Sc in next 74 sts, sk next 48 sts, sc in next 74 sts, sk next 48 sts. (148 sc)", 244)
    assert divided.status == "proved"


def test_the_erratum_of_times_and_more_times() -> None:
    """A published erratum: one front says "9 times", the other "9 more times"; 29 to 20 in both."""
    first = "Dec 1 st at neck edge of next row, then every other row "
    assert one_row(f"{first}8 more times. (20 sc)", 29).status == "proved"
    wrong = one_row(f"{first}9 more times. (20 sc)", 29)
    assert {finding.rule for finding in wrong.findings} == {"times-or-more-times"}
    assert one_row("Dec 1 st at neck edge every other row 9 times. (20 sc)", 29).status == "proved"


def test_end_of_a_bind_off_and_repeats() -> None:
    """Arithmetic: end = start - 2 x bind off - 2 x (1 + repeats), over a grid of numbers."""
    for start in (60, 75, 90):
        for off in (3, 6):
            for more in (4, 11):
                end = start - 2 * off - 2 * (1 + more)
                text = (
                    f"Bind off {off} sts at beg of next 2 rows, then dec 1 st at each end of next row, "
                    f"then every other row {more} more times. ({end} sc)"
                )
                assert one_row(text, start).status == "proved", text


def test_drop_of_a_shoulder_in_short_rows(tmp_path: Path) -> None:
    """Stylish Knitting: a slope of about 2 in; turns = round(drop x rows / 2), one step more (arithmetic)."""
    begin = "Row 1: Ch 61. Sc in 2nd ch from hook, sc in each ch across. (60 sc)"
    outcome = published(
        tmp_path, "{way: short rows, from: 60, to: 24, drop: 2 in}", f"{begin}\nShoulders: {{it}}. (24 sc)"
    )
    groups = schedule(outcome).groups
    assert sum(times for _, times in groups) == 6  # 2 in x 5 rows / 2 = 5 turns
    assert sum(number * times for number, times in groups) == 18
    assert is_proved(outcome)


def test_bust_darts(tmp_path: Path) -> None:
    """Tess Knits 5412: pairs = round(extra x rows / 2), first turns about 1 in inside the sides."""
    begin = "Row 1: Ch 101. Sc in 2nd ch from hook, sc in each ch across. (100 sc)"
    outcome = published(
        tmp_path, "{way: bust, from: 100, to: 40, drop: 1.5 in, inset: 1 in}", f"{begin}\nDart: {{it}}. (100 sc)"
    )
    groups = schedule(outcome).groups
    assert groups[0] == (5, 1)  # 1 in at 5 sts
    assert sum(times for _, times in groups) == 4  # 1.5 x 5 / 2 = 3.75
    assert sum(number * times for number, times in groups) == 30
    assert is_proved(outcome)
