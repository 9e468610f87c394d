from fractions import Fraction
from math import pi

from hypothesis import given
from hypothesis import strategies as st

from gradegen.numbers.circle import PI, diameter, increases_per_round, rounds_to


def test_the_ratio_is_good_to_fifteen_digits():
    assert abs(PI - Fraction(pi)) < Fraction(1, 10**13)  # a float holds pi to 16 digits


@given(st.integers(1, 400), st.integers(1, 24))
def test_rounds_and_what_is_missing(count, increases):
    rounds, missing = rounds_to(count, increases)
    assert rounds * increases + missing == count
    assert 0 <= missing < increases


@given(st.fractions(min_value=1, max_value=100), st.fractions(min_value=1, max_value=100))
def test_a_round_is_one_row_height_further_out(stitches, rows):
    grown = (
        increases_per_round(stitches, rows) / stitches
    )  # inches by which the edge grows, in units of the gauge length
    assert diameter(grown) == 2 / rows
