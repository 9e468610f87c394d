"""Rows that another row points back to, as they are worked again."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Aside, Even, Label, Row, RowsAgain, Step
from gradegen.work.edge.stops import Unclear
from gradegen.work.passage.passages import is_passage, one_of_passage


def plain_row(row: Row) -> Row:
    """A row to repeat: its steps once, whatever its own label's range or trailing repeats say."""
    steps = one_of_passage(row) if is_passage(row) else row.steps
    steps = tuple(step for step in steps if not isinstance(step, RowsAgain))
    if not steps:
        raise Unclear(f"{row.label.text or 'that row'} itself points to other rows", row.place)
    return replace(row, steps=steps, label=Label(row.label.text, row.label.kind, place=row.label.place))


def no_changes(again: RowsAgain) -> None:
    """Stop where the rows are repeated with a change that cannot be worked."""
    if any(not _harmless(step) for step in again.except_):
        raise Unclear("the row is repeated with a change", again.place)


def grows(row: Row) -> bool:
    """`Rep Row 3, adding 1 block on each row`: its words of how often hold for the first time only."""
    said = [step.text.split(" ")[0].lower() for step in row.steps if isinstance(step, Aside)]
    return any(word in ("adding", "losing", "increasing", "decreasing", "with") for word in said)


def _harmless(step: Step) -> bool:
    return isinstance(step, (Aside, Even))
