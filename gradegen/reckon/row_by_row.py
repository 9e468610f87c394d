"""A pattern's rows one by one in one size: ranges and repeated rows taken apart, each with what it takes."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gradegen.design.checked import Checked
from gradegen.design.edge import Edge
from gradegen.design.rows import Label, Row, RowsAgain
from gradegen.reckon.any_size import for_one_size
from gradegen.work.piece import PieceWork, Standing
from gradegen.work.row import Outcome
from gradegen.work.rows import rows_in_order
from gradegen.work.stops import Fault, Unclear

_KIND = re.compile(r"(?i)(rnd|row|round)s?\b")


@dataclass(frozen=True, slots=True)
class SingleRow:
    """One row as worked: its name ("Rnd 14"), the written row it belongs to, and what it makes.

    `number`: as the maker counts it, None where the label has none. `turn`: which one of its label's rows, from 0;
    `of`: how many those are. `cycle`: rows in one repeat of the label.
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


class WatchedPiece(PieceWork):
    """Works rows as ever and remembers what each single one came to."""

    seen: list[Outcome]

    def key(self, size: int) -> object:
        """Another one for every row, so that rows which come back to the same edge are worked and not multiplied."""
        return super().key(size), len(self.seen)

    def go_on(self, row: Row, size: int, outcome: Outcome) -> None:
        """On to the next row; this one is kept."""
        self.seen.append(outcome)
        super().go_on(row, size, outcome)


def single_rows(checked: Checked, size: str) -> tuple[SingleRow, ...]:
    """Every row of one size in working order."""
    return tuple(_single_rows(checked, size))


def _single_rows(checked: Checked, size: str) -> Iterator[SingleRow]:
    pattern = for_one_size(checked.pattern, size)
    index = next(at for at, one in enumerate(checked.sizes) if one.name == size)
    standings: Sequence[Standing] = ()
    for piece in pattern.pieces:
        order = rows_in_order(pattern, piece, checked.sizes, list(standings), WatchedPiece)
        work = order.piece
        for row in piece.rows:
            work.seen = []  # type: ignore[attr-defined]
            order.work(row)
            seen: list[Outcome] = work.seen  # type: ignore[attr-defined]
            first = _first_number(work, index, row.label)
            for turn, outcome in enumerate(seen):
                number = None if first is None else first + turn
                yield SingleRow(
                    _name(row.label, number, turn, len(seen)), number, piece.name.text, row, outcome.made,
                    outcome.census, outcome.after, turn, len(seen), _cycle(row),
                )  # fmt: skip
        standings = work.standings


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
    text = label.text or "first row"
    return f"{text}, no. {turn + 1}" if of > 1 else text


def _cycle(row: Row) -> int:
    again = next((step for step in row.steps if isinstance(step, RowsAgain)), None)
    return len(again.labels) if again is not None else 1


def find_row(rows: Sequence[SingleRow], wanted: str) -> int | None:
    """The place in the list of a row by its name, number or label, as a maker would say it: `Rnd 14`, `14`."""
    said = _plain(wanted)
    for at, row in enumerate(rows):
        if said in (_plain(row.name), _plain(row.row.label.text)):
            return at
    digits = re.findall(r"\d+", wanted)
    if len(digits) != 1:
        return None
    return next((at for at, row in enumerate(rows) if row.number == int(digits[0])), None)


def _plain(words: str) -> str:
    return re.sub(r"(?i)\b(rounds?|rnds?)\b", "rnd", " ".join(words.lower().replace(".", "").split())).strip(" :")
