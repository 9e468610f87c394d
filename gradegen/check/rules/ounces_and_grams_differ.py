"""What it finds.

An amount of yarn stated in ounces and in grams, or a skein's put-up in both, where the two are not the same weight.

Why it matters.

Yarn is weighed at home in one of them and bought by the other.

Example.

    yarn:
      A: {weight: medium, skein: 200 yd / 100 g / 4 oz}

Written right.

    yarn:
      A: {weight: medium, skein: 200 yd / 100 g / 3.5 oz}

Whose rule.

Arithmetic: 1 oz is 28.35 g. Two parts in a hundred are left to rounding, so that 3.5 oz and 100 g pass.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.yarn_stated import GRAMS, differ, in_pairs
from gradegen.design.checked import Checked
from gradegen.design.pattern import Yarn
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text
from gradegen.numbers.units import grams_of, in_unit

RULE = Rule("ounces-and-grams-differ", Severity.ERROR, "arithmetic", "Ounces and grams are not the same weight.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per put-up and per size whose two weights differ."""
    for yarn in checked.pattern.yarns:
        yield from _put_up(yarn)
        for grams, ounces in in_pairs(yarn, "grams", "ounces", checked.sizes):
            right = grams.number / GRAMS["ounces"]
            if differ(right, ounces.number, Fraction(1, 20)):
                yield RULE.at(
                    ounces.place,
                    "These ounces are not the grams stated beside them.",
                    size=ounces.name or grams.name,
                    expected=f"{decimal_text(right, 1)} oz",
                    found=f"{decimal_text(ounces.number)} oz",
                    because=f"{decimal_text(grams.number)} g / 28.35",
                    see_also=((grams.place, "grams"),),
                )


def _put_up(yarn: Yarn) -> Iterator[Finding]:
    first, second = yarn.skein_mass, yarn.mass_also
    if first is None or second is None or first.unit is None or second.unit is None:
        return
    one, other = grams_of(first), grams_of(second)
    if one is None or other is None or not differ(one, other, Fraction(1)):
        return
    yield RULE.at(
        second.place,
        "The two weights of this skein are not the same.",
        expected=f"{decimal_text(in_unit(one, second.unit), 1)} {second.unit}",
        found=f"{decimal_text(second.number)} {second.unit}",
        because=f"{decimal_text(first.number)} {first.unit} stand beside it",
    )
