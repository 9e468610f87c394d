"""Which of a pattern's possible documents is wanted."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize

Paper = Literal["a4", "letter"]


@dataclass(frozen=True, slots=True)
class Edition:
    """One document of a pattern: its folder, its paper, one size alone (None: all), and whether it is a draft."""

    out: Path
    size: str | None = None
    paper: Paper = "a4"
    draft: bool = False

    def sizes(self, checked: Checked) -> tuple[GradedSize, ...]:
        """The sizes whose numbers may be printed; () when the size asked for is none of this pattern's."""
        if self.size is None:
            return checked.sizes
        return tuple(size for size in checked.sizes if size.name == self.size)
