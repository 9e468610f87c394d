"""What it finds.

A neck that grows by more than half an inch of width from one size to the next, or an armhole, yoke or raglan that
grows by more than an inch of depth. Sizes further than 4 in apart may grow by as much more.

Why it matters.

Necks and armholes grow far less than chests do. Taken up with the chest, a neck falls off the shoulders in the large
sizes and an armhole hangs half-way to the waist. A size that stays as it was is no fault: necks and depths often do.

Example.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      neck width: "[6.5, 6.75, 7.5, 7.75, 8] in"

Written right.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      neck width: "[6.5, 6.75, 7, 7, 7.25] in"

Whose rule.

House: no publisher states a figure. Published schematics from 34 to 76 in of chest give necks a fifth to a third more
width or girth over all their sizes, and armholes a quarter to a half more depth.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import SIZES_FAR_APART, Part, growing_parts, words_of
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("neck-or-armhole-jumps", Severity.WARNING, "house", "A neck or armhole grows faster here than bodies do.")
MOST: dict[Part, Fraction] = {"neck width": Fraction(1, 2), "neck around": Fraction(1), "armhole": Fraction(1)}


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per measure and size that jumps."""
    words = words_of(checked)
    for growing in growing_parts(checked, *MOST):
        for size, _, step, body_step in growing.steps():
            most = MOST[growing.part] * max(Fraction(1), body_step / SIZES_FAR_APART)
            most = max(most, growing.own_step(size, "armhole depth")) if growing.part == "armhole" else most
            if step > most:
                yield RULE.at(
                    growing.place(size),
                    f"{growing.measure.name} grows faster to this size than bodies do.",
                    size=size.name,
                    expected=f"{words.length(most)} more at most",
                    found=f"{words.length(step)} more",
                    because=growing.why,
                )
