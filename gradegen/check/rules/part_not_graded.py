"""What it finds.

A pocket, hood, motif, flap or patch that measures the same in all sizes, while the garment grows by more than 15 %.

Why it matters.

Small parts are forgotten when a pattern is graded. A pocket for the smallest size looks lost on the largest, and a
hood may not go over the hair. Where one size is meant, sizes may share it in two or three groups.

Example.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      pocket width: 5 in

Written right.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      pocket width: "[5, 5, 5.5, 5.5, 6] in"

Whose rule.

House: 15 % is our default. Pockets of one size on all sizes are a known complaint of makers.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import garment_column, words_of
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text

RULE = Rule("part-not-graded", Severity.WARNING, "house", "This part is one size on all sizes.")
PARTS = re.compile(r"\b(pockets?|hoods?|motifs?|flaps?|patch(es)?)\b", re.IGNORECASE)
GROWN = Fraction(15, 100)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per measure that stays as it is."""
    column = garment_column(checked)
    bodies = [size.graded_body[column] for size in checked.sizes if column and column in size.graded_body]
    if not bodies or max(bodies) <= min(bodies) * (1 + GROWN):
        return
    for measure in checked.pattern.measures.values():
        lengths = {size.measures[measure.name].target for size in checked.sizes if measure.name in size.measures}
        if PARTS.search(measure.name) and len(lengths) == 1:
            grown = decimal_text(100 * (max(bodies) / min(bodies) - 1), 0)
            yield RULE.at(
                measure.formula.place,
                f"{measure.name} is the same in all sizes.",
                because=f"{words_of(checked).length(lengths.pop())} throughout, while bodies grow by {grown} %",
                hint="Give it a size list, if only in two or three steps.",
            )
