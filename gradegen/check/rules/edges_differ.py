"""What it finds.

Two edges that are said to meet and come to other numbers, where neither the name of the seam nor its words say what
kind of seam it is.

Why it matters.

One of the two numbers is wrong, and the maker finds out when both pieces are done.

Example.

    pieces:
      - name: Front
        shape: flat
        edges: {hem: 30}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {hem: 28}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - front hem = back hem

Written right.

    pieces:
      - name: Front
        shape: flat
        edges: {hem: 30}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {hem: 30}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - front hem = back hem

Whose rule.

Arithmetic: edges that meet agree.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import mismatched_joins
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("edges-differ", Severity.ERROR, "arithmetic", "Two edges that meet do not agree.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per seam and size."""
    for mismatch in mismatched_joins(checked, "edges"):
        yield mismatch.told(RULE, "These two edges meet and do not agree.")
