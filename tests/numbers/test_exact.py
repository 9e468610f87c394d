from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gradegen.numbers.exact import decimal_text, mixed_text, read_number


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("6.5", "13/2"), ("6 1/2", "13/2"), ("6½", "13/2"), ("6 ½", "13/2"), ("1/4", "1/4"), ("¾", "3/4"),
        ("1⁄4", "1/4"),
        (".5", "1/2"), ("0.1", "1/10"), ("-½", "-1/2"), ("−3", "-3"), (" 12 ", "12"), ("⅓", "1/3"), ("⅞", "7/8"),
        ("10 7/8", "87/8"), ("007", "7"), ("3/2", "3/2"),
    ],
)  # fmt: skip
def test_written_numbers(text, value):
    assert read_number(text) == Fraction(value)


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "six",
        "1/0",
        "6 3/2",
        "1.",
        "1..2",
        "1,5",
        "1e3",
        "１",
        "6 1/2 in",
        "½½",
        "1/2/3",
        "--1",
        "9" * 30,
        "²",
        "6 0/2",
    ],
)
def test_not_numbers(text):
    assert read_number(text) is None


def test_how_numbers_are_printed():
    assert [mixed_text(Fraction(n, 4)) for n in (71, 2, 0, -9, 8)] == ["17¾", "½", "0", "-2¼", "2"]
    assert (mixed_text(Fraction(5, 16)), mixed_text(Fraction(53, 16))) == ("5/16", "3 5/16")
    assert [decimal_text(Fraction(n, 7)) for n in (304, 224, -1)] == ["43.43", "32", "-0.14"]
    assert (decimal_text(Fraction(-1, 1000)), decimal_text(Fraction(1, 200)), decimal_text(Fraction(5, 2), 0)) == (
        "0",
        "0.01",
        "3",
    )


@given(st.fractions(max_denominator=64, min_value=-500, max_value=500))
def test_a_printed_number_reads_back(value):
    assert read_number(mixed_text(value)) == value


@given(st.decimals(allow_nan=False, allow_infinity=False, places=3, min_value=0, max_value=9999))
def test_decimals_are_exact(value):
    assert read_number(str(value)) == Fraction(value)
