"""What it finds.

A multiple stated in the counts or in the notes that lets chains through on which some row does not come out even. The
true multiple is derived from the rows alone, by working them on trial chains.

Why it matters.

Whoever makes another size by the stated multiple finds out a row or more later, and starts again.

Example.

    counts:
      band: {across: around, gauge: mesh, multiple: 2}
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

Arithmetic: a row comes out even or it does not.
"""

# ruff: noqa: E501

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.reckon.multiples.stated_multiple import WrongMultiple, compare_multiples

RULE = Rule("multiple-stated-wrong", Severity.ERROR, "arithmetic", "The stated multiple does not fit the rows.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per multiple that lets a chain through which does not come out."""
    for one in compare_multiples(checked):
        if isinstance(one, WrongMultiple):
            yield RULE.at(
                one.stated.place,
                f"The multiple of {one.stated.where} does not fit the rows.",
                row=one.stopped[0] or None,
                expected=f"{one.derived.words} ch",
                found=f"{one.stated.words} ch",
                because=f"worked with {one.chains} ch, {one.stopped[0] or 'a row'} does not come out even; "
                f"{one.derived.proved[0]} to {one.derived.proved[-1]} ch were worked to find those that do",
            )
