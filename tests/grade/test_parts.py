"""Drifts in whole parts of an inch."""

from fractions import Fraction

import pytest

from gradegen.grade.related.joint import Wish
from gradegen.grade.related.linear import Linear
from gradegen.grade.related.parts import ROUGH, Drift, Parts


def wish(raw, inches=Fraction(2, 7), weight=Fraction(1)):
    return Wish("n", 0, Linear({"n": Fraction(1)}, -Fraction(raw)), inches, weight)


def test_exact_where_numbers_are_plain():
    wishes = [wish("43.25"), wish("40", Fraction(4, 15), Fraction(3, 2))]
    parts = Parts.of(wishes)
    assert parts.exact
    for one in wishes:
        times, number = parts.whole(one)
        assert Fraction(times["n"], parts.to_the_inch) == one.weighed
        assert Fraction(number, parts.to_the_inch) == one.weighed * one.off.number


def test_halves_stay_halves_where_exact_parts_would_be_too_fine():
    odd = wish(Fraction(10**9 + 7, 10**8 + 7))
    half = wish(Fraction(45, 2), Fraction(1, 3))
    parts = Parts.of([odd, half])
    assert not parts.exact
    assert parts.to_the_inch == ROUGH
    times, number = parts.whole(half)
    assert abs(22 * times["n"] + number) == abs(23 * times["n"] + number)
    times, number = parts.whole(odd)
    assert abs(Fraction(number, times["n"]) - odd.off.number) < Fraction(1, 1000)


@pytest.mark.parametrize(("times", "number"), [({0: 4}, 3), ({0: 4}, -3), ({0: 6, 1: -4}, 5), ({0: 3}, 0), ({}, 7)])
def test_the_sizes_a_drift_can_have(times, number):
    drift = Drift(wish(0), times, number)
    values = [(a, b) for a in range(-30, 31) for b in range(-30, 31)]
    reached = {abs(drift.off(pair)) for pair in values}
    assert set(drift.sizes_between(2, 20)) == {size for size in reached if 2 < size < 20}
    assert drift.least_size == min(reached)
