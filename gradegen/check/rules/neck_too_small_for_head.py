"""What it finds.

A closed neck that would not pass the smallest head of its wearers even if it stretched by a quarter.

Why it matters.

A pullover that does not go over the head can't be worn, and on a child it frightens. Cardigans, plackets, buttons and
zips open the neck: where the pattern names one, nothing is said.

Example.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      neck around: 16 in

Written right.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      neck around: 21 in

Whose rule.

House: a quarter of stretch is our default; swatch, and stretch the swatch. Heads are the lowest of the Craft Yarn
Council's head chart: babies 14 in, children 18 in, women 21 in.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import growing_parts, text_of, words_of
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import folded

RULE = Rule("neck-too-small-for-head", Severity.WARNING, "house", "This neck may not pass the head.")
STRETCHED = Fraction(5, 4)
SMALLEST_HEADS = {"baby": Fraction(14), "child": Fraction(18), "adult": Fraction(21)}  # inches, CYC head chart
OPENS = re.compile(
    r"\bbutton|\bplackets?\b|\bzip|\bcardigan|\bcardi\b|\bjacket|\bcoat\b|\bvest|\bopen front|\bsnaps?\b"
)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per size whose neck is too small."""
    if OPENS.search(text_of(checked)):
        return
    words, column = words_of(checked), next((name for name in checked.table.columns if folded(name) == "head"), None)
    for growing in growing_parts(checked, "neck around"):
        for size in growing.sizes:
            neck = size.measures[growing.measure.name].printed
            own = size.graded_body.get(column) if column is not None else None
            head = own or SMALLEST_HEADS.get(size.wearer, SMALLEST_HEADS["adult"])
            if neck * STRETCHED < head:
                yield RULE.at(
                    growing.place(size),
                    f"{growing.measure.name} may not pass the head, even stretched by a quarter.",
                    size=size.name,
                    expected=f"{words.length(head / STRETCHED)} or more",
                    found=words.length(neck),
                    because=f"a head of {words.length(head)}",
                    hint="Widen the neck, or give it an opening and name it in the notes.",
                )
