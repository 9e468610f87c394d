"""Meanings of abbreviations."""

from __future__ import annotations

import pytest

from gradegen.trade.abbreviations import abbreviations, marks, meaning, measurements
from gradegen.trade.sources import TRUST_MARKS
from gradegen.trade.stitches import stitches


def test_every_entry_is_whole() -> None:
    for table in (abbreviations(), marks(), measurements()):
        for short, entry in table.items():
            assert entry.short == short
            assert entry.us
            assert entry.uk
            assert entry.trust in TRUST_MARKS
            assert entry.source.publisher != "not known"


@pytest.mark.parametrize(
    ("short", "us", "uk"),
    [
        ("dc", "double crochet", "double crochet"),
        ("tr", "treble crochet", "treble"),
        ("sk", "skip", "miss"),
        ("yo", "yarn over", "yarn over hook"),
        ("CC", "contrasting color", "contrasting colour"),
        ("sts", "stitch", "stitch"),
        ("rnds", "round", "round"),
        ("ch-sps", "chain space", "chain space"),
        ("Rnd", "round", "round"),
        ("blo", "back loop only", "back loop only"),
    ],
)
def test_meanings_in_both_terms(short: str, us: str, uk: str) -> None:
    assert (meaning(short, "US"), meaning(short, "UK")) == (us, uk)


def test_every_stitch_is_explained_by_its_full_name() -> None:
    for stitch in stitches().values():
        assert meaning(stitch.abbreviation("US"), "US") == stitch.full_name("US")
        assert meaning(stitch.abbreviation("UK"), "UK") == stitch.full_name("UK")


@pytest.mark.parametrize("short", ["", "zzz", "in next", "the"])
def test_unknown_ones_have_no_meaning(short: str) -> None:
    assert meaning(short, "US") is None
