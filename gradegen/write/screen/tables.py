"""Grading as tables for the screen: a table a count, one of the finished measures, and body size tables."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from gradegen.design.graded import GradedCount, GradedSize
from gradegen.design.sizes import Band, Cell, SizeTable
from gradegen.numbers.exact import decimal_text, mixed_text

if TYPE_CHECKING:
    from rich.table import Table

CM = Fraction(254, 100)  # 1 in = 2.54 cm by definition
NONE = "–"
_Row = tuple[str, str, list[str]]  # name, unit, one cell per size


def grading_tables(
    sizes: Sequence[GradedSize], table: SizeTable, *, inches_first: bool, width: int = 200
) -> list[Table]:
    """A table for every graded count, then the finished measures, then how those fit the body.

    As many sizes side by side as fit the width.
    """
    counts = list(dict.fromkeys(name for size in sizes for name in size.counts))
    return [
        *(_count_table(name, sizes, table.by, inches_first) for name in counts),
        *_measure_tables(sizes, inches_first, width),
        *_ease_tables(sizes, inches_first, width),
    ]


def fit_table(own: GradedSize, nearest: GradedSize | None, *, inches_first: bool) -> Table:
    """One maker's own counts, beside those of the nearest printed size."""
    drawn = _table("your own size")
    heads = ["", "target", "raw", "count", "chain", "finished", "drift"]
    for head in [*heads, *([f"printed {nearest.name}"] if nearest else [])]:
        drawn.add_column(head, justify="right" if head else "left", no_wrap=True)
    for name, count in own.counts.items():
        printed = nearest.counts.get(name) if nearest else None
        cells = [f"{name} ({count.unit})", *_count_cells(count, inches_first)[:-1]]
        drawn.add_row(*cells, *([str(printed.n) if printed else NONE] if nearest else []))
    for name, measure in own.measures.items():
        there = nearest.measures.get(name) if nearest else None
        lengths = [_length(measure.target, inches_first), NONE, NONE, NONE, _length(measure.printed, inches_first)]
        printed_there = [_length(there.printed, inches_first) if there else NONE] if nearest else []
        drawn.add_row(name, *lengths, _signed(measure.drift, inches_first), *printed_there)
    return drawn


def size_tables(table: SizeTable, width: int = 200) -> list[Table]:
    """A body size table, inches over centimetres, both as published; as many sizes side by side as fit the width."""
    rows: list[_Row] = []
    for column in table.columns.values():
        rows.append((column.name, "in", [_cell(cell, metric=False) for cell in column.cells]))
        rows.append(("", "cm", [_cell(cell, metric=True) for cell in column.cells]))
    return _side_by_side(table.title, rows, table.sizes, width)


def size_table_words(table: SizeTable) -> list[str]:
    """Where the table comes from, what is derived, and what is odd about it."""
    words = [
        f"source  {table.publisher}, {table.year}. {table.address}",
        f"file    {table.file}",
        f"looked up by {table.by}",
    ]
    for column in table.columns.values():
        cm = f"; in cm: {column.trust_cm}" if column.trust_cm and column.trust_cm != column.trust else ""
        words.append(f"trust   {column.name}: {column.trust}{cm}")
    for column in table.columns.values():
        if column.derived:
            spread = f", spread ± {decimal_text(column.spread_cm, 1)} cm" if column.spread_cm is not None else ""
            words.append(f"derived {column.name}: {column.derived}{spread}")
        if column.note:
            words.append(f"note    {column.name}: {column.note}")
    if any(cell and cell.extrapolated for column in table.columns.values() for cell in column.cells):
        words.append("*       worked out beyond the range of the survey it rests on")
    return words + [f"odd     {oddity}" for oddity in table.oddities]


def _table(title: str) -> Table:
    from rich import box
    from rich.table import Table

    return Table(title=title, title_justify="left", title_style="bold", box=box.SIMPLE_HEAD, pad_edge=False)


def _count_table(name: str, sizes: Sequence[GradedSize], by: str, inches_first: bool) -> Table:
    unit = next((size.counts[name].unit for size in sizes if name in size.counts), "sts")
    drawn = _table(f"{name} ({unit})")
    for head in ("size", f"{by} to fit", "target", "raw", "count", "chain", "finished", "drift"):
        drawn.add_column(head, justify="left" if head == "size" else "right", no_wrap=True)
    drawn.add_column("rounded", overflow="fold")
    for size in sizes:
        if name in size.counts:
            drawn.add_row(size.name, _fits(size, inches_first), *_count_cells(size.counts[name], inches_first))
    return drawn


def _count_cells(count: GradedCount, inches_first: bool) -> list[str]:
    return [
        _length(count.target, inches_first),
        NONE if count.raw is None else decimal_text(count.raw),
        str(count.n),
        str(count.chain) if count.chain != count.n else NONE,
        _length(count.finished, inches_first),
        _signed(count.drift, inches_first),
        count.rounded,
    ]


def _measure_tables(sizes: Sequence[GradedSize], inches_first: bool, width: int) -> list[Table]:
    rows: list[_Row] = []
    for name in dict.fromkeys(name for size in sizes for name in size.measures):
        lengths = [size.measures[name].printed if name in size.measures else None for size in sizes]
        inches, cm = ([_plain(length, metric) for length in lengths] for metric in (False, True))
        pair = [("in", inches), ("cm", cm)] if inches_first else [("cm", cm), ("in", inches)]
        rows += [(name, *pair[0]), ("", *pair[1])]
    return _side_by_side("finished measures", rows, [size.name for size in sizes], width) if rows else []


def _ease_tables(sizes: Sequence[GradedSize], inches_first: bool, width: int) -> list[Table]:
    """For each measure that goes with a body column: the body as published, the finished measure, the ease."""
    rows: list[_Row] = []
    for key in dict.fromkeys((key.measure, key.body) for size in sizes for key in size.key_eases):
        for metric in (not inches_first, inches_first):
            unit = "cm" if metric else "in"
            eases = [next((one.ease for one in size.key_eases if one.measure == key[0]), None) for size in sizes]
            bodies = [_cell(size.body.get(key[1]), metric=metric) for size in sizes]
            finished = [
                _plain(size.measures[key[0]].printed, metric) if key[0] in size.measures else NONE for size in sizes
            ]
            rows.append((f"{key[1].replace('_', ' ')}, body", unit, bodies))
            rows.append((f"{key[0]}, finished", unit, finished))
            rows.append(("  ease", unit, [_signed(ease, not metric) for ease in eases]))
    return _side_by_side("body, finished and ease", rows, [size.name for size in sizes], width) if rows else []


def _side_by_side(title: str, rows: Sequence[_Row], sizes: Sequence[str], width: int) -> list[Table]:
    names = max(len(name) for name, _, _ in rows) + 6
    cell = max(len(text) for _, _, cells in rows for text in (*cells, *sizes)) + 2
    at_once = max(1, (width - names) // cell)
    return [_part(title, rows, sizes, start, start + at_once) for start in range(0, len(sizes), at_once)]


def _part(title: str, rows: Sequence[_Row], sizes: Sequence[str], start: int, end: int) -> Table:
    drawn = _table(title)
    drawn.add_column("", no_wrap=True)
    drawn.add_column("", no_wrap=True)
    for size in sizes[start:end]:
        drawn.add_column(size, justify="right", no_wrap=True)
    for name, unit, cells in rows:
        drawn.add_row(name, unit, *cells[start:end])
    return drawn


def _fits(size: GradedSize, inches_first: bool) -> str:
    cell = size.to_fit
    if cell is None:
        return NONE
    return f"{_cell(cell, metric=not inches_first)} {'in' if inches_first else 'cm'}"


def _cell(cell: Cell | None, *, metric: bool) -> str:
    band = None if cell is None else cell.cm if metric else cell.inches
    if cell is None or band is None:
        return NONE
    return _band(band, metric) + ("*" if cell.extrapolated else "")


def _band(band: Band, metric: bool) -> str:
    show = decimal_text if metric or max(band.low.denominator, band.high.denominator) > 8 else mixed_text
    return show(band.low) if band.low == band.high else f"{show(band.low)}–{show(band.high)}"


def _length(length: Fraction | None, inches_first: bool) -> str:
    return NONE if length is None else f"{_plain(length, not inches_first)} {'in' if inches_first else 'cm'}"


def _plain(length: Fraction | None, metric: bool) -> str:
    if length is None:
        return NONE
    return decimal_text(length * CM, 1) if metric else decimal_text(length)


def _signed(length: Fraction | None, inches_first: bool) -> str:
    if length is None:
        return NONE
    text = _plain(abs(length), not inches_first)
    return text if text == "0" else ("+" if length > 0 else "−") + text
