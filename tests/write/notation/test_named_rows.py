"""Rows and sizes by name."""

from __future__ import annotations

from typing import Any

import pytest

from gradegen.design.rows import Number, RowsAgain
from gradegen.findings import Place
from gradegen.write.notation.named_rows import rows_again_words, sizes_words
from gradegen.write.notation.numbers import Figures
from gradegen.write.notation.style import Notation, notation_style

NOWHERE = Place("<made up>", 1, 1, 1, 1)
US = Notation(notation_style(), "US", Figures(("S", "M", "L")), "round")


def again(*labels: str, **more: Any) -> RowsAgain:
    return RowsAgain(labels, place=NOWHERE, **more)


@pytest.mark.parametrize(
    ("step", "words"),
    [
        (again("3"), "rep Rnd 3"),
        (again("3", "4"), "rep Rnds 3 and 4"),
        (again("3", "4", "5", "6"), "rep Rnds 3-6"),
        (again("2", "4", "6"), "rep Rnds 2, 4 and 6"),
        (again("Neck 1", "Neck 2"), "rep Neck Rnds 1 and 2"),
        (again("last"), "rep last rnd"),
        (again("last 2"), "rep last 2 rnds"),
        (again("3", times=Number((5,), place=NOWHERE)), "rep Rnd 3 5 times"),
        (again("3", times=Number((5, 6, 7), place=NOWHERE), more=True), "rep Rnd 3 5 (6, 7) more times"),
        (again("3", until="piece measures 9 in"), "rep Rnd 3 until piece measures 9 in"),
        (again("3", "4", ending="3"), "rep Rnds 3 and 4, ending with Rnd 3"),
    ],
)
def test_rows_again(step: RowsAgain, words: str) -> None:
    assert rows_again_words(step, "", US) == words


def test_with_a_change() -> None:
    assert rows_again_words(again("3"), "ch 4 at each corner", US) == "rep Rnd 3, but ch 4 at each corner"


def test_sizes() -> None:
    assert sizes_words(("M",), US) == "size M"
    assert sizes_words(("S", "M", "L"), US) == "sizes S, M and L"
