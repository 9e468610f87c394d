"""What it finds.

A cross back more than 2 in wider than the body's, in a garment that does not say its shoulders drop.

Why it matters.

The seam of a set-in sleeve that far out hangs off the shoulder, the sleeve is then too long, and the cap does not
sit. Drop-shoulder garments are made just so: say so in the title, the notes or a piece.

Example.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      cross back width: cross back + 3 in

Written right.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      cross back width: cross back + 0.5 in

Whose rule.

House: 2 in is our default. That half-chest panels turn caps into dropped shoulders in large sizes is common knowledge
of the trade.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import growing_parts, text_of, words_of
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import folded

RULE = Rule("shoulder-drops", Severity.WARNING, "house", "The shoulder seam will hang off the shoulder.")
MOST = Fraction(2)
MEANT = re.compile(r"\bdrop(ped)?[ -]?shoulders?|\bdrop(ped)? sleeves?|\bponcho|\bdolman|\bkimono|\bbatwing")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per measure and size that is too wide."""
    column = next((name for name in checked.table.columns if folded(name) == "cross back"), None)
    if column is None or MEANT.search(text_of(checked)):
        return
    words = words_of(checked)
    for growing in growing_parts(checked, "cross back"):
        for size, wanted in zip(growing.sizes, growing.wanted, strict=True):
            body = size.graded_body.get(column)
            if body is not None and wanted > body + MOST:
                yield RULE.at(
                    growing.place(size),
                    f"{growing.measure.name} is far wider than the back it is for.",
                    size=size.name,
                    expected=f"{words.length(body + MOST)} at most",
                    found=words.length(wanted),
                    because=f"the body's cross back is {words.length(body)}; {growing.why}",
                    hint="If the shoulders are meant to drop, say drop shoulder in the notes.",
                )
