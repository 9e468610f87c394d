"""Our units against each other, against pint over our definitions, and against pint's own published definitions."""

from dataclasses import dataclass
from fractions import Fraction

import pint
import pytest

from gradegen.numbers.units import (
    DEFINED,
    SPELLINGS,
    UNITS,
    grams_of,
    in_base_units,
    in_unit,
    inches_of,
    kind_of,
    registry,
)


@dataclass(frozen=True)
class Amount:
    number: Fraction
    unit: str | None


LENGTHS = ("in", "ft", "yd", "mm", "cm", "m")


@pytest.fixture(scope="module")
def published():
    """pint's own registry: its definitions follow NIST SP 811 and the international yard and pound of 1959."""
    return pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize("unit", LENGTHS)
def test_inches_agree_with_pints_own_definitions(unit, published):
    theirs = (
        published.Quantity(Fraction(7), {"in": "inch", "ft": "foot", "yd": "yard"}.get(unit, unit)).to("inch").magnitude
    )
    assert inches_of(Amount(Fraction(7), unit)) == theirs
    assert in_unit(inches_of(Amount(Fraction(7), unit)), unit) == 7


@pytest.mark.parametrize("unit", ["g", "oz"])
def test_grams_agree_with_pints_own_definitions(unit, published):
    theirs = published.Quantity(Fraction(3), {"oz": "ounce"}.get(unit, "gram")).to("gram").magnitude
    assert grams_of(Amount(Fraction(3), unit)) == theirs


@pytest.mark.parametrize("unit", sorted({*SPELLINGS.values()}))
def test_our_pint_registry_has_the_same_units(unit):
    name = DEFINED.get(unit, unit)
    base = {"length": "in", "mass": "g", "stitch": "stitch", "row": "row"}[kind_of(unit)]
    assert registry().Quantity(Fraction(5), name).to(base).magnitude == in_base_units(Amount(Fraction(5), unit))


def test_a_stitch_gauge_times_a_row_length_is_refused():
    ours = registry()
    gauge = ours.Quantity(Fraction(14), "stitch") / ours.Quantity(Fraction(4), "in")
    assert (gauge * ours.Quantity(Fraction(40), "in")).to("stitch").magnitude == 140
    with pytest.raises(pint.DimensionalityError):
        (gauge * ours.Quantity(Fraction(20), "row")).to("stitch")
    with pytest.raises(pint.DimensionalityError):
        ours.Quantity(Fraction(3), "stitch") + ours.Quantity(Fraction(3), "in")


def test_what_is_no_length():
    assert [inches_of(Amount(Fraction(3), unit)) for unit in ("g", "sts", "rows", None, "furlong")] == [None] * 5
    assert grams_of(Amount(Fraction(3), "in")) is None
    assert kind_of("furlong") is None
    assert in_base_units(Amount(Fraction(3), None)) == 3


def test_every_spelling_has_a_unit():
    assert {DEFINED.get(unit, unit) for unit in SPELLINGS.values()} == set(UNITS)
