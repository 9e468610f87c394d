"""Pieces on what earlier ones left: sleeves on held stitches, fronts and backs after a division, a last row, a chain.

That a yoke is parted with chains at both underarms, which body and sleeve meet from two sides, is common practice, no
source; the counts are arithmetic.
"""

from __future__ import annotations

import textwrap
from collections.abc import Callable
from pathlib import Path

import pytest

from gradegen.pipeline import Outcome, check_file

HEAD = """
title: Practice
version: "1.0"
designer: {name: Demo House, help: help@example.org}
terms: US
sizes: {table: women, for: [S, L], by: bust}
gauge: {g: {stitches: 16, rows: 16, over: 4 in, state: blocked}}
counts:
  part: {across: "[9, 10] in", gauge: g, multiple: 4}
  arm: {across: "[6, 8] in", gauge: g, multiple: 2}
  gap: {across: "[1, 1.5] in", gauge: g, multiple: 2}
  yoke: {sum: 2 * part + 2 * arm}
notes: [Ch 1 at the start of a row or round does not count as a st.]
pieces:
"""
YOKE = ["Foundation: Ch {yoke}. Join with sl st in first ch to form a ring.",
        "Rnd 1: Ch 1, sc in each ch around, join. ({yoke} sc)"]  # fmt: skip
DIVIDE = (
    "Ch 1, sc in next {part / 2} sts, ch {gap}, sk next {arm} sts, sc in next {part} sts, ch {gap}, sk next {arm} sts, "
    "sc in last {part / 2} sts, join. ({2 * part} sc)"
)
BODY = [
    f"Rnd 1: {DIVIDE}",
    "Rnd 2: Ch 1, sc in next {part / 2} sts, sc in next {gap} ch, sc in next {part} sts, sc in next {gap} ch, "
    "sc in last {part / 2} sts, join. ({2 * part + 2 * gap} sc)",
]
SLEEVE = "Rnd 1: Ch 1, sc in next {gap / 2} ch, sc in next {arm} sts, sc in last {gap / 2} ch, join. ({arm + gap} sc)"


def piece(name: str, rows: list[str], on: str = "", shape: str = "joined rounds") -> str:
    head = f"  - name: {name}\n    shape: {shape}\n" + (f"    worked on: {on}\n" if on else "")
    return head + "    rows: |\n" + textwrap.indent("\n".join(rows), "      ") + "\n"


@pytest.fixture
def checked(tmp_path: Path) -> Callable[..., Outcome]:
    def check(*pieces: str, head: str = HEAD) -> Outcome:
        path = tmp_path / "practice.yaml"
        path.write_text(head.lstrip() + "".join(pieces), encoding="utf-8")
        return check_file(path)

    return check


def faults(outcome: Outcome) -> set[tuple[str, str | None]]:
    return {(one.rule, one.size) for one in outcome.findings if one.severity.name in ("ERROR", "WARNING", "INTERNAL")}


def garment(*sleeve: str, on: str = "held stitches of Body", body: list[str] | None = None) -> tuple[str, ...]:
    return piece("Yoke", YOKE), piece("Body", body or BODY), piece("Sleeves", list(sleeve), on)


def test_sleeves_are_proved_on_the_stitches_the_body_holds(checked: Callable[..., Outcome]) -> None:
    outcome = checked(*garment(SLEEVE, "Rnd 2: Ch 1, sc in each st around, join. ({arm + gap} sc)"))
    assert faults(outcome) == set()
    assert (outcome.proved.proved, outcome.proved.not_checked) == (12, 0)
    assert [row.made for row in outcome.checked.worked["S"][-2:]] == [24 + 4] * 2
    assert [row.made for row in outcome.checked.worked["L"][-2:]] == [32 + 6] * 2


@pytest.mark.parametrize(
    "words",
    [
        "Rnd 1: Ch 1, sc in next {gap} ch, sc in each st around, join. ({arm + gap} sc)",
        "Rnd 1: Ch 1, sc in next {arm} sts, sc in each ch around, join. ({arm + gap} sc)",
        "Rnd 1: Ch 1, sc in next {gap / 2} ch, sc in each unworked st to last {gap / 2} ch, sc in last {gap / 2} ch, "
        "join. ({arm + gap} sc)",
        "Rnd 1: Ch 1, sc in each st around, join. ({arm + gap} sc)",
    ],
)
def test_the_words_of_the_first_round_say_where_it_begins(checked: Callable[..., Outcome], words: str) -> None:
    outcome = checked(*garment(words))
    assert (faults(outcome), outcome.proved.not_checked) == (set(), 0)


def test_the_place_to_begin_can_be_said(checked: Callable[..., Outcome]) -> None:
    whole = "Rnd 1: Ch 1, sc in next {gap} ch, sc in each st around, join. ({arm + gap} sc)"
    assert faults(checked(*garment(whole, on="held stitches of Body, from the underarm"))) == set()
    found = faults(checked(*garment(whole, on="held stitches of Body, from the middle of the underarm")))
    assert {rule for rule, _ in found} == {"stated-count-wrong"}


@pytest.mark.parametrize(
    "words",
    [
        "Rnd 1: Ch 1, sc in next {gap / 2} ch, sc in next {arm + 1} sts, sc in last {gap / 2} ch, join.",
        SLEEVE.replace("sc in next {arm} sts", "sc in next {arm - 1} sts"),
        "Rnd 1: Ch 1, sc in each st around, join. ({arm + gap + 1} sc)",
        "Rnd 1: Ch 1, sc in next {gap / 2 + 1} ch, sc in each unworked st, sc in last {gap / 2} ch, join.",
    ],
)
def test_a_stitch_too_many_or_too_few_is_found(checked: Callable[..., Outcome], words: str) -> None:
    outcome = checked(*garment(words))
    assert {size for _, size in faults(outcome)} == {"S", "L"}
    assert all(one.place.line == 28 for one in outcome.findings if one.severity.name == "ERROR")


def test_two_sleeves_that_differ_are_told_and_may_be_written_apart(checked: Callable[..., Outcome]) -> None:
    body = ["Rnd 1: " + DIVIDE.replace("sk next {arm} sts", "sk next {arm + 2} sts", 1).replace(
        "sc in next {part} sts", "sc in next {part - 2} sts").replace("{2 * part}", "{2 * part - 2}")]  # fmt: skip
    outcome = checked(
        *garment(SLEEVE.replace("{arm}", "{arm + 2}").replace("{arm + gap}", "{arm + gap + 2}"), body=body)
    )
    found = [one for one in outcome.findings if one.rule == "held-stitches-differ"]
    assert [(one.size, one.expected, one.found) for one in found] == [
        ("S", "30 sts", "28 sts"),
        ("L", "40 sts", "38 sts"),
    ]
    first = piece("Left Sleeve", [SLEEVE.replace("{arm}", "{arm + 2}").replace("{arm + gap}", "{arm + gap + 2}")],
                  "first held stitches of Body")  # fmt: skip
    second = piece("Right Sleeve", [SLEEVE], "second held stitches of Body")
    outcome = checked(piece("Yoke", YOKE), piece("Body", body), first, second)
    assert (faults(outcome), outcome.proved.not_checked) == (set(), 0)


def test_spaces_on_raglan_lines_stay_with_the_sleeve(checked: Callable[..., Outcome]) -> None:
    spaced = [YOKE[0], "Rnd 1: Ch 1, sc in next {part / 2} ch, ch 1, sc in next {arm} ch, ch 1, sc in next {part} ch, "
              "ch 1, sc in next {arm} ch, ch 1, sc in last {part / 2} ch, join."]  # fmt: skip
    over = DIVIDE.replace("sk next {arm} sts", "sk next ch-1 sp, sk next {arm} sts, sk next ch-1 sp")
    sleeve = SLEEVE.replace("{arm + gap}", "{arm + gap + 2}").replace(
        "sc in next {arm} sts", "sc in next ch-1 sp, sc in next {arm} sts, sc in next ch-1 sp"
    )
    outcome = checked(piece("Yoke", spaced), piece("Body", [f"Rnd 1: {over}"]),
                      piece("Sleeves", [sleeve], "held stitches of Body"))  # fmt: skip
    assert (faults(outcome), outcome.proved.not_checked) == (set(), 0)


def test_held_in_so_many_words(checked: Callable[..., Outcome]) -> None:
    said = DIVIDE.replace("sk next {arm} sts", "place next {arm} sts on hold for sleeve", 1).replace(
        "sk next {arm} sts", "leave next {arm} sts unworked"
    )
    plain = "Rnd 1: Ch 1, sc in next {gap / 2} ch, sc in each held st, sc in last {gap / 2} ch, join. ({arm + gap} sc)"
    pieces = piece("Yoke", YOKE), piece("Body", [f"Rnd 1: {said}", BODY[1]])
    outcome = checked(*pieces, piece("Sleeves", [plain]))  # the row names them; the file need not
    assert (faults(outcome), outcome.proved.not_checked) == (set(), 0)
    outcome = checked(*pieces, piece("Sleeves", [plain.replace("{arm + gap}", "{arm + gap + 1}")]))
    assert faults(outcome) == {("stated-count-wrong", "S"), ("stated-count-wrong", "L")}


def test_lace_is_not_taken_for_held_stitches(checked: Callable[..., Outcome]) -> None:
    lace = "Rnd 3: Ch 1, *sc in next st, ch 3, sk next 3 sts; rep from * around, join."
    even = HEAD.replace("gap: {across", "gap: {multiple: 4, across").replace(
        "gauge: g, multiple: 2}\n  yoke", "gauge: g}\n  yoke"
    )
    outcome = checked(*garment(SLEEVE, body=[*BODY, lace]), head=even)
    assert (faults(outcome), outcome.proved.not_checked) == (set(), 0)


FLAT = "Row 1: Ch {2 * part + 1}. Sc in 2nd ch from hook, sc in each ch across. ({2 * part} sc)"
RIGHT = "Row 1: Ch 1, turn, sc in next {part / 2} sts, leave rem sts unworked. ({part / 2} sc)"
PLAIN = "Row 2: Ch 1, turn, sc in each st across. ({part / 2} sc)"
BACK = (
    "Row 1: Sk next {gap} unworked sts, join yarn with sl st in next st, ch 1, sc in same st, "
    "sc in next {part - 2 * gap - 1} sts, leave rem sts unworked. ({part - 2 * gap} sc)"
)
LEFT = "Row 1: Sk next {gap} unworked sts, join yarn with sl st in next st, ch 1, sc in same st, sc in each st across. "


def test_fronts_and_back_after_the_division_of_a_body_worked_flat(checked: Callable[..., Outcome]) -> None:
    def pieces(left: str, on: bool) -> tuple[str, ...]:
        names = ("stitches left at Row 1 of Right Front", "stitches left of Back") if on else ("", "")
        return (
            piece("Body", [FLAT], shape="flat"),
            piece("Right Front", [RIGHT, PLAIN], shape="flat"),
            piece("Back", [BACK], names[0], "flat"),
            piece("Left Front", [LEFT + left], names[1], "flat"),
        )

    for on in (True, False):
        outcome = checked(*pieces("({part / 2} sc)", on))
        assert (faults(outcome), outcome.proved.not_checked) == (set(), 0)
    outcome = checked(*pieces("({part / 2 + 1} sc)", on=True))
    assert faults(outcome) == {("stated-count-wrong", "S"), ("stated-count-wrong", "L")}


def test_the_second_shoulder_on_the_stitches_the_first_one_left(checked: Callable[..., Outcome]) -> None:
    rows = [
        FLAT,
        "Row 2: Ch 1, turn, sc in next {part / 2} sts, turn, leaving rem sts unworked. ({part / 2} sc)",
        "Rows 3-6: Ch 1, sc in each st across, turn. ({part / 2} sc)",
        "Second Shoulder: Sk next {part} unworked sts, join yarn with sl st in next st, ch 1, sc in same st, "
        "sc in each st across. ({part / 2} sc)",
    ]
    outcome = checked(piece("Front", rows, shape="flat"))
    assert (faults(outcome), outcome.proved.not_checked) == (set(), 0)


def test_a_piece_goes_on_from_the_end_or_the_foundation_of_one_further_up(checked: Callable[..., Outcome]) -> None:
    sleeve = piece("Sleeves", ["Foundation: Ch {arm}. Join with sl st in first ch to form a ring.",
                               "Rnd 1: Ch 1, sc in each ch around, join. ({arm} sc)"])  # fmt: skip
    band = "Rnd 1: Ch 1, sc in the free loop of each ch along the other side, join. ({yoke} sc)"
    pieces = piece("Yoke", YOKE), sleeve, piece("Body", BODY, "end of Yoke")
    outcome = checked(*pieces, piece("Neckband", [band], "foundation of Yoke"))
    assert (faults(outcome), outcome.proved.not_checked) == (set(), 0)
    outcome = checked(*pieces, piece("Neckband", [band.replace("({yoke}", "({yoke + 1}")], "foundation of Yoke"))
    assert faults(outcome) == {("stated-count-wrong", "S"), ("stated-count-wrong", "L")}


def test_what_cannot_be_is_told_at_its_place(checked: Callable[..., Outcome]) -> None:
    for on, rule in {
        "held stitches of Bodie": "piece-unknown",
        "held stitches of Sleeves": "piece-unknown",
        "the sleeves": "begin-unreadable",
        "held stitches of Yoke": "nothing-held",
        "held stitches at Rnd 2 of Body": "nothing-held",
        "third held stitches of Body": "nothing-held",
    }.items():
        outcome = checked(*garment(SLEEVE, on=on))
        found = [one for one in outcome.findings if one.severity.name == "ERROR"]
        assert [(one.rule, one.place.line, one.place.column) for one in found] == [(rule, 26, 16)], on
        assert found[0].hint


def test_nothing_is_claimed_where_the_earlier_piece_could_not_be_followed(checked: Callable[..., Outcome]) -> None:
    outcome = checked(*garment(SLEEVE, body=["Rnd 1: Divide for the sleeves as you like it."]))
    assert (faults(outcome), outcome.proved.wrong) == (set(), 0)
    assert outcome.proved.not_checked


def test_a_chain_of_its_own_is_worked_on_nothing(checked: Callable[..., Outcome]) -> None:
    outcome = checked(*garment(*[row.replace("{yoke}", "{arm}") for row in YOKE]))
    assert faults(outcome) == {("begins-anew", None)}
