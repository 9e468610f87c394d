"""Rows worked again and again: once an edge comes back, the rows until then are multiplied, not worked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Protocol

MOST_ROWS = 600  # rows under one label that are worked one by one, where no edge ever comes back


class Tally(Protocol):
    """What one size has come to under a label: rows worked and everything made in them."""

    times: int
    census: dict[str, int]


@dataclass(slots=True)
class Recurring:
    """Edges seen before each row, and what had been made by then."""

    seen: dict[object, tuple[int, list[dict[str, int]]]] = field(default_factory=dict)

    def skip(self, standing: object, turn: int, room: int, tallies: Sequence[Tally]) -> int:
        """Rows that need not be worked, at most `room`, since what stands before row `turn` stood there before."""
        if room <= 0:
            return 0
        earlier = self.seen.get(standing)
        self.seen[standing] = (turn, [dict(tally.census) for tally in tallies])
        if earlier is None:
            return 0
        period = turn - earlier[0]
        cycles = room // period
        for tally, before in zip(tallies, earlier[1], strict=True):
            tally.times += cycles * period
            for name, number in list(tally.census.items()):
                tally.census[name] = number + cycles * (number - before.get(name, 0))
        return cycles * period
