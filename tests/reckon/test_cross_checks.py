"""Yarn against finished inches and against published amounts."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file
from gradegen.reckon import yarn_per_size
from gradegen.reckon.yarn.cross_checks import compare_with_published, yards_per_inch

DEMOS = Path(__file__).parents[2] / "shared" / "patterns"


@pytest.fixture(scope="module")
def hat() -> Checked:
    found = check_file(DEMOS / "bollard-hat.yaml").checked
    assert found is not None
    return found


def test_yards_per_inch_lie_round_their_mean(hat: Checked) -> None:
    (need,), _ = yarn_per_size(hat)
    shares = yards_per_inch(hat, need)
    assert [one.size for one in shares] == [size.name for size in hat.sizes]
    assert sum((one.off for one in shares), Fraction(0)) == 0
    first = need.sizes[0]
    assert first.used.yards is not None
    assert shares[0].yards == first.used.yards / hat.sizes[0].measures["around"].printed


def test_the_hat_lies_in_the_published_range_for_beanies(hat: Checked) -> None:
    """Crochet Current: 150-200 yd for an adult's beanie; S and M lie in it, L within a quarter of it."""
    assert compare_with_published(hat, yarn_per_size(hat)[0]) == ()


def test_a_hat_that_takes_three_times_as_much(hat: Checked) -> None:
    yarn = hat.pattern.yarns[0]
    assert yarn.sample_used is not None
    heavy = replace(yarn, sample_used=replace(yarn.sample_used, number=yarn.sample_used.number * 3))
    copy = replace(hat, pattern=replace(hat.pattern, yarns=(heavy,)))
    found = compare_with_published(copy, yarn_per_size(copy)[0])
    adults = [size.name for size in hat.sizes if size.wearer == "adult"]
    assert [(one.rule, one.size) for one in found] == [("yarn-outside-published-range", name) for name in adults]
    assert all("Crochet Current" in (one.because or "") for one in found)


def test_nothing_is_said_of_pieces_nobody_published(hat: Checked) -> None:
    title = replace(hat.pattern.title, text="Bollard Cosy")
    copy = replace(hat, pattern=replace(hat.pattern, title=title))
    assert compare_with_published(copy, yarn_per_size(copy)[0]) == ()
