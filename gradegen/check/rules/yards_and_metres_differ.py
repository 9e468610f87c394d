"""What it finds.

An amount of yarn stated in yards and in metres, or a skein's put-up in both, where the two are not the same length.

Why it matters.

A maker buys by one of them. Whoever reads the wrong one runs short.

Example.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [520, 560, 630, 700, 760], metres: [475, 512, 596, 640, 695]}

Written right.

    yarn:
      A:
        weight: medium
        skein: 200 yd / 100 g
        stated: {yards: [520, 560, 630, 700, 760], metres: [475, 512, 576, 640, 695]}

Whose rule.

Arithmetic: 1 yd is 0.9144 m. Two parts in a hundred are left to rounding, so that the trade's 0.9 m passes.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.yarn_stated import differ, in_pairs
from gradegen.design.checked import Checked
from gradegen.design.pattern import Yarn
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text
from gradegen.numbers.units import in_unit, inches_of

RULE = Rule("yards-and-metres-differ", Severity.ERROR, "arithmetic", "Yards and metres are not the same length.")
YARD = Fraction(9144, 10000)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per put-up and per size whose two lengths differ."""
    for yarn in checked.pattern.yarns:
        yield from _put_up(yarn)
        for yards, metres in in_pairs(yarn, "yards", "metres", checked.sizes):
            right = yards.number * YARD
            if differ(right, metres.number, Fraction(1)):
                yield RULE.at(
                    metres.place,
                    "These metres are not the yards stated beside them.",
                    size=metres.name or yards.name,
                    expected=f"{decimal_text(right, 0)} m",
                    found=f"{decimal_text(metres.number)} m",
                    because=f"{decimal_text(yards.number)} yd x 0.9144",
                    see_also=((yards.place, "yards"),),
                )


def _put_up(yarn: Yarn) -> Iterator[Finding]:
    first, second = yarn.skein_length, yarn.length_also
    if first is None or second is None or first.unit is None or second.unit is None:
        return
    one, other = inches_of(first), inches_of(second)
    if one is None or other is None or not differ(one, other, Fraction(36)):
        return
    yield RULE.at(
        second.place,
        "The two lengths of this skein are not the same.",
        expected=f"{decimal_text(in_unit(one, second.unit), 0)} {second.unit}",
        found=f"{decimal_text(second.number)} {second.unit}",
        because=f"{decimal_text(first.number)} {first.unit} stand beside it",
    )
