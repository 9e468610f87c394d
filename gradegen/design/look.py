"""What a designer's documents look like: accent, typefaces, paper and logo."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from gradegen.design.pictures import PictureFile
from gradegen.design.text import Text
from gradegen.findings import Place

PaperName = Literal["A4", "Letter"]


@dataclass(frozen=True, slots=True)
class Accent:
    """A colour as it is used: `lines` for rules and outlines, `words` for text, both dark enough on white paper."""

    lines: str
    words: str


@dataclass(frozen=True, slots=True)
class Logo:
    """A small picture above the title, and what it shows in words."""

    alt: Text
    file: PictureFile | None


@dataclass(frozen=True, slots=True)
class Look:
    """A design as data; None is the house's own choice. `headings`, `text`: typefaces by name."""

    accent: Accent | None = None
    headings: str | None = None
    text: str | None = None
    paper: PaperName | None = None
    logo: Logo | None = None
    place: Place = field(compare=False, kw_only=True)
