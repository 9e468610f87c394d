"""A programme asked for the values with the smallest of something; the programme itself stays as it is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from gradegen.grade.programme import Programme
from gradegen.grade.solver import Column, GaveUp, Row, solve

Values = tuple[int, ...]
FURTHEST = 1 << 40


class Question:
    """The unknowns and rows of a programme, with limits and distances of its own on top."""

    def __init__(self, programme: Programme, limits: Sequence[Row]) -> None:
        self.columns, self.rows = list(programme.columns), [*programme.rows, *limits]
        self.unknowns = len(self.columns)

    def distance(self, times: Mapping[int, int], number: int) -> int:
        """A new unknown that is at least as large as this sum is far from nothing; its place."""
        new = len(self.columns)
        self.columns.append(Column(0, FURTHEST, derived=True))
        self.rows.append(Row({**times, new: -1}, None, -number))
        self.rows.append(Row({**times, new: 1}, -number, None))
        return new

    def at_most(self, objective: Mapping[int, int], most: int) -> None:
        """One more row: the objective is at most so large."""
        self.rows.append(Row(objective, None, most))

    def least(self, objective: Mapping[int, int]) -> Values | None:
        """Values of the unknowns with the smallest objective; None where the solver finds none."""
        try:
            found = solve(self.columns, self.rows, objective)
        except GaveUp:
            return None
        return None if found is None else found[: self.unknowns]


def sum_of(times: Mapping[int, int], number: int, values: Values) -> int:
    """What a sum of unknowns comes to, exactly."""
    return sum(often * values[column] for column, often in times.items()) + number
