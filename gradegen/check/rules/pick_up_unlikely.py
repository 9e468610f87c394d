"""What it finds.

Stitches picked up along row edges whose number is more than a twentieth away from what the ratio gives, or picked up
one for one and not as many as there are.

Why it matters.

Too many stitches and the border ruffles, too few and it draws in; either shows all the way round a neck or a front.

Example.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - front band: {pick up: 50, along: front rows, ratio: 3 for 4}

Written right.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-60: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
    seams:
      - front band: {pick up: 45, along: front rows, ratio: 3 for 4}

Whose rule.

Common practice: the ratio of stitches to rows is that of the two gauges; a twentieth is our own limit.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import picked_up
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.rounding import nearest_whole

RULE = Rule("pick-up-unlikely", Severity.ERROR, "common practice", "Too many or too few stitches to pick up.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per pick-up and size."""
    for one in picked_up(checked):
        if abs(one.count - one.offered) > one.within:
            whole = nearest_whole(one.offered)
            yield RULE.at(
                one.seam.place,
                f"Too {'many' if one.count > one.offered else 'few'} stitches are picked up here.",
                size=one.size,
                expected=f"{'about ' if one.within else ''}{whole} sts",
                found=f"{one.count} sts",
                because=one.working,
                hint=f"pick up {whole} sts",
            )
