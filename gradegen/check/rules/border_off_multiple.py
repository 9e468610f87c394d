"""What it finds.

Stitches picked up for a border that are not on the multiple the border needs.

Why it matters.

The border's repeat does not come out even, and a maker finds out at the end of its first row. The nearest numbers that
fit are named.

Example.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - front band: {pick up: 45, along: front rows, ratio: 3 for 4, multiple: 4, plus: 2}

Written right.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - front band: {pick up: 46, along: front rows, ratio: 3 for 4, multiple: 4, plus: 2}

Whose rule.

Arithmetic: a border is k times its multiple, plus its edge stitches.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import picked_up
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("border-off-multiple", Severity.ERROR, "arithmetic", "The border needs another multiple.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per border and size."""
    for one in picked_up(checked):
        multiple, plus = one.seam.multiple, one.seam.plus
        over = (one.count - plus) % multiple if multiple else 0
        if multiple and over:
            fits = f"{one.count - over} or {one.count - over + multiple} sts"
            extra = f" plus {plus}" if plus else ""
            yield RULE.at(
                one.seam.place,
                "These stitches are not on the multiple of the border.",
                size=one.size,
                expected=fits,
                found=f"{one.count} sts",
                because=f"a multiple of {multiple}{extra} leaves {over} over",
                hint=f"pick up {fits}",
            )
