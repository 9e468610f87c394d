"""Circles in stitches: how fast a flat round grows, how wide a crown is; exact, with pi to 15 digits."""

from __future__ import annotations

from fractions import Fraction

PI = Fraction(314159265358979, 10**14)


def increases_per_round(stitches: Fraction, rows: Fraction) -> Fraction:
    """Stitches a flat disc gains in each round, not yet whole, at stitches and rows over one same length.

    Each round is one row further out, so its edge is 2 pi row heights longer. Fewer stitches cup, more ruffle.
    """
    return 2 * PI * stitches / rows


def diameter(around: Fraction) -> Fraction:
    """How wide a flat crown is that closes to this length around."""
    return around / PI


def rounds_to(count: int, increases: int) -> tuple[int, int]:
    """Whole rounds of a disc that gains `increases` stitches in each, and the stitches then missing."""
    return divmod(count, increases)
