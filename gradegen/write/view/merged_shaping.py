"""Shapings worked at the same time as tables: every row in which something happens, and the stitches after it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from gradegen.design.graded import GradedSize
from gradegen.design.rows import Row
from gradegen.design.schedule import TableRow
from gradegen.design.worked import WorkedRow
from gradegen.write.view.whole import MeasureRow, MeasureTable
from gradegen.write.words.phrases import Printing

NOTHING = "–"
CAPTION = "At the same time, with the stitches after each row"
ONE_SIZE = ("Sts", "What happens")
_CLOSE, _TIGHT = 7, 10  # more sizes than these stand closer


def merged_tables(row: Row, worked: Mapping[str, WorkedRow], printing: Printing) -> tuple[MeasureTable, ...]:
    """The tables of one row for the printed sizes; () where it is no passage of several shapings, or is not proved."""
    sizes = [size for size in printing.sizes if row.sizes is None or size.name in row.sizes]
    merged = {size.name: worked[size.name].merged for size in sizes if size.name in worked}
    if not sizes or not all(merged.get(size.name) for size in sizes):
        return ()
    corner = "Row" if row.label.first is not None else "Row from here"
    if printing.is_one_size:
        lines = [(str(one.row), (str(one.stitches), " and ".join(one.what))) for one in merged[sizes[0].name]]
        rows = tuple(MeasureRow("", name, cells) for name, cells in lines)
        return (MeasureTable(f"{CAPTION}.", corner, ONE_SIZE, rows, "open"),)
    letters = _letters(merged.values())
    parts = [tuple(size for size in part if size in sizes) for part in printing.tables()]
    return tuple(_for_sizes(part, merged, letters, corner, printing) for part in parts if part)


def _letters(merged: Iterable[Sequence[TableRow]]) -> dict[str, str]:
    """A letter for everything that happens, in the order in which it first does."""
    what = dict.fromkeys(words for rows in merged for one in rows for words in one.what)
    return {words: "abcdefghijklmnopqrstuvwxyz"[at % 26] for at, words in enumerate(what)}


def _for_sizes(
    sizes: Sequence[GradedSize],
    merged: Mapping[str, Sequence[TableRow]],
    letters: Mapping[str, str],
    corner: str,
    printing: Printing,
) -> MeasureTable:
    names = tuple(size.name for size in sizes)
    numbers = sorted({one.row for name in names for one in merged[name]})
    by_row = {name: {one.row: one for one in merged[name]} for name in names}
    rows = tuple(
        MeasureRow("", str(number), tuple(_cell(by_row[name].get(number), letters) for name in names))
        for number in numbers
    )
    key = "; ".join(f"{letter}: {words}" for words, letter in letters.items())
    density = "tight" if len(names) > _TIGHT else "close" if len(names) > _CLOSE else "open"
    caption = f"{CAPTION}. {key}"
    return MeasureTable(caption, corner, names, rows, density, printing.marks_of(sizes))


def _cell(one: TableRow | None, letters: Mapping[str, str]) -> str:
    return NOTHING if one is None else f"{one.stitches} {''.join(letters[words] for words in one.what)}"
