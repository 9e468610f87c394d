import math
from dataclasses import replace
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.design.edge import Run, Target
from gradegen.write.drawing.profile import Profile, round_profile

PER_INCH = 4  # stitches of the invented hat


def profile(hat: Checked, size: str = "M") -> Profile:
    at = [each.name for each in hat.sizes].index(size)
    graded = hat.sizes[at]
    around, sides = (graded.measures[name].printed for name in ("around", "sides"))
    return round_profile(
        hat.pattern.pieces[0], around.numerator / around.denominator, sides.numerator / sides.denominator, hat, graded
    )


def test_half_widths_follow_the_stitches(hat: Checked) -> None:
    drawn = profile(hat)
    full = hat.sizes[4].counts["full"].n
    assert drawn.is_worked
    assert drawn.points[0] == (0.0, 0.0)
    # a round of n stitches at 4 to the inch is n/4 in around, n/4/(2 pi) in from the middle: geometry
    assert drawn.points[1][0] == pytest.approx(6 / PER_INCH / (2 * math.pi))
    assert drawn.band[0] == pytest.approx(full / PER_INCH / (2 * math.pi))
    assert drawn.widest == pytest.approx(7 * full / 6 / PER_INCH / (2 * math.pi))


def test_every_round_is_one_row_high_at_most(hat: Checked) -> None:
    drawn = profile(hat)
    row = 4 / 17
    assert len(drawn.points) == 1 + hat.sizes[4].counts["last"].n
    for (_, before), (_, after) in zip(drawn.points, drawn.points[1:], strict=False):
        assert -1e-9 <= after - before <= row + 1e-9


def test_the_measured_stretch_is_as_long_as_the_measure(hat: Checked) -> None:
    drawn = profile(hat)
    first, last = drawn.measured
    assert not drawn.runs_along
    sides = hat.sizes[4].measures["sides"].printed
    assert drawn.points[last][1] - drawn.points[first][1] == pytest.approx(float(sides), abs=4 / 17 + 0.2)


def test_stitches_that_do_not_fit_the_measure_are_not_believed(hat: Checked) -> None:
    half = {name: tuple(row._replace(made=(row.made or 0) // 2) for row in rows) for name, rows in hat.worked.items()}
    drawn = profile(replace(hat, worked=half))
    assert not drawn.is_worked
    assert drawn.points[0][0] == 0.0  # still closed at the top


def test_without_worked_rows_a_plain_tube(hat: Checked) -> None:
    drawn = profile(replace(hat, worked={}))
    assert not drawn.is_worked
    assert drawn.points[0][0] == drawn.points[1][0]


def test_chain_spaces_count_as_width(hat: Checked) -> None:
    st, sp = Target("st", "dc"), Target("sp", "sp", length=1)
    lace = {
        name: tuple(
            row._replace(made=(row.made or 0) // 2, after=(Run((row.made or 0) // 2, (st, sp)),)) for row in rows
        )
        for name, rows in hat.worked.items()
    }
    assert profile(replace(hat, worked=lace)).is_worked


def test_a_tube_from_a_joined_chain(samples: Any, hat: Checked) -> None:
    full = hat.sizes[4].counts["full"].n
    even = {name: tuple(row._replace(made=full) for row in rows) for name, rows in hat.worked.items()}
    drawn = profile(replace(hat, worked=even))
    assert drawn.is_worked
    assert drawn.points[0][0] == drawn.points[-1][0]
