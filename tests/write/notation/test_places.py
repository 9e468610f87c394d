"""Places in words."""

from __future__ import annotations

from typing import Any

import pytest

from gradegen.design.rows import Bound, Into, Number, Thing
from gradegen.findings import Place
from gradegen.write.notation.numbers import Figures
from gradegen.write.notation.places import bound_words, place_words, thing_words
from gradegen.write.notation.style import Notation, notation_style

NOWHERE = Place("<made up>", 1, 1, 1, 1)
US = Notation(notation_style(), "US", Figures(("one",)), "round")
UK = Notation(notation_style(), "UK", Figures(("one",)), "row")


def n(value: int) -> Number:
    return Number((value,), place=NOWHERE)


def into(which: Any, *things: Thing, **more: Any) -> Into:
    return Into(which, things, place=NOWHERE, **more)


SP = Thing("sp", n(2))


@pytest.mark.parametrize(
    ("place", "words"),
    [
        (into("next", Thing("st")), "in next st"),
        (into("next", Thing("st"), number=n(3)), "in next 3 sts"),
        (into("next", SP, number=n(3)), "in next 3 ch-2 sps"),
        (into("each", Thing("sc"), SP, bound=Bound("end")), "in each sc and ch-2 sp around"),
        (into("each", Thing("st"), bound=Bound("last", n(2), Thing("st"))), "in each st to last 2 sts"),
        (into("each", Thing("st"), number=n(5)), "in each of next 5 sts"),
        (into("same"), "in same place"),
        (into("same", Thing("sp")), "in same sp"),
        (into("last", Thing("dc"), number=n(2)), "in last 2 dc"),
        (into("from hook", Thing("ch"), nth=n(2)), "in 2nd ch from hook"),
        (into("from hook", Thing("ch"), nth=n(3), number=n(2)), "over 3rd and 4th ch from hook"),
        (into("of", Thing("dc"), nth=n(3), of=into("next", Thing("fan"))), "in 3rd dc of next fan"),
        (into("of", of=into("next", Thing("shell"))), "in center of next shell"),
        (into("of", Thing("dc"), nth=n(3)), "in 3rd dc"),
        (into("tch"), "in top of tch"),
        (into("tch", nth=n(3)), "in 3rd ch of tch"),
        (into("marked"), "in marked st"),
        (into("ring"), "in ring"),
        (into("next", Thing("gap")), "between next 2 sts"),
        (into("next", Thing("st"), loop="back"), "in back loop only of next st"),
        (into("each", Thing("free loop"), bound=Bound("end")), "in each free loop of ch around"),
        (into("next", Thing("group", of="dc")), "in next dc group"),
    ],
)
def test_places(place: Into, words: str) -> None:
    assert place_words(place, US) == words


def test_uk_words() -> None:
    assert place_words(into("of", of=into("next", Thing("shell"))), UK) == "in centre of next shell"
    assert place_words(into("each", Thing("dc"), bound=Bound("end")), UK) == "in each tr across"


def test_posts_and_several_as_one() -> None:
    assert place_words(into("next", Thing("dc")), US, word="around") == "around next dc"
    assert place_words(into("next", Thing("st"), number=n(2)), US, word="over") == "over next 2 sts"


@pytest.mark.parametrize(
    ("thing", "one", "more"),
    [
        (Thing("shell"), "shell", "shells"),
        (Thing("V-st"), "V-st", "V-sts"),
        (Thing("dc2tog"), "dc2tog", "dc2tog"),
        (Thing("cross"), "cross", "crosses"),
        (Thing("3-dc cluster"), "3-dc cluster", "3-dc clusters"),
        (Thing("place"), "st or sp", "sts or sps"),
        (Thing("row end"), "row end", "row ends"),
    ],
)
def test_plurals(thing: Thing, one: str, more: str) -> None:
    assert (thing_words(thing, "1", US), thing_words(thing, "2", US)) == (one, more)


@pytest.mark.parametrize(
    ("bound", "words"),
    [
        (Bound("end"), "around"),
        (Bound("last", None, Thing("st")), "to last st"),
        (Bound("last", n(3), Thing("sc")), "to last 3 sc"),
        (Bound("thing", thing=SP), "to next ch-2 sp"),
        (Bound("before marker"), "to marker"),
        (Bound("before marker", n(1)), "to 1 st before marker"),
    ],
)
def test_bounds(bound: Bound, words: str) -> None:
    assert bound_words(bound, US) == words
