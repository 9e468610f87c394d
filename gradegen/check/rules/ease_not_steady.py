"""What it finds.

A garment whose ease changes from size to size: more than 2 in away from the middle one, and more than 5 % of the body
too; or ease in some sizes and none or less in others.

Why it matters.

Ease that dwindles makes a pattern that is roomy in XS and tight in 5X. Ease in inches or ease in percent may stay the
same: either will do.

Example.

    measures:
      around: bust + [6, 4, 3, 2, 0] in
      depth: "[10, 10, 11, 11, 12] in"

Written right.

    measures:
      around: bust + [4, 4, 3, 3, 3] in
      depth: "[10, 10, 11, 11, 12] in"

Whose rule.

House: 2 in and 5 % are our defaults. A free published sheet whose ease runs from 5 in to less than nothing shows the
fault.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import garment_column, words_of
from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.grade.body.sums import lists_in

RULE = Rule("ease-not-steady", Severity.WARNING, "house", "The ease changes from size to size.")
INCHES, SHARE = Fraction(2), Fraction(5, 100)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per size whose ease is unlike the middle one."""
    column = garment_column(checked)
    measure = next(
        (size.ease_measure for size in checked.sizes if size.ease_measure and size.ease_body == column), None
    )
    if column is None or measure is None:
        return
    known = [size for size in checked.sizes if measure in size.measures and column in size.graded_body]
    eases = {size.name: size.measures[measure].target - size.graded_body[column] for size in known}
    middle = _middle(list(eases.values()))
    share = _middle([eases[size.name] / size.graded_body[column] for size in known])
    words = words_of(checked)
    for size in known:
        ease, body = eases[size.name], size.graded_body[column]
        turns = ease * middle < 0
        if turns or (abs(ease - middle) > INCHES and abs(ease / body - share) > SHARE):
            yield RULE.at(
                _place(checked, measure, size),
                f"The ease of {measure} is unlike that of the other sizes.",
                size=size.name,
                expected=f"about {words.length(middle)}",
                found=words.length(ease),
            )


def _middle(values: list[Fraction]) -> Fraction:
    ordered = sorted(values)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def _place(checked: Checked, measure: str, size: GradedSize) -> Place:
    formula = checked.pattern.measures[measure].formula
    listed = next(lists_in(formula), None)
    return listed.each[size.index].place if listed and size.index < len(listed.each) else formula.place
