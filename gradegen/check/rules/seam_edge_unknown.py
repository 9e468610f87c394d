"""What it finds.

A seam, or an edge of a piece, that names something the pattern does not have.

Why it matters.

A seam whose edges are not known is not checked, and its fault would go unseen.

Example.

    pieces:
      - name: Front
        shape: flat
        edges: {shoulder: 10}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
    seams:
      - front shoulder to front sholder

Written right.

    pieces:
      - name: Front
        shape: flat
        edges: {shoulder: 10}
        rows: |
          Row 1: Ch 31. Sc in 2nd ch from hook, sc in each ch across. (30 sc)
    seams:
      - front shoulder to front shoulder

Whose rule.

File format: a seam names edges of pieces, counts, schedules or measures.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.check.seams import unknown_edges
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.read.yaml.fields import nearest
from gradegen.reckon.seams.edges_of_pieces import names_of_edges

RULE = Rule("seam-edge-unknown", Severity.ERROR, "file format", "A seam names an edge the pattern does not have.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per name."""
    for name in unknown_edges(checked):
        guess = nearest(name.name, names_of_edges(checked))
        hint = f"Did you mean {guess}?" if guess else "Name an edge as: front shoulder, front rows, front end."
        yield RULE.at(name.place, f"There is no edge {name.name} here.", hint=hint)
