"""Lengths as a page shows them: both units, in the pattern's house style, one value or one per size."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.pattern import Pattern
from gradegen.design.sizes import Band
from gradegen.numbers.exact import decimal_text, mixed_text, with_minus
from gradegen.numbers.rounding import USUAL, HouseStyle, house_style
from gradegen.write.words.fold import folded

_FINEST = 16  # parts of an inch on a tape


@dataclass(frozen=True, slots=True)
class LengthStyle:
    """How this pattern prints a length: its rounding, and which unit comes first."""

    rounding: HouseStyle
    inches_first: bool

    def both(self, length: Fraction) -> tuple[str, str]:
        """A length in exact inches as printed in the first unit and in the second, without their names."""
        inches, cm = self.rounding.inches_text(length), self.rounding.centimetres_text(length)
        return (inches, cm) if self.inches_first else (cm, inches)

    @property
    def units(self) -> tuple[str, str]:
        """The names of the units, in order."""
        return ("in", "cm") if self.inches_first else ("cm", "in")


def length_style(pattern: Pattern) -> LengthStyle:
    """The pattern's own rounding and order of units; an unknown rounding (already reported) prints as the usual one."""
    rounding = house_style(pattern.rounding.text if pattern.rounding else None)
    return LengthStyle(rounding or USUAL, pattern.units == "inches first")


def lengths_text(lengths: Sequence[Fraction], style: LengthStyle) -> str:
    """One length per size in both units: `17½ in (44.5 cm)`, or two size lists with a stroke between."""
    pairs = [style.both(length) for length in lengths]
    first, second = (f"{folded([pair[at] for pair in pairs])} {unit}" for at, unit in enumerate(style.units))
    return f"{first} / {second}" if "(" in first + second else f"{first} ({second})"


def band_text(band: Band | None, *, metric: bool) -> str:
    """A published body band: `28–30`, one number where both ends are the same, a dash where none is published.

    Inches that were worked out from a survey in centimetres are decimals, and not fractions that no tape has.
    """
    if band is None:
        return "–"
    plain = metric or max(band.low.denominator, band.high.denominator) > _FINEST
    low, high = (decimal_text(end, 1) if plain else mixed_text(end) for end in (band.low, band.high))
    return low if low == high else f"{low}–{high}"


def number_text(value: Fraction) -> str:
    """A plain number: `13½` where there is a sign for the fraction, else decimals."""
    signed = mixed_text(value)
    return with_minus(decimal_text(value) if "/" in signed else signed)
