"""Which printed size is nearest to a maker, and why."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.graded import GradedSize
from gradegen.design.sizes import Cell
from gradegen.grade.measure.lengths import Words
from gradegen.numbers.rounding import EXACT_INCH


@dataclass(frozen=True, slots=True)
class Nearest:
    """A printed size, why it is the one, and the other sizes that fit as well."""

    size: str
    why: str
    also: tuple[str, ...] = ()


def to_fit_inches(cell: Cell | None) -> tuple[Fraction, Fraction] | None:
    """The lowest and highest body of a size in exact inches."""
    if cell is None:
        return None
    if cell.inches is not None:
        return cell.inches.low, cell.inches.high
    return (cell.cm.low / EXACT_INCH, cell.cm.high / EXACT_INCH) if cell.cm is not None else None


def nearest_by_body(sizes: Sequence[GradedSize], by: str, body: Fraction, words: Words) -> Nearest | None:
    """The size whose to-fit band holds the body, else the one whose band is nearest.

    Bands that overlap: the one whose middle is nearer. As far from two: the larger, which leaves the ease planned or
    more.
    """
    bands = [(size.name, band) for size in sizes if (band := to_fit_inches(size.to_fit)) is not None]
    if not bands:
        return None
    far = [(max(low - body, body - high, Fraction(0)), abs(body - (low + high) / 2)) for _, (low, high) in bands]
    best = min(range(len(bands)), key=lambda at: (*far[at], -at))
    name, (low, high) = bands[best]
    told = f"{by} {words.length(body)}"
    if not far[best][0]:
        also = tuple(other for at, (other, _) in enumerate(bands) if at != best and not far[at][0])
        more = f"; so do {', '.join(also)}, whose middle is further off" if also else ""
        return Nearest(name, f"{name} is to fit {_band(low, high, words)}, which holds {told}{more}", also)
    return _outside(bands, [distance for distance, _ in far], best, body, told, words)


def _outside(
    bands: list[tuple[str, tuple[Fraction, Fraction]]],
    far: list[Fraction],
    best: int,
    body: Fraction,
    told: str,
    words: Words,
) -> Nearest:
    name, (low, high) = bands[best]
    tied = tuple(other for at, (other, _) in enumerate(bands) if at != best and far[at] == far[best])
    why = f"no size holds {told}; {name} ({_band(low, high, words)}) is {words.length(far[best])} away"
    if tied:
        why += f", as is {', '.join(tied)}; the larger leaves at least the ease planned"
    elif all(high < body for _, (_, high) in bands) or all(body < low for _, (low, _) in bands):
        why += ", beyond the sizes of this pattern"
    return Nearest(name, why, tied)


def nearest_by_count(
    sizes: Sequence[GradedSize], count: str, raw: Fraction, inches: Fraction, words: Words
) -> Nearest | None:
    """The size whose count comes nearest to the one wanted, in the maker's own hand; `inches` per stitch of hers."""
    counted = [(size.name, size.counts[count].n) for size in sizes if count in size.counts]
    if not counted:
        return None
    best = min(range(len(counted)), key=lambda at: (abs(counted[at][1] - raw), -at))
    name, n = counted[best]
    made, wanted = words.length(n * inches), words.length(raw * inches)
    return Nearest(name, f"{count} of {name} is {n}, which at your gauge makes {made}; you want {wanted}")


def _band(low: Fraction, high: Fraction, words: Words) -> str:
    return words.length(low) if low == high else f"{words.length(low)} to {words.length(high)}"
