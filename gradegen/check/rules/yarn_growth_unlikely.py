"""What it finds.

Stated yarn that does not grow as the work does: its share of the stitches worked strays from the other sizes' by more
than 15 in a hundred. Where rows could not be followed, it is held against the finished measure around the body instead.

Why it matters.

Yarn worked out from the chest alone leaves out length, sleeves and edgings, and goes wrong at both ends of the range.

Example.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [500, 520, 560, 640, 900]}

Written right.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [500, 560, 630, 690, 740]}

Whose rule.

House: 15 in a hundred either side of the mean; no published figure is known.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from gradegen.check.yarn_stated import amounts_stated, stated
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text

RULE = Rule("yarn-growth-unlikely", Severity.WARNING, "house", "Yarn and size grow unlike each other.")
LEEWAY = Fraction(15, 100)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per yarn and size that strays, by the first amount that is stated."""
    seen = set()
    for yarn, what in amounts_stated(checked):
        amounts = stated(yarn, what, checked.sizes)
        if len(amounts) < 3 or yarn.letter in seen:
            continue
        seen.add(yarn.letter)
        measure, growth = _growth(checked, yarn.letter)
        shares = [amount.number / growth[amount.name] for amount in amounts if amount.name and growth.get(amount.name)]
        if len(shares) != len(amounts):
            continue
        mean = sum(shares, Fraction(0)) / len(shares)
        for amount, share in zip(amounts, shares, strict=True):
            if abs(share - mean) > LEEWAY * mean:
                yield RULE.at(
                    amount.place,
                    f"Yarn and {measure} grow unlike each other.",
                    size=amount.name,
                    expected=f"near {decimal_text(mean * amount.number / share, 0)} {what}",
                    found=f"{decimal_text(amount.number)} {what}",
                    because=f"beside the {measure} this is {decimal_text(100 * share / mean, 0)} % of the sizes' mean",
                )


def _growth(checked: Checked, letter: str) -> tuple[str, Mapping[str, Fraction]]:
    """What yarn should grow with: the stitches in their proportions, else the finished measure the sizes go by.

    Where nothing goes by a body, that is the width of the first piece.
    """
    from gradegen.reckon.census.census import stitch_census
    from gradegen.reckon.yarn.per_stitch import Proportions

    census = stitch_census(checked)
    if not any(census.missing.values()) and checked.not_checked == 0:
        proportions = Proportions({one.name: one for one in checked.pattern.definitions})
        return "stitches", {size: proportions.total(census.of(size, letter)) for size in census.by_size}
    widths = (piece.width.text for piece in checked.pattern.pieces if piece.width is not None)
    name = next((size.ease_measure for size in checked.sizes if size.ease_measure is not None), None)
    name = name or next(widths, None)
    measures = {size.name: size.measures.get(name) if name else None for size in checked.sizes}
    return name or "width", {size: measure.printed for size, measure in measures.items() if measure is not None}
