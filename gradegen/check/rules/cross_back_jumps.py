"""What it finds.

A cross back that grows by more than half an inch from one size to the next, above a bust or chest of 42 in. Sizes
further than 4 in apart may grow by as much more, and any as much as the size table's own cross back does.

Why it matters.

Above the middle sizes, girth grows at the front and sides; the bones of the shoulders stay nearly as they were. A back
that grows with the chest turns set-in sleeves into dropped ones.

Example.

    sizes: {table: women, for: [XL, 2X, 3X, 4X, 5X], by: bust, take: middle}
    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      cross back width: "[17.5, 18.5, 18.5, 19, 19] in"

Written right.

    sizes: {table: women, for: [XL, 2X, 3X, 4X, 5X], by: bust, take: middle}
    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      cross back width: "[17.5, 18, 18, 18.5, 18.5] in"

Whose rule.

House: no publisher states a figure. A common women's table grows by half an inch or not at all above its size XL.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import SIZES_FAR_APART, growing_parts, words_of
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("cross-back-jumps", Severity.WARNING, "house", "The cross back grows more here than large sizes do.")
MOST = Fraction(1, 2)
ABOVE = Fraction(42)  # inches of bust or chest


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per measure and size that jumps."""
    words = words_of(checked)
    for growing in growing_parts(checked, "cross back"):
        for size, body, step, body_step in growing.steps():
            most = max(MOST * max(Fraction(1), body_step / SIZES_FAR_APART), growing.own_step(size, "cross back"))
            if size.wearer == "adult" and body > ABOVE and step > most:
                yield RULE.at(
                    growing.place(size),
                    f"{growing.measure.name} grows more to this size than backs do.",
                    size=size.name,
                    expected=f"{words.length(most)} more at most",
                    found=f"{words.length(step)} more",
                    because=growing.why,
                )
