"""The hat's head sizes against published ones."""

from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

import pytest
from patterns.by_hand import read_yaml
from pygrowup.tables.by_day.hcfa import DATA

INCH = Fraction("2.54")
DAYS_A_MONTH = Decimal("30.4375")
AGES = {"NB": 0, "B1": 1, "B3": 3, "Y1": 12, "Y2": 24}  # months each baby size is named for
# Craft Yarn Council, Head Circumference Chart, web page, undated: from memory, unchecked.
CYC = {"T": ((20, 22), (51, 56)), "S": ((21, 23), (53, "58.5")), "M": ((22, 24), (56, 61))}
SCORES = (-2, 0, 2)


@pytest.fixture(scope="module")
def table() -> dict:
    return read_yaml("bollard-hat-heads.yaml")


@pytest.fixture(scope="module")
def centimetres(table: dict) -> dict[str, tuple[Fraction, Fraction]]:
    return bands(table, "cm")


@pytest.fixture(scope="module")
def inches(table: dict) -> dict[str, tuple[Fraction, Fraction]]:
    return bands(table, "in")


def bands(table: dict, unit: str) -> dict[str, tuple[Fraction, Fraction]]:
    row = table["columns"]["head"][unit]
    return {
        size: (Fraction(str(low)), Fraction(str(high))) for size, (low, high) in zip(table["sizes"], row, strict=True)
    }


def who_heads(months: int) -> list[Fraction]:
    """WHO Child Growth Standards, head circumference for age (2007): -2 SD, median, +2 SD of girls and boys, cm."""
    day = int((months * DAYS_A_MONTH).to_integral_value())
    rows = [DATA[sex][day] for sex in ("female", "male")]
    assert all(row["l"] == 1 for row in rows)  # so value(z) = M * (1 + S * z)
    return [Fraction(row["m"]) * (1 + Fraction(row["s"]) * z) for row in rows for z in SCORES]


@pytest.mark.parametrize(("size", "months"), AGES.items())
def test_each_baby_size_covers_its_age_and_little_more(size: str, months: int, centimetres: dict, inches: dict) -> None:
    heads = who_heads(months)
    for low, high in (centimetres[size], tuple(end * INCH for end in inches[size])):
        assert low <= min(heads)
        assert max(heads) <= high
        assert min(heads) - low < 1  # cm: widened outwards to the half centimetre and quarter inch, no further
        assert high - max(heads) < 1


@pytest.mark.parametrize("months", range(25))
def test_every_head_from_birth_to_two_years_finds_a_baby_size(months: int, centimetres: dict, inches: dict) -> None:
    for head in who_heads(months):
        assert any(centimetres[size][0] <= head <= centimetres[size][1] for size in AGES), (months, float(head))
        assert any(inches[size][0] <= head / INCH <= inches[size][1] for size in AGES), (months, float(head))


def test_every_head_in_between_finds_a_size(centimetres: dict, inches: dict) -> None:
    for row in (list(centimetres.values()), list(inches.values())):
        for (_, high), (low, _) in pairwise(row):
            assert low <= high


@pytest.mark.parametrize(("size", "published"), CYC.items())
def test_larger_sizes_are_the_published_ones(size: str, published: tuple, centimetres: dict, inches: dict) -> None:
    assert inches[size] == tuple(Fraction(end) for end in published[0])
    assert centimetres[size] == tuple(Fraction(end) for end in published[1])


def test_the_largest_size_is_marked_as_ours(table: dict) -> None:
    assert "L: our own" in table["columns"]["head"]["trust"]
    assert "WHO" in table["columns"]["head"]["note"]


def test_some_hat_is_about_an_inch_smaller_than_every_head(inches: dict) -> None:
    """A hat is about 1 in smaller than the head (Calico Joy, size chart); ours lie 1 1/2 in apart, so within 3/4 in."""
    hats = [Fraction(n, 4) for n in (48, 54, 60, 66, 72, 78, 84, 90, 96)]
    smallest, largest = inches["NB"][0], inches["L"][1]
    head = smallest
    while head <= largest - Fraction(1, 4):
        assert min(abs(head - hat - 1) for hat in hats) <= Fraction(3, 4), float(head)
        head += Fraction(1, 8)
