"""The bodies that are graded: each size of the pattern, at the end of its bands that was asked for, in exact inches."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.pattern import Pattern, Take
from gradegen.design.sizes import Cell, Column, SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.rounding import EXACT_INCH
from gradegen.read.size_tables.derived_columns import unknown_column
from gradegen.read.size_tables.table import SIZE_REPEATED, UNKNOWN_SIZE
from gradegen.read.yaml.fields import nearest

SIZES_MISSING = Rule("sizes-missing", Severity.ERROR, "file format", "The pattern is for no size at all.")
SIZE_ORDER_DIFFERS = Rule(
    "size-order-differs", Severity.WARNING, "common practice", "The sizes do not stand in the size table's order."
)


@dataclass(frozen=True, slots=True)
class Body:
    """One body to grade for. `values`: column -> exact inches; `converted`: columns that only centimetres gave.

    `index`: the size's place in the pattern, `rank`: in the table. `shares`: which entries of a size list apply, and
    how much of each; a printed size is wholly its own, a maker between two sizes is part one, part the other.
    """

    name: str
    index: int
    rank: int
    wearer: str
    cells: Mapping[str, Cell]
    values: Mapping[str, Fraction]
    converted: frozenset[str]
    shares: tuple[tuple[int, Fraction], ...]


def folded(name: str) -> str:
    """A name as it is compared: `Upper_arm` and `upper  arm` are one."""
    return " ".join(name.replace("_", " ").split()).casefold()


def choose_bodies(pattern: Pattern, table: SizeTable) -> tuple[tuple[Body, ...], tuple[Finding, ...]]:
    """The bodies of the sizes the pattern is for, in the pattern's order; a size the table lacks is left out."""
    choice = pattern.sizes
    ranks = {folded(size): rank for rank, size in enumerate(table.sizes)}
    wanted = choice.wanted
    if wanted is None:
        return tuple(_body(table, rank, rank, choice.take) for rank in range(len(table.sizes))), ()
    findings: list[Finding] = []
    bodies: dict[int, Body] = {}
    for index, size in enumerate(wanted):
        rank = ranks.get(folded(size.text))
        if rank is None:
            guess = nearest(size.text, table.sizes)
            hint = f"Did you mean {guess}?" if guess else f"Its sizes are {', '.join(table.sizes)}."
            message = f"The size table {table.name} has no size {size.text}."
            findings.append(UNKNOWN_SIZE.at(size.place, message, hint=hint))
        elif rank in bodies:
            findings.append(SIZE_REPEATED.at(size.place, f"Size {size.text} stands here twice."))
        else:
            bodies[rank] = _body(table, rank, index, choice.take)
    if not wanted:
        findings.append(SIZES_MISSING.at(choice.place, "No size is named.", hint="for: all"))
    if list(bodies) != sorted(bodies):
        message = (
            f"Sizes are written smallest first, as in the table: {', '.join(table.sizes[r] for r in sorted(bodies))}."
        )
        findings.append(SIZE_ORDER_DIFFERS.at(wanted[0].place, message))
    return tuple(bodies.values()), tuple(findings)


def size_count(pattern: Pattern, table: SizeTable) -> int:
    """How many entries a size list of this pattern has."""
    return len(table.sizes) if pattern.sizes.wanted is None else len(pattern.sizes.wanted)


def leading_column(pattern: Pattern, table: SizeTable) -> tuple[str | None, tuple[Finding, ...]]:
    """The column sizes are looked up by: the pattern's choice, else the table's; None where the table lacks it."""
    by = pattern.sizes.by
    if by is None:
        return table.by, ()
    known = {folded(name): name for name in table.columns}
    if found := known.get(folded(by.text)):
        return found, ()
    return None, (unknown_column(by.text, by.place, tuple(table.columns)),)


def _body(table: SizeTable, rank: int, index: int, take: Take) -> Body:
    cells = {name: cell for name, column in table.columns.items() if (cell := _cell(column, rank))}
    graded = {name: taken(cell, take) for name, cell in cells.items()}
    values = {name: found[0] for name, found in graded.items() if found is not None}
    converted = frozenset(name for name, found in graded.items() if found is not None and found[1])
    wearer = table.wearer_by_size[rank] if rank < len(table.wearer_by_size) else table.wearer
    return Body(table.sizes[rank], index, rank, wearer, cells, values, converted, ((index, Fraction(1)),))


def _cell(column: Column, rank: int) -> Cell | None:
    return column.cells[rank] if rank < len(column.cells) else None


def taken(cell: Cell, take: Take) -> tuple[Fraction, bool] | None:
    """The low end, middle or high end of a cell in exact inches, and whether only centimetres were published."""
    band, factor = (cell.inches, Fraction(1)) if cell.inches is not None else (cell.cm, EXACT_INCH)
    if band is None:
        return None
    chosen = {"low": band.low, "middle": (band.low + band.high) / 2, "high": band.high}[take]
    return chosen / factor, cell.inches is None
