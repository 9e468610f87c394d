"""The rows of one piece in one size, each with what sits on what, as long as they can be followed place by place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from gradegen.design.edge import Edge
from gradegen.design.graded import GradedSize
from gradegen.design.notes import NoteFacts
from gradegen.design.pattern import Pattern, Piece, Shape
from gradegen.design.rows import Row, Turn
from gradegen.design.worked import WorkedRow
from gradegen.findings import Place
from gradegen.work.beginnings import begins_anew, shape_of
from gradegen.work.edges import stitches, turned, turned_round
from gradegen.work.passages import is_passage
from gradegen.work.piece import PieceWork, without_counts
from gradegen.work.placing import MOST_PLACES, Placed, Placing, opened
from gradegen.work.row import Outcome, work_once
from gradegen.work.rows import explained
from gradegen.work.second_thoughts import LastRow
from gradegen.work.sequence import RowsInOrder
from gradegen.work.settle import Reading, Settled
from gradegen.work.walk import RepeatFact

Readings = Mapping[Place, Reading]


@dataclass(frozen=True, slots=True)
class PlacedRow:
    """One single row as worked.

    `row`: the written row whose steps were worked; `under`: the written row whose label it stands under (another one
    where a row says to repeat rows). `met`: for each place of the edge it met, which place of the row before that is.
    `times`: how many rows are worked under that label; of those that come back to the same edge only some are here.
    """

    row: Row
    under: Row
    placed: Placed
    met: tuple[int, ...]
    shape: Shape
    turns: bool
    census: Mapping[str, int]
    facts: tuple[RepeatFact, ...]
    times: int = 1


@dataclass(frozen=True, slots=True)
class PlacedPiece:
    """The rows that could be followed place by place; `worked`: all of the piece's rows. `lost`: why it ends early.

    `repeats`: the repeats that run more than once, each by its row's place and its own.
    """

    rows: tuple[PlacedRow, ...]
    worked: tuple[WorkedRow, ...]
    lost: str = ""
    repeats: frozenset[tuple[Place, Place]] = frozenset()

    @property
    def is_proved(self) -> bool:
        """True when every row came out even."""
        return all(row.status == "proved" or not row.applies or row.why_not == "prose" for row in self.worked)


class ReadingPiece(PieceWork):
    """Works rows as ever and keeps the reading each was settled in."""

    readings: dict[Place, Reading]

    def settle(self, row: Row, wanted: Sequence[int], notes: NoteFacts | None = None) -> Settled:
        """As settled from the words and the printed counts."""
        settled = super().settle(row, wanted, notes)
        self.readings.setdefault(row.place, settled.reading)
        return settled


class ReadingOrder(RowsInOrder):
    """Works rows as ever; where a row makes the one above be read again, that reading is kept."""

    def _revise(self, above: LastRow, other: Settled) -> None:
        super()._revise(above, other)
        assert isinstance(self.piece, ReadingPiece)
        self.piece.readings[above.row.place] = other.reading


class PlacingPiece(PieceWork):
    """Works rows in known readings in one size, and keeps what sits on what where that is wanted."""

    slot: int
    keeps: bool
    readings: Readings
    done: list[tuple[Row, Outcome]]

    def settle(self, row: Row, wanted: Sequence[int], notes: NoteFacts | None = None) -> Settled:
        """As the known reading has it; each outcome with its record."""
        reading = self.readings.get(row.place)
        if reading is None:
            settled = super().settle(row, wanted, notes)
        else:
            outcomes, choices = self._work(row, wanted, reading, notes)
            settled = Settled(outcomes, reading, choices, [])
        for size, outcome in zip(wanted, settled.outcomes, strict=True):
            if self.keeps and size == self.slot and outcome.placed is None and outcome.balances:
                outcome.placed = self._placed(row, settled, notes)
        return settled

    def _placed(self, row: Row, settled: Settled, notes: NoteFacts | None) -> Placed | None:
        standing = self.standings[self.slot]
        edge = standing.edge if standing.edge is not None or not begins_anew(row) else ()
        if edge is None or stitches(edge) > MOST_PLACES:
            return None
        site = self.site(self.slot, settled.reading, notes, row=row)
        return work_once(row, site, edge, standing.underside, leaves=self.leaves, placing=Placing()).placed

    def go_on(self, row: Row, size: int, outcome: Outcome) -> None:
        """As ever; the row is put down with the others."""
        if size == self.slot:
            self.done.append((row, outcome))
        super().go_on(row, size, outcome)


def readings_of_piece(pattern: Pattern, piece: Piece, sizes: Sequence[GradedSize], wanted: Sequence[int]) -> Readings:
    """How each row of a piece is read, settled in the wanted sizes; a piece that goes on from another is read alone."""
    names = tuple(size.name for size in sizes)
    own, facts = explained(pattern, piece, names)
    work = ReadingPiece(piece.shape, names, own, facts, [size.numbers() for size in sizes])
    work.readings = {}
    order = ReadingOrder(work)
    some = tuple(names[at] for at in dict.fromkeys(wanted))
    for row in piece.rows:
        order.work(replace(row, sizes=tuple(name for name in some if row.sizes is None or name in row.sizes)))
    return work.readings


def place_rows(
    pattern: Pattern,
    piece: Piece,
    sizes: Sequence[GradedSize],
    slot: int,
    numbers: Mapping[str, int],
    readings: Readings,
    *,
    rows: Sequence[Row] | None = None,
    keeps: bool = True,
) -> PlacedPiece:
    """A piece worked in one size with these numbers for its counts, as far as its rows come out even.

    `rows`: the piece's rows, some of them changed; their printed counts are then left out. `keeps`: what sits on what
    is wanted, not only whether the rows come out even.
    """
    names = tuple(size.name for size in sizes)
    own, facts = explained(pattern, piece, names)
    work = PlacingPiece(piece.shape, names, own, replace(facts, multiple=None), [numbers] * len(names))
    work.slot, work.readings, work.done, work.keeps = slot, readings, [], keeps
    order = RowsInOrder(work)
    placed: list[PlacedRow] = []
    worked: list[WorkedRow] = []
    lost = ""
    for row in piece.rows if rows is None else rows:
        done = _alone(row, names[slot]) if rows is None else without_counts(_alone(row, names[slot]))
        before = len(work.done)
        order.above = None  # every row is read already
        worked += [one for one in order.work(done) if one.size == names[slot]]
        new = work.done[before:]
        lost = lost or _why_lost(worked[-1], new, keeps=keeps)
        if not lost and keeps:
            placed += _rows(new, worked[-1].times, done, piece, placed)
        if worked[-1].status != "proved" and worked[-1].applies and worked[-1].why_not != "prose":
            break
    repeats = {(row.place, fact.place) for row, outcome in work.done for fact in outcome.facts if fact.times > 1}
    return PlacedPiece(tuple(placed), tuple(worked), lost, frozenset(repeats))


def _alone(row: Row, size: str) -> Row:
    """The row for one size alone."""
    return row if row.sizes is not None and size not in row.sizes else replace(row, sizes=(size,))


def _why_lost(worked: WorkedRow, new: Sequence[tuple[Row, Outcome]], *, keeps: bool) -> str:
    """Why the rows under a label cannot be laid on the row before; "" when they can."""
    if not worked.applies or worked.why_not == "prose":
        return ""
    if worked.status != "proved":
        return worked.why_not or f"{worked.label} does not come out even"
    if is_passage(worked.row) and len(new) != worked.times:
        return f"{worked.label} says how often rows are worked, not what each of them is"
    if keeps and (not new or any(outcome.placed is None for _, outcome in new)):
        return f"where the stitches of {worked.label} go is not said place by place"
    return ""


def _rows(
    new: Sequence[tuple[Row, Outcome]], times: int, under: Row, piece: Piece, before: Sequence[PlacedRow]
) -> list[PlacedRow]:
    found: list[PlacedRow] = []
    for row, outcome in new:
        assert outcome.placed is not None
        shape = shape_of(row, piece.shape)
        turns = shape == "flat" or any(isinstance(step, Turn) for step in row.steps)
        last = found[-1] if found else before[-1] if before else None
        met = () if last is None else met_places(last, outcome.placed)
        census = dict(outcome.census)
        found.append(PlacedRow(row, under, outcome.placed, met, shape, turns, census, outcome.facts, times))
    return found


def met_places(last: PlacedRow, placed: Placed) -> tuple[int, ...]:
    """For each place of the edge a row meets, which place of the row before it is: as it lies, or turned.

    () where the row begins by itself.
    """
    number = len(last.placed.after)
    if not placed.before:
        return ()
    order = tuple(range(number))
    ways: dict[tuple[int, ...], Edge] = {order: last.placed.after}
    if last.turns:
        around = (order[0], *reversed(order[1:])) if number else ()
        ways = {tuple(reversed(order)): turned(last.placed.after)}
        if last.shape != "flat":
            ways[around] = turned_round(last.placed.after)
    for way, edge in ways.items():
        if tuple(opened(edge)) == placed.before:
            return way
    return ()
