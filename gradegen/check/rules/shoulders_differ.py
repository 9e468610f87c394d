"""What it finds.

A shoulder seam whose two edges do not have the same number of stitches.

Why it matters.

Shoulders are joined stitch to stitch; one that is wider puckers, and the neck ends up off its middle.

Example.

    pieces:
      - name: Front
        shape: flat
        edges: {shoulder: 10}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {shoulder: 9}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - front shoulder to back shoulder

Written right.

    pieces:
      - name: Front
        shape: flat
        edges: {shoulder: 10}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {shoulder: 10}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - front shoulder to back shoulder

Whose rule.

Arithmetic: what is joined stitch to stitch has as many on both sides.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import mismatched_joins
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("shoulders-differ", Severity.ERROR, "arithmetic", "The shoulders cannot be joined stitch to stitch.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per shoulder seam and size."""
    for mismatch in mismatched_joins(checked, "shoulder"):
        yield mismatch.told(RULE, "The shoulders cannot be joined stitch to stitch.")
