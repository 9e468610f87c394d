"""What it finds.

A number of skeins that is not what the stated yards (or metres, grams, ounces) come to, rounded up.

Why it matters.

One skein too few, and the dye lot is gone when a maker finds out; one too many is money for nothing.

Example.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [520, 560, 630, 700, 760], skeins: [3, 3, 3, 4, 4]}

Written right.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [520, 560, 630, 700, 760], skeins: [3, 3, 4, 4, 4]}

Whose rule.

Arithmetic: the yards divided by the yards of one skein, rounded up.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.yarn_stated import amounts_stated, in_pairs, skein_share
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text

RULE = Rule("skeins-differ", Severity.ERROR, "arithmetic", "The amount stated needs another number of skeins.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per size and yarn whose skeins differ, by the first amount that is stated."""
    seen = set()
    for yarn, what in amounts_stated(checked):
        for amount, skeins in in_pairs(yarn, what, "skeins", checked.sizes):
            share = skein_share(yarn, what, amount.number)
            if share is None or (yarn.letter, amount.name, skeins.name) in seen:
                continue
            seen.add((yarn.letter, amount.name, skeins.name))
            needed = -int(-share // 1)
            if needed != skeins.number:
                text = decimal_text(amount.number)
                yield RULE.at(
                    skeins.place,
                    f"This is another number of skeins than the {what} come to.",
                    size=skeins.name or amount.name,
                    expected=str(needed),
                    found=decimal_text(skeins.number),
                    because=f"{text} {what} are {decimal_text(share)} skeins",
                    see_also=((amount.place, what),),
                )
