"""Which of a pattern's possible documents is wanted."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Terms

Paper = Literal["a4", "letter"]
Unit = Literal["in", "cm"]
Style = Literal["print", "low-ink", "large-print", "spoken"]


@dataclass(frozen=True, slots=True)
class Edition:
    """One document of a pattern: its folder, its paper, one size alone (None: all), and whether it is a draft.

    `chosen`: some sizes by name, where neither one nor all are wanted. `terms`, `units` (the unit that stands first):
    None is the pattern's own. "low-ink": no fills, no pictures. "large-print": at least 22 pt, one column. "spoken":
    plain text and HTML in which everything is written out for a voice.
    """

    out: Path
    size: str | None = None
    paper: Paper = "a4"
    draft: bool = False
    chosen: tuple[str, ...] = ()
    terms: Terms | None = None
    units: Unit | None = None
    style: Style = "print"

    def sizes(self, checked: Checked) -> tuple[GradedSize, ...]:
        """The sizes whose numbers may be printed; () when a size asked for is none of this pattern's."""
        wanted = (self.size,) if self.size is not None else self.chosen
        if not wanted:
            return checked.sizes
        known = {size.name for size in checked.sizes}
        return tuple(size for size in checked.sizes if size.name in wanted) if known.issuperset(wanted) else ()

    def unknown_sizes(self, checked: Checked) -> tuple[str, ...]:
        """The names asked for that no size of this pattern has."""
        known = {size.name for size in checked.sizes}
        wanted = (self.size,) if self.size is not None else self.chosen
        return tuple(name for name in wanted if name not in known)
