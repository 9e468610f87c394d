"""One integer programme to its best whole solution: whole numbers go in, whole numbers come out.

The solver (HiGHS) reckons in floating point inside, so its answer is never taken on trust: it is rounded to whole
numbers and every row is checked again exactly. The same programme always gets the same answer: one thread, a fixed
seed, and a limit counted in steps. A limit in seconds stands behind it, for programmes no pattern should have: where it
is met, no answer is given at all.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

MOST_STEPS = 3000  # branches looked into; what related counts need is mostly one
MOST_SECONDS = 20.0


@dataclass(frozen=True, slots=True)
class Column:
    """One unknown whole number; `derived`: it follows from the others, such as the size of a difference.

    What rows say of derived ones is for the asker to check on the values they follow from. `high` None: no limit.
    """

    low: int
    high: int | None
    derived: bool = False

    def holds(self, value: int) -> bool:
        """True when a value keeps the limits."""
        return self.low <= value and (self.high is None or value <= self.high)


@dataclass(frozen=True, slots=True)
class Row:
    """So many times each unknown comes to at least `low` and at most `high`; None: no limit."""

    times: Mapping[int, int]
    low: int | None
    high: int | None

    def holds(self, values: Sequence[int]) -> bool:
        """True when these values keep the limits, exactly."""
        total = sum(times * values[column] for column, times in self.times.items())
        return (self.low is None or self.low <= total) and (self.high is None or total <= self.high)


@dataclass(frozen=True, slots=True)
class Found:
    """Values that keep every row; `is_best`: it is proved that none are better."""

    values: tuple[int, ...]
    is_best: bool


class GaveUp(Exception):  # noqa: N818  # caught in this room
    """The solver neither found a solution nor proved that there is none, or its rounding broke the one it found."""


def solve(
    columns: Sequence[Column],
    rows: Sequence[Row],
    objective: Mapping[int, int] | None = None,
    start: Sequence[int] | None = None,
    steps: int = MOST_STEPS,
) -> Found | None:
    """The values with the smallest objective that keep every row; None when none do. Raises GaveUp.

    `start`: values known to keep every row, from which the search for better ones begins; `steps`: its limit.
    """
    import highspy

    highs: Any = getattr(highspy, "_Highs", highspy.Highs)()  # the plain class: the other one greets on standard output
    for option, value in (*_OPTIONS.items(), ("mip_max_nodes", steps)):
        highs.setOptionValue(option, value)
    highs.passModel(_model(highspy, columns, rows, objective or {}))
    if start is not None:
        known = highspy.HighsSolution()
        known.col_value = list(start)
        highs.setSolution(known)
    highs.run()
    status = highs.getModelStatus()
    if status in (highspy.HighsModelStatus.kInfeasible, highspy.HighsModelStatus.kUnboundedOrInfeasible):
        return None
    found = highs.getSolution().col_value
    if (
        status == highspy.HighsModelStatus.kTimeLimit
        or not highs.getSolution().value_valid
        or len(found) != len(columns)
    ):
        raise GaveUp(str(status))
    values = tuple(round(value) for value in found)
    if not _is_sound(values, columns, rows):
        raise GaveUp("rounding broke the solution")
    return Found(values, status == highspy.HighsModelStatus.kOptimal)


def _is_sound(values: Sequence[int], columns: Sequence[Column], rows: Sequence[Row]) -> bool:
    """True when all limits and rows of unknowns hold exactly."""
    unknowns = {at for at, column in enumerate(columns) if not column.derived}
    within = all(columns[at].holds(values[at]) for at in unknowns)
    return within and all(row.holds(values) for row in rows if unknowns.issuperset(row.times))


_OPTIONS: dict[str, object] = {
    "output_flag": False,
    "threads": 1,
    "random_seed": 7,
    "time_limit": MOST_SECONDS,
    "mip_rel_gap": 0.0,
    "mip_abs_gap": 0.5,  # objectives are whole: within a half is the best
}


def _model(highspy: Any, columns: Sequence[Column], rows: Sequence[Row], objective: Mapping[int, int]) -> Any:
    model = highspy.HighsLp()
    none = highspy.kHighsInf
    model.num_col_, model.num_row_ = len(columns), len(rows)
    model.col_cost_ = [objective.get(at, 0) for at in range(len(columns))]
    model.col_lower_ = [column.low for column in columns]
    model.col_upper_ = [none if column.high is None else column.high for column in columns]
    model.row_lower_ = [-none if row.low is None else row.low for row in rows]
    model.row_upper_ = [none if row.high is None else row.high for row in rows]
    model.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    starts = [0]
    for row in rows:
        starts.append(starts[-1] + len(row.times))
    model.a_matrix_.start_ = starts
    model.a_matrix_.index_ = [column for row in rows for column in row.times]
    model.a_matrix_.value_ = [times for row in rows for times in row.times.values()]
    kinds = highspy.HighsVarType
    model.integrality_ = [kinds.kContinuous if column.derived else kinds.kInteger for column in columns]
    return model
