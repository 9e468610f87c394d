"""Yarn stated in an ordinary text, and the faults of a published sheet found by the command itself."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.cli.command_line import main
from gradegen.design.formula import Amount, PerSize
from gradegen.design.pattern import Yarn
from gradegen.findings import Written
from gradegen.read.plain_text.yarn_said import yarns_said

# The figures of a free published sheet (481 yd skeins; two wrong skein cells, one wrong metre figure), rows of our own.
SHEET = """Harbor Panel

Sizes: S (M, L, XL, 2X, 3X)

Materials
Yarn: 481 yd (440 m) skeins, medium weight. Hook 5.5 mm.
Yarn A, slate: 780 (905, 979, 1075, 1200, 1360) yd / 755 (828, 895, 983, 1097, 1244) m, 2 (2, 2, 3, 3, 3) skeins
Yarn B, sand: 780 (905, 979, 1075, 1200, 1360) yd / 713 (828, 895, 983, 1097, 1244) m, 2 (2, 3, 3, 3, 4) skeins

Row 1: Ch 61 (67, 73, 79, 85, 91). Sc in 2nd ch from hook, sc in each ch across. (60 (66, 72, 78, 84, 90) sc)
Row 2: Ch 1, turn, sc in each st across. (60 (66, 72, 78, 84, 90) sc)
"""


def said(text: str, sizes: int = 3) -> tuple[Yarn, ...]:
    return yarns_said(Written.plain(text, "draft.txt"), frozenset(), sizes)


def checked(text: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> set[tuple[str, str, str, str]]:
    """Rule, size, and what stands at the place, of everything the command reports but notes."""
    path = tmp_path / "sheet.txt"
    path.write_text(text, encoding="utf-8")
    main(["check", str(path), "--json"])
    answer = json.loads(capsys.readouterr().out)
    lines = text.splitlines()
    found = [one for one in answer["findings"] if one["severity"] != "note"]
    return {(one["rule"], one["size"], _at(lines, one["place"]), one["expected"]) for one in found}


def _at(lines: list[str], place: dict[str, int]) -> str:
    return lines[place["line"] - 1][place["column"] - 1 : place["end_column"] - 1]


def test_the_command_finds_all_three_faults_of_the_published_sheet(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert checked(SHEET, tmp_path, capsys) == {
        ("skeins-differ", "L", "2", "3"),
        ("skeins-differ", "3X", "4", "3"),
        ("yards-and-metres-differ", "S", "755", "713 m"),
    }


def test_and_nothing_in_the_sheet_put_right(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    right = SHEET.replace("755", "713").replace("2 (2, 2, 3, 3, 3)", "2 (2, 3, 3, 3, 3)").replace("3, 4)", "3, 3)")
    assert checked(right, tmp_path, capsys) == set()


@pytest.mark.parametrize(
    ("line", "inches"),
    [
        ("Skeins of 200 yd / 100 g. You need 400 (500, 610) yd.", 7200),
        ("400 (500, 610) yd; each skein holds 200 yd.", 7200),
        ("400 (500, 610) yd of medium yarn, 200 yd per ball", 7200),
        ("400 (500, 610) yd; 127 m to the hank", 5000),
        ("200 yd (183 m) skeins: 400 [500, 610] yd", 7200),
        ("2 (3, 4) 200 yd skeins or 400 (500, 610) yards", 7200),
    ],
)
def test_what_a_skein_holds(line: str, inches: int) -> None:
    (yarn,) = said(line)
    assert yarn.skein_length is not None
    assert yarn.skein_length.number * (36 if yarn.skein_length.unit == "yd" else Fraction(5000, 127)) == inches
    assert yarn.stated is not None
    assert isinstance(yarn.stated.yards, PerSize)
    assert [one.number for one in yarn.stated.yards.each] == [400, 500, 610]


def test_balls_in_dashes_and_numbers_at_their_places() -> None:
    (yarn,) = said("Contrast B 2 (2-3) balls")
    assert yarn.letter == "B"
    assert yarn.stated is not None
    assert isinstance(yarn.stated.skeins, PerSize)
    assert [(one.number, one.place.column) for one in yarn.stated.skeins.each] == [(2, 12), (2, 15), (3, 17)]


def test_one_number_of_skeins_for_all_sizes() -> None:
    (yarn,) = said("A: 3 skeins, 520 (540, 560) yd")
    assert yarn.stated is not None
    assert isinstance(yarn.stated.skeins, Amount)


@pytest.mark.parametrize(
    "line",
    [
        "Gauge: 14 sts and 16 rows = 4 in",
        "Hook: 5 mm (H-8)",
        "Finished length 12 (13, 14) in",
        "Use 3 (4) skeins",  # for two sizes, not three
        "Row 3: Work 12 (13, 14) m",
    ],
)
def test_what_states_no_yarn(line: str) -> None:
    assert said(line) == ()
