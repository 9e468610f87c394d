"""Which cautions a pattern brings up, and that every entry is whole."""

from __future__ import annotations

import pytest

from gradegen.trade.cautions import Caution, cautions, cautions_for
from gradegen.trade.sources import TRUST_MARKS


@pytest.mark.parametrize("caution", cautions(), ids=lambda caution: caution.id)
def test_every_caution_is_whole(caution: Caution) -> None:
    assert caution.text.endswith(".")
    assert caution.title
    assert caution.covers
    assert caution.rule
    assert caution.trust in TRUST_MARKS
    assert caution.source.publisher != "not known"
    assert caution.occasions, "nothing would ever bring it up"


def test_ids_are_their_own() -> None:
    assert len({caution.id for caution in cautions()}) == len(cautions())


@pytest.mark.parametrize(
    "words",
    [
        "Tie off and weave in all ends.",
        "Wet-block the wool to size and pin out.",
        "Thread the needle through its eye of the needle.",
        "Work even; fasten off.",
    ],
)
def test_an_adults_plain_pattern_brings_up_none(words: str) -> None:
    assert cautions_for("adult", words, ["wrap"]) == ()


@pytest.mark.parametrize("words", ["Tie off.", "Work a buttonhole row.", "string of chains", "Press on."])
def test_harmless_words_bring_up_no_cord_or_small_part(words: str) -> None:
    ids = {caution.id for caution in cautions_for("child", words, ["jacket"])}
    assert not ids & {"drawstrings-us", "drawstrings-eu", "small-parts-us"}


@pytest.mark.parametrize("word", ["cord", "Cords", "ties", "a drawstring", "an i-cord", "tie cord", "ribbon"])
def test_every_word_for_a_cord_is_seen(word: str) -> None:
    assert {"drawstrings-us", "drawstrings-eu"} <= {one.id for one in cautions_for("child", f"Add {word}.", [])}


def test_several_wearers_are_each_thought_of() -> None:
    ids = {caution.id for caution in cautions_for(["baby", "child", "adult"], ["Add a pompom.", "Add ties."], ["hat"])}
    assert {"safe-sleep", "small-parts-us", "drawstrings-eu", "loose-threads"} <= ids


def test_who_it_is_for_decides() -> None:
    assert "safe-sleep" not in {caution.id for caution in cautions_for("adult", "hat", ["hat"])}
    assert "drawstrings-us" not in {caution.id for caution in cautions_for("adult", "a cord", ["hood"])}


def test_man_made_fibre_alone_is_no_reason() -> None:
    assert cautions_for("adult", "Yarn: acrylic.", []) == ()
    assert [one.id for one in cautions_for("adult", "Acrylic. Block to size.", [])] == ["heat-on-man-made-fibres"]


def test_for_sale() -> None:
    ids = [caution.id for caution in cautions_for("adult", "You may sell finished items.", [])]
    assert ids == ["care-label-us", "fibre-content"]
