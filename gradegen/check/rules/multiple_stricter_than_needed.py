"""What it finds.

A stated multiple where a shorter one works just as well: a chain between two of the stated ones was worked, and every
row came out even. Plain rows, which come out on any chain, are left alone.

Why it matters.

A shorter step lets sizes come nearer to the body they are for. There may be a good reason for the longer one, such as
motifs that should meet; then this can stay.

Example.

    counts:
      band: {across: around, gauge: mesh, multiple: 6}
    pieces:
      - name: Band
        shape: half-twist band
        width: around
        rows: |
          Foundation: Ch {band}. Give one end a half turn and join with sl st in first ch.
          Rnd 1: Ch 1 (does not count as a st), sc in each ch around, then sc in the free loop of each ch along the other side,
            join with sl st in first sc. ({2 * band} sc)
          Rnd 2: Ch 1 (does not count as a st), *sc in next 2 sts, ch 1, sk next st; rep from * around, join with sl st in
            first sc.

Written right.

    counts:
      band: {across: around, gauge: mesh, multiple: 3}
    pieces:
      - name: Band
        shape: half-twist band
        width: around
        rows: |
          Foundation: Ch {band}. Give one end a half turn and join with sl st in first ch.
          Rnd 1: Ch 1 (does not count as a st), sc in each ch around, then sc in the free loop of each ch along the other side,
            join with sl st in first sc. ({2 * band} sc)
          Rnd 2: Ch 1 (does not count as a st), *sc in next 2 sts, ch 1, sk next st; rep from * around, join with sl st in
            first sc.

Whose rule.

Arithmetic: what comes out even is allowed.
"""

# ruff: noqa: E501

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.reckon.multiples.stated_multiple import StrictMultiple, compare_multiples

RULE = Rule(
    "multiple-stricter-than-needed",
    Severity.NOTE,
    "arithmetic",
    "A shorter multiple than the one stated works as well.",
)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per multiple that could be shorter."""
    for one in compare_multiples(checked):
        if isinstance(one, StrictMultiple):
            made = f" and makes {one.first_made} sts in the first row" if one.first_made else ""
            yield RULE.at(
                one.stated.place,
                f"The rows come out on a shorter multiple than {one.stated.where} states.",
                expected=f"a multiple of {one.step}" + (f" plus {left}" if (left := one.chains % one.step) else ""),
                found=one.stated.words,
                because=f"worked with {one.chains} ch, which the stated multiple leaves out, every row comes out even"
                + made,
                hint="Keep it where motifs should meet as they do now; else sizes can come nearer to the body.",
            )
