"""Rounds with corners, in the words they are told in: stitches all around, and three in each corner."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from gradegen.design.worked import WorkedRow

FIRST = "Rnd 1: Ch 20, join to form a ring. Ch 1, *sc in next 4 ch, 3 sc in next ch; rep from * around, join. (28 sc)"


@pytest.mark.parametrize(
    "words",
    [
        "sc in each st around, 3 sc in center st of each corner",
        "sc in each st around, making 3 sc in center sc of each corner",
        "sc in each st around with 3 sc in the middle st of each corner",
        "sc in each sc, 3 sc in each corner sc",
        "sc around, 3 sc in corner sts",
        "sc in each st around, 3 sc in corner",
        "sc in each sc around and 3 sc in each corner",
        "*sc in each st to center st of corner, 3 sc in center st; rep from * 3 more times, sc to end",
        "*sc in each st to center sc of next corner, 3 sc in center sc; rep from * around, sc in last st",
    ],
)
def test_three_in_each_corner(words: str, worked: Callable[..., list[WorkedRow]]) -> None:
    found = worked(FIRST, f"Rnd 2: Ch 1, {words}, join.")[-1]  # 28 and two more in each of four corners
    assert (found.status, found.made) == ("proved", 36)


def test_spaces_made_in_corners(worked: Callable[..., list[WorkedRow]]) -> None:
    words = "Ch 1, hdc in each st around, working (hdc, ch 2, hdc) in centre st of each corner, join."
    found = worked(FIRST, f"Rnd 2: {words}")[-1]
    assert (found.status, found.made, found.units["ch-2 sp"]) == ("proved", 32, 4)
