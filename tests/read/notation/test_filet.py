"""Filet counted off in spaces and blocks, and rows of chain spaces that are none."""

from __future__ import annotations

import pytest

from gradegen.findings import Written
from gradegen.read.notation.clauses.unread import holds_unread
from gradegen.read.notation.notes.filet import implied_meshes
from gradegen.read.notation.rows import read_row
from gradegen.read.notation.words.row_names import RowNames


def meshes(text: str) -> set[str]:
    return set(implied_meshes(Written.plain(text), RowNames(terms="US")))


def test_counted_spaces_and_blocks_are_filet() -> None:
    assert meshes("Ch 5, 3 sp, 4 bl, 25 sp, turn.") == {"sp", "bl"}


@pytest.mark.parametrize(
    "text",
    [
        "*sc in each st to next ch-1 sp, (sc, ch 1, sc) in next ch-1 sp; rep from * 3 more times.",
        "Sc in next ch-2 sp, 3 dc in next ch-2 sp, sc in next ch-2 sp.",
        "Sc in next st, ch 3, skip 1 sp, sc in next st.",
    ],
)
def test_chain_spaces_named_by_their_length_are_no_filet(text: str) -> None:
    assert meshes(text) == set()


def test_no_comma_is_needed_between_a_space_and_stitches() -> None:
    row, _ = read_row(Written.plain("Row 3: Ch 5, 2 sp 4 dc, 3 sp 7 dc, 1 sp."), RowNames(terms="US"))
    assert not holds_unread(row.steps)
