"""What it finds.

Bodies that no size fits because the pattern leaves out sizes that its table has between two of those it takes.

Why it matters.

A maker between two sizes that lie 2 in apart takes the nearer one. Where a whole size is left out she finds none, and
"no skipped sizes" is what makers ask for. Gaps that the size table itself leaves are told of with the table.

Example.

    sizes: {table: women, for: [S, M, XL, 2X], by: bust, take: middle}
    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 12] in"

Written right.

    sizes: {table: women, for: [S, M, L, XL, 2X], by: bust, take: middle}
    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"

Whose rule.

Common practice: to-fit bands leave up to 2 in between them, and no more. That none be skipped is what makers ask for.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from gradegen.design.checked import Checked
from gradegen.design.sizes import Band, Cell
from gradegen.findings import Finding
from gradegen.numbers.exact import decimal_text
from gradegen.read.size_tables.checks import SIZE_BAND_GAP, WIDEST_GAP

RULE = SIZE_BAND_GAP


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per gap, at the choice of sizes."""
    chosen = checked.pattern.sizes
    column = checked.table.columns.get(chosen.by.text if chosen.by is not None else checked.table.by)
    if column is None or chosen.wanted is None:
        return
    cells = dict(zip(checked.table.sizes, column.cells, strict=True))
    order = list(checked.table.sizes)
    taken = sorted((size.name for size in checked.sizes if size.name in cells), key=order.index)
    for below, above in pairwise(taken):
        between = order[order.index(below) + 1 : order.index(above)]
        gap = _gap(cells[below], cells[above])
        if between and gap is not None:
            yield RULE.at(
                next((text.place for text in chosen.wanted if text.text == above), chosen.place),
                f"No size fits a {column.name} of {gap}, between {below} and {above}.",
                because=f"the table has {', '.join(between)} there",
                hint=f"Add {', '.join(between)}, or say in the notes that it is left out.",
            )


def _gap(below: Cell | None, above: Cell | None) -> str | None:
    """The bodies between two sizes in words; None where they are no more than tables usually leave."""
    for unit in ("in", "cm"):
        low, high = (_band(cell, unit) for cell in (below, above))
        if low is not None and high is not None:
            wide = high.low - low.high > WIDEST_GAP[unit]
            return f"{decimal_text(low.high, 2)}-{decimal_text(high.low, 2)} {unit}" if wide else None
    return None


def _band(cell: Cell | None, unit: str) -> Band | None:
    return None if cell is None else cell.inches if unit == "in" else cell.cm
