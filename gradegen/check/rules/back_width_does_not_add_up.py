"""What it finds.

A neck and two shoulders that do not make the stitches which the back (or front) has left above the armholes.

Why it matters.

The maker has stitches over, or too few, in the very row in which she divides for the neck.

Example.

    pieces:
      - name: Front
        shape: flat
        edges: {neck: 12, shoulder: 10}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {neck: 12, shoulder: 8}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - back width: back end = back neck + 2 * back shoulder

Written right.

    pieces:
      - name: Front
        shape: flat
        edges: {neck: 12, shoulder: 9}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {neck: 12, shoulder: 9}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - back width: back end = back neck + 2 * back shoulder

Whose rule.

Arithmetic: neck plus two shoulders is the width that is there.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import mismatched_joins
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule(
    "back-width-does-not-add-up",
    Severity.ERROR,
    "arithmetic",
    "Neck and shoulders do not make the stitches that remain.",
)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per width and size."""
    for mismatch in mismatched_joins(checked, "width"):
        yield mismatch.told(RULE, "Neck and shoulders do not make the stitches that remain.")
