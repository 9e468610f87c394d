"""What it finds.

A side seam whose two edges do not have the same number of rows. Darts take nothing from it: the side keeps its rows.

Why it matters.

The longer side has to be eased in over the whole seam, and the hem hangs crooked.

Example.

    pieces:
      - name: Front
        shape: flat
        edges: {side: rows}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {side: rows}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-58: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - side: front side = back side

Written right.

    pieces:
      - name: Front
        shape: flat
        edges: {side: rows}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {side: rows}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - side: front side = back side

Whose rule.

Arithmetic: rows that are sewn together one by one are as many on both sides.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import mismatched_joins
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("side-seams-differ", Severity.ERROR, "arithmetic", "Front and back sides have other row counts.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per side seam and size."""
    for mismatch in mismatched_joins(checked, "side"):
        yield mismatch.told(RULE, "Front and back sides have other row counts.")
