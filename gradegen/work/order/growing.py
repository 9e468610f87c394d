"""Rows of a range that each add the same: worked once on counts that grow, and then multiplied."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from gradegen.design.edge import Edge
from gradegen.design.rows import Row
from gradegen.work.along.judge import add_census
from gradegen.work.edge.lines import Unlike, edge_at, growing, next_edge, total
from gradegen.work.order.recurring import Tally
from gradegen.work.piece.piece import PieceWork

_FEWEST = 4  # times a stretch of rows must come again to be worth it


class Leap(NamedTuple):
    """Where many rows lead to, and everything made in them."""

    edge: Edge
    census: Mapping[str, int]


@dataclass(slots=True)
class Growing:
    """What each size stood on before the last rows."""

    piece: PieceWork
    seen: list[dict[int, Edge]] = field(default_factory=list)

    def skip(self, rows: Sequence[Row], room: int, tallies: Mapping[int, Tally]) -> int:
        """Rows that need not be worked, at most `room`; the sizes then stand where those lead to.

        `rows`: those that come next, again and again.
        """
        standings = {i: self.piece.standings[i] for i in tallies}
        sure = {i: one.edge for i, one in standings.items() if one.edge and not one.is_doubted and not any(one.rests)}
        self.seen.append(sure)
        worked = len(self.seen)
        if self.piece.one_by_one or worked & (worked - 1):
            return 0  # tried after 2, 4, 8 ... rows
        for period in (len(rows), 2 * len(rows)):
            times = room // period
            if times < _FEWEST or worked <= period:
                continue
            cycle = (*rows, *rows)[:period]
            leaps = {i: self._leap(cycle, i, times) for i in tallies}
            if self._take(leaps, tallies, times * period):
                return times * period
        return 0

    def _take(self, leaps: Mapping[int, Leap | None], tallies: Mapping[int, Tally], number: int) -> bool:
        """Go so many rows on where that is known in every size."""
        known = {i: leap for i, leap in leaps.items() if leap is not None}
        if len(known) < len(leaps):
            return False
        for i, leap in known.items():
            self.piece.standings[i] = replace(self.piece.standings[i], edge=leap.edge)
            tallies[i].times += number
            add_census(tallies[i].census, leap.census)
        self.seen.clear()
        return True

    def _leap(self, rows: Sequence[Row], i: int, times: int) -> Leap | None:
        """The rows so many times over; None where that can't be told."""
        before, now = self.seen[-1 - len(rows)].get(i), self.seen[-1].get(i)
        edge = growing(before, now, times - 1) if before and now else None
        if edge is None:
            return None
        made: dict[str, int] = {}
        reached = edge
        try:
            for row in rows:
                outcome = self.piece.work_on(reached, row, i)
                if not outcome.balances or outcome.kept_aside or outcome.underside != self.piece.standings[i].underside:
                    return None
                add_census(made, outcome.census)
                reached = self.piece.turned(row, outcome)
            if reached != next_edge(edge):
                return None
        except (Unlike, TypeError):  # rows that part, and sums that lines do not know
            return None
        return Leap(edge_at(edge, times), {name: total(number, times) for name, number in made.items()})
