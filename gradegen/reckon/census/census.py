"""Every stitch of the work, counted: per size, piece, part, colour and name, from the worked rows."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from gradegen.design.checked import Checked
from gradegen.design.pattern import Pattern, Piece
from gradegen.design.worked import WorkedRow
from gradegen.findings import Place
from gradegen.reckon.census.colours import Coloured, colour_rows
from gradegen.reckon.census.made_twice import times_made

EDGINGS = ("edging", "border", "trim", "finishing", "collar", "cuff", "ribbing", "band")


@dataclass(frozen=True, slots=True)
class Counted:
    """What one part of a piece takes in one colour: stitch name -> number, chains ("ch") and joins ("sl st") too.

    A piece that is made twice counts twice.
    """

    piece: str
    part: str
    colour: str
    stitches: Mapping[str, int]

    @property
    def name(self) -> str:
        """The piece, and the part where it is one of its own: "Wrap", "Wrap, edging"."""
        return f"{self.piece}, {self.part}" if self.part else self.piece


@dataclass(frozen=True, slots=True)
class Census:
    """The counted parts by size name, in working order; `missing`: size -> labels of rows that could not be counted.

    `unsplit`: labels of rows whose colours change where they could not be told apart; they go with the yarn in hand.
    """

    by_size: Mapping[str, tuple[Counted, ...]]
    missing: Mapping[str, tuple[str, ...]]
    unsplit: tuple[str, ...] = ()

    def of(self, size: str, colour: str | None = None) -> Counter[str]:
        """All stitches of one size, of one colour or of all."""
        return total(part.stitches for part in self.by_size.get(size, ()) if colour in (None, part.colour))


def total(counts: Iterable[Mapping[str, int]]) -> Counter[str]:
    """Counts by name, added up."""
    found: Counter[str] = Counter()
    for one in counts:
        found.update(one)
    return found


def stitch_census(checked: Checked) -> Census:
    """Everything that every size takes, exactly; rows that were not worked to their end are named as missing."""
    places = {row.place: piece for piece in checked.pattern.pieces for row in piece.rows}
    coloured = colour_rows(checked)
    by_size, missing = {}, {}
    for size, rows in checked.worked.items():
        working = [row for row in rows if row.applies and row.why_not != "prose"]
        by_size[size] = tuple(_counted(working, places, coloured))
        missing[size] = tuple(row.label for row in working if not _is_counted(row))
    return Census(by_size, missing, tuple(dict.fromkeys(label for _, label in coloured.unsplit)))


def _is_counted(row: WorkedRow) -> bool:
    """True when the row was worked to its end, whatever count is printed behind it."""
    return row.status == "proved" or bool(row.status == "wrong" and row.made is not None and row.census)


def _counted(rows: Iterable[WorkedRow], places: Mapping[Place, Piece], coloured: Coloured) -> Iterator[Counted]:
    found: dict[tuple[str, str, str], Counter[str]] = {}
    for row in rows:
        piece = places.get(row.row.place)
        for colour, stitches in coloured.of(row).items():
            key = (piece.name.text if piece else "", part_of(row), colour)
            times = times_made(piece) if piece else 1
            found.setdefault(key, Counter()).update({name: times * number for name, number in stitches.items()})
    for (piece_name, part, colour), stitches in found.items():
        yield Counted(piece_name, part, colour, dict(stitches))


def part_of(row: WorkedRow) -> str:
    """The part of the piece that a row's label names as one of its own: "edging", "border"; "" for the body of it."""
    words = row.row.label.name.lower()
    return next((word for word in EDGINGS if word in words.split()), "")


def letters(pattern: Pattern) -> tuple[str, ...]:
    """The letters of the yarns, A where the pattern names none."""
    return tuple(yarn.letter for yarn in pattern.yarns) or ("A",)
