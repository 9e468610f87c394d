"""Shaping as the screen shows it: every schedule's sentence, and those worked at the same time row by row."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from gradegen.design.pattern import Pattern
from gradegen.design.schedule import Schedule, Scheduled, TableRow
from gradegen.grade.shaping.schedules import sentence, shaping_table

if TYPE_CHECKING:
    from rich.table import Table

NONE = "–"
_NAMES = 40  # columns of the screen that the names of the rows and margins may take


def shaping_lines(pattern: Pattern) -> Iterator[str]:
    """Every schedule by its name, in the words its rows print."""
    for name, scheduled in pattern.scheduled.items():
        words = sentence(scheduled, rounds=_goes_round(pattern, name))
        if words:
            yield f"{name}  {words}"


def _goes_round(pattern: Pattern, name: str) -> bool:
    named = [one.shape for one in pattern.pieces if one.written is not None and f"{{{name}}}" in one.written.text]
    return bool(named) and named[0] != "flat"


def merged_tables(pattern: Pattern, width: int = 200) -> list[Table]:
    """A table for every shaping of several: what happens on which row, with the stitches after it, size by size."""
    tables = []
    for name, rule in pattern.shaping.items():
        parts = [pattern.scheduled[text.text] for text in rule.together if text.text in pattern.scheduled]
        merged = _merged(parts)
        cell = 2 + max((len(_cell(one)) for rows in merged.values() for one in rows), default=0)
        at_once = max(1, (width - _NAMES) // cell) if merged else 1
        sizes = list(merged)
        tables += [_table(name, merged, sizes[at : at + at_once]) for at in range(0, len(sizes), at_once)]
    return tables


def _merged(parts: Sequence[Scheduled]) -> Mapping[str, tuple[TableRow, ...]]:
    """The rows of every size in which all parts could be worked out; nothing where they are fewer than two."""
    if len(parts) < 2:
        return {}
    found = {}
    for each in zip(*(part.sizes for part in parts), strict=True):
        known: list[Schedule] = [one for one in each if one is not None]
        if len(known) == len(parts):
            found[known[0].size] = shaping_table(known)
    return found


def _cell(one: TableRow | None) -> str:
    return NONE if one is None else f"{', '.join(one.what)} = {one.stitches}"


def _table(name: str, merged: Mapping[str, tuple[TableRow, ...]], sizes: Sequence[str]) -> Table:
    from rich import box
    from rich.table import Table

    title = f"{name}, at the same time: what happens, and the stitches after it"
    drawn = Table(title=title, title_justify="left", title_style="bold", box=box.SIMPLE_HEAD, pad_edge=False)
    drawn.add_column("row", justify="right", no_wrap=True)
    for size in sizes:
        drawn.add_column(size, no_wrap=True)
    by_row = {size: {one.row: one for one in merged[size]} for size in sizes}
    for row in sorted({one for rows in by_row.values() for one in rows}):
        drawn.add_row(str(row), *(_cell(by_row[size].get(row)) for size in sizes))
    return drawn
