"""Rows that follow rows nobody could follow, shells told over several steps, repeats that what is made ends."""

from __future__ import annotations

from gradegen.design.worked import WorkedRow


def made(rows: list[WorkedRow]) -> list[int | None]:
    return [row.made for row in rows]


def test_a_shell_is_all_that_was_worked_into_its_place(worked) -> None:  # type: ignore[no-untyped-def]
    rows = worked(
        "Ch 6, join to form a ring, ch 1, * s c in ring, ch 4, repeat from * 5 times, join.",
        "2nd Round: Sl st into loop, * 2 d c with ch 1 between in next loop, ch 1, 2 tr c with ch 1 between in same "
        "loop, ch 1, 2 d c with ch 1 between in same loop (shell), ch 5, s c in next loop, ch 5, repeat from * around.",
        "3rd Round: * Shell in next shell, ch 7, s c in next s c, ch 7, repeat from * all around.",
    )
    assert made(rows) == [6, 21, 21]  # three shells of 6 and three sc


def test_a_first_chain_as_high_as_its_stitch_makes_a_lopsided_shell_whole(worked) -> None:  # type: ignore[no-untyped-def]
    rows = worked(
        "Ch 4, join to form a ring, ch 3, 2 d c in same st, ch 1, 1 d c in same st "
        "(the ch 3 at beginning of each row is counted as first d c of shell).",
        "Row 2: Ch 3, 2 d c over ch 1, ch 1, 1 d c over this st, (shell) 1 shell between 2nd and 3rd d c, turn.",
        "Row 7: 3 shells, ending with 2 d c.",
    )
    assert made(rows) == [4, 8, 14]


def test_the_last_rounds_again_go_on_by_their_own_numbers(worked) -> None:  # type: ignore[no-untyped-def]
    first = "5th Round: * S c in next loop, ch 5, repeat from * 3 times."
    grows = "6th Round: * 2 s c in next s c, ch 5, s c in next loop, ch 5, repeat from * all around."
    again = "7th Round: * S c in next loop, ch 5, repeat from * all around. Repeat the last 2 rounds once."
    assert made(worked(first, grows, again))[1:] == [12, 16]  # 4 loops, 8, 8 (16 loops), 16


def test_what_is_made_ends_a_repeat_on_a_chain_that_is_not_written(worked) -> None:  # type: ignore[no-untyped-def]
    row = "1st row: {}Dc in 8th ch from hook (sp made), * ch 2, skip 2 ch, dc in next ch. Repeat from * across until {} sps are completed. Ch 5, turn."  # noqa: E501
    assert made(worked(row.format("", 12))) == [13]
    assert made(worked(row.format("Ch 60, ", 12))) == [13]  # what is left of the chain is cut off
    second = "2nd row: Dc in first dc, ch 2, skip 2 ch, dc in next ch. Ch 5, turn."
    assert made(worked("1st row: Dc in 8th ch from hook. Ch 5, turn."))[0] is None
    assert made(worked("1st row: Dc in 8th ch from hook. Ch 5, turn.", second)) == [2, 3]


def test_loops_of_two_rows_and_clusters_counted_with_a_dash(worked) -> None:  # type: ignore[no-untyped-def]
    rows = worked(
        "Ch 6, join to form a ring, ch 1, * s c in ring, ch 4, repeat from * 5 times, join.",
        "2nd Round: * Ch 5, s c over loops of two previous rows, repeat from * all around.",
        "3rd Round: * Ch 3, 2-3 tr c cluster sts with ch 2 between in next loop, repeat from * all around.",
    )
    assert made(rows) == [6, 6, 12]


def test_yarn_attached_beside_the_middle_begins_a_round_somewhere(worked) -> None:  # type: ignore[no-untyped-def]
    rows = worked(
        "Ch 6, join to form a ring, ch 1, 24 s c in ring, join in 1st s c.",
        "2nd Round: Attach Red in 5th st to right of center, s c in same space, 2 s c in next st, "
        "1 s c in each remaining st, join.",
        "3rd Round: 1 s c in each s c, join.",
    )
    assert made(rows) == [24, 25, 25]


def test_a_first_chain_between_stitches_is_repeated_from_the_beginning(worked) -> None:  # type: ignore[no-untyped-def]
    rows = worked(
        "Ch 6, join to form a ring, ch 1, * s c in ring, ch 6, repeat from * 11 times, join.",
        "2nd Round: Ch 4, d c in next loop, ch 2, d c in next loop, ch 4, s c in next loop, repeat from beginning "
        "3 times.",
        "3rd Round: * 2 s c in next loop, repeat from * all around.",
    )
    assert made(rows) == [12, 12, 24]  # 8 dc and 4 sc with a chain before each
    assert rows[1].units["ch-4 sp"] == 8
