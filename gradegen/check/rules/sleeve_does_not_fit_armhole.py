"""What it finds.

A sleeve top and the armhole it is set into that differ by more than half an inch, or by any stitch where both are
counted in the same unit. Where stitches meet rows, both are compared by their length at the gauge.

Why it matters.

Half an inch can be eased in; more puckers the sleeve or stretches the armhole, and every size pulls elsewhere.

Example.

    pieces:
      - name: Front
        shape: flat
        edges: {armhole: 32}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {armhole: 32}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - sleeve: front start = front armhole

Written right.

    pieces:
      - name: Front
        shape: flat
        edges: {armhole: 30}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {armhole: 30}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - sleeve: front start = front armhole

Whose rule.

Common practice: half an inch is eased in for drop styles.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import mismatched_joins
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("sleeve-does-not-fit-armhole", Severity.ERROR, "common practice", "Sleeve top and armhole differ.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per sleeve seam and size."""
    for mismatch in mismatched_joins(checked, "sleeve"):
        yield mismatch.told(RULE, "Sleeve top and armhole differ.")
