"""Stitches and where they go, in words."""

from __future__ import annotations

import pytest

from gradegen.design.rows import Counts, Into, Make, Number, Thing, Work
from gradegen.findings import Place
from gradegen.write.notation.numbers import Figures
from gradegen.write.notation.style import Notation, notation_style
from gradegen.write.notation.works import makes_words, where_words, work_words

NOWHERE = Place("<made up>", 1, 1, 1, 1)
SIZES = ("S", "M")
US = Notation(notation_style(), "US", Figures(SIZES), "row")
SMALL = Notation(notation_style(), "US", Figures(SIZES, 0), "row")
ST = Thing("st")


def n(*values: int) -> Number:
    return Number(values, place=NOWHERE)


def make(name: str, times: Number | None = None) -> Make:
    return Make(name, times, place=NOWHERE)


def work(*makes: Make, number: Number | None = None, thing: Thing = ST) -> Work:
    return Work(makes, Into("next", (thing,), number, place=NOWHERE), place=NOWHERE)


@pytest.mark.parametrize(
    ("step", "words"),
    [
        (work(make("sc")), "sc in next st"),
        (work(make("sc"), number=n(3)), "sc in next 3 sts"),
        (work(make("sc", n(2))), "2 sc in next st"),
        (work(make("sc", n(2)), number=n(3)), "2 sc in each of next 3 sts"),
        (work(make("dc", n(2)), make("ch", n(2)), make("dc", n(2))), "(2 dc, ch 2, 2 dc) in next st"),
        (work(make("dc"), make("ch"), make("dc")), "(dc, ch 1, dc) in next st"),
        (work(make("sc2tog")), "sc2tog"),
        (work(make("dc2tog"), number=n(2), thing=Thing("sp", n(1))), "dc2tog over next 2 ch-1 sps"),
        (work(make("FPdc"), thing=Thing("dc")), "FPdc around next dc"),
        (work(make("inc")), "inc"),
        (work(make("shell", n(2))), "2 shells in next st"),
        (work(make("picot")), "picot"),
    ],
)
def test_works(step: Work, words: str) -> None:
    assert work_words(step, US) == words


def test_stitches_that_say_their_place_need_no_words_for_it() -> None:
    assert where_words(work(make("hdc inc")), US) == ""
    assert where_words(work(make("hdc")), US) == "in next st"


def test_what_a_size_does_not_work_is_left_out() -> None:
    assert work_words(work(make("sc"), number=n(0, 2)), SMALL) == ""
    assert work_words(work(make("sc", n(0, 2))), SMALL) == ""
    assert makes_words((make("dc"), make("ch", n(0, 2)), make("dc")), SMALL) == "(dc, dc)"


@pytest.mark.parametrize(
    ("as_", "words"),
    [
        (("dc",), "dc in 4th ch from hook (skipped ch count as dc)"),
        ((), "dc in 4th ch from hook (skipped ch do not count)"),
    ],
)
def test_skipped_chains(as_: tuple[str, ...], words: str) -> None:
    into = Into("from hook", (Thing("ch"),), nth=n(4), place=NOWHERE)
    step = Work((make("dc"),), into, skipped=Counts(as_, place=NOWHERE), place=NOWHERE)
    assert work_words(step, US) == words
