"""Lengths as findings say them, in the unit the designer puts first."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gradegen.numbers.exact import decimal_text
from gradegen.numbers.units import in_unit


@dataclass(frozen=True, slots=True)
class Words:
    """How lengths are said: `43.43 in`, or `110.3 cm` where centimetres come first."""

    units: str = "inches first"

    def length(self, inches: Fraction) -> str:
        """A length in exact inches, to the hundredth of an inch or the millimetre."""
        if self.units == "centimetres first":
            return f"{decimal_text(in_unit(inches, 'cm'), 1)} cm"
        return f"{decimal_text(inches)} in"
