"""Photos and drawings of a pattern: what each shows, in which words, and where it stands."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path
from typing import Literal

from gradegen.design.text import Text
from gradegen.findings import Place

PictureKind = Literal["JPEG", "PNG", "WEBP", "SVG"]
PictureSize = Literal["quarter page", "half page", "whole page"]
PictureStand = Literal["cover", "notes", "piece", "row", "finishing"]


@dataclass(frozen=True, slots=True)
class PictureFile:
    """A picture that was found and can be opened: its kind by its content, and its proportions, held upright.

    `across`, `up`: pixels, or the drawing's own units (`is_scalable`).
    """

    path: Path
    kind: PictureKind
    across: Fraction
    up: Fraction

    @property
    def is_scalable(self) -> bool:
        """True for drawings made of lines, which have no pixels."""
        return self.kind == "SVG"


@dataclass(frozen=True, slots=True)
class Picture:
    """One photo or drawing. `alt` says what it shows to those who do not see it.

    `piece`: which of the pieces it stands with, from 0; `line`: the line of the file on which its row begins. `size`:
    the most room it may take. `file` None: it was named, but cannot be printed.
    """

    name: Text
    alt: Text
    caption: Text | None
    stands: PictureStand
    size: PictureSize
    file: PictureFile | None
    piece: int = -1
    line: int = 0
    place: Place = field(compare=False, kw_only=True)
