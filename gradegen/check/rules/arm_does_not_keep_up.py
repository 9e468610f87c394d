"""What it finds.

An upper arm that grows by less than an inch for every 4 in of bust or chest, over the sizes from 40 in on, and by less
than the size table's own.

Why it matters.

A sleeve that fits in the small sizes and loses its ease from size to size is tight in the large ones, even where it
is not yet smaller than the arm.

Example.

    sizes: {table: women, for: [L, XL, 2X, 3X, 4X], by: bust, take: middle}
    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      upper arm: "[17, 17.5, 18, 18.5, 19] in"

Written right.

    sizes: {table: women, for: [L, XL, 2X, 3X, 4X], by: bust, take: middle}
    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      upper arm: "[14, 15.5, 17.5, 19, 20.5] in"

Whose rule.

House: 1 to 2 in for every 4 in of bust above size L is our default. A common women's table grows by 1.5 in, and
published schematics by 0.9 to 1.2 in.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import SIZES_FAR_APART, Growing, growing_parts, words_of
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.measure.lengths import Words

RULE = Rule("arm-does-not-keep-up", Severity.WARNING, "house", "The upper arm grows less than arms of large sizes do.")
FROM = Fraction(40)  # inches of bust or chest
ENOUGH_SIZES = Fraction(8)  # inches of bust from the first of them to the last, so that a plateau is no fault


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per measure, at the last size."""
    for growing in growing_parts(checked, "upper arm"):
        yield from _slow(growing, words_of(checked))


def _slow(growing: Growing, words: Words) -> Iterator[Finding]:
    large = [at for at, body in enumerate(growing.bodies) if body >= FROM and growing.sizes[at].wearer == "adult"]
    if not large:
        return
    first, last = large[0], large[-1]
    grown, body = growing.wanted[last] - growing.wanted[first], growing.bodies[last] - growing.bodies[first]
    own = growing.between(growing.sizes[first], growing.sizes[last], "upper arm")
    least = body / SIZES_FAR_APART if own is None else min(body / SIZES_FAR_APART, own)
    if body >= ENOUGH_SIZES and grown < least:
        yield RULE.at(
            growing.place(growing.sizes[last]),
            f"{growing.measure.name} grows less than arms of large sizes do.",
            size=growing.sizes[last].name,
            expected=f"{words.length(least)} more than in {growing.sizes[first].name}, or above",
            found=f"{words.length(grown)} more",
            because=growing.why,
        )
