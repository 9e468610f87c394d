"""Rounds behind petals: as many loops as petals, since a round closes. The counts are arithmetic, worked by hand."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from gradegen.design.worked import WorkedRow

Worked = Callable[..., list[WorkedRow]]
FLOWER = [
    "Rnd 1: Ch 6, join to form a ring, ch 6, dc in ring, * ch 3, dc in ring, repeat from * 2 more times, ch 3, "
    "join in 3rd st of ch 6.",  # 5 loops
    "Rnd 2: Over each loop work 1 sc, 1 hdc, 3 dc, 1 hdc, 1 sc, join.",
]


@pytest.mark.parametrize("words", ["between next 2 petals", "in back of work between the sc of next 2 petals"])
def test_a_round_behind_petals_has_a_loop_for_each(worked: Worked, words: str) -> None:
    rows = worked(*FLOWER, f"Rnd 3: * Ch 4, sc {words}, repeat from * all around.")
    assert [row.made for row in rows] == [5, 5 * 7, 5]
    assert rows[-1].units["ch-4 sp"] == 5


def test_slip_stitches_behind_petals_and_petals_over_their_loops(worked: Worked) -> None:
    round_3 = "Rnd 3: * Ch 5, sl st in back of work between next 2 petals, repeat from * 4 more times."
    rows = worked(*FLOWER, round_3, "Rnd 4: 1 sc, 1 dc, 5 tr, 1 dc, 1 sc over each loop, join.")
    assert rows[2].units["ch-5 sp"] == 5
    assert rows[3].made == 5 * 9


def test_what_a_petal_is_stays_unsaid_where_stitches_stand_beside_the_groups(worked: Worked) -> None:
    between = "Rnd 2: Ch 1, * sc in next dc, 5 dc in next loop, repeat from * all around, join."
    rows = worked(FLOWER[0], between, "Rnd 3: * Ch 4, sc between next 2 petals, repeat from * all around.")
    assert rows[-1].made is None


@pytest.mark.parametrize(("times", "made"), [("4 times", 5), ("5 times", 5), ("3 times in all", None)])
def test_a_round_that_leaves_petals_is_not_counted(worked: Worked, times: str, made: int | None) -> None:
    rows = worked(*FLOWER, f"Rnd 3: * Ch 4, sc between next 2 petals, repeat from * {times}.")
    assert rows[-1].made == made
