"""Chains, joins, slip stitches, skips and loose changes in words."""

from __future__ import annotations

import pytest

from gradegen.design.rows import Chain, Change, Counts, Into, Join, Number, Skip, Slip, Thing
from gradegen.findings import Place
from gradegen.write.notation.chains import chain_words, change_words, join_words, skip_words, slip_words
from gradegen.write.notation.numbers import Figures
from gradegen.write.notation.style import Notation, notation_style

NOWHERE = Place("<made up>", 1, 1, 1, 1)
US = Notation(notation_style(), "US", Figures(("S", "M")), "row")
UK = Notation(notation_style(), "UK", Figures(("S", "M")), "row")
SMALL = Notation(notation_style(), "US", Figures(("S", "M"), 0), "row")


def n(*values: int) -> Number:
    return Number(values, place=NOWHERE)


def counts(*as_: str, on: bool = False) -> Counts:
    return Counts(as_, on, place=NOWHERE)


@pytest.mark.parametrize(
    ("said", "words"),
    [
        (None, "ch 4"),
        (counts(), "ch 4 (does not count as a st)"),
        (counts("dc"), "ch 4 (counts as dc)"),
        (counts("dc", "ch-1 sp"), "ch 4 (counts as dc and ch 1)"),
        (counts("dc", on=True), "ch 4 (counts as dc, here and throughout)"),
        (counts(on=True), "ch 4 (does not count as a st, here and throughout)"),
    ],
)
def test_chains(said: Counts | None, words: str) -> None:
    assert chain_words(Chain(n(4), said, place=NOWHERE), US) == words


def test_uk_chain_counts_as_a_uk_stitch() -> None:
    assert chain_words(Chain(n(3), counts("dc"), place=NOWHERE), UK) == "ch 3 (counts as tr)"


@pytest.mark.parametrize(
    ("join", "words"),
    [
        (Join(place=NOWHERE), "join"),
        (Join("first st", place=NOWHERE), "join with sl st in first st"),
        (Join("top of chain", place=NOWHERE), "join with sl st in top of beg ch"),
        (Join("top of chain", n(3), place=NOWHERE), "join with sl st in 3rd ch of beg ch"),
        (Join("ring", place=NOWHERE), "join with sl st to form ring"),
        (
            Join("ring", half_twist=True, place=NOWHERE),
            "give one end a half turn and join with sl st in first ch",
        ),
    ],
)
def test_joins(join: Join, words: str) -> None:
    assert join_words(join, US) == words
    assert join_words(join, UK) == words.replace("sl st", "ss")


def test_what_a_size_does_not_work_is_left_out() -> None:
    none_small = Into("next", (Thing("st"),), n(0, 3), place=NOWHERE)
    assert skip_words(Skip(none_small, place=NOWHERE), SMALL) == ""
    assert skip_words(Skip(none_small, place=NOWHERE), US) == "sk next 0 (3) sts"
    assert slip_words(Slip(none_small, place=NOWHERE), SMALL) == ""
    assert chain_words(Chain(n(0, 2), place=NOWHERE), SMALL) == ""
    assert change_words(Change(1, n(0, 2), "evenly", place=NOWHERE), SMALL) == ""


def test_slip_stitches() -> None:
    place = Into("next", (Thing("sp", n(2)),), place=NOWHERE)
    assert slip_words(Slip(place, to=True, place=NOWHERE), US) == "sl st to next ch-2 sp"
    assert slip_words(Slip(place, place=NOWHERE), UK) == "ss in next ch-2 sp"


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (Change(1, n(4), "evenly", place=NOWHERE), "inc 4 sts evenly"),
        (Change(-1, n(1), "each end", place=NOWHERE), "dec 1 st at each end"),
        (Change(-1, n(1, 2), "one end", place=NOWHERE), "dec 1 (2) sts at one end"),
    ],
)
def test_loose_changes(change: Change, words: str) -> None:
    assert change_words(change, US) == words
