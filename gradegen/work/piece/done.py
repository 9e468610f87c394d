"""What one size has come to under one label, and what is told of it."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from gradegen.design.rows import Row
from gradegen.design.schedule import TableRow
from gradegen.design.worked import Status, WorkedRow
from gradegen.findings import Place
from gradegen.trade.stitches import stitches
from gradegen.work.edge.stops import Fault, Unclear
from gradegen.work.piece.piece import NOT_FOLLOWED, PieceWork
from gradegen.work.piece.telling import faults_of, readings_of
from gradegen.work.row.row import Outcome
from gradegen.work.row.settle import Settled

UNCERTAIN = "what this part is worked into is not certain"


@dataclass(slots=True)
class Done:
    """What one size has come to under one label."""

    first: Outcome | None = None
    last: Outcome | None = None
    times: int = 0
    census: dict[str, int] = field(default_factory=dict)
    fault_at: Place | None = None
    blamed: Row | None = None
    against_note: bool = False
    merged: tuple[TableRow, ...] = ()
    stood: object = None


def worked_row(piece: PieceWork, row: Row, i: int, done: Done, settled: Settled | None) -> WorkedRow:
    """What came of a label in one size."""
    outcome = done.last or Outcome(piece.standings[i].edge or ())
    size = piece.sizes[i]
    at = done.fault_at if done.blamed is not None and outcome.fault is not None and done.blamed is not row else None
    if outcome.unsure and not outcome.fault:
        outcome = replace(outcome, made=None, units={}, mismatches=(), unclear=Unclear(outcome.unsure, row.place))
    findings = tuple(faults_of(outcome, row, size, done.against_note, at))
    status: Status = "wrong" if findings else "not-checked" if outcome.unclear or done.last is None else "proved"
    first = done.first or outcome
    return WorkedRow(
        row=row,
        label=row.label.text,
        size=size,
        status=status,
        before=first.before,
        after=outcome.after,
        made=outcome.made,
        units=outcome.units,
        taken=first.taken,
        times=done.times,
        census=dict(done.census),
        reading=readings_of(settled, row) if settled else (),
        steps=outcome.trace,
        findings=findings,
        why_not=outcome.unclear.why if outcome.unclear else "",
        merged=done.merged if status == "proved" else (),
    )


def unworked_row(piece: PieceWork, row: Row, i: int, applies: bool, why: str) -> WorkedRow:
    """A row that this size does not work, or that nobody can."""
    edge = piece.standings[i].edge or ()
    return WorkedRow(
        row=row,
        label=row.label.text,
        size=piece.sizes[i],
        status="not-checked",
        before=edge,
        after=edge,
        made=None,
        units={},
        taken=None,
        times=0,
        census={},
        reading=(),
        steps=(),
        findings=(),
        why_not=why,
        applies=applies,
    )


def is_off_by_one(outcome: Outcome) -> bool:
    """True when a printed count is one more or less than what was made, as a chain counted or not makes it."""
    return any(
        abs(missed.written - missed.worked) == 1 and _is_of_stitches(missed.unit) for missed in outcome.mismatches
    )


def _is_of_stitches(unit: str) -> bool:
    """Only a count of stitches hangs on whether a chain is one: not a count of fans or spaces."""
    known = stitches().get(unit)
    return unit == "sts" or (known is not None and not known.varies)


def stopped(stop: Fault | Unclear) -> Outcome:
    """An outcome that holds only why it came to nothing."""
    outcome = Outcome(())
    if isinstance(stop, Fault):
        outcome.fault = stop
    else:
        outcome.unclear = stop
    return outcome


def falls_short(done: Done) -> bool:
    """True for a row that does not fit what it is worked into, as far as that can be said."""
    last = done.last
    if last is None:
        return False
    uncertain = last.unclear is not None and last.unclear.why == UNCERTAIN
    return uncertain or last.fault is not None or bool(last.mismatches)


def has_failed(done: Done) -> bool:
    """True where the last row under the label could not be worked, or only by its own numbers on nothing known."""
    last = done.last
    if last is None or last.unclear is None:
        return last is not None and last.fault is not None
    return last.made is None or last.unclear.why == NOT_FOLLOWED
