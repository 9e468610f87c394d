"""The rows of one piece in one size, each with what sits on what, as long as they can be followed place by place."""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import ClassVar

from gradegen.design.edge import Edge
from gradegen.design.graded import GradedSize
from gradegen.design.notes import NoteFacts
from gradegen.design.pattern import Pattern, Piece, Shape
from gradegen.design.rows import Row, Turn
from gradegen.design.worked import WorkedRow
from gradegen.findings import Place
from gradegen.work.along.repeat_facts import RepeatFact
from gradegen.work.edge.edges import stitches, turned, turned_round
from gradegen.work.edge.placing import MOST_PLACES, Placed, Placing, opened
from gradegen.work.order.second_thoughts import LastRow
from gradegen.work.order.sequence import RowsInOrder
from gradegen.work.passage.passages import is_passage
from gradegen.work.passage.told_rows import Told, rows_told
from gradegen.work.piece.piece import PieceWork, without_counts
from gradegen.work.piece.standing import Standing
from gradegen.work.row.row import Outcome, work_once
from gradegen.work.row.settle import Reading, Settled
from gradegen.work.rows import rows_in_order
from gradegen.work.step.beginnings import begins_anew, shape_of

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

    one_by_one: ClassVar[bool] = True
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
        site = self.site(self.slot, settled.reading, notes, shape=self.manner(row).shape)
        return work_once(row, site, edge, standing.underside, leaves=self.leaves, placing=Placing()).placed

    def go_on(self, row: Row, size: int, outcome: Outcome) -> None:
        """As ever; the row is put down with the others."""
        if size == self.slot:
            self.done.append((row, outcome))
        super().go_on(row, size, outcome)


def readings_of_piece(pattern: Pattern, piece: Piece, sizes: Sequence[GradedSize], wanted: Sequence[int]) -> Readings:
    """How each row of a piece is read, settled in the wanted sizes on what the pieces before left in them."""
    some = list(dict.fromkeys(wanted))
    begun = rows_in_order(pattern, piece, *_begun(pattern, piece, sizes, some, None), ReadingPiece)
    work = begun.piece
    assert isinstance(work, ReadingPiece)
    work.readings = {}
    order = ReadingOrder(work, entries=begun.entries)
    for row in piece.rows:
        order.work(_some(row, [sizes[at].name for at in some]))
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
    order = rows_in_order(pattern, piece, *_begun(pattern, piece, sizes, (slot,), numbers), PlacingPiece)
    work = order.piece
    assert isinstance(work, PlacingPiece)
    work.notes = replace(work.notes, multiple=None)
    work.slot, work.readings, work.done, work.keeps = slot, readings, [], keeps
    placed: list[PlacedRow] = []
    worked: list[WorkedRow] = []
    lost = ""
    edges: dict[str, int] = {}
    written = piece.rows if rows is None else rows
    for at, row in enumerate(written):
        done = _alone(row, names[slot]) if rows is None else without_counts(_alone(row, names[slot]))
        before = len(work.done)
        order.above = None  # every row is read already
        told: tuple[Told, ...] = ()
        if keeps and is_passage(done):
            told = rows_told(work, done, slot, order.known[slot], written[:at], _elsewhere(pattern, piece), edges)
        stood = [replace(one) for one in work.standings]
        worked += [one for one in order.work(done) if one.size == names[slot]]
        new = work.done[before:]
        if told and not lost and worked[-1].status == "proved":
            new = _work_told(work, told, slot, stood)
        lost = lost or _why_lost(worked[-1], new, keeps=keeps)
        if not lost and keeps:
            placed += _rows(new, worked[-1].times, done, piece, placed)
        if worked[-1].status != "proved" and worked[-1].applies and worked[-1].why_not != "prose":
            break
    repeats = {(row.place, fact.place) for row, outcome in work.done for fact in outcome.facts if fact.times > 1}
    return PlacedPiece(tuple(placed), tuple(worked), lost, frozenset(repeats))


def _elsewhere(pattern: Pattern, piece: Piece) -> list[Row]:
    """The rows of the other pieces that are worked in the same manner."""
    return [row for other in pattern.pieces if other is not piece and other.shape == piece.shape for row in other.rows]


def _work_told(
    work: PlacingPiece, told: Sequence[Told], slot: int, stood: Sequence[Standing]
) -> list[tuple[Row, Outcome]]:
    """A passage worked once more row by row, from where it began; [] where that does not lead to the same edge."""
    led = [replace(one) for one in work.standings]
    work.standings[:] = stood
    before = len(work.done)
    for one in told:
        settled = work.settle(one.row, [slot])
        outcome = settled.outcomes[0]
        work.go_on(one.row, slot, outcome)
        if not outcome.balances or outcome.placed is None:
            break
    there, wanted = work.standings[slot].edge, led[slot].edge
    new = work.done[before:]
    del work.done[before:]
    same = there is not None and wanted is not None and stitches(there) == stitches(wanted)
    if len(new) != len(told) or not same:
        work.standings[:] = led
        return []
    return new


def _begun(
    pattern: Pattern,
    piece: Piece,
    sizes: Sequence[GradedSize],
    wanted: Sequence[int],
    numbers: Mapping[str, int] | None,
) -> tuple[tuple[GradedSize, ...], tuple[Standing, ...]]:
    """The sizes with these numbers (None: their own), and what the pieces before leave for one that goes on."""
    small = tuple(size if numbers is None else _with_numbers(size, numbers) for size in sizes)
    if not goes_on(pattern, piece):
        return small, ()
    key = (tuple(wanted), None if numbers is None else tuple(numbers.items()))
    return small, tuple(replace(one) for one in _left_before(pattern, pattern.pieces.index(piece), small, key))


_Key = tuple[tuple[int, ...], tuple[tuple[str, int], ...] | None]
_LEFT: deque[tuple[Pattern, int, _Key, tuple[Standing, ...]]] = deque(maxlen=24)


def _left_before(pattern: Pattern, at: int, sizes: tuple[GradedSize, ...], key: _Key) -> tuple[Standing, ...]:
    """What the pieces before the one at this place leave; all pieces ask for it, so the last answers are kept."""
    if at == 0:
        return ()
    known = next((left for of, place, asked, left in _LEFT if of is pattern and place == at and asked == key), None)
    if known is not None:
        return known
    order = rows_in_order(pattern, pattern.pieces[at - 1], sizes, _left_before(pattern, at - 1, sizes, key))
    wanted = key[0]
    for row in pattern.pieces[at - 1].rows:
        order.work(_some(row, [sizes[one].name for one in wanted]))
    first = order.piece.standings[wanted[0]]  # no other size is asked: they stand as it does
    left = tuple(one if size in wanted else replace(first) for size, one in enumerate(order.piece.standings))
    _LEFT.append((pattern, at, key, left))
    return left


def goes_on(pattern: Pattern, piece: Piece) -> bool:
    """True when a piece is worked on what an earlier one has left."""
    first = next((row for row in piece.rows if not row.is_prose), None)
    anew = first is None or begins_anew(first)
    return not anew and (piece.begin is not None or piece is not pattern.pieces[0])


def _with_numbers(size: GradedSize, numbers: Mapping[str, int]) -> GradedSize:
    counts = {
        name: replace(count, n=numbers.get(name, count.n), chain=numbers.get(f"{name} chain", count.chain))
        for name, count in size.counts.items()
    }
    return replace(size, counts=counts)


def _some(row: Row, names: Sequence[str]) -> Row:
    """The row for some sizes alone."""
    return replace(row, sizes=tuple(name for name in names if row.sizes is None or name in row.sizes))


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
