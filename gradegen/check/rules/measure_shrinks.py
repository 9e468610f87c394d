"""What it finds.

A finished measure that gets smaller from one size to the next although the body it is chosen by gets larger.

Why it matters.

A larger maker is given a smaller piece. It is nearly always a slip in a size list, or two entries that changed places.

Example.

    measures:
      around: bust + 3 in
      depth: "[10, 11, 10.5, 12, 12] in"

Written right.

    measures:
      around: bust + 3 in
      depth: "[10, 11, 11, 12, 12] in"

Whose rule.

Common practice: measures of a garment stay or grow over the sizes; equal steps are not asked for.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from gradegen.design.checked import Checked
from gradegen.design.formula import Call, Formula, PerSize, Sum
from gradegen.design.graded import GradedSize
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.numbers.exact import decimal_text

RULE = Rule("measure-shrinks", Severity.ERROR, "common practice", "A measure gets smaller in a larger size.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per size in which a measure is smaller than in the size before."""
    for name, measure in checked.pattern.measures.items():
        for smaller, larger in pairwise(checked.sizes):
            if name in smaller.measures and name in larger.measures and _grows(checked, smaller, larger):
                before, here = smaller.measures[name].printed, larger.measures[name].printed
                if here < before and _wanted_to_shrink(smaller, larger, name):
                    yield RULE.at(
                        _entry(measure.formula, larger.index) or measure.place,
                        f"The measure {name} gets smaller in a larger size.",
                        size=larger.name,
                        expected=f"{decimal_text(before)} in or more, as in {smaller.name}",
                        found=f"{decimal_text(here)} in",
                    )


def _wanted_to_shrink(smaller: GradedSize, larger: GradedSize, name: str) -> bool:
    return larger.measures[name].target < smaller.measures[name].target


def _grows(checked: Checked, smaller: GradedSize, larger: GradedSize) -> bool:
    by = checked.pattern.sizes.by.text if checked.pattern.sizes.by else checked.table.by
    ends: list[Fraction | None] = [size.graded_body.get(by) for size in (smaller, larger)]
    return ends[0] is not None and ends[1] is not None and ends[0] < ends[1]


def _entry(formula: Formula, index: int) -> Place | None:
    """The place of one size's own number, where the measure is written as a list."""
    match formula:
        case PerSize():
            return formula.each[index].place if index < len(formula.each) else None
        case Sum():
            return _entry(formula.left, index) or _entry(formula.right, index)
        case Call():
            return next((place for part in formula.parts if (place := _entry(part, index))), None)
    return None
