"""What it finds.

A raglan line whose two edges, of body and sleeve, do not have the same number of rows.

Why it matters.

A raglan seam runs over the whole depth of the yoke; rows too many on one side show as a wave from neck to underarm.

Example.

    pieces:
      - name: Front
        shape: flat
        edges: {raglan: rows}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-40: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {raglan: rows}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-42: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - raglan: front raglan = back raglan

Written right.

    pieces:
      - name: Front
        shape: flat
        edges: {raglan: rows}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-42: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {raglan: rows}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-42: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - raglan: front raglan = back raglan

Whose rule.

Arithmetic: rows that are sewn together one by one are as many on both sides.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import mismatched_joins
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule(
    "raglan-lines-differ",
    Severity.ERROR,
    "arithmetic",
    "Two raglan edges that are sewn together have other row counts.",
)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per raglan seam and size."""
    for mismatch in mismatched_joins(checked, "raglan"):
        yield mismatch.told(RULE, "The two edges of this raglan line have other row counts.")
