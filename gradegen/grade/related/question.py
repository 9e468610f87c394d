"""A programme asked for the values with the smallest of something; the programme itself stays as it is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import gcd

from gradegen.grade.related.programme import Programme
from gradegen.grade.related.solver import Column, Found, GaveUp, Row, solve

Values = tuple[int, ...]


class Question:
    """The unknowns and rows of a programme, with limits and distances of its own on top."""

    def __init__(self, programme: Programme, limits: Sequence[Row]) -> None:
        self.columns, self.rows = list(programme.columns), [*programme.rows, *limits]
        self.unknowns = len(self.columns)
        self.distances: list[tuple[Mapping[int, int], int]] = []

    def distance(self, times: Mapping[int, int], number: int) -> int:
        """A new unknown that is at least as large as this sum is far from nothing; its place.

        The sum goes in leaps, for the unknowns are whole: between the last leap below nothing and the first above, the
        distance is at least what a straight line between the two would give. Saying so spares the solver much work.
        """
        new, leap = len(self.columns), gcd(*times.values())
        self.columns.append(Column(0, None, derived=True))
        self.distances.append((times, number))
        self.rows.append(Row({**times, new: -1}, None, -number))
        self.rows.append(Row({**times, new: 1}, -number, None))
        if leap and number % leap:
            leaps = -number // leap
            below, above = abs(leap * leaps + number), abs(leap * (leaps + 1) + number)
            line = {column: -(above - below) * often // leap for column, often in times.items()}
            self.rows.append(Row({**line, new: 1}, below - (above - below) * leaps, None))
        return new

    def at_most(self, objective: Mapping[int, int], most: int) -> None:
        """One more row: the objective is at most so large."""
        self.rows.append(Row(objective, None, most))

    def least(self, objective: Mapping[int, int], start: Values, steps: int) -> Found:
        """Values of the unknowns with the smallest objective; `start`, which keeps every row, where none are better."""
        try:
            found = solve(self.columns, self.rows, objective, self._with_distances(start), steps)
        except GaveUp:
            found = None
        return Found(start, False) if found is None else Found(found.values[: self.unknowns], found.is_best)

    def _with_distances(self, values: Values) -> Values:
        return (*values, *(abs(sum_of(times, number, values)) for times, number in self.distances))


def sum_of(times: Mapping[int, int], number: int, values: Values) -> int:
    """What a sum of unknowns comes to, exactly."""
    return sum(often * values[column] for column, often in times.items()) + number
