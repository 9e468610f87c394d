"""Yarn categories: every entry, and the look-ups."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from gradegen.trade.hooks import find_hooks
from gradegen.trade.sources import TRUST_MARKS
from gradegen.trade.yarn import Span, find_yarn_weights, weights_for_hook, yarn_disagreements, yarn_weights


def test_every_category_is_whole() -> None:
    assert [weight.number for weight in yarn_weights()] == list(range(8))
    for weight in yarn_weights():
        assert weight.types
        assert weight.trust in TRUST_MARKS
        assert weight.source.publisher != "not known"
        assert find_yarn_weights(str(weight.number)) == (weight,)
        assert weight in find_yarn_weights(weight.name.upper())


def test_thicker_yarn_has_fewer_stitches_and_thicker_hooks() -> None:
    for finer, thicker in pairwise(yarn_weights()):
        assert finer.crochet_gauge.high is None or thicker.crochet_gauge.high <= finer.crochet_gauge.high
        assert finer.hook_mm.low is not None
        assert finer.hook_mm.low <= thicker.hook_mm.low


def test_the_us_hooks_of_a_category_are_its_millimetre_hooks() -> None:
    for weight in yarn_weights():
        for name, mm in zip(weight.hook_us, (weight.hook_mm.low, weight.hook_mm.high), strict=True):
            assert (name is None) == (mm is None)
            assert name is None or mm in {hook.mm for hook in find_hooks(f"US {name}")}


@pytest.mark.parametrize("words", ["#4", "category 4", "Medium", "medium weight", "worsted weight yarn", "ARAN"])
def test_ways_to_name_a_category(words: str) -> None:
    assert [weight.number for weight in find_yarn_weights(words)] == [4]


@pytest.mark.parametrize("words", ["", "9", "cobweb-ish", "blue"])
def test_unknown_names_give_none(words: str) -> None:
    assert find_yarn_weights(words) == ()


def test_a_hook_gives_every_category_it_is_used_for() -> None:
    assert [weight.number for weight in weights_for_hook(Fraction(11, 2))] == [3, 4]
    assert [weight.number for weight in weights_for_hook(Fraction("1.5"))] == [0]


def test_open_ends() -> None:
    assert Span(None, Fraction(5)).holds(0)
    assert not Span(None, Fraction(5)).holds(6)
    assert Span(Fraction(16), None).holds(30)


def test_what_printings_disagree_on_is_kept() -> None:
    assert any("category 6" in line for line in yarn_disagreements())
