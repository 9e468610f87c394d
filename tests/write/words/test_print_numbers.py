from fractions import Fraction

import pytest

from gradegen.design.sizes import Band
from gradegen.numbers.rounding import HOUSE_STYLES
from gradegen.write.words.print_numbers import LengthStyle, band_text, lengths_text, number_text

QUARTERS = LengthStyle(HOUSE_STYLES["1/4 in"], inches_first=True)
HALF_CM = LengthStyle(HOUSE_STYLES["0.5 cm"], inches_first=False)


def test_one_length_in_both_units() -> None:
    assert lengths_text([Fraction(35, 2)], QUARTERS) == "17½ in (44.5 cm)"  # 1 in = 2.54 cm by definition
    assert lengths_text([Fraction(35, 2)], HALF_CM) == "44.5 cm (17½ in)"


def test_centimetres_come_from_the_exact_inches() -> None:
    # 12 1/9 in is 30.76 cm, printed 31; by way of the printed 12 in it would be 30.48, printed 30.5
    assert lengths_text([Fraction(109, 9)], QUARTERS) == "12 in (31 cm)"


def test_a_length_per_size() -> None:
    lengths = [Fraction(32), Fraction(36), Fraction(40)]
    assert lengths_text(lengths, QUARTERS) == "32 (36, 40) in / 81.5 (91.5, 101.5) cm"


def test_lengths_that_print_alike_are_one() -> None:
    assert lengths_text([Fraction(12), Fraction(12)], QUARTERS) == "12 in (30.5 cm)"


@pytest.mark.parametrize(
    ("cm", "inches"),
    # Rowan's women's table in nine sizes, to fit bust: both units as published, to the quarter inch
    [("82.5", "32½"), ("164.5", "64¾")],
)
def test_published_pairs(cm: str, inches: str) -> None:
    length = Fraction(cm) / Fraction(254, 100)
    assert QUARTERS.both(length) == (inches, cm)


def test_published_bands() -> None:
    assert band_text(Band(Fraction(28), Fraction(30)), metric=False) == "28–30"
    assert band_text(Band(Fraction(147, 2), Fraction(147, 2)), metric=True) == "73.5"
    assert band_text(None, metric=True) == "–"


def test_less_than_the_body() -> None:
    assert QUARTERS.both(Fraction(-3, 2)) == ("−1½", "−4")


def test_plain_numbers() -> None:
    assert number_text(Fraction(27, 2)) == "13½"
    assert number_text(Fraction("13.2")) == "13⅕"
    assert number_text(Fraction("13.3")) == "13.3"
