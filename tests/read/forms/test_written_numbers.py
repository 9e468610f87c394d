from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.numbers.exact import mixed_text
from gradegen.read.forms.written_numbers import number_readings

# How numbers are written in countries with a decimal comma or a decimal point: common practice (BIPM, SI Brochure 9th
# ed., 5.4.4: either sign may be the decimal marker, and groups of three are parted by a thin space).
WRITTEN = [
    ("13", (Fraction(13),)),
    ("13.5", (Fraction(27, 2),)),
    ("13,5", (Fraction(27, 2),)),
    ("13,25", (Fraction(53, 4),)),
    ("13½", (Fraction(27, 2),)),
    ("13 ½", (Fraction(27, 2),)),
    ("13-½", (Fraction(27, 2),)),
    ("½", (Fraction(1, 2),)),
    ("13 1/2", (Fraction(27, 2),)),
    ("13-1/2", (Fraction(27, 2),)),
    ("1/4", (Fraction(1, 4),)),
    ("1,250", (Fraction(1250), Fraction(5, 4))),
    ("1.250", (Fraction(1250), Fraction(5, 4))),
    ("1 250", (Fraction(1250),)),
    ("1\N{NARROW NO-BREAK SPACE}250", (Fraction(1250),)),
    ("1'250", (Fraction(1250),)),
    ("1’250", (Fraction(1250),)),
    ("1,250,000", (Fraction(1250000),)),
    ("1,250.5", (Fraction(2501, 2),)),
    ("1.250,5", (Fraction(2501, 2),)),
    ("0,125", (Fraction(1, 8),)),
    ("0.125", (Fraction(1, 8),)),
    ("12345.678", (Fraction(12345678, 1000),)),
    (".5", (Fraction(1, 2),)),
    (",5", (Fraction(1, 2),)),
]
NO_NUMBERS = ["", " ", "blue", "13-", "13 to 14", "1.2.3.4", "1,25,3", "13 3/2", "1/0", "-3", "1" * 40, "½½", "1,250,5"]


@pytest.mark.parametrize(("text", "readings"), WRITTEN)
def test_written_numbers(text: str, readings: tuple[Fraction, ...]) -> None:
    assert number_readings(text) == readings
    assert number_readings(f"  {text}\N{NO-BREAK SPACE}") == readings


@pytest.mark.parametrize("text", NO_NUMBERS)
def test_what_is_no_number(text: str) -> None:
    assert number_readings(text) == ()


@settings(derandomize=True, max_examples=300)
@given(st.integers(0, 99999), st.integers(0, 99))
def test_point_and_comma_say_the_same(whole: int, hundredths: int) -> None:
    value = Fraction(whole) + Fraction(hundredths, 100)
    assert number_readings(f"{whole}.{hundredths:02d}") == (value,)
    assert number_readings(f"{whole},{hundredths:02d}") == (value,)


@settings(derandomize=True, max_examples=300)
@given(st.integers(1, 999), st.integers(0, 999))
def test_three_digits_after_a_sign_have_two_readings(first: int, second: int) -> None:
    for sign in ",.":
        readings = number_readings(f"{first}{sign}{second:03d}")
        assert set(readings) == {Fraction(first * 1000 + second), Fraction(first) + Fraction(second, 1000)}
    assert number_readings(f"{first} {second:03d}") == (Fraction(first * 1000 + second),)


@settings(derandomize=True, max_examples=200)
@given(st.integers(0, 400), st.sampled_from([2, 3, 4, 5, 8, 16]), st.integers(0, 15))
def test_fractions_come_back(whole: int, under: int, over: int) -> None:
    value = whole + Fraction(over % under, under)
    assert number_readings(mixed_text(value)) == (value,)


@settings(derandomize=True, max_examples=300)
@given(st.text(max_size=60))
def test_anything_is_read_without_a_fault(text: str) -> None:
    assert all(value >= 0 for value in number_readings(text))
