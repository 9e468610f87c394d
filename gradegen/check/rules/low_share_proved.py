"""What it finds.

A pattern of which less than four fifths of the row-size pairs could be worked to a count.

Why it matters.

What is not checked is not right: it is unknown. No finding in such a pattern means little, and this says so.

Example.

    pieces:
      - name: Scarf
        shape: flat
        rows: |
          Row 1: Ch 21. Sc in 2nd ch from hook, sc in each ch across. (20 sc)
          Row 2: Make your favourite edging as you see fit.
          Row 3: Go on in the manner of the picture.

Written right.

    pieces:
      - name: Scarf
        shape: flat
        rows: |
          Row 1: Ch 21. Sc in 2nd ch from hook, sc in each ch across. (20 sc)
          Row 2: Ch 1 (does not count as a st), turn, sc in each st across. (20 sc)
          Row 3: Ch 1 (does not count as a st), turn, sc in each st across. (20 sc)

Whose rule.

House: a limit of our own, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("low-share-proved", Severity.NOTE, "house", "Few of the rows could be worked to a count.")
LEAST_PERCENT = 80


def find(checked: Checked) -> Iterator[Finding]:
    """One finding, at the first row that could not be worked."""
    pairs = checked.proved + checked.wrong + checked.not_checked
    if not pairs or 100 * (checked.proved + checked.wrong) >= LEAST_PERCENT * pairs:
        return
    rows = (row for rows in checked.worked.values() for row in rows if row.applies and row.status == "not-checked")
    place = min((row.row.place for row in rows), default=checked.pattern.place)
    yield RULE.at(
        place,
        "Much of this pattern is not checked; no finding there means nothing.",
        expected=f"{LEAST_PERCENT} % of the row-size pairs or more",
        found=f"{100 * (checked.proved + checked.wrong) // pairs} %, {checked.not_checked} of {pairs} not checked",
    )
