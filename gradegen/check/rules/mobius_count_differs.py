"""What it finds.

A half-twist band on a chain of N whose rounds never meet more than N stitches: they run along the tops of the chain
again and again and leave its other side out.

Why it matters.

A band with a half twist has one edge, and that edge passes along both sides of the chain. A maker who goes round until
the round closes works 2N stitches; a pattern that counts N is out by half in stitches, yarn and depth.

Example.

    pieces:
      - name: Band
        shape: half-twist band
        width: around
        rows: |
          Foundation: Ch {band}. Give one end a half turn and join with sl st in first ch.
          Rnd 1: Ch 1 (does not count as a st), sc in each ch around, join with sl st in first sc. ({band} sc)
          Rnd 2: Ch 1 (does not count as a st), sc in each sc around, join with sl st in first sc. ({band} sc)

Written right.

    pieces:
      - name: Band
        shape: half-twist band
        width: around
        rows: |
          Foundation: Ch {band}. Give one end a half turn and join with sl st in first ch.
          Rnd 1: Ch 1 (does not count as a st), sc in each ch around, then sc in the free loop of each ch along the
            other side, join with sl st in first sc. ({2 * band} sc)
          Rnd 2: Ch 1 (does not count as a st), sc in each sc around, join with sl st in first sc. ({2 * band} sc)

Whose rule.

Arithmetic: a strip with a half twist has a single edge, twice as long as the strip.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.at_hand import number_in
from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.design.rows import Chain
from gradegen.findings import Finding, Rule, Severity
from gradegen.reckon.seams.edges_of_pieces import rows_of

RULE = Rule(
    "mobius-count-differs", Severity.ERROR, "arithmetic", "A half-twist round leaves one side of the chain out."
)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per band and size, at the first round."""
    for piece in checked.pattern.pieces:
        if piece.shape == "half-twist band":
            for size in checked.sizes:
                yield from _one_sided(checked, piece, size)


def _one_sided(checked: Checked, piece: Piece, size: GradedSize) -> Iterator[Finding]:
    rows = rows_of(checked, piece, size)
    chain = _chain(checked, piece, size)
    rounds = [row for row in rows[1:] if not row.row.is_prose]
    worked = sum(row.times for row in rounds)
    if chain is None or worked < 2 or any(row.status != "proved" for row in rows):
        return
    if all((row.taken or 0) <= chain and (row.made or 0) <= chain for row in rounds):
        first = rounds[0]
        yield RULE.at(
            first.row.stated[0].place if first.row.stated else first.row.place,
            "A half-twist round meets both sides of the chain; these rounds meet only one.",
            size=size.name,
            row=first.label,
            expected=f"2 x {chain} = {2 * chain} sts",
            found=f"{first.taken} sts",
            hint="After the tops, go on along the other side: sc in the free loop of each ch along the other side.",
        )


def _chain(checked: Checked, piece: Piece, size: GradedSize) -> int | None:
    """The chains of the foundation, where the piece starts from a chain alone."""
    steps = piece.rows[0].steps if piece.rows else ()
    return number_in(steps[0].number, size, len(checked.sizes)) if steps and isinstance(steps[0], Chain) else None
