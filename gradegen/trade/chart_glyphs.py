"""The marks of stitch charts from shared/chart_glyphs.yaml: outlines, and how the glyph of a stitch is put together."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from gradegen.trade.stitches import stitches
from gradegen.trade.tables import read_table

StemWay = Literal["", "one", "legs", "bundle", "spray"]


@dataclass(frozen=True, slots=True)
class Mark:
    """One outline in SVG's notation, in units of a chart; its middle is 0 0, and up is away from the foot."""

    name: str
    outline: str
    is_filled: bool


@dataclass(frozen=True, slots=True)
class Glyph:
    """How one glyph is put together from marks; `slashed`: a slash for each yarn over before the hook goes in."""

    name: str
    stem: StemWay = ""
    middle: str = ""
    top: str = ""
    foot: str = ""
    slashed: bool = False


OWN = Glyph("own", top="own")  # for a stitch that has no published glyph: a sign with a letter in it


@cache
def marks() -> Mapping[str, Mark]:
    """All marks by name."""
    written = read_table("chart_glyphs")["marks"]
    return {name: Mark(name, each["outline"], bool(each.get("filled"))) for name, each in written.items()}


@cache
def glyphs() -> Mapping[str, Glyph]:
    """All glyphs by the name they have in the table of stitches."""
    return {name: _glyph(name, each) for name, each in read_table("chart_glyphs")["glyphs"].items()}


def _glyph(name: str, written: Mapping[str, Any]) -> Glyph:
    parts = {part: written.get(part, "") for part in ("stem", "middle", "top", "foot")}
    return Glyph(name, **parts, slashed=bool(written.get("slashes")))


def glyph_of(stitch: str) -> Glyph:
    """The glyph of a stitch; OWN where none is published."""
    known = stitches().get(stitch)
    return glyphs().get(known.glyph, OWN) if known is not None and known.glyph else OWN


def slashes_of(stitch: str) -> int:
    """How many yarn overs are made before the hook goes in: one for each chain of height beyond two."""
    known = stitches().get(stitch)
    base = stitches().get(known.base) if known is not None and known.base else known
    return max(0, (base.height or 0) - 2) if base is not None else 0


def stems_of(stitch: str) -> int:
    """How many stems a stitch has that is several stitches from one foot."""
    numbered = re.match(r"(\d+)-", stitch)
    return int(numbered[1]) if numbered else int(read_table("chart_glyphs")["usual stems"].get(stitch, 1))


def loop_mark(loop: str) -> str:
    """The mark at the foot of a stitch worked in its front or back loop only."""
    return str(read_table("chart_glyphs")["loops"][loop])
