"""The practice version: as small as it can be, every row of it proved, every repeat seen twice."""

from __future__ import annotations

from pathlib import Path

import pytest
from reckon.stitch_patterns import PATTERNS, checked

from gradegen.pipeline import check_file
from gradegen.reckon.practice import Practice, practice_piece

DEMOS = Path(__file__).parents[2] / "shared" / "patterns"


def practice(name: str) -> Practice:
    found = check_file(DEMOS / name).checked
    assert found is not None
    small = practice_piece(found)
    assert small is not None
    return small


def test_the_wrap() -> None:
    """9 chains are 18 stitches, three lamps: Rnd 3 begins with one and repeats two."""
    small = practice("skerrywick-wrap.yaml")
    assert (small.count, small.chains) == (9, 9)
    assert small.shows_all
    assert [(row.times, row.made) for row in small.rows if row.times > 1] == [(2, 12)]
    assert {row.status for row in small.rows} == {"proved"}
    assert small.stitches == sum(
        number for row in small.rows for name, number in row.census.items() if name not in ("ch", "sl st")
    )


def test_the_hat_is_its_smallest_size_with_the_fewest_rounds() -> None:
    small = practice("bollard-hat.yaml")
    assert small.count == 48
    assert small.chains is None
    assert not small.shows_all
    assert all(row.times >= 1 for row in small.rows)
    whole = check_file(DEMOS / "bollard-hat.yaml").checked
    assert whole is not None
    smallest = sum(row.times for row in whole.worked["NB"])
    assert sum(row.times for row in small.rows) < smallest


@pytest.mark.parametrize(
    ("name", "chains"),
    [("low shells", 20), ("V stitches", 11), ("lattice", 14), ("shells on a twist", 6), ("post rib by twos", 10)],
)
def test_every_repeat_runs_twice(name: str, chains: int, tmp_path: Path) -> None:
    """One whole step beyond the fewest chains on paper."""
    pattern = next(one for one in PATTERNS if one.name == name)
    small = practice_piece(checked(tmp_path, (pattern,)))
    assert small is not None
    assert small.chains == chains
