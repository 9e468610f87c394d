"""What it finds.

A seam that hangs on rows which could not be followed, so that its two sides were not compared.

Why it matters.

What was not checked may still be wrong; say it rather than let it pass for proved.

Example.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Row 2: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Row 3: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Row 4: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Row 5: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Row 6: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Row 7: Ch 1, turn, work as for the other front, reversing all shaping.
      - name: Back
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Row 2: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Row 3: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Row 4: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Row 5: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Row 6: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - side: front rows = back rows

Written right.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Row 2: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Row 2: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - side: front rows = back rows

Whose rule.

House: what was not checked is told.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import unfollowed_seams
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("seam-not-checked", Severity.NOTE, "house", "A seam was not checked.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per seam and size."""
    for seam, size, why in unfollowed_seams(checked):
        yield RULE.at(seam.place, "The two sides of this seam could not be compared.", size=size, because=why)
