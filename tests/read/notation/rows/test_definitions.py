"""Stitches a pattern explains: what goes into one place, what counts as one, what takes several places."""

from __future__ import annotations

import pytest

from gradegen.design.rows import Definition
from gradegen.findings import Written
from gradegen.read.notation.notes.definitions import read_definition
from gradegen.read.notation.rows import RowNames


def define(name: str, text: str, **known: Definition) -> Definition:
    return read_definition(name, Written.plain(text), RowNames(definitions=known))[0]


def makes(definition: Definition) -> str:
    return " + ".join(
        f"{make.times.values[0] if make.times else ''} {make.stitch}".strip() for make in definition.makes
    )


@pytest.mark.parametrize(
    ("name", "text", "expected"),
    [
        ("V-st", "(dc, ch 1, dc) in st or sp indicated", "dc + ch + dc"),
        ("shell", "5 dc in same st", "5 dc"),
        ("shell", "2 d c, ch 2, 2 d c in same sp", "2 dc + 2 ch + 2 dc"),
        ("fan", "7 tr in next st", "7 tr"),
        ("little fan", "(dc, ch 1, dc, ch 1, dc) in same st", "dc + ch + dc + ch + dc"),
        ("beg shell", "Ch 3, (dc, ch 2, 2 dc) in same sp", "dc + dc + 2 ch + 2 dc"),
        ("tile", "ch 3, 3 dc", "3 ch + 3 dc"),
        ("inc", "2 sc in next st", "2 sc"),
        ("in", "2 sc in the same st", "2 sc"),
        ("dec", "sc2tog", "sc2tog"),
        ("dec", "invisible sc2tog", "sc2tog"),
        ("dec", "2 sc together", "sc2tog"),
    ],
)
def test_what_goes_into_one_place(name: str, text: str, expected: str) -> None:
    definition = define(name, text)
    assert makes(definition) == expected
    assert not definition.one


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("bobble", "5 dc worked together in same st, counts as 1 st"),
        ("cl", "3 dc worked together in the same st"),
        ("bean", "dc3tog in same st"),
        ("popcorn", "5 dc in same st, drop loop, pull through first dc, counts as 1 st"),
        ("popcorn", "4 d c in same place, drop loop, draw loop through first d c; 1 st"),
        ("cluster", "holding back last loop of each d c, 3 d c in same place, thread over and through all loops"),
        ("puff", "(yo, insert hook, pull up a loop) 3 times in same st, yo and draw through all loops"),
        ("cl", "3 tr in same st keeping last loop of each on hook, yo and through all loops"),
    ],
)
def test_what_counts_as_one_stitch(name: str, text: str) -> None:
    definition = define(name, text)
    assert definition.one
    assert definition.takes is None


@pytest.mark.parametrize(
    "text", ["ch 3, sl st in 3rd ch from hook", "ch 4, sc in 4th ch from hook", "ch 4, sl st in last sc"]
)
def test_a_picot_counts_for_nothing(text: str) -> None:
    picot, dot = define("picot", text), define("dot", text)
    assert (picot.makes, picot.steps, picot.one) == ((), (), False)
    assert makes(dot) == "picot"


def test_a_decrease_takes_two() -> None:
    assert define("dec", "sc2tog").takes == 2
    assert define("dec", "dc3tog").takes == 3


def test_one_over_several_places_is_steps() -> None:
    sp = define("sp", "ch 2, skip 2, dc in next")
    bl = define("bl", "dc in each of 3")
    assert [type(step).__name__ for step in sp.steps] == ["Chain", "Skip", "Work"]
    assert [type(step).__name__ for step in bl.steps] == ["Work"]
    assert not sp.makes
    assert not bl.makes


def test_a_definition_may_use_another() -> None:
    wave = define("wave", "(crown, ch 1, crown) in next sp", crown=define("crown", "3 dc in same st"))
    assert makes(wave) == "crown + ch + crown"


def test_words_that_fit_no_form_are_kept_as_words() -> None:
    definition = define("twirl", "do as the photo shows")
    assert (definition.makes, definition.steps, definition.one) == ((), (), False)
    assert definition.text == "do as the photo shows"
