"""Time per size, from a timed piece, from stitches a minute, and from both."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.design.pattern import Text, Timed
from gradegen.findings import Place
from gradegen.pipeline import check_file
from gradegen.reckon import stitch_census
from gradegen.reckon.yarn.time import time_per_size

HAT = Path(__file__).parents[2] / "shared" / "patterns" / "bollard-hat.yaml"
HERE = Place("hat.yaml", 1, 1, 1, 1)


@pytest.fixture(scope="module")
def hat() -> Checked:
    found = check_file(HAT).checked
    assert found is not None
    return found


def timed(checked: Checked, what: Timed | None) -> Checked:
    return replace(checked, pattern=replace(checked.pattern, timed=what))


def test_nothing_timed(hat: Checked) -> None:
    assert time_per_size(timed(hat, None)) == ((), ())


def test_stitches_a_minute(hat: Checked) -> None:
    """Only sc in the hat: minutes are stitches by 20. Arithmetic."""
    times, findings = time_per_size(timed(hat, Timed(None, None, {"sc": Fraction(20)}, place=HERE)))
    census = stitch_census(hat)
    assert findings == ()
    for one in times:
        assert one.minutes == Fraction(census.of(one.size)["sc"], 20)
        assert one.quick < one.minutes < one.slow
        assert one.slow / one.quick == Fraction(25, 16)


def test_a_timed_piece(hat: Checked) -> None:
    times, _ = time_per_size(timed(hat, Timed(Text("S", HERE), Fraction(6), place=HERE)))
    by_size = {one.size: one.minutes for one in times}
    census = stitch_census(hat)
    assert by_size["S"] == 360
    assert by_size["L"] == Fraction(360 * census.of("L")["sc"], census.of("S")["sc"])
    assert list(by_size.values()) == sorted(by_size.values())


def test_stitches_that_were_not_timed_are_said() -> None:
    wrap = check_file(HAT.with_name("skerrywick-wrap.yaml")).checked
    assert wrap is not None
    times, findings = time_per_size(timed(wrap, Timed(Text("M", HERE), Fraction(9), {"hdc": Fraction(18)}, place=HERE)))
    assert [one.rule for one in findings] == ["time-in-proportion"]
    assert {one.size: one.minutes for one in times}["M"] == 540
