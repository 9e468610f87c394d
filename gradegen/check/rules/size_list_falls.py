"""What it finds.

A stated count or a foundation chain, written as a size list, that rises over most sizes and falls from one to the next.

Why it matters.

Two numbers that changed places, or a digit mistyped, look just like this. A list that falls all the way, as a count of
plain rows may, is left alone.

Example.

    pieces:
      - name: Scarf
        shape: flat
        rows: |
          Row 1: Ch 41 (45, 43, 53, 57). Sc in 2nd ch from hook, sc in each ch across. (40 (44, 42, 52, 56) sc)

Written right.

    pieces:
      - name: Scarf
        shape: flat
        rows: |
          Row 1: Ch 41 (45, 49, 53, 57). Sc in 2nd ch from hook, sc in each ch across. (40 (44, 48, 52, 56) sc)

Whose rule.

Common practice: a larger size seldom takes fewer stitches.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.at_hand import place_in
from gradegen.design.checked import Checked
from gradegen.design.rows import Chain, Number, Row
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("size-list-falls", Severity.WARNING, "common practice", "The numbers fall in a larger size.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per row: its first list that rises and falls."""
    for piece in checked.pattern.pieces:
        for row in piece.rows:
            yield from _first_fall(checked, row)


def _first_fall(checked: Checked, row: Row) -> Iterator[Finding]:
    for number in _counts_of(row):
        values = [value for value in number.values if value is not None]
        falls = [spot for spot in range(1, len(values)) if values[spot] < values[spot - 1]]
        rises = sum(1 for spot in range(1, len(values)) if values[spot] > values[spot - 1])
        if len(values) == len(number.values) == len(checked.sizes) and falls and rises > len(falls):
            size = checked.sizes[falls[0]]
            yield RULE.at(
                place_in(number, size, len(checked.sizes)),
                "This list rises over the sizes, but falls here.",
                size=size.name,
                row=row.label.text or None,
                expected=f"{values[falls[0] - 1]} or more",
                found=str(values[falls[0]]),
            )
            return


def _counts_of(row: Row) -> Iterator[Number]:
    if row.steps and isinstance(row.steps[0], Chain):
        yield row.steps[0].number
    yield from (stated.number for stated in row.stated)
