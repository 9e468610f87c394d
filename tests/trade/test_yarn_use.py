"""Relative use of stitches and published amounts, each with its source and how far it is trusted."""

from fractions import Fraction

import pytest

from gradegen.trade.sources import TRUST_MARKS
from gradegen.trade.stitches import stitches
from gradegen.trade.yarn_use import one_stitch_uses, piece_ranges, relative_use, use_disagreements


def test_every_stitch_of_the_trade_takes_something() -> None:
    missing = [name for name in stitches() if not relative_use(name)]
    assert missing == []


def test_sources_and_trust() -> None:
    for one in one_stitch_uses().values():
        assert one.trust in TRUST_MARKS
        assert one.source.title
    assert all(one.trust in TRUST_MARKS for one in piece_ranges())


def test_taller_stitches_take_more() -> None:
    order = [relative_use(name) for name in ("ch", "sc", "hdc", "dc", "tr", "dtr", "trtr")]
    assert order == sorted(order)  # type: ignore[type-var]


@pytest.mark.parametrize(
    ("name", "parts"),
    [
        ("dc2tog", 2 * 192 - 40),  # two legs that share one closing loop
        ("3-dc cluster", 3 * 192 - 2 * 40),
        ("5-dc popcorn", 5 * 192),  # drawn together, every stitch whole
        ("FPdc", 192 + 15),
        ("edc", 192 + 40),
        ("fsc", 100 + 40),
        ("sc inc", 2 * 100),
        ("V-st", 2 * 192 + 40),
        ("shell", 5 * 192),
    ],
)
def test_stitches_that_are_made_of_others(name: str, parts: int) -> None:
    """Sums of our own over the table; common practice, no source."""
    assert relative_use(name) == parts


def test_what_is_no_stitch() -> None:
    assert relative_use("lamp") is None


def test_published_figures_disagree_and_that_is_kept() -> None:
    assert len(use_disagreements()) == 3
    assert any("31.42" in line and "31.6" in line for line in use_disagreements())


def test_ranges_run_upwards() -> None:
    for one in piece_ranges():
        assert all(0 < low < high for low, high in one.yards.values())
    sweater = next(one for one in piece_ranges() if one.what == "adult sweater")
    assert [sweater.yards[number] for number in range(1, 7)] == sorted(sweater.yards.values(), reverse=True)
    assert all(isinstance(low, Fraction) for low, _ in sweater.yards.values())
