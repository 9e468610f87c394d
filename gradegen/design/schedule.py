"""Shaping worked out for every size: what the designer states, and the schedule each size comes to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from gradegen.design.formula import Formula
from gradegen.design.text import Text
from gradegen.findings import Place

Ends = Literal["both ends", "one end", "evenly"]
Way = Literal["rows", "short rows", "stitch heights", "one row", "bust"]
Curve = Literal["straight", "hollow", "round", "cap"]


@dataclass(frozen=True, slots=True)
class ScheduleRule:
    """A shaping as the designer states it: from one count to another over so many rows.

    `by`: stitches an event changes at each end (None: 1). `row`: the name of the row that is the event (`Dec Row`).
    `leave`: stitches left unworked at the start, at each of the ends. `first`: the first event falls on the next row.
    `rates`: given intervals. `slope`: points of a drawn line, (across, up), of which only the proportions count.
    `steps`, `drop`: of short rows and bust darts. `heights`: stitches from low to high. `together`: shapings of other
    names worked at the same time; `after`: rows (or a length) after which this one begins then.
    """

    name: str
    before: Formula | None
    to: Formula | None
    over: Formula | None = None
    each: Ends = "both ends"
    edge: str = ""
    by: Formula | None = None
    row: Text | None = None
    way: Way = "rows"
    right_side_only: bool = False
    order: Literal["block", "interleaved"] = "block"
    tail: Literal["none", "one interval"] = "none"
    first_is_next: bool = False
    leave: Formula | None = None
    rates: tuple[int, ...] = ()
    curve: Curve = "straight"
    slope: tuple[tuple[Fraction, Fraction], ...] = ()
    steps: Formula | None = None
    drop: Formula | None = None
    inset: Formula | None = None
    heights: tuple[str, ...] = ()
    stitch: str = "sc"
    gauge: Text | None = None
    after: Formula | None = None
    together: tuple[Text, ...] = ()
    place: Place = field(compare=False, kw_only=True)
    places: Mapping[str, Place] = field(default_factory=dict, compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Schedule:
    """One shaping in one size.

    `runs`: (every, times) in working order, after the stitches left at the start (`leave` at each of `ends` ends, in
    one row that all sizes work where any leaves some: `leaves_first`) and the event on the next row
    (`first_is_next`). `by`: stitches one event changes at each end, below 0 for decreases. `groups`: of a slope that
    is no schedule of rows: (stitches, times) for short rows, stitch heights and one row. `rows`: rows there are for
    it; `plain`: those left after the last event. `after`: rows before it begins, where it is worked together with
    another.
    """

    name: str
    size: str
    before: int
    to: int
    by: int
    ends: int
    runs: tuple[tuple[int, int], ...] = ()
    leave: int = 0
    leaves_first: bool = False
    first_is_next: bool = False
    rows: int = 0
    plain: int = 0
    after: int = 0
    groups: tuple[tuple[int, int], ...] = ()

    def events(self) -> Iterator[tuple[int, int]]:
        """(row, stitches changed) for every shaping row, counting from 1."""
        row = 0
        if self.leaves_first:
            row += 1
        if self.leave:
            yield row, -self.leave * self.ends
        if self.first_is_next:
            row += 1
            yield row, self.by * self.ends
        for every, times in self.runs:
            for _ in range(times):
                row += every
                yield row, self.by * self.ends

    @property
    def used(self) -> int:
        """Rows up to and with the last event."""
        return max((row for row, _ in self.events()), default=0)


@dataclass(frozen=True, slots=True)
class TableRow:
    """One row of the table that merged shapings print for a size: what happens in it, and the stitches after it."""

    row: int
    what: tuple[str, ...]
    stitches: int


@dataclass(frozen=True, slots=True)
class Scheduled:
    """A shaping in all sizes, in their order (None: it could not be worked out), with the stated rule."""

    rule: ScheduleRule
    sizes: tuple[Schedule | None, ...]
