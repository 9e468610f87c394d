"""What it finds.

A neck, cross back or length that grows by more than half of the percentage its garment's bust or chest grows by, or
an armhole by more than three quarters, from the smallest size to the largest. Adults' sizes only.

Why it matters.

One factor does not scale a garment. A neck kept at the same share of the chest is 30 in around where 23 in would do.
Children grow in length as much as in girth, so their sizes are left alone.

Example.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      neck width: "[6.25, 6.75, 7.25, 7.75, 8] in"

Written right.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      neck width: "[6.5, 6.75, 7, 7.25, 7.25] in"

Whose rule.

House: no publisher states a figure. In published schematics whose chests grow by 61 to 117 %, necks grow by a quarter
to a third of that, lengths by none to a third, armholes by a fifth to a half; a common size table's cross back by a
quarter.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import Growing, Part, growing_parts
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text

RULE = Rule("part-scaled-up", Severity.WARNING, "house", "A part grows with the chest as if one factor scaled it.")
HALF, THREE_QUARTERS = Fraction(1, 2), Fraction(3, 4)
MOST: dict[Part, Fraction] = {
    "neck width": HALF, "neck around": HALF, "cross back": HALF, "length": HALF, "armhole": THREE_QUARTERS,
}  # fmt: skip
WORTH_SAYING = Fraction(15, 100)  # growth of the body from first to last size


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per measure, at its sum."""
    for growing in growing_parts(checked, *MOST):
        adults = all(size.wearer == "adult" for size in growing.sizes)
        share = growing.share()
        if adults and share is not None and share > MOST[growing.part] and _grown(growing.bodies) > WORTH_SAYING:
            yield _finding(growing)


def _grown(lengths: tuple[Fraction, ...]) -> Fraction:
    return lengths[-1] / lengths[0] - 1


def _finding(growing: Growing) -> Finding:
    body, own = _grown(growing.bodies), _grown(growing.wanted)
    most, first, last = MOST[growing.part] * body, growing.sizes[0], growing.sizes[-1]
    return RULE.at(
        growing.measure.formula.place,
        f"{growing.measure.name} grows with the body as if one factor scaled the garment.",
        expected=f"{_percent(most)} more at most",
        found=f"{_percent(own)} more",
        because=f"from {first.name} to {last.name} the body grows by {_percent(body)}; {growing.why}",
        hint="Give each size its own: a list, or a body measure of the size table.",
    )


def _percent(share: Fraction) -> str:
    return f"{decimal_text(100 * share, 0)} %"
