"""Amounts of yarn as a pattern states them, size by size, each at its place."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Amount, Formula, PerSize
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Yarn
from gradegen.findings import Place
from gradegen.numbers.units import grams_of, inches_of

INCHES = {"yards": Fraction(36), "metres": Fraction(10000, 254)}  # 1 yd = 0.9144 m exactly
GRAMS = {"grams": Fraction(1), "ounces": Fraction(28349523125, 1000000000)}  # avoirdupois, 1959
ROUGHLY = Fraction(2, 100)  # what rounding and the trade's factors (0.9 m to the yard, 28 g to the ounce) may cost


@dataclass(frozen=True, slots=True)
class StatedNumber:
    """One number of a list, for one size (None: one number for all)."""

    number: Fraction
    size: GradedSize | None
    place: Place

    @property
    def name(self) -> str | None:
        """The size's name, as findings want it."""
        return self.size.name if self.size else None


def stated(yarn: Yarn, what: str, sizes: Sequence[GradedSize]) -> tuple[StatedNumber, ...]:
    """The numbers stated of one kind ("yards"); () where there are none."""
    formula: Formula | None = getattr(yarn.stated, what) if yarn.stated is not None else None
    if isinstance(formula, Amount):
        return (StatedNumber(formula.number, None, formula.place),)
    if isinstance(formula, PerSize) and len(formula.each) == len(sizes):
        pairs = zip(formula.each, sizes, strict=True)
        return tuple(StatedNumber(one.number, size, one.place) for one, size in pairs)
    return ()


def in_pairs(
    yarn: Yarn, one: str, other: str, sizes: Sequence[GradedSize]
) -> Iterator[tuple[StatedNumber, StatedNumber]]:
    """Two lists size by size; a number for all sizes is held against each of the other list."""
    first, second = stated(yarn, one, sizes), stated(yarn, other, sizes)
    if not first or not second:
        return
    length = max(len(first), len(second))
    wide = [numbers * length if len(numbers) == 1 else numbers for numbers in (first, second)]
    yield from zip(*wide, strict=True)


def skein_share(yarn: Yarn, what: str, number: Fraction) -> Fraction | None:
    """How many skeins an amount is; None where the put-up does not tell."""
    if what in INCHES:
        length = inches_of(yarn.skein_length) if yarn.skein_length else None
        return number * INCHES[what] / length if length else None
    mass = grams_of(yarn.skein_mass) if yarn.skein_mass else None
    return number * GRAMS[what] / mass if mass else None


def amounts_stated(checked: Checked) -> Iterator[tuple[Yarn, str]]:
    """Every yarn with the kinds of amount it states, lengths first."""
    for yarn in checked.pattern.yarns:
        for what in (*INCHES, *GRAMS):
            if stated(yarn, what, checked.sizes):
                yield yarn, what


def differ(one: Fraction, other: Fraction, rounding: Fraction) -> bool:
    """True when two printings of one amount are further apart than rounding explains."""
    return abs(one - other) > max(rounding, ROUGHLY * max(one, other))
