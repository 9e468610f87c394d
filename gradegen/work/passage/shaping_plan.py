"""On which rows a shaping falls, counted from where it begins, and what each of its events changes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gradegen.design.passages import Rate, Shaping
from gradegen.design.rows import Change
from gradegen.grade.shaping.faults import ODD_AT_BOTH_ENDS, TOTAL_DIFFERS
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import Fault, Unclear

_MOST = 2_000  # events of one shaping


@dataclass(frozen=True, slots=True)
class Event:
    """One shaping row: which it is, counted from 1, what it changes in stitches, and the rate it belongs to."""

    row: int
    delta: int
    rate: int


@dataclass(frozen=True, slots=True)
class Manner:
    """How loose words are taken.

    `early`: `every 4th row` begins with a shaping row; `besides`: `next and every foll 4th row 6 times` is 7 in all;
    `to_side`: rows up to the next row of the side that the words name (None: not known).
    """

    early: bool = False
    besides: bool = False
    to_side: int | None = None


def delta_of(change: Change, site: Site) -> int:
    """Stitches one event adds (or takes away, below 0)."""
    number = site.number(change.number)
    return change.sign * number * (2 if change.where == "each end" else 1)


def events_of(
    shaping: Shaping, site: Site, count: int, delta: int, room: int | None, manner: Manner
) -> tuple[Event, ...]:
    """The events of one shaping. `count`: stitches before it; `room`: rows there are for it (None: not said)."""
    events: list[Event] = []
    row = 0
    for which, rate in enumerate(shaping.rates):
        intervals = _intervals(rate, site)
        first = _first(rate, next(intervals), which, row, manner)
        times = _times(shaping, rate, which, site, count + delta * len(events), delta, len(events), room, row, manner)
        if times > _MOST:
            raise Unclear("this is worked more often than any piece has rows", rate.place)
        for turn in range(times):
            row += first if turn == 0 else next(intervals)
            events.append(Event(row, delta, which))
    return tuple(events)


def _intervals(rate: Rate, site: Site) -> Iterator[int]:
    every = site.number(rate.every)
    other = site.number(rate.alternate) if rate.alternate is not None else every
    while True:
        yield every
        yield other


def _first(rate: Rate, every: int, which: int, row: int, manner: Manner) -> int:
    """Rows up to and with the rate's first event."""
    if rate.with_next:
        return 1
    if which == 0 and rate.side is not None:
        return manner.to_side or 1
    return 1 if manner.early and which == 0 else every


def _times(
    shaping: Shaping,
    rate: Rate,
    which: int,
    site: Site,
    count: int,
    delta: int,
    before: int,
    room: int | None,
    row: int,
    manner: Manner,
) -> int:
    if rate.until is not None:
        return _times_until(rate, site.number(rate.until), count, delta)
    if rate.times is None:
        return _times_in_room(rate, site, room, row)
    times = site.number(rate.times)
    if rate.how == "in all":
        return max(0, times - before - int(shaping.repeats and not before))
    return times + int(manner.besides and rate.with_next)


def _times_until(rate: Rate, target: int, count: int, delta: int) -> int:
    assert rate.until is not None
    times, left = divmod(target - count, delta) if delta else (0, 0)
    if not left and times >= 0:
        return times
    odd = abs(delta) == 2
    raise Fault(
        ODD_AT_BOTH_ENDS if odd and times >= 0 else TOTAL_DIFFERS,
        rate.until.place,
        "An odd change cannot be the same at both ends." if odd else "The shaping never comes to this count.",
        expected=_near(target, count, delta),
        found=f"{target} sts",
        because=f"it begins with {count} sts and each time {_changes(delta)}",
    )


def _near(target: int, count: int, delta: int) -> str:
    if not delta or (target - count) * delta < 0:
        return f"{'fewer' if delta < 0 else 'more'} than {count} sts"
    times = (target - count) // delta
    near = sorted((count + delta * times, count + delta * (times + 1)))
    return f"{near[0]} or {near[1]} sts"


def _changes(delta: int) -> str:
    return f"adds {delta}" if delta > 0 else f"takes away {-delta}"


def _times_in_room(rate: Rate, site: Site, room: int | None, row: int) -> int:
    """As often as the rows of the label allow."""
    every = site.number(rate.every)
    if room is None and every == 1:
        return 1
    if room is None:
        raise Unclear("how often this is worked is not said", rate.place)
    return max(0, (room - row) // every) if every else 0


def rows_used(events: Sequence[Event]) -> int:
    """Rows up to and with the last event."""
    return max((event.row for event in events), default=0)
