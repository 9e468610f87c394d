"""What it finds.

Something worked 0 times in a size, where the words do not say which sizes skip it.

Why it matters.

"0 times" makes a maker stop and wonder whether the list has a slip. "S: skip this part" does not.

Example.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-20: Dec 1 st at each end of every 4th row 0 (1, 2, 3, 4) times. (30 (28, 26, 24, 22) sc)

Written right.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Rows 2-20: Dec 1 st at each end of every 4th row 0 (1, 2, 3, 4) times (S: skip this part).
            (30 (28, 26, 24, 22) sc)

Whose rule.

Trade standard: a size that skips a part is told so.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from gradegen.check.at_hand import number_in, place_in
from gradegen.design.checked import Checked
from gradegen.design.passages import Shaping
from gradegen.design.rows import Number, Repeat, Row, RowsAgain, SizesOnly, Step
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("zero-times-not-worded", Severity.WARNING, "trade standard", "A size works something 0 times.")
_WORDED = re.compile(r"\b(?:skip|omit|do not work|don't work|not worked|leave out|only)\b", re.IGNORECASE)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per number of times and size."""
    if len(checked.sizes) < 2:
        return
    for piece in checked.pattern.pieces:
        for row in piece.rows:
            if not _WORDED.search(row.text):
                yield from _zeros(checked, row)


def _zeros(checked: Checked, row: Row) -> Iterator[Finding]:
    for number in _times_in(row.steps):
        counts = {size.name: number_in(number, size, len(checked.sizes)) for size in checked.sizes}
        if not any(counts.values()):
            continue
        for size in checked.sizes:
            works = row.sizes is None or size.name in row.sizes
            if works and counts[size.name] == 0:
                yield RULE.at(
                    place_in(number, size, len(checked.sizes)),
                    "This size works it 0 times; say that it is skipped.",
                    size=size.name,
                    row=row.label.text or None,
                    hint=f"({size.name}: skip this part)",
                )


def _times_in(steps: Iterable[Step]) -> Iterator[Number]:
    for step in steps:
        match step:
            case Shaping():
                yield from (
                    rate.times for one in (step, *step.together) for rate in one.rates if rate.times is not None
                )
            case Repeat():
                if step.times.number is not None:
                    yield step.times.number
                yield from _times_in(step.body)
            case SizesOnly():
                yield from _times_in(step.body)
            case RowsAgain():
                if step.times is not None:
                    yield step.times
