"""What it finds.

A yoke divided into parts that do not make the whole, or an underarm chain that one side meets and the other does not.

Why it matters.

Stitches are lost at the division, or appear from nowhere; a maker counts and recounts the one row that is hardest to
undo.

Example.

    pieces:
      - name: Front
        shape: flat
        edges: {part: 20}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {part: 20}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - division: {of: 96, body parts: [front part, back part], sleeve part: 26, underarm: 6, body: 50, sleeve: 32}

Written right.

    pieces:
      - name: Front
        shape: flat
        edges: {part: 22}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
      - name: Back
        shape: flat
        edges: {part: 22}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - division: {of: 96, body parts: [front part, back part], sleeve part: 26, underarm: 6, body: 56, sleeve: 32}

Whose rule.

Arithmetic: fronts, back and two sleeves make the yoke; body and sleeve each meet the underarm chain once.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import unbalanced_divisions
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule(
    "underarm-not-balanced", Severity.ERROR, "arithmetic", "Stitches are lost or found at the division of a yoke."
)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per sum that does not come out, per size."""
    for mismatch in unbalanced_divisions(checked):
        yield mismatch.told(RULE, "The parts of this division do not make what is worked after it.")
