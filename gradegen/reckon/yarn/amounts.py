"""What the reckoning of yarn gives: amounts per size, the evidence behind them, skeins and slack."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from gradegen.findings import Place
from gradegen.reckon.seams.sewn_seams import Sewing

Basis = Literal["each stitch", "one factor", "measured lengths", "lengths and weights", "area"]


@dataclass(frozen=True, slots=True)
class YarnAmount:
    """An amount of yarn in exact inches and grams; None where the put-up of the skein does not tell."""

    inches: Fraction | None
    grams: Fraction | None

    def times(self, factor: Fraction) -> YarnAmount:
        """The amount, so many times."""
        return YarnAmount(
            None if self.inches is None else self.inches * factor, None if self.grams is None else self.grams * factor
        )

    def plus(self, other: YarnAmount) -> YarnAmount:
        """Both together, in the units known of both."""
        return YarnAmount(_sum(self.inches, other.inches), _sum(self.grams, other.grams))

    @property
    def yards(self) -> Fraction | None:
        """In yards of 36 in."""
        return None if self.inches is None else self.inches / 36

    @property
    def metres(self) -> Fraction | None:
        """In metres; 1 yd = 0.9144 m exactly."""
        return None if self.inches is None else self.inches * Fraction(254, 10000)

    @property
    def ounces(self) -> Fraction | None:
        """In ounces of 28.349523125 g."""
        return None if self.grams is None else self.grams / Fraction(28349523125, 1000000000)


def _sum(one: Fraction | None, other: Fraction | None) -> Fraction | None:
    return None if one is None or other is None else one + other


NOTHING = YarnAmount(Fraction(0), Fraction(0))


@dataclass(frozen=True, slots=True)
class YarnLine:
    """What one thing takes: a piece ("Wrap"), a part ("Wrap, edging"), or "seams", "tails", "swatch"."""

    what: str
    amount: YarnAmount
    is_worked: bool = True


@dataclass(frozen=True, slots=True)
class EvidenceUsed:
    """One thing weighed or measured: in words, what it took, what the fit makes of it, and how far it is off.

    `ratio`: used over fitted (1 exactly for a single piece of evidence).
    """

    words: str
    used: YarnAmount
    fitted: YarnAmount
    ratio: Fraction
    place: Place


@dataclass(frozen=True, slots=True)
class SizeYarn:
    """The yarn of one size in one colour.

    `used`: the worked pieces, as the evidence has it. `low`, `high`: the same by the sparest and by the loosest piece
    of evidence (None where there is only one). `wanted`: everything with the margin on top. `skeins` are rounded up
    from that. `slack`: the share of the yarn bought that is left over by a hand that works as the evidence did.
    `cost`: of the skeins, in the currency of the price. `is_whole` False: some rows could not be counted.
    """

    size: str
    lines: tuple[YarnLine, ...]
    used: YarnAmount
    low: YarnAmount | None
    high: YarnAmount | None
    wanted: YarnAmount
    skeins: int | None
    slack: Fraction | None
    cost: Fraction | None
    is_whole: bool = True


@dataclass(frozen=True, slots=True)
class YarnNeed:
    """One yarn over all sizes: `margin` is a share (1/10 is a tenth more) and `margin_words` why it is that.

    `basis`: how the evidence was brought to every size: each stitch fitted, one factor over published proportions,
    measured lengths alone, these with one factor, or area. `currency`: as the price names it. `sewing`: what the
    seams take, where it is reckoned from their lengths.
    """

    letter: str
    margin: Fraction
    margin_words: str
    basis: Basis
    evidence: tuple[EvidenceUsed, ...]
    sizes: tuple[SizeYarn, ...]
    currency: str = ""
    sewing: Sewing | None = None

    def of(self, size: str) -> SizeYarn | None:
        """One size's yarn."""
        return next((one for one in self.sizes if one.size == size), None)

    @property
    def spread(self) -> tuple[Fraction, Fraction] | None:
        """The lowest and highest ratio of evidence to fit; None for a single piece of evidence."""
        ratios = [one.ratio for one in self.evidence]
        return (min(ratios), max(ratios)) if len(ratios) > 1 else None
