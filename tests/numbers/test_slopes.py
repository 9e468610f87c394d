"""Curves in rows: the drawn line is followed, all events fall into the rows, and ellipses are ellipses."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.numbers.slopes import cap, fit_rates, hollow, line_through, rounded, short_row_steps
from gradegen.numbers.snap import NoCount
from gradegen.numbers.spread import Spread


def test_a_quarter_of_an_ellipse() -> None:
    """5 of 10 stitches lie on a circle at 1 - root(3)/2 (geometry)."""
    near = hollow(10)[4]
    assert abs((1 - near) ** 2 - Fraction(3, 4)) < Fraction(1, 10_000)
    assert hollow(10)[9] == 1
    assert rounded(10)[9] == 1
    assert all(a + b == 1 for a, b in zip(hollow(10)[:9], rounded(10)[8::-1], strict=True))


def test_a_cap_is_quick_slow_quick() -> None:
    steps = [b - a for a, b in zip((Fraction(0), *cap(30)), cap(30), strict=False)]
    assert steps[0] == steps[-1] < steps[15]
    assert sum(steps) == 1


def test_a_drawn_line() -> None:
    points = [(Fraction(1, 2), Fraction(1, 4)), (Fraction(1), Fraction(1))]
    assert line_through(points, 4) == (Fraction(1, 8), Fraction(1, 4), Fraction(5, 8), Fraction(1))


@given(
    events=st.integers(1, 24),
    rows=st.integers(1, 120),
    rates=st.lists(st.integers(1, 8), min_size=1, max_size=3),
    shape=st.sampled_from([hollow, rounded, cap]),
)
@settings(max_examples=150, derandomize=True, deadline=None)
def test_all_events_fall_into_the_rows(events: int, rows: int, rates: list[int], shape: object) -> None:
    found = fit_rates(events, rows, rates, shape(events))  # type: ignore[operator]
    if isinstance(found, NoCount):
        assert events * min(rates) > rows
        return
    assert found.events == events
    assert found.used + found.plain == rows
    assert [every for every, _ in found.runs] == rates


@given(events=st.integers(1, 10), rows=st.integers(10, 60))
@settings(max_examples=60, derandomize=True, deadline=None)
def test_no_other_split_is_nearer_to_the_line(events: int, rows: int) -> None:
    """Brute force over every split of two rates; the largest distance is looked at where the rate changes."""
    rates, line = (2, 4), hollow(events)
    found = fit_rates(events, rows, rates, line)
    if isinstance(found, NoCount):
        return

    def miss(times: tuple[int, int]) -> Fraction:
        row, worst, event = 0, Fraction(0), 0
        for every, often in zip(rates, times, strict=True):
            for step in {1, (often + 1) // 2, often} - {0} if often else ():
                worst = max(worst, abs(row + every * step - line[event + step - 1] * rows))
            row, event = row + every * often, event + often
        return worst

    chosen = miss((found.runs[0][1], found.runs[1][1]))
    others = [miss((x, events - x)) for x in range(events + 1) if 2 * x + 4 * (events - x) <= rows]
    assert chosen - min(others) < Fraction(1, 200)


def test_short_row_steps() -> None:
    assert short_row_steps(23, 3) == (7, 8, 8)
    assert short_row_steps(24, 3) == (8, 8, 8)
    assert isinstance(short_row_steps(2, 3), NoCount)


@pytest.mark.parametrize("rates", [[], [1, 2, 3, 4], [0, 2]])
def test_rates_that_are_none(rates: list[int]) -> None:
    assert isinstance(fit_rates(5, 40, rates, hollow(5)), NoCount)


def test_straight_is_a_spread() -> None:
    found = fit_rates(9, 36, [4], line_through([(Fraction(1), Fraction(1))], 9))
    assert isinstance(found, Spread)
    assert found.runs == ((4, 9),)
