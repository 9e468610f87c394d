"""Spreading events evenly: increases and decreases over rows, and along one row; whole numbers only."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby, pairwise
from typing import Literal

from gradegen.numbers.snap import NoCount

Order = Literal["block", "interleaved"]
Tail = Literal["none", "one interval"]


@dataclass(frozen=True, slots=True)
class Spread:
    """Events as (every, times), in working order: ((8, 2), (9, 12)) is every 8th twice, then every 9th 12 times.

    `plain`: rows left after the last event.
    """

    runs: tuple[tuple[int, int], ...]
    plain: int

    @property
    def events(self) -> int:
        """How many events there are."""
        return sum(times for _, times in self.runs)

    @property
    def used(self) -> int:
        """Rows up to and with the last event."""
        return sum(every * times for every, times in self.runs)

    def at(self) -> Iterator[int]:
        """The row of each event, counting from 1."""
        row = 0
        for every, times in self.runs:
            for _ in range(times):
                row += every
                yield row

    def totals(self) -> dict[int, int]:
        """How often each interval occurs, whatever the order."""
        found: dict[int, int] = {}
        for every, times in self.runs:
            found[every] = found.get(every, 0) + times
        return found


def spread(
    events: int, rows: int, *, order: Order = "block", tail: Tail | int = "none", right_side_only: bool = False
) -> Spread | NoCount:
    """Events over rows by `a, r = divmod(rows, events)`: every a-th row, and every (a+1)-th r times.

    "block": the shorter interval first, then the longer; "interleaved": mixed as evenly as can be. `tail`: use all
    rows, leave about one interval plain, or leave that many rows plain. `right_side_only`: events on even rows only,
    so that intervals are even.
    """
    if events < 0 or rows < 0:
        return NoCount("neither rows nor events can be less than none")
    if not events:
        return Spread((), rows)
    unit = 2 if right_side_only else 1
    room = rows // unit
    left = _tail_units(tail, events, room, unit)
    if room - left < events:
        which = " right-side" if right_side_only else ""
        return NoCount(f"{events} do not fit into {max(room - left, 0)}{which} rows, one to a row")
    each, longer = divmod(room - left, events)
    intervals = [each] * (events - longer) + [each + 1] * longer
    if order == "interleaved":
        intervals = [room_up_to - before for before, room_up_to in _steps(room - left, events)]
    runs = tuple((every * unit, len(list(same))) for every, same in groupby(intervals))
    return Spread(runs, rows - (room - left) * unit)


def _tail_units(tail: Tail | int, events: int, room: int, unit: int) -> int:
    if isinstance(tail, int):
        return -(-tail // unit)
    return 0 if tail == "none" else (2 * room + events + 1) // (2 * (events + 1))


def _steps(room: int, events: int) -> Iterator[tuple[int, int]]:
    marks = [room * event // events for event in range(events + 1)]
    return pairwise(marks)


def two_rates(events: int, rows: int, often: int, seldom: int) -> tuple[int, int] | NoCount:
    """How many times each of two given intervals, so that all rows are used: x * often + y * seldom = rows."""
    if not 0 < often < seldom:
        return NoCount("the first interval must be the shorter one")
    seldoms, over = divmod(rows - events * often, seldom - often)
    if over or not 0 <= seldoms <= events:
        return NoCount(f"every {often} and every {seldom} rows cannot give {events} in {rows} rows")
    return events - seldoms, seldoms


def increase_after(stitches: int, increases: int, edges: Literal["round", "flat"]) -> tuple[int, ...] | NoCount:
    """After which stitch each increase stands, counting from 1.

    In the round the last one closes the round; flat, the two edges keep half an interval each (a half goes up).
    """
    if increases > stitches:
        return NoCount(f"{increases} increases do not fit into {stitches} stitches, one to a stitch")
    if edges == "round":
        return tuple(-(-stitches * event // increases) for event in range(1, increases + 1))
    return tuple((stitches * (2 * event - 1) + increases) // (2 * increases) for event in range(1, increases + 1))


def plain_between(stitches: int, decreases: int) -> tuple[tuple[int, int], ...] | NoCount:
    """Groups of (plain stitches, times), each closed by one decrease over 2 stitches; the wider groups first.

    ((6, 5), (5, 5)) is (6 sc, dec) 5 times, (5 sc, dec) 5 times. Nothing is left at the end.
    """
    if decreases < 1:
        return NoCount("there is no decrease to place")
    if 2 * decreases > stitches:
        return NoCount(f"{decreases} decreases need {2 * decreases} stitches, and there are {stitches}")
    group, wider = divmod(stitches, decreases)
    both = ((group - 1, wider), (group - 2, decreases - wider))
    return tuple((plain, times) for plain, times in both if times)
