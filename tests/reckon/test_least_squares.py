"""Least squares in exact fractions: against arithmetic by hand and against numpy's own solver where it is installed."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.reckon.yarn.least_squares import best_factor, best_parts

whole = st.integers(1, 400)
quick = settings(max_examples=60, derandomize=True, deadline=None, database=None)


def test_one_factor_by_hand() -> None:
    """k = (2*5 + 4*7) / (2*2 + 4*4) = 38/20."""
    assert best_factor([Fraction(2), Fraction(4)], [Fraction(5), Fraction(7)]) == Fraction(19, 10)


def test_no_factor_over_nothing() -> None:
    assert best_factor([Fraction(0)], [Fraction(5)]) is None


@quick
@given(st.lists(st.tuples(whole, whole), min_size=3, max_size=6), whole, whole)
def test_exact_data_give_back_their_parts(lines: list[tuple[int, int]], one: int, other: int) -> None:
    shapes = [[Fraction(a), Fraction(b)] for a, b in lines]
    values = [a * one + b * other for a, b in shapes]
    found = best_parts(shapes, values)
    settled = any(a * d != b * c for a, b in shapes for c, d in shapes)
    assert found == ((one, other) if settled else None)


@quick
@given(st.lists(st.tuples(whole, whole, whole), min_size=3, max_size=6))
def test_no_neighbour_is_nearer(lines: list[tuple[int, int, int]]) -> None:
    """At the minimum every small step makes the sum of squares larger: the definition of least squares."""
    shapes, values = [[Fraction(a), Fraction(b)] for a, b, _ in lines], [Fraction(c) for _, _, c in lines]
    found = best_parts(shapes, values)
    if found is None:
        return

    def off(x: Fraction, y: Fraction) -> Fraction:
        return sum(((a * x + b * y - v) ** 2 for (a, b), v in zip(shapes, values, strict=True)), Fraction(0))

    step = Fraction(1, 1000)
    assert all(off(*found) <= off(found[0] + dx, found[1] + dy) for dx in (-step, 0, step) for dy in (-step, 0, step))


def test_fewer_lines_than_parts_settle_nothing() -> None:
    assert best_parts([[Fraction(1), Fraction(2)]], [Fraction(3)]) is None


def test_as_numpy_has_it() -> None:
    numpy = pytest.importorskip("numpy")
    shapes = [[12.0, 3.0, 40.0], [7.0, 9.0, 11.0], [30.0, 2.0, 5.0], [4.0, 44.0, 6.0]]
    values = [100.0, 80.0, 120.0, 90.0]
    theirs = numpy.linalg.lstsq(numpy.array(shapes), numpy.array(values), rcond=None)[0]
    mine = best_parts([[Fraction(x) for x in line] for line in shapes], [Fraction(v) for v in values])
    assert mine is not None
    assert [float(x) for x in mine] == pytest.approx(list(theirs))
