"""What it finds.

Increases or decreases "evenly" in a row that does not say where they go. The hint spaces them for each size.

Why it matters.

"Evenly" leaves the sum to the maker, in her size, with the remainder in her hand; most will put it at the end of the
row.

Example.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 43. Sc in 2nd ch from hook, sc in each ch across. (42 sc)
          Row 2: Ch 1 (does not count as a st), turn, sc across, decreasing 6 sts evenly. (36 sc)

Written right.

    pieces:
      - name: Front
        shape: flat
        rows: |
          Row 1: Ch 43. Sc in 2nd ch from hook, sc in each ch across. (42 sc)
          Row 2: Ch 1 (does not count as a st), turn, (sc in next 5 sts, sc2tog) 6 times. (36 sc)

Whose rule.

Trade standard: spacing is given; the remainder is spread, never put at the end.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.at_hand import number_in
from gradegen.check.spacing import spacing_words
from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.passages import Shaping
from gradegen.design.pattern import Piece
from gradegen.design.rows import Change
from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding, Rule, Severity
from gradegen.reckon.seams.edges_of_pieces import rows_of
from gradegen.work.edge.edges import stitches

RULE = Rule("spacing-not-given", Severity.WARNING, "trade standard", "Where the changes of this row go is not said.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per row and size."""
    for piece in checked.pattern.pieces:
        for size in checked.sizes:
            for row in rows_of(checked, piece, size):
                yield from _unspaced(checked, piece, size, row)


def _unspaced(checked: Checked, piece: Piece, size: GradedSize, row: WorkedRow) -> Iterator[Finding]:
    for change in _changes(row):
        number = number_in(change.number, size, len(checked.sizes))
        if number and row.status == "proved":
            words = spacing_words(stitches(row.before), change.sign * number, row.units, piece.shape == "flat")
            yield RULE.at(
                change.place,
                "Say where these go.",
                size=size.name,
                row=row.label or None,
                hint=words,
            )


def _changes(row: WorkedRow) -> Iterator[Change]:
    """The changes of a row, and of a passage only its first: for the later ones the count has changed."""
    for step in row.row.steps:
        if isinstance(step, Change) and step.where == "evenly":
            yield step
        elif isinstance(step, Shaping) and step.change is not None and step.change.where == "evenly":
            yield step.change
            return
