"""Increases by their distance, rounds even behind them, and sentences about lengths of yarn. Worked on paper."""

from __future__ import annotations

from gradegen.design.worked import WorkedRow


def made(rows: list[WorkedRow]) -> list[int | None]:
    return [row.made for row in rows]


FIRST = "Ch 2, 7 s c in 2nd ch from hook."


def test_increases_by_their_distance_leave_the_rest_plain(worked) -> None:  # type: ignore[no-untyped-def]
    rows = worked(
        FIRST,
        "2nd Round: 2 s c in each s c.",
        "3rd Round: Inc in every 3rd s c. Work 1 round even.",
        "5th Round: With Red working in s c increase in every other s c. Work 2 rounds even.",
        "8th Round: S c in each s c.",
    )
    assert made(rows) == [7, 14, 18, 27, 27]  # 14 is 4 threes and 2 over; 18 is 9 twos
    assert "increase" not in [step.text for step in rows[3].row.steps if hasattr(step, "text")]


def test_increases_behind_other_work_are_not_worked_again(worked) -> None:  # type: ignore[no-untyped-def]
    rows = worked(FIRST, "2nd Round: 2 s c in each s c, inc in every 3rd s c.", "3rd Round: S c in each s c.")
    assert made(rows)[1] is None


def test_the_last_rounds_again_are_those_of_the_passage_itself(worked) -> None:  # type: ignore[no-untyped-def]
    again = "2nd Round: Inc in every 7th s c. Work 2 rounds even. Repeat last {} rounds twice."
    assert made(worked(FIRST, again.format(3), "11th Round: S c in each s c.")) == [7, 10, 10]  # 8, 9, 10
    assert made(worked(FIRST, again.format(4)))[1] is None


def test_a_number_told_with_even_rows_goes_on_either_way(worked) -> None:  # type: ignore[no-untyped-def]
    even = "2nd Round: 2 s c in each s c. Work 3 rounds even."
    assert made(worked(FIRST, even, "6th Round: S c in each s c."))[2] == 14
    assert made(worked(FIRST, even, "3rd Round: S c in each s c."))[2] == 14
    assert made(worked(FIRST, even, "9th Round: S c in each s c."))[2] is None


def test_sentences_about_lengths_of_yarn_are_remarks(worked) -> None:  # type: ignore[no-untyped-def]
    rows = worked(
        FIRST,
        "2nd Round: 2 s c in each s c. Cut yarn as follows: six 2 yard lengths of Dk. Red and four 3 yard lengths of "
        "White. Tie the lengths together in this order, * Red, White, repeat from * until all are tied.",
        "3rd Round: S c in each s c.",
    )
    assert made(rows) == [7, 14, 14]
