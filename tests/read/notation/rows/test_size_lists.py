"""Size lists: every entry knows its place, a list of the wrong length is told of once."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from gradegen.design.formula import Name, Sum
from gradegen.design.rows import Chain, Into, Work

Read = Callable[..., Any]


@pytest.mark.parametrize(
    ("written", "sizes", "values"),
    [
        ("84 (90, 96)", 3, (84, 90, 96)),
        ("84(90,96)", 3, (84, 90, 96)),
        ("84 [90, 96]", 3, (84, 90, 96)),
        ("84 {90, 96}", 3, (84, 90, 96)),
        ("15[18:21]", 3, (15, 18, 21)),
        ("72 (76, 80) (84, 88)", 5, (72, 76, 80, 84, 88)),
        ("69-75-81-87-93", 5, (69, 75, 81, 87, 93)),
        ("60 (60) 66 (66) 72", 5, (60, 60, 66, 66, 72)),
        ("(9, 10, 11)", 3, (9, 10, 11)),
        ("9/10/11", 3, (9, 10, 11)),
        ("0 (4, 8)", 3, (0, 4, 8)),
        ("4 (-, 8)", 3, (4, None, 8)),
        ("84 (90)", 2, (84, 90)),
        ("84 (90-96)", 3, (84, 90, 96)),
        ("84 (90-96-102)", 4, (84, 90, 96, 102)),
        ("84", 3, (84,)),
    ],
)
def test_every_printed_shape_is_one_list(written: str, sizes: int, values: tuple[int | None, ...], read: Read) -> None:
    row, findings = read(f"sc in next {written} sts", sizes=sizes)
    assert row.steps[0].into.number.values == values
    assert not findings


def test_every_entry_knows_its_place(read: Read) -> None:
    row, _ = read("Ch 50 (54, 160), sc in 2nd ch from hook", sizes=3)
    chain = row.steps[0]
    assert isinstance(chain, Chain)
    assert [(place.column, place.end_column) for place in chain.number.places] == [(4, 6), (8, 10), (12, 15)]


def test_the_row_keeps_its_lists_with_offsets(read: Read) -> None:
    text = "Rnds 3-6 (7, 8): sc in next 4 (5, 6) sts, ch {2 * band}. [30 (32, 36)]"
    row, findings = read(text, sizes=3, counts=("band",))
    shown = [text[one.start : one.end] for one in row.lists]
    assert shown == ["6 (7, 8)", "4 (5, 6)", "{2 * band}", "30 (32, 36)"]
    assert [one.values for one in row.lists] == [("6", "7", "8"), ("4", "5", "6"), (), ("30", "32", "36")]
    assert not findings


def test_a_sum_in_braces_is_a_number_and_other_braces_are_brackets(read: Read) -> None:
    row, _ = read("ch {2 * band + 1}, {sc, inc} around", counts=("band",))
    formula = row.steps[0].number.formula
    assert isinstance(formula, Sum)
    assert isinstance(formula.left, Sum)
    assert formula.left.right == Name("band", formula.left.right.place)
    assert row.steps[1].mark == "{"


@pytest.mark.parametrize("text", ["sc in next 12 (14) sts", "sc around (96 (100) sc)", "sc in next 3 (4, 5, 6) sts"])
def test_a_list_of_the_wrong_length_is_told_of_at_its_place(text: str, read: Read) -> None:
    row, findings = read(text, sizes=3)
    (finding,) = findings
    start = next(i for i, sign in enumerate(text) if sign.isdigit())
    assert (finding.rule, finding.place.line, finding.place.column) == ("size-list-length", 1, start + 1)
    assert finding.size is None
    assert row.lists
    assert finding.place.end_column == row.lists[0].end + 1


def test_a_label_has_its_last_rows_in_hyphens(read: Read) -> None:
    row, findings = read("5th to 9th (10th-11th) rnds: sc around", sizes=3)
    assert (row.label.first.values, row.label.last.values) == ((5,), (9, 10, 11))
    assert not findings


def test_a_wrong_list_in_a_label_is_told_of_once(read: Read) -> None:
    _, findings = read("Rnds 12-15 (14-17): sc around", sizes=3)
    assert [finding.rule for finding in findings] == ["size-list-length"]


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("(sc 5, inc) 6 (42)", 1),
        ("(sc, inc) x 6 (18)", 3),
        ("dec x 6 (12)", 2),
        ("Ch 3 (6 dc), turn", 3),
        ("sc 8 [29]", 3),
    ],
)
def test_a_count_behind_a_number_is_no_list(text: str, sizes: int, read: Read) -> None:
    row, findings = read(text, sizes=sizes)
    assert not findings
    assert len(row.stated) == 1
    assert len(row.stated[0].number.values) == 1


def test_a_number_for_all_sizes_is_one_value(read: Read) -> None:
    row, _ = read("sc in next 5 sts", sizes=3)
    work = row.steps[0]
    assert isinstance(work, Work)
    assert isinstance(work.into, Into)
    assert work.into.number is not None
    assert work.into.number.values == (5,)
