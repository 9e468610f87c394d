"""What a piece tells of the chain a row begins with. Common practice, no source."""

from __future__ import annotations

from gradegen.design.worked import WorkedRow


def made(rows: list[WorkedRow]) -> list[int | None]:
    return [row.made for row in rows]


def test_turning_chains_worked_into_along_the_side_are_loops(worked) -> None:  # type: ignore[no-untyped-def]
    first = "Ch 5, d c in 5th ch from hook, ch 2, 2 d c in same space, ch 6, turn."
    rows = (first, "2nd Row: 2 d c, ch 2, 2 d c (shell) in the ch 2 loop, ch 6, turn.")
    assert made(worked(*rows))[1] is None
    side = "3rd Row: Shell in center of shell, ch 3, working along side of edging, 4 s c in next ch 6 loop, ch 1, turn."
    assert made(worked(*rows, side))[1:] == [4, 8]  # the shell; the shell and 4 sc


def test_a_round_joined_into_its_first_stitch_begins_with_a_loop(worked) -> None:  # type: ignore[no-untyped-def]
    ring = "Ch 5, join to form a ring."
    row = "1st Round: Ch 8, 2 d tr c with ch 9 between in ring, ch 7, s c in ring, ch 7, sl st in "
    assert made(worked(ring, row + "ring."))[1] is None
    assert made(worked(ring, row + "1st d tr c."))[1] == 3  # 2 dtr, 1 sc


def test_before_nothing_but_single_crochet_no_chain_is_missing(worked) -> None:  # type: ignore[no-untyped-def]
    first = "Ch 21, s c in 2nd ch from hook and in each ch across, ch 1, turn."
    assert made(worked(first, "7th Row: 2 s c in next s c, s c in each of next 9 s c, turn."))[1] == 11
    assert made(worked(first, "7th Row: S c in next s c, (d c in next s c, s c in next s c) 5 times, turn."))[1] is None


def test_a_chain_said_to_turn_all_rows_begins_rows_behind_a_gap(worked) -> None:  # type: ignore[no-untyped-def]
    first = "Ch 24, d c in 6th ch from hook, * ch 1, skip 1 ch, d c in next ch, repeat from * across, ch 4 to turn{}."
    gap = "9th Row: D c in next d c, * ch 1, d c in next d c, repeat from * 4 times, turn."
    assert made(worked(first.format(""), gap))[1] is None
    assert made(worked(first.format(" all rows"), gap))[1] == 7  # the chain, 1, 5


def test_behind_broken_yarn_a_row_without_new_yarn_stands_on_nothing_known(worked) -> None:  # type: ignore[no-untyped-def]
    motif = "3rd Round: Ch 1, * 6 s c in next loop, ch 3, repeat from * 5 times, join, break thread."
    assert made(worked(motif, "4th Round: * Ch 6, s c in next loop, repeat from * all around."))[1] is None
    attached = "4th Round: Attach White in any loop, * ch 6, s c in next loop, repeat from * all around."
    assert made(worked(motif, attached))[1] == 6


def test_rows_repeated_for_a_length_are_not_as_many_as_the_label_names(worked) -> None:  # type: ignore[no-untyped-def]
    first = "Ch 21, s c in 2nd ch from hook and in each ch across, ch 1, turn."
    rows = worked(first, "2nd Row: 2 s c in 1st s c, s c in each s c across, ch 1, turn.",
                  "Next 4 Rows: S c in each s c, ch 1, turn. Repeat from 2nd row for length desired.")  # fmt: skip
    assert made(rows) == [20, 21, None]
