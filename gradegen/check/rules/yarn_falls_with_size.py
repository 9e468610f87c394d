"""What it finds.

A list of yarn amounts or skeins that falls from one size to the next larger one.

Why it matters.

Two numbers that changed places, or a digit mistyped, look just like this, and somebody runs out of yarn.

Example.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [510, 560, 550, 620, 680]}

Written right.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [510, 545, 560, 620, 680]}

Whose rule.

Common practice: a larger size of one design takes more yarn, or as much.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from gradegen.check.yarn_stated import GRAMS, INCHES, stated
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text

RULE = Rule("yarn-falls-with-size", Severity.WARNING, "common practice", "A larger size asks for less yarn.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per step down of a list."""
    for yarn in checked.pattern.yarns:
        for what in (*INCHES, *GRAMS, "skeins"):
            for smaller, larger in pairwise(stated(yarn, what, checked.sizes)):
                if larger.number < smaller.number:
                    yield RULE.at(
                        larger.place,
                        f"A larger size asks for fewer {what}.",
                        size=larger.name,
                        expected=f"{decimal_text(smaller.number)} or more",
                        found=decimal_text(larger.number),
                        see_also=((smaller.place, f"size {smaller.name}"),),
                    )
