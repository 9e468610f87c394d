"""A skein's put-up: what turns grams of a yarn into its length and back."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Amount
from gradegen.design.pattern import Yarn
from gradegen.numbers.exact import read_number
from gradegen.numbers.units import grams_of, inches_of
from gradegen.reckon.yarn.amounts import YarnAmount

_PRICE = re.compile(r"\D*?(?P<number>\d+(?:[.,]\d+)?)\D*")


@dataclass(frozen=True, slots=True)
class PutUp:
    """One skein in exact inches and grams, as far as the pattern says."""

    inches: Fraction | None
    grams: Fraction | None

    @classmethod
    def of(cls, yarn: Yarn) -> PutUp:
        """The put-up of a yarn as written."""
        length = inches_of(yarn.skein_length) if yarn.skein_length else None
        mass = grams_of(yarn.skein_mass) if yarn.skein_mass else None
        return cls(length or None, mass or None)

    def measured(self, amount: Amount) -> YarnAmount:
        """An amount as weighed or measured off, in both units where the put-up has both."""
        return self.filled(inches_of(amount), grams_of(amount))

    def filled(self, inches: Fraction | None, grams: Fraction | None) -> YarnAmount:
        """An amount known in one unit, in both where the put-up has both."""
        if self.inches is not None and self.grams is not None:
            if inches is None and grams is not None:
                inches = grams * self.inches / self.grams
            elif grams is None and inches is not None:
                grams = inches * self.grams / self.inches
        return YarnAmount(inches, grams)

    def skeins(self, wanted: YarnAmount) -> int | None:
        """Whole skeins for an amount; None where the put-up does not tell."""
        share = self.share(wanted)
        return None if share is None else max(1, -int(-share // 1))

    def share(self, amount: YarnAmount) -> Fraction | None:
        """How many skeins an amount is, exactly."""
        if self.inches is not None and amount.inches is not None:
            return amount.inches / self.inches
        if self.grams is not None and amount.grams is not None:
            return amount.grams / self.grams
        return None


def read_price(words: str) -> tuple[Fraction, str] | None:
    """A price and the words around it for the currency: `8.50 EUR`, `$ 9`; None when it is no price."""
    found = _PRICE.fullmatch(words.strip())
    number = read_number(found["number"].replace(",", ".")) if found else None
    if found is None or number is None:
        return None
    currency = words.strip().replace(found["number"], "", 1).strip()
    return number, currency
