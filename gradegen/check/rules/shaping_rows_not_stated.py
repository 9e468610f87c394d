"""What it finds.

Rows filled by a shaping schedule under a label that does not say how many rows they are.

Why it matters.

A maker cannot tell when she is done, and a slip in `every 4th row` changes no stitch count, so nothing would find it.
With their number in the label the rows are proved too.

Example.

    counts:
      back: {across: "[18, 20, 22, 24, 26] in", gauge: mesh, parity: even}
    shaping:
      waist: {from: back, to: back - 8, over: 24}
    pieces:
      - name: Back
        shape: flat
        rows: |
          Row 1: Ch {back + 1}. Sc in 2nd ch from hook, sc in each ch across. ({back} sc)
          Next rows: {waist}. ({back - 8} sc)

Written right.

    counts:
      back: {across: "[18, 20, 22, 24, 26] in", gauge: mesh, parity: even}
    shaping:
      waist: {from: back, to: back - 8, over: 24}
    pieces:
      - name: Back
        shape: flat
        rows: |
          Row 1: Ch {back + 1}. Sc in 2nd ch from hook, sc in each ch across. ({back} sc)
          Next 24 rows: {waist}. ({back - 8} sc)

Whose rule.

House: publishers print both, the rate of the shaping and the rows or the length it ends on.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.checked import Checked
from gradegen.design.pattern import Piece
from gradegen.design.rows import Row
from gradegen.design.schedule import ScheduleRule
from gradegen.findings import Finding, Rule, Severity

RULE = Rule(
    "shaping-rows-not-stated", Severity.WARNING, "house", "How many rows this shaping is spread over is not said."
)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per row, at its label."""
    for piece in checked.pattern.pieces:
        for row in piece.rows:
            rule = next((one for name in _schedules(row) if (one := _over_rows(checked, name)) is not None), None)
            if rule is not None and not _says_how_many(row):
                yield RULE.at(
                    row.label.place,
                    f"How many rows {rule.name} is spread over is not said.",
                    row=row.label.text or None,
                    hint=_label(checked, piece, rule),
                )


def _schedules(row: Row) -> Iterator[str]:
    yield from (one.schedule for one in row.sentences)


def _over_rows(checked: Checked, name: str) -> ScheduleRule | None:
    """The schedule over rows of this name, or the longest of those worked at the same time under it."""
    rule = checked.pattern.shaping.get(name)
    if rule is not None and rule.together:
        parts = [_over_rows(checked, text.text) for text in rule.together]
        return next((one for one in parts if one is not None), None)
    return rule if rule is not None and rule.way == "rows" and rule.over is not None else None


def _says_how_many(row: Row) -> bool:
    label = row.label
    return label.last is not None or label.rows is not None or bool(label.listed)


def _label(checked: Checked, piece: Piece, rule: ScheduleRule) -> str:
    """`Next {sleeve rounds - 3} rnds: {taper}`, from the schedule's own words."""
    assert rule.over is not None
    place = rule.over.place
    source = checked.pattern.sources.get(place.file)
    lines = source.text.split("\n") if source is not None else []
    words = lines[place.line - 1][place.column - 1 : place.end_column - 1] if place.line <= len(lines) else ""
    kind = "rows" if piece.shape == "flat" else "rnds"
    many = words if words.isdigit() or not words else f"{{{words}}}"
    return f"Next {many or '...'} {kind}: {{{rule.name}}}"
