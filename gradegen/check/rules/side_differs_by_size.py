"""What it finds.

A row named RS or WS that other sizes reach on the other side, because the rows before it are even in number in some
sizes and odd in others.

Why it matters.

The maker of that size works a right-side row on the wrong side, and the shaping of every row after it is turned over.

Example.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1 (RS): Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Next 7 (7, 8, 9, 9) rows: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Next row (RS): Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)

Written right.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1 (RS): Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
          Next 7 (7, 9, 9, 9) rows: Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)
          Next row (RS): Ch 1 (does not count as a st), turn, sc in each st across. (30 sc)

Whose rule.

Arithmetic: rows that turn change sides, one after the other.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.reckon.seams.edges_of_pieces import rows_of

RULE = Rule("side-differs-by-size", Severity.ERROR, "arithmetic", "This row falls on the other side in some sizes.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per row and size that reaches it on the other side than it says, where another size does not."""
    for piece in checked.pattern.pieces:
        if piece.shape == "flat":
            yield from _in_piece(checked, piece)


def _in_piece(checked: Checked, piece: Piece) -> Iterator[Finding]:
    reached = {size.name: _sides(checked, piece, size) for size in checked.sizes}
    for row in piece.rows:
        sides = {name: found[row.place] for name, found in reached.items() if row.place in found}
        if row.side is None or row.side not in sides.values():
            continue
        for name, side in sides.items():
            if side != row.side:
                yield RULE.at(
                    row.label.place,
                    "In this size the row falls on the other side.",
                    size=name,
                    row=row.label.text or None,
                    expected=f"a {side} row",
                    found=f"a {row.side} row",
                    because="the rows before it are even in number in one size, odd in another",
                    hint="work one row more, or one fewer, before it in this size",
                )


def _sides(checked: Checked, piece: Piece, size: GradedSize) -> Mapping[Place, str]:
    """The side on which each row that names one is reached, counted from the first row that does."""
    found: dict[Place, str] = {}
    side: str | None = None
    for row in rows_of(checked, piece, size):
        if row.row.is_prose:
            continue
        first = row.row.side is not None and side is None
        side = row.row.side if first else side
        if row.row.side is not None and side is not None:
            found[row.row.place] = side
        side = _after(row, side)
    return found


def _after(row: WorkedRow, side: str | None) -> str | None:
    """The side of the row to come; None where the rows of this label could not be counted."""
    if side is None or row.made is None or not row.times:
        return None
    if row.times % 2 == 0:
        return side
    return "WS" if side == "RS" else "RS"
