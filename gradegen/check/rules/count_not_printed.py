"""What it finds.

More than three rows one after the other that change the number of stitches and print no count.

Why it matters.

A printed count is what makers ask for most: it shows a slip in the row it happened, not ten rows later.

Example.

    pieces:
      - name: Disc
        shape: spiral
        rows: |
          Rnd 1: 6 sc in magic ring. (6 sc)
          Rnd 2: 2 sc in each st around.
          Rnd 3: *Sc in next st, 2 sc in next st; rep from * around.
          Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around.
          Rnd 5: *Sc in next 3 sts, 2 sc in next st; rep from * around.

Written right.

    pieces:
      - name: Disc
        shape: spiral
        rows: |
          Rnd 1: 6 sc in magic ring. (6 sc)
          Rnd 2: 2 sc in each st around. (12 sc)
          Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)
          Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (24 sc)
          Rnd 5: *Sc in next 3 sts, 2 sc in next st; rep from * around. (30 sc)

Whose rule.

Common practice.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding, Rule, Severity
from gradegen.reckon.seams.edges_of_pieces import rows_of

RULE = Rule("count-not-printed", Severity.NOTE, "common practice", "Rows change their count and do not print it.")
MOST = 3  # changing rows without a count, one after the other; common practice, no source


def find(checked: Checked) -> Iterator[Finding]:
    """One finding at the first row that is one too many, for the first size in which it happens."""
    for piece in checked.pattern.pieces:
        for size in checked.sizes:
            row = _one_too_many(checked, piece, size)
            if row is not None:
                yield RULE.at(
                    row.row.place,
                    f"More than {MOST} rows change their count before this one prints none either.",
                    row=row.label,
                    hint=f"({row.made} sts)" if len(checked.sizes) == 1 else None,
                )
                break


def _one_too_many(checked: Checked, piece: Piece, size: GradedSize) -> WorkedRow | None:
    silent, last = 0, None
    for row in rows_of(checked, piece, size):
        if row.made is None:
            silent, last = 0, None
            continue
        changes = last is not None and row.made != last
        silent = silent + 1 if changes and not row.row.stated else 0
        last = row.made
        if silent > MOST:
            return row
    return None
