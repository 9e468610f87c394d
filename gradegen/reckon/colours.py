"""Which yarn every row is worked in, from the letters it names."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from gradegen.design.checked import Checked
from gradegen.design.rows import Row
from gradegen.design.worked import WorkedRow


@dataclass(frozen=True, slots=True)
class Coloured:
    """Stitches by yarn letter; `only`: the letter of the one yarn there is."""

    only: str

    def of(self, row: WorkedRow) -> Mapping[str, Mapping[str, int]]:
        """What one row takes of every yarn."""
        return {self.only: row.census} if row.census else {}

    def single(self, row: Row, census: Mapping[str, int]) -> Mapping[str, Mapping[str, int]]:
        """What one single row takes of every yarn."""
        return {self.only: census} if census else {}


def colour_rows(checked: Checked) -> Coloured:
    """How the rows of a pattern are coloured."""
    yarns = checked.pattern.yarns
    return Coloured(yarns[0].letter if yarns else "A")
