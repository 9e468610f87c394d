"""A piece worked on a trial: with so many foundation chains as nobody wrote, in the reading the pattern is meant in."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import ClassVar

from gradegen.design.edge import Edge
from gradegen.design.graded import GradedSize
from gradegen.design.notes import NoteFacts
from gradegen.design.pattern import Pattern, Piece
from gradegen.design.rows import Chain, Number, Repeat, Row, Step, Times
from gradegen.design.worked import WorkedRow
from gradegen.findings import Place
from gradegen.reckon.multiples.foundation import Foundation, numbers_with
from gradegen.work.order.sequence import RowsInOrder
from gradegen.work.piece.piece import PieceWork, without_counts
from gradegen.work.row.row import Outcome
from gradegen.work.row.settle import Reading, Settled
from gradegen.work.rows import rows_in_order

Readings = dict[Place, Reading]


class RecordingPiece(PieceWork):
    """Works rows as ever and keeps the reading each was settled in."""

    readings: Readings

    def settle(self, row: Row, wanted: Sequence[int], notes: NoteFacts | None = None) -> Settled:
        """As settled from the words and the printed counts."""
        settled = super().settle(row, wanted, notes)
        self.readings.setdefault(row.place, settled.reading)
        return settled


class KnownPiece(PieceWork):
    """Works rows in readings that are known already, and never looks for others."""

    one_by_one: ClassVar[bool] = True
    readings: Readings
    done: dict[object, Settled]
    least_runs: int

    def settle(self, row: Row, wanted: Sequence[int], notes: NoteFacts | None = None) -> Settled:
        """As the known reading has it; a row without one is settled as ever."""
        reading = self.readings.get(row.place)
        if reading is None:
            return super().settle(row, wanted, notes)
        key = (row.place, id(notes), tuple(wanted), *(self.key(size) for size in wanted))
        if key not in self.done:
            outcomes, choices = self._work(row, wanted, reading, notes)
            runs = self.least_runs
            if any(outcome.balances and _may_have_skipped(row, outcome, runs) for outcome in outcomes):
                once = replace(row, steps=tuple(_at_least(row.steps, runs)))
                stricter, _ = self._work(once, wanted, reading, notes)
                outcomes = [one if two.balances else two for one, two in zip(outcomes, stricter, strict=True)]
            self.done[key] = Settled(outcomes, reading, choices, [])
        return self.done[key]


@dataclass(frozen=True, slots=True)
class Tried:
    """What came of so many chains.

    `stopped`: row label and rule (or why it is not clear) where the work stopped. `is_clear` False: a row could not be
    followed, so nothing is known of it.
    """

    chains: int
    stopped: tuple[str, str] | None
    rows: tuple[WorkedRow, ...]
    is_clear: bool = True

    @property
    def works(self) -> bool:
        """True when every row came out even."""
        return self.stopped is None

    @property
    def edges(self) -> tuple[Edge, ...]:
        """What every row left."""
        return tuple(row.after for row in self.rows)

    @property
    def first_made(self) -> int | None:
        """Stitches after the first row that is more than a chain."""
        return next((row.made for row in self.rows if row.made and row.row.label.name != "Foundation"), None)


@dataclass(slots=True)
class Trial:
    """One foundation of a pattern, ready to be worked with any number of chains in one size's rows.

    `least_runs`: how often every repeat to the end has to run.
    """

    pattern: Pattern
    sizes: tuple[GradedSize, ...]
    slot: int
    foundation: Foundation
    least_runs: int = 1
    readings: Readings = field(default_factory=dict)

    def __post_init__(self) -> None:
        self._work(self.sizes[self.slot].numbers(), None, RecordingPiece)

    def work(self, chains: int) -> Tried:
        """The pieces on this foundation, worked with so many chains and whatever counts follow from it."""
        count = self.foundation.count_for(chains)
        if count is None or count < 0:
            return Tried(chains, (self.foundation.row.label.text, "no count"), ())
        size = self.sizes[self.slot]
        numbers = numbers_with(self.pattern, size, self.foundation.count, count)
        return self._work(numbers, chains, KnownPiece)

    def _work(self, numbers: Mapping[str, int], chains: int | None, kind: type[PieceWork]) -> Tried:
        rows: list[WorkedRow] = []
        order: RowsInOrder | None = None
        for piece in self.foundation.pieces:
            order = self._order(piece, numbers, kind, order)
            for row in self._rows(piece, chains):
                (one,) = [worked for worked in order.work(row) if worked.size == self.sizes[self.slot].name]
                if one.applies and one.why_not != "prose":
                    rows.append(one)
                    if chains is not None and one.status != "proved":
                        why = one.findings[0].rule if one.findings else one.why_not
                        return Tried(chains, (one.label, why), tuple(rows), bool(one.findings))
        return Tried(chains or 0, None, tuple(rows))

    def _order(
        self, piece: Piece, numbers: Mapping[str, int], kind: type[PieceWork], before: RowsInOrder | None
    ) -> RowsInOrder:
        slot = self.slot
        standings = [before.piece.standings[slot]] * len(self.sizes) if before is not None else []
        order = rows_in_order(self.pattern, piece, self.sizes, standings, kind)
        order.piece.counts = [numbers] * len(self.sizes)
        order.piece.notes = replace(order.piece.notes, multiple=None)
        order.piece.readings = self.readings  # type: ignore[attr-defined]
        order.piece.done = {}  # type: ignore[attr-defined]
        order.piece.least_runs = self.least_runs  # type: ignore[attr-defined]
        return order

    def _rows(self, piece: Piece, chains: int | None) -> Iterator[Row]:
        """The piece's rows for this size alone; without printed counts, and with the trial chain, in a trial."""
        only = (self.sizes[self.slot].name,)
        for row in piece.rows:
            mine = row if row.sizes is not None and only[0] not in row.sizes else replace(row, sizes=only)
            if chains is None:
                yield mine
                continue
            steps = tuple(self._with_chain(mine, chains)) if row is self.foundation.row else mine.steps
            yield without_counts(replace(mine, steps=steps))

    def _with_chain(self, row: Row, chains: int) -> Iterator[Step]:
        for step in row.steps:
            if step is self.foundation.chain:
                assert isinstance(step, Chain)
                yield replace(step, number=Number((chains,), place=step.number.place))
            else:
                yield step


def _may_have_skipped(row: Row, outcome: Outcome, runs: int) -> bool:
    """True when a repeat to the end is not known to have run so often."""
    ran = {fact.place for fact in outcome.facts if fact.times >= runs}
    return any(_is_open(step) and step.place not in ran for step in row.steps)


def _is_open(step: Step) -> bool:
    return isinstance(step, Repeat) and step.times.how == "bound" and step.times.stop_at is None


def _at_least(steps: Iterable[Step], runs: int) -> Iterator[Step]:
    """Steps whose repeats to the end must run so often: nobody writes `*shell; rep from * across` for no shell."""
    for step in steps:
        if isinstance(step, Repeat) and _is_open(step):
            yield replace(step, times=Times("in all", Number((runs,), place=step.place)))
        yield step
