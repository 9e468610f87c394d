"""Where a step goes: kinds of places on an edge, how far a run goes, and which of the places are meant."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from gradegen.design.number import Number
from gradegen.findings import Place


@dataclass(frozen=True, slots=True)
class Thing:
    """A kind of place on an edge that a step can name.

    `name`: "st" (any stitch), a stitch id or own stitch name ("sc", "shell"), "ch" (a chain stitch), "sp" (a chain
    space or loop; `length` for "ch-2 sp"), "corner" (the corner space or centre stitch of a corner), "gap" (between
    stitches), "ring", "row end", "free loop" (other side of the foundation), "tch" (turning chain), "place" ("st or
    sp"), "group" (with `of` the stitch: "dc group"), "unworked" (stitches skipped or left in an earlier row), "below"
    (in the row some rows down: `of` the stitch). A space may be `of` "large" or "small" size, a gap `of` a stitch.
    `said`: the word for a space as written, in the singular ("loop", "sp", "mesh", "ch").
    """

    name: str
    length: Number | None = None
    of: str | None = None
    said: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Bound:
    """How far a run goes.

    "end": across, around, to end. "last": until `number` of `thing` are left. "thing": up to, not into, the next
    `thing`, or until `number` sts before it. "before marker", "before centre": until `number` sts before a marker or
    the middle st. "made": until `number` of `thing` are made. "words": so far as `words` say, which can't be computed
    ("to 2nd loop before corner", "until 8 petals are made").
    """

    to: Literal["end", "last", "thing", "before marker", "before centre", "made", "words"]
    number: Number | None = None
    thing: Thing | None = None
    words: str = field(default="", compare=False)


Which = Literal[
    "next",  # in next st, in next 3 sts, in sp (with `loosely`: no word "next")
    "each",  # in each st around, in each of next 5 sts (number set), in each rem st
    "same",  # in same st / sp / place; takes nothing new
    "first",  # in first st
    "last",  # in last st, in last 3 sts
    "evenly",  # evenly around the row ends: no place for each, all of the edge is used (`bound` holds the words)
    "from hook",  # in 2nd ch from hook: `nth`; `number` when over several ("over 3rd and 4th ch")
    "of",  # a numbered or centre stitch of a larger thing: `nth` (None: the centre) and `of`
    "ring",  # in ring, in magic ring
    "tch",  # in top of turning chain (`nth` for "in 3rd ch of tch")
    "marked",  # in the marked st
]


@dataclass(frozen=True, slots=True)
class Into:
    """Where a step goes."""

    which: Which
    things: tuple[Thing, ...] = ()
    number: Number | None = None
    nth: Number | None = None
    of: Into | None = None
    bound: Bound | None = None
    loop: Literal["front", "back"] | None = None
    loosely: bool = field(default=False, compare=False)
    place: Place = field(compare=False, kw_only=True)
