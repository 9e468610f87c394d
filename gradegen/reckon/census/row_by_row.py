"""A pattern's rows one by one in one size: ranges and repeated rows taken apart, each with what it takes."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import ClassVar, cast

from gradegen.design.checked import Checked
from gradegen.design.edge import Edge
from gradegen.design.rows import Label, Row, RowsAgain
from gradegen.reckon.census.made_twice import times_made
from gradegen.reckon.census.painting import Painted, Painter, Palette, by_colour, painted, palette_of
from gradegen.reckon.census.rows_of_size import for_one_size
from gradegen.work.along.judge import census_of
from gradegen.work.edge.edges import stitches, tally
from gradegen.work.edge.stops import Fault, Unclear
from gradegen.work.piece.piece import PieceWork
from gradegen.work.piece.standing import Standing
from gradegen.work.row.row import Outcome
from gradegen.work.rows import rows_in_order

_BRACES = re.compile(r"\{[^{}]*\} ")
_KIND = re.compile(r"(?i)(rnd|row|round)s?\b")


@dataclass(frozen=True, slots=True)
class SingleRow:
    """One row as worked: its name ("Rnd 14"), the written row it belongs to, and what it makes.

    `row`: the label it is worked under. `number`: as the maker counts it, None where the label has none. `turn`: which
    one of its label's rows, from 0; `of`: how many those are. `cycle`: rows in one repeat of the label. `by_colour`:
    yarn letter -> what it takes of that yarn; `is_split` False: its colours could not be told apart.
    """

    name: str
    number: int | None
    piece: str
    row: Row
    made: int | None
    census: Mapping[str, int]
    after: Edge
    turn: int
    of: int
    cycle: int
    by_colour: Mapping[str, Mapping[str, int]]
    is_split: bool = True


@dataclass(slots=True)
class _Seen:
    """One single row: what it came to, and what it takes of every yarn; `is_split` False: not told apart."""

    outcome: Outcome
    by_colour: Mapping[str, Mapping[str, int]]
    is_split: bool = True


class WatchedPiece(PieceWork):
    """Works rows as ever and remembers what each single one came to, with the yarn in hand."""

    one_by_one: ClassVar[bool] = True
    seen: list[_Seen]
    palette: Palette
    in_hand: str

    def key(self, size: int) -> object:
        """Another one for every row, so that rows which come back to the same edge are worked and not multiplied."""
        return super().key(size), len(self.seen)

    def go_on(self, row: Row, size: int, outcome: Outcome) -> None:
        """On to the next row; this one is kept."""
        paint = painted(row, self.palette) if self.palette else Painted(None, None, False)
        self.in_hand = paint.first or self.in_hand
        inside = self._inside(row, size) if paint.inside else None
        self.seen.append(
            _Seen(outcome, inside or {self.in_hand: outcome.census}, inside is not None or not paint.inside)
        )
        self.in_hand = paint.last or self.in_hand
        super().go_on(row, size, outcome)

    def hear_of(self, edge: Edge, rows: int) -> None:
        """The plain rows of a passage are kept one by one."""
        census = census_of(tally(edge), {})
        outcome = Outcome(edge, edge, made=stitches(edge), census=dict(census))
        self.seen += [_Seen(outcome, {self.in_hand: census})] * rows

    def _inside(self, row: Row, size: int) -> Mapping[str, Mapping[str, int]] | None:
        """The row worked once more with every stitch marked by its yarn; None where its changes can't be placed."""
        painter = Painter(self.palette, self.definitions, self.in_hand)
        marked = painter.row(row)
        if not painter.changes:
            return None
        own = self.definitions
        self.definitions = {**own, **painter.marked}
        outcome = self.settle(marked, [size]).outcomes[0]
        self.definitions = own
        return by_colour(outcome.census, self.in_hand) if outcome.balances else None


def single_rows(checked: Checked, size: str) -> tuple[SingleRow, ...]:
    """Every row of one size in working order."""
    return tuple(_single_rows(checked, size))


def _single_rows(checked: Checked, size: str) -> Iterator[SingleRow]:
    pattern = for_one_size(checked.pattern, size)
    index = next(at for at, one in enumerate(checked.sizes) if one.name == size)
    palette = palette_of(pattern) if len(pattern.yarns) > 1 else {}
    in_hand = pattern.yarns[0].letter if pattern.yarns else "A"
    standings: Sequence[Standing] = ()
    for piece in pattern.pieces:
        order = rows_in_order(pattern, piece, checked.sizes, list(standings), WatchedPiece)
        work = cast("WatchedPiece", order.piece)
        work.palette, work.in_hand = palette, in_hand
        for row in piece.rows:
            work.seen = []
            order.work(row)
            first = _first_number(work, index, row.label)
            for turn, one in enumerate(work.seen):
                number = None if first is None else first + turn
                yield SingleRow(
                    name=_name(row.label, number, turn, len(work.seen)),
                    number=number,
                    piece=piece.name.text,
                    row=row,
                    made=one.outcome.made,
                    census=one.outcome.census,
                    after=one.outcome.after,
                    turn=turn,
                    of=len(work.seen),
                    cycle=_cycle(row),
                    by_colour=one.by_colour,
                    is_split=one.is_split,
                )
        standings, in_hand = work.standings, work.in_hand


def _first_number(work: PieceWork, index: int, label: Label) -> int | None:
    first = label.listed[0] if label.listed else label.first
    try:
        return None if first is None else work.site(index, {}).number(first)
    except (Fault, Unclear):
        return None


def _name(label: Label, number: int | None, turn: int, of: int) -> str:
    kind = _KIND.search(label.text)
    if number is not None:
        return f"{kind[1] if kind else 'Row'} {number}"
    text = without_sums(label.text) or "first row"
    return f"{text}, no. {turn + 1}" if of > 1 else text


def without_sums(label: str) -> str:
    """`Next {rib rounds - 1} rnds` as `Next rnds`."""
    return _BRACES.sub("", label)


def _cycle(row: Row) -> int:
    again = next((step for step in row.steps if isinstance(step, RowsAgain)), None)
    return len(again.labels) if again is not None else 1


def all_rows(checked: Checked, size: str) -> tuple[SingleRow, ...]:
    """Every row of one size, those of a piece that is made twice as often as it is made: `Sleeves, no. 2`."""
    rows = single_rows(checked, size)
    found: list[SingleRow] = []
    for piece in checked.pattern.pieces:
        mine = [row for row in rows if row.piece == piece.name.text]
        times = times_made(piece)
        for number in range(1, times + 1):
            name = f"{piece.name.text}, no. {number}" if times > 1 else piece.name.text
            found += [replace(row, piece=name) for row in mine]
    return tuple(found)


def find_rows(rows: Sequence[SingleRow], wanted: str) -> list[int]:
    """The places in the list of a row named as a maker would say it: `Rnd 14`, `14`, `Body Rnd 5`; [] where none is."""
    said = _plain(wanted)
    found = [at for at, row in enumerate(rows) if said in _names(row)]
    if not found and said.isdigit():
        found = [at for at, row in enumerate(rows) if row.number == int(said)]
    return found


def _names(row: SingleRow) -> set[str]:
    plain = {_plain(row.name), _plain(row.row.label.text)}
    return plain | {f"{_plain(row.piece)} {name}" for name in plain}


def _plain(words: str) -> str:
    return re.sub(
        r"(?i)\b(rounds?|rnds?)\b", "rnd", " ".join(words.lower().replace(".", "").replace(",", "").split())
    ).strip(" :")
