"""Written passages over rows: even rows, and increases and decreases every so many rows."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from gradegen.design.formula import Formula
from gradegen.design.number import Number
from gradegen.findings import Place


@dataclass(frozen=True, slots=True)
class Change:
    """Increases (+) or decreases (-) whose places are loose: `increasing 4 sts evenly`, `dec 1 st at each end`.

    `number` counts events at one spot; `where` "each end" doubles it.
    """

    sign: Literal[1, -1]
    number: Number
    where: Literal["evenly", "each end", "one end"]
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Until:
    """`until piece measures 17 (18, 19) in from beg, ending with a WS row`: rows up to a length.

    `measure`: a length, one per size, or the name of a finished measure. `of`: what is measured, in the text's word
    ("piece", "sleeve", "armhole"). `since`: where it is measured from, in words ("" : from its beginning).
    """

    measure: Formula
    of: str = ""
    since: str = field(default="", compare=False)
    side: Literal["RS", "WS"] | None = None
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class EvenRows:
    """`work even in sc for 6 rows`, `work 5 rows even`, `work even until piece measures 9 in`: several plain rows.

    `over_all`: across all stitches, those that short rows of this passage left among them.
    """

    stitch: str | None = None
    rows: Number | None = None
    until: Until | None = None
    over_all: bool = False
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Rate:
    """How often a passage shapes: `every 4th row 6 times`, `next row`, `every foll alt row until 40 sts remain`.

    `every`: rows from one event to the next (1: every row). `alternate`: every second interval is this one instead
    (`alternately every 2nd and 4th row`). `times`: how many events (`more`: besides those worked before). `until`: on
    and on until so many stitches are there. `with_next`: the first event is on the next row (`next and every foll 4th
    row`), and whether it is one of the `times` only arithmetic can tell. `side`: `every RS row`.
    """

    every: Number
    times: Number | None = None
    how: Literal["", "more", "in all"] = ""
    until: Number | None = None
    alternate: Number | None = None
    with_next: bool = False
    side: Literal["RS", "WS"] | None = None
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Shaping:
    """Increases or decreases over rows: `dec 1 st at each end of next row, then every 4th row 6 (7, 8) times`.

    `change`: what one event does (None: it is the row named in `labels`, `rep Dec Row every 4th row 6 more times`).
    `after`: rows of the passage before it begins (`beg on 9th row`: 8). `together`: shapings worked at the same time.
    `edge`: where a one-ended change lies, in words ("neck edge"). `leaves`: stitches are left unworked, not worked
    together.
    """

    change: Change | None
    rates: tuple[Rate, ...]
    labels: tuple[str, ...] = ()
    repeats: bool = False
    after: Number | None = None
    together: tuple[Shaping, ...] = ()
    edge: str = field(default="", compare=False)
    leaves: bool = False
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Sentence:
    """A stretch of a row's text that a shaping schedule wrote; on the pages of one size its own entry stands there."""

    start: int
    end: int
    schedule: str
    each: tuple[str, ...]
