"""The smallest piece that shows the whole pattern: its counts, and the piece worked with them.

Each count that is measured is taken down alone, widths before lengths, as far as all rows still come out even, every
row that is worked is still worked, and every repeat still runs twice. What cannot be smaller stays as in the size.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from gradegen.design.checked import Checked
from gradegen.design.formula import Formula
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule, Pattern, Piece
from gradegen.design.rows import Chain, Number, Row, Step
from gradegen.grade.body.sums import names_in
from gradegen.reckon.multiples.foundation import foundations, numbers_with
from gradegen.work.placed_rows import PlacedPiece, Readings, place_rows, readings_of_piece
from gradegen.write.chart.coarser import coarser, keeps_rhythm

_MOST_TRIES = 40  # of one count
_MOST_WORKED, _ROW = 60_000, 40  # stitches worked in trying; a row costs as much as so many stitches
FEWEST_STITCHES = 6  # across, where nothing repeats


@dataclass(frozen=True, slots=True)
class SmallPiece:
    """A piece at its smallest. `numbers`: the counts it was worked with; `chain`: a foundation of plain numbers."""

    piece: Piece
    size: GradedSize
    numbers: Mapping[str, int]
    placed: PlacedPiece
    chain: int | None = None


@dataclass(slots=True)
class _Work:
    """Works one piece with other numbers. `room`: stitches that may still be worked for nothing but trying."""

    pattern: Pattern
    piece: Piece
    sizes: tuple[GradedSize, ...]
    slot: int
    readings: Readings
    room: int = _MOST_WORKED

    def of(self, pattern: Pattern) -> _Work:
        """The same piece of the pattern with other sentences in its rows."""
        piece = next(one for one in pattern.pieces if one.place == self.piece.place)
        return replace(self, pattern=pattern, piece=piece)

    def placed(
        self, numbers: Mapping[str, int], rows: Sequence[Row] | None = None, *, keeps: bool = False
    ) -> PlacedPiece:
        """The piece with these numbers."""
        placed = place_rows(
            self.pattern, self.piece, self.sizes, self.slot, numbers, self.readings, rows=rows, keeps=keeps
        )
        self.room -= _ROW + sum(_ROW + (row.made or 0) for row in placed.worked)
        return placed


def small_piece(checked: Checked, piece: Piece, sizes: Sequence[GradedSize] = ()) -> SmallPiece | None:
    """The piece as small as it goes, by the first of these sizes (all) that works it; None where none does.

    No other size is asked, not even how a row is to be read: pages of some sizes must not hang on the rest.
    """
    wanted = sizes or checked.sizes
    for one in wanted:
        readings = readings_of_piece(checked.pattern, piece, checked.sizes, (one.index, wanted[-1].index))
        work = _Work(checked.pattern, piece, checked.sizes, one.index, readings)
        placed = work.placed(one.numbers())
        if placed.is_proved and any(row.times for row in placed.worked):
            return _smaller(checked, work, one, placed)
    return None


def _smaller(checked: Checked, work: _Work, size: GradedSize, full: PlacedPiece) -> SmallPiece:
    shows = _Shows(full)
    numbers: Mapping[str, int] = size.numbers()
    for coarse in coarser(checked, size):
        if not keeps_rhythm(checked.pattern, coarse.pattern, work.piece, size.index):
            continue
        finer = work.of(coarse.pattern)
        if shows.as_much(finer.placed(coarse.numbers)):
            work, numbers = finer, coarse.numbers
            break
    for rule in _measured(work.pattern, work.piece):
        for n in _candidates(rule, numbers.get(rule.name, 0)):
            fewer = _with(work.pattern, size, numbers, rule.name, n)
            if work.room < 0 or shows.as_much(work.placed(fewer)):
                numbers = numbers if work.room < 0 else fewer
                break
    chain, rows = _shorter_chain(work, numbers, shows)
    return SmallPiece(work.piece, size, numbers, work.placed(numbers, rows, keeps=True), chain)


def _measured(pattern: Pattern, piece: Piece) -> list[CountRule]:
    """Counts found from a measure that the piece's rows use, themselves or in a sum, widths first; no related ones.

    None where shaping is worked out for the counts as they are.
    """
    if any(row.sentences for row in piece.rows):
        return []
    needed = {name for row in piece.rows for listed in row.lists for name in _names(listed.formula)}
    for _ in pattern.counts:
        needed |= {name for rule in pattern.counts.values() if rule.name in needed for name in _names(rule.formula)}
    tied = {name for relation in pattern.relations for side in (relation.left, relation.right) for name in _names(side)}
    free = [rule for rule in pattern.counts.values() if rule.formula is None and rule.name not in tied]
    rules = [rule for rule in free if rule.name in needed]
    return sorted(rules, key=lambda rule: rule.across is None)


def _names(formula: Formula | None) -> set[str]:
    return {name.name.removesuffix(" chain") for name in names_in(formula)} if formula is not None else set()


def _candidates(rule: CountRule, n: int) -> Iterator[int]:
    """Smaller counts on the rule's multiple, from the smallest on."""
    step = max(1, rule.multiple)
    start = rule.plus % step or step
    for tried, count in enumerate(range(start, n, step)):
        if tried >= _MOST_TRIES:
            return
        yield count


def _with(pattern: Pattern, size: GradedSize, numbers: Mapping[str, int], name: str, n: int) -> dict[str, int]:
    """The numbers when one count is n and the others stay, but for sums of it and counts over the same measure."""
    counts = {key: replace(one, n=numbers.get(key, one.n), chain=numbers.get(f"{key} chain", one.chain))
              for key, one in size.counts.items()}  # fmt: skip
    return numbers_with(pattern, replace(size, counts=counts), name, n)


class _Shows:
    """What a piece of full size shows, and whether a smaller one shows as much.

    What a schedule's sentence repeats is left out: its words hang on all sizes.
    """

    def __init__(self, full: PlacedPiece) -> None:
        self.labels = {row.label for row in full.worked if row.times}
        shaped = {row.row.place for row in full.worked if row.row.sentences}
        self.repeats = {repeat for repeat in full.repeats if repeat[0] not in shaped}
        self.widest = max((row.made or 0 for row in full.worked), default=0)

    def as_much(self, placed: PlacedPiece) -> bool:
        """True when every row is worked, all come out even, and what repeats does so twice."""
        if not placed.is_proved or {row.label for row in placed.worked if row.times} != self.labels:
            return False
        made = max((row.made or 0 for row in placed.worked), default=0)
        return self.repeats <= placed.repeats and made >= min(FEWEST_STITCHES, self.widest)


def _shorter_chain(work: _Work, numbers: Mapping[str, int], shows: _Shows) -> tuple[int | None, tuple[Row, ...] | None]:
    """The shortest foundation that shows as much, where it is written in plain numbers, and the rows with it."""
    own = next((one for one in foundations(work.pattern) if one.pieces[0] is work.piece and one.count is None), None)
    most = min((value or 0 for value in own.chain.number.values), default=0) if own is not None else 0
    for chains in range(2, min(most, _MOST_TRIES)):
        assert own is not None
        rows = tuple(_with_chain(row, own.chain, chains) for row in work.piece.rows)
        if work.room >= 0 and shows.as_much(work.placed(numbers, rows)):
            return chains, rows
    return None, None


def _with_chain(row: Row, chain: Chain, chains: int) -> Row:
    steps: tuple[Step, ...] = tuple(
        replace(step, number=Number((chains,), place=chain.number.place)) if step is chain else step
        for step in row.steps
    )
    return replace(row, steps=steps)
