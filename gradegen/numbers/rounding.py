"""House styles for printing lengths: the steps inches and centimetres go by, and the inch factor in use.

Nothing is guessed from how a number was typed: a pattern names one style, and that style prints every measure.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gradegen.numbers.exact import decimal_text, mixed_text, with_minus


@dataclass(frozen=True, slots=True)
class HouseStyle:
    """How lengths are printed. `factor`: centimetres to the inch, 2.54 exactly or the trade's 2.5 (4 in = 10 cm)."""

    name: str
    inch_step: Fraction
    cm_step: Fraction
    factor: Fraction

    def inches(self, length: Fraction) -> Fraction:
        """The length in inches as printed, rounded to the style's step."""
        return to_step(length, self.inch_step)

    def centimetres(self, length: Fraction) -> Fraction:
        """A length in exact inches, in centimetres as printed."""
        return to_step(length * self.factor, self.cm_step)

    def inches_text(self, length: Fraction) -> str:
        """`17¾` or `−½`, without the unit."""
        return with_minus(mixed_text(self.inches(length)))

    def centimetres_text(self, length: Fraction) -> str:
        """`45` or `45.5`, without the unit; from the exact inches, never from the rounded ones."""
        return with_minus(decimal_text(self.centimetres(length), 1))


def to_step(value: Fraction, step: Fraction) -> Fraction:
    """The nearest multiple of `step`; an exact half goes away from zero, so -1/8 prints as 1/8 does."""
    steps = (abs(value) / step + Fraction(1, 2)) // 1
    return step * steps if value >= 0 else -step * steps


def nearest_whole(value: Fraction, tie: str = "up") -> int:
    """The nearest whole number; an exact half goes up, or down when `tie` says so (Python's round() does neither)."""
    half = Fraction(1, 2)
    return int((value + half) // 1) if tie == "up" else -int((-value + half) // 1)


EXACT_INCH = Fraction(254, 100)
TRADE_INCH = Fraction(25, 10)
FACTORS = {"1 in = 2.54 cm": EXACT_INCH, "4 in = 10 cm": TRADE_INCH}
STEPS = {
    "1/4 in": (Fraction(1, 4), Fraction(1, 2)),
    "1/2 in": (Fraction(1, 2), Fraction(1, 2)),
    "0.5 cm": (Fraction(1, 4), Fraction(1, 2)),
}
HOUSE_STYLES: dict[str, HouseStyle] = {name: HouseStyle(name, *steps, EXACT_INCH) for name, steps in STEPS.items()} | {
    f"{name}, 4 in = 10 cm": HouseStyle(f"{name}, 4 in = 10 cm", *steps, TRADE_INCH) for name, steps in STEPS.items()
}
USUAL = HOUSE_STYLES["1/4 in"]


def house_style(name: str | None) -> HouseStyle | None:
    """The style of that name (`1/4 in`, `1/2 in, 4 in = 10 cm`), the usual one for None, None for an unknown name."""
    return USUAL if name is None else HOUSE_STYLES.get(" ".join(name.split()))
