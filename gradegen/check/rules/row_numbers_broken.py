"""What it finds.

A row number that skips one or more, or stands twice in a row, inside one piece.

Why it matters.

Makers tick rows off by number, and other rows point back to them by number. A missing number reads like a missing row.

Example.

    pieces:
      - name: Scarf
        shape: flat
        rows: |
          Row 1: Ch 21. Sc in 2nd ch from hook, sc in each ch across. (20 sc)
          Row 2: Ch 1 (does not count as a st), turn, sc in each st across. (20 sc)
          Row 2: Ch 1 (does not count as a st), turn, sc in each st across. (20 sc)

Written right.

    pieces:
      - name: Scarf
        shape: flat
        rows: |
          Row 1: Ch 21. Sc in 2nd ch from hook, sc in each ch across. (20 sc)
          Row 2: Ch 1 (does not count as a st), turn, sc in each st across. (20 sc)
          Row 3: Ch 1 (does not count as a st), turn, sc in each st across. (20 sc)

Whose rule.

Common practice: numbers run on inside a section; they may start again at 1 or 2, and may count down.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gradegen.check.at_hand import number_in
from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.passages import EvenRows, Shaping
from gradegen.design.pattern import Piece
from gradegen.design.rows import Label, Row, RowsAgain
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("row-numbers-broken", Severity.WARNING, "common practice", "A row number is missing or doubled.")


@dataclass(frozen=True, slots=True)
class _Span:
    """The numbers one label covers in one size."""

    kind: str
    first: int
    last: int
    name: str = ""


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per label and size that does not go on from the label before."""
    for piece in checked.pattern.pieces:
        for size in checked.sizes:
            yield from _broken(checked, piece, size)


def _broken(checked: Checked, piece: Piece, size: GradedSize) -> Iterator[Finding]:
    before: _Span | None = None
    left_out: _Span | None = None
    for row in piece.rows:
        span = _span(row.label, size, len(checked.sizes))
        if row.sizes is not None and size.name not in row.sizes:
            left_out = span
            continue
        nearest = [one for one in (before, left_out) if one is not None]  # a row of other sizes may keep its number
        left_out = None
        if span is not None and before is not None and span.kind == before.kind and not _any_goes_on(nearest, span):
            yield RULE.at(
                row.label.place,
                "This row number is out of turn.",
                size=size.name,
                row=row.label.text,
                expected=f"{before.last + 1}",
                found=f"{span.first}",
            )
        before = None if span is None or _works_more(row) else span


def _any_goes_on(nearest: Sequence[_Span], span: _Span) -> bool:
    return any(_goes_on(one, span) for one in nearest)


def _goes_on(before: _Span, span: _Span) -> bool:
    if span.first == before.first and span.name and before.name and span.name != before.name:
        return True  # `Row 1 forward`, `Row 1 return`
    counts_down = span.first == before.last - 1
    return span.first == before.last + 1 or span.first <= 2 < before.last or counts_down or _starts_again(before, span)


def _starts_again(before: _Span, span: _Span) -> bool:
    return span.first == 1 and before.last >= 1 and (before.first, before.last) != (1, 1)


def _span(label: Label, size: GradedSize, sizes: int) -> _Span | None:
    if label.first is None or label.listed:
        return None
    first = number_in(label.first, size, sizes)
    last = first if label.last is None else number_in(label.last, size, sizes)
    if first is None or last is None:
        return None
    return _Span(label.kind, first, last, label.name)


def _works_more(row: Row) -> bool:
    """True when the row's words work rows beyond its own label, so that the next number can't be known."""
    ranged = row.label.last is not None
    return any(isinstance(step, RowsAgain) and (step.times or step.until) for step in row.steps) or (
        not ranged and any(isinstance(step, (EvenRows, Shaping)) for step in row.steps)
    )
