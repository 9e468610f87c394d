"""Which yarn every row is worked in, from the letters it names; rows repeated by later rows keep their own colours."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field

from gradegen.design.checked import Checked
from gradegen.design.worked import WorkedRow
from gradegen.findings import Place

ByColour = Mapping[str, Mapping[str, int]]


@dataclass(frozen=True, slots=True)
class Coloured:
    """Stitches by yarn letter. `only`: the letter where there is one yarn; else `rows` by size and place of the row.

    `unsplit`: size and label of rows whose colours change where they could not be told apart.
    """

    only: str | None
    rows: Mapping[tuple[str, Place], ByColour] = field(default_factory=dict)
    unsplit: tuple[tuple[str, str], ...] = ()

    def of(self, row: WorkedRow) -> ByColour:
        """What one row (or range of rows) takes of every yarn."""
        if self.only is not None:
            return {self.only: row.census} if row.census else {}
        return self.rows.get((row.size, row.row.place), {})


def colour_rows(checked: Checked) -> Coloured:
    """How the rows are coloured, in every size; they are worked once more where there are several yarns."""
    yarns = checked.pattern.yarns
    if len(yarns) < 2:
        return Coloured(yarns[0].letter if yarns else "A")
    from gradegen.reckon.census.row_by_row import single_rows

    found: dict[tuple[str, Place], dict[str, Counter[str]]] = {}
    unsplit: dict[tuple[str, str], None] = {}
    for size in checked.worked:
        for one in single_rows(checked, size):
            mine = found.setdefault((size, one.row.place), {})
            for letter, stitches in one.by_colour.items():
                mine.setdefault(letter, Counter()).update(stitches)
            if not one.is_split:
                unsplit[size, one.name] = None
    return Coloured(None, found, tuple(unsplit))
