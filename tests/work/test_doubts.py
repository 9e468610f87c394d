"""Counts that the words do not tell are not claimed; what a later row, the join or a printed count tells is.

Common practice, no source: which chains stand for a stitch is the trade's habit, see `gradegen/work/edge/doubts.py`.
"""

from __future__ import annotations

from pathlib import Path

from gradegen.design.worked import WorkedRow
from gradegen.pipeline import check_text


def made(rows: list[WorkedRow]) -> list[int | None]:
    return [row.made for row in rows]


def test_skipped_chains_that_fit_neither_stitch_nor_mesh_are_not_counted(worked) -> None:  # type: ignore[no-untyped-def]
    unsure = worked("Ch 23, d c in 7th ch from hook, * ch 1, skip 1 ch, d c in next ch, repeat from * across, turn.")
    assert made(unsure) == [None]
    mesh = worked("Ch 23, d c in 8th ch from hook, * ch 2, skip 2 ch, d c in next ch, repeat from * across row, turn.")
    assert made(mesh) == [7]  # the skipped chains are a dc, ch 2 and 2 skipped; 1 dc; 15 more chains are 5 meshes


def test_a_chain_longer_than_its_stitch_counts_where_its_rest_is_the_rows_own_loop(worked) -> None:  # type: ignore[no-untyped-def]
    start = "Ch 5, join to form a ring."
    mesh = "1st Round: Ch 6, d c in ring, * ch 3, d c in ring, repeat from * 3 times, ch 3, join."
    assert made(worked(start, mesh)) == [0, 6]  # chain, dc, four more
    loop = "1st Round: Ch 7, s c in ring, ch 7, 2 d tr c with ch 9 between in ring, ch 7, s c in ring, join."
    other = loop.replace("Ch 7, s c in ring, ch 7, 2", "Ch 7, 2")
    assert made(worked(start, loop))[1] == 4  # before sc a long chain is a loop: 2 sc, 2 dtr
    assert made(worked(start, other))[1] is None


def test_a_later_row_worked_into_the_chain_tells_that_it_counts(worked) -> None:  # type: ignore[no-untyped-def]
    first = "Ch 20, d c in 4th ch from hook, d c in each ch across, ch 5, turn."
    second = "2nd Row: Skip 2 d c, d c in each of next 14 d c, d c in top of turning ch, ch 3, turn."
    told = "3rd Row: D c in next d c, d c in each d c across, ch 1, d c in 3rd st of ch, turn."
    assert made(worked(first, second)) == [18, None]
    assert made(worked(first, second, told))[1] == 16  # the chain's dc, 14, 1


def test_an_unexplained_shell_is_not_counted(worked) -> None:  # type: ignore[no-untyped-def]
    assert made(worked("1st Row: Ch 4, join to form a ring, 4 shells in ring.")) == [None]
    told = (
        "1st Row: Ch 4, join to form a ring, * 2 d c, ch 1, 2 d c (shell) in ring, ch 1, repeat from * 3 times, join."
    )
    assert made(worked(told)) == [16]


def test_groups_that_look_like_the_named_one_leave_the_count_open(worked) -> None:  # type: ignore[no-untyped-def]
    ring = "Ch 8, join to form a ring, ch 1, 12 s c in ring, join in 1st s c."
    alike = (
        "2nd Round: Ch 1, * 1 d c, ch 3, 1 d c (shell) in next s c, repeat from * 4 times, "
        "* 1 tr c, ch 3, 1 tr c in next s c, repeat from * 6 times, join."
    )
    assert made(worked(ring, alike, "3rd Round: * 5 s c in next shell, repeat from * all around, join."))[2] is None


def test_a_row_behind_a_gap_may_have_its_first_chain_above(worked) -> None:  # type: ignore[no-untyped-def]
    rows = (
        "Ch 21, s c in 2nd ch from hook and in each ch across, ch 3, turn.",
        "9th Row: D c in next d c, * ch 1, d c in next d c, repeat from * 6 times, turn.",
    )
    assert made(worked(*rows)) == [20, None]
    assert made(worked(rows[0], rows[1].replace("D c", "Ch 3, d c"))) == [20, 9]  # the chain, 1, 7


def test_a_repeat_that_never_runs_is_no_count(worked) -> None:  # type: ignore[no-untyped-def]
    ring = "Ch 6, join to form a ring, ch 1, 8 s c in ring, join in 1st s c."
    rows = worked(
        ring, "2nd Round: S c in each of next 8 s c, * ch 3, s c in next s c, repeat from * all around, join."
    )
    assert rows[1].made is None


def test_gaps_named_once_are_the_spaces_of_the_whole_round(worked) -> None:  # type: ignore[no-untyped-def]
    rows = worked(
        "Ch 6, join to form a ring, ch 4, 15 tr c in ring, join in 4th st of ch.",
        "2nd Round: Attach White in any space between tr c, s c in same space, * ch 3, s c in top of s c for picot, "
        "ch 1, skip next space, s c in next space, repeat from * all around, join, cut thread.",
    )
    assert made(rows) == [16, 8]  # 16 gaps, every second one
    assert rows[1].units["picot"] == 8


def test_one_number_with_another_in_brackets_is_no_size_list(tmp_path: Path) -> None:
    file = tmp_path / "socks.txt"
    file.write_text(
        "Socks\n\nTerms: US terms\n\nInstructions\n"
        "Ch 31, s c in 2nd ch from hook and in each ch across, turn.\n"
        "2nd Row: Ch 1, s c in each of next 10 (12) sts, (skip 1 s c, s c in next s c) 10 times, turn.\n"
        "3rd (5th) Row: Ch 1, s c in each st across, turn.\n"
        "4th Row: Ch 1, s c in each st across, turn.\n",
        "utf-8",
    )
    outcome = check_text(file)
    assert outcome.checked is not None
    assert len(outcome.checked.worked) == 1  # one label is too little to tell sizes by


def test_labels_with_two_numbers_each_tell_two_sizes(tmp_path: Path) -> None:
    file = tmp_path / "socks.txt"
    file.write_text(
        "Socks\n\nTerms: US terms\n\nInstructions\n"
        "Ch 31, s c in 2nd ch from hook and in each ch across, turn.\n"
        "2nd Row: Ch 1, * s c in next s c, skip 1 s c, repeat from * 4 (7) times, s c in each s c across, turn.\n"
        "3rd (5th) Row: Ch 1, s c in each st across, turn.\n"
        "4th, 5th (6th, 7th) Rows: Ch 1, s c in each st across, turn.\n"
        "6th (8th) Row: Ch 1, s c in each st across, turn.\n",
        "utf-8",
    )
    outcome = check_text(file)
    assert outcome.checked is not None
    assert [[row.made for row in rows][1] for rows in outcome.checked.worked.values()] == [25, 22]  # 30 less 5 (8)
    assert not [finding for finding in outcome.findings if finding.severity == "error"]
