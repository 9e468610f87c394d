"""What it finds.

A line labelled Row that is joined like a round, or a line labelled Round (Rnd) that is turned like a row and not
joined, in a piece whose shape says the other.

Why it matters.

The word tells the maker whether to turn or to go on. Read the wrong way, a hat turns into a flap.

Example.

    pieces:
      - name: Cuff
        shape: joined rounds
        rows: |
          Foundation: Ch 20. Join with sl st in first ch.
          Rnd 1: Ch 1 (does not count as a st), sc in each ch around, join with sl st in first sc. (20 sc)
          Row 2: Ch 1 (does not count as a st), sc in each st around, join with sl st in first sc. (20 sc)

Written right.

    pieces:
      - name: Cuff
        shape: joined rounds
        rows: |
          Foundation: Ch 20. Join with sl st in first ch.
          Rnd 1: Ch 1 (does not count as a st), sc in each ch around, join with sl st in first sc. (20 sc)
          Rnd 2: Ch 1 (does not count as a st), sc in each st around, join with sl st in first sc. (20 sc)

Whose rule.

Common practice: rows are turned, rounds are joined or run on. A round inside a flat piece, or rows inside a round one,
are left alone when their own words bear the label out.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.checked import Checked
from gradegen.design.pattern import Piece
from gradegen.design.rows import Join, Row, Turn
from gradegen.findings import Finding, Rule, Severity

RULE = Rule(
    "row-or-round-mixed", Severity.WARNING, "common practice", "Row or round: the label says one, the words the other."
)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per label that neither its piece nor its own words bear out."""
    for piece in checked.pattern.pieces:
        for row in piece.rows:
            right = _right_word(piece, row)
            if right is not None:
                yield RULE.at(
                    row.label.place,
                    f"This is labelled as a {row.label.kind}, but it is worked as a {right}.",
                    row=row.label.text,
                    expected=right.capitalize(),
                    found=row.label.text,
                )


def _right_word(piece: Piece, row: Row) -> str | None:
    joins = any(isinstance(step, Join) for step in row.steps)
    turns = any(isinstance(step, Turn) for step in row.steps)
    if piece.shape != "flat" and row.label.kind == "row" and joins and not turns:
        return "round"
    if piece.shape == "flat" and row.label.kind == "round" and turns and not joins:
        return "row"
    return None
