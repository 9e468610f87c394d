"""Words that differ between US and UK writing."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.trade.sources import TRUST_MARKS
from gradegen.trade.stitches import stitches
from gradegen.trade.terms import how_to_tell_them_apart, terms, terms_only_in, text_in, word_in


def test_every_term_is_whole() -> None:
    for term in terms():
        assert term.us
        assert term.uk
        assert term.means
        assert term.trust in TRUST_MARKS
        assert term.source.publisher != "not known"


@pytest.mark.parametrize(
    ("us", "uk"),
    [
        ("Sk next 2 sts, yo.", "Miss next 2 sts, yoh."),
        ("single crochets", "double crochets"),
        ("FPdc around next dc", "FPtr around next tr"),
        ("dc2tog, 3-dc cluster, 2 dcs", "tr2tog, 3-tr cluster, 2 trs"),
        ("Ch 3 (counts as dc)", "Ch 3 (counts as tr)"),
        ("Half double crochet in each st; join with sl st.", "Half treble in each st; join with ss."),
        ("gauge in color A", "tension in colour A"),
    ],
)
def test_a_text_in_uk_terms(us: str, uk: str) -> None:
    assert text_in(us, "US", "UK") == uk


@pytest.mark.parametrize(
    "text", ["", "Ch 3, turn.", "84 (90, 96)", "{2 * band} sts, then 5", "Knot * two; (a) [b]\n\n x"]
)
def test_what_has_no_terms_stays_letter_for_letter(text: str) -> None:
    assert text_in(text, "US", "UK") == text


def test_same_terms_change_nothing() -> None:
    assert text_in("sc, color, gauge", "US", "US") == "sc, color, gauge"


@settings(derandomize=True, deadline=None, max_examples=200)
@given(st.lists(st.sampled_from([*stitches()][:60]), min_size=1, max_size=6))
def test_there_and_back_is_the_same(ids: list[str]) -> None:
    us = ", ".join(stitches()[id_].abbreviation("US") for id_ in ids)
    uk = ", ".join(stitches()[id_].abbreviation("UK") for id_ in ids)
    assert text_in(us, "US", "UK") == uk
    assert text_in(uk, "UK", "US") == us


@settings(derandomize=True, deadline=None, max_examples=100)
@given(st.text(max_size=60))
def test_any_text_at_all(text: str) -> None:
    assert isinstance(text_in(text, "US", "UK"), str)


def test_words_keep_their_capital() -> None:
    assert word_in("Skip", "UK") == "Miss"
    assert word_in("yarn over", "UK") == "yarn over hook"
    assert word_in("loop", "UK") == "loop"


@pytest.mark.parametrize(
    ("word", "only"), [("sc2tog", "US"), ("htr2tog", "UK"), ("FPhtr", "UK"), ("gauge", None), ("s c", "US")]
)
def test_names_of_one_vocabulary(word: str, only: str | None) -> None:
    assert terms_only_in(word) == only


def test_the_rule_of_thumb_is_there_to_print() -> None:
    assert "htr" in how_to_tell_them_apart()
