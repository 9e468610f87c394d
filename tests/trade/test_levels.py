"""Project levels."""

from __future__ import annotations

import pytest

from gradegen.trade.levels import find_level, project_levels
from gradegen.trade.sources import TRUST_MARKS


def test_every_level_is_whole() -> None:
    for number, level in enumerate(project_levels(), 1):
        assert level.number == number
        assert level.covers
        assert level.trust in TRUST_MARKS


@pytest.mark.parametrize(
    ("words", "number"), [("easy", 2), (" Complex ", 4), ("3", 3), ("Beginner", 1), ("Experienced", 4)]
)
def test_names_new_and_old(words: str, number: int) -> None:
    level = find_level(words)
    assert level is not None
    assert level.number == number


def test_no_such_level() -> None:
    assert find_level("wizard") is None
