"""What it finds.

Yarn stated so near to full skeins that less than a twentieth of what is bought would be left over.

Why it matters.

Hands differ by more than that. One loose hand, and the last skein runs out before the last row.

Example.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [530, 580, 640, 690, 740]}

Written right.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [530, 565, 640, 690, 740]}

Whose rule.

House: a slack of a twentieth; no published figure is known.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.yarn_stated import amounts_stated, skein_share, stated
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text

RULE = Rule("slack-too-small", Severity.WARNING, "house", "One loose hand and the yarn runs out.")
SLACK = Fraction(1, 20)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per yarn and size, by the first amount that is stated."""
    seen = set()
    for yarn, what in amounts_stated(checked):
        for amount in stated(yarn, what, checked.sizes):
            share = skein_share(yarn, what, amount.number)
            if share is None or (yarn.letter, amount.name) in seen:
                continue
            seen.add((yarn.letter, amount.name))
            skeins = -int(-share // 1)
            slack = (skeins - share) / skeins
            if slack < SLACK:
                yield RULE.at(
                    amount.place,
                    "One loose hand and the yarn runs out.",
                    size=amount.name,
                    expected="5 % of the skeins left over, or more",
                    found=f"{decimal_text(100 * slack, 1)} %",
                    because=f"{decimal_text(amount.number)} {what} are {decimal_text(share)} of {skeins} skeins",
                    hint=f"Ask for {skeins + 1} skeins.",
                )
