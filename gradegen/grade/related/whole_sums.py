"""Whether equations between whole numbers have any whole solution; exact, whatever the size of the numbers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Equation:
    """So many times each unknown makes `total`."""

    times: Mapping[int, int]
    total: int


def has_whole_solution(equations: Sequence[Equation]) -> bool:
    """True when whole numbers, of any sign and size, satisfy all equations at once.

    All whole solutions so far are `start + sum of free * ways`, one row of `ways` per free number. Each equation
    then asks the free numbers for a total; their greatest common divisor has to divide it.
    """
    unknowns = sorted({unknown for equation in equations for unknown in equation.times})
    start = dict.fromkeys(unknowns, 0)
    ways: list[dict[int, int]] = [{unknown: 1} for unknown in unknowns]
    for equation in equations:
        missing = equation.total - _made(equation, start)
        ways, made = _gathered(equation, ways)
        if made is None:
            if missing:
                return False
            continue
        way, gain = made
        if missing % gain:
            return False
        for unknown, times in way.items():
            start[unknown] += times * (missing // gain)
    return True


def _made(equation: Equation, values: Mapping[int, int]) -> int:
    return sum(times * values.get(unknown, 0) for unknown, times in equation.times.items())


def _gathered(
    equation: Equation, ways: list[dict[int, int]]
) -> tuple[list[dict[int, int]], tuple[dict[int, int], int] | None]:
    """The ways that leave the equation's total as it is, and the one that changes it least, with its gain.

    Euclid's algorithm on whole rows: the way with the smaller gain is taken off the one with the larger.
    """
    still = [way for way in ways if not _made(equation, way)]
    moving = [(way, _made(equation, way)) for way in ways if _made(equation, way)]
    if not moving:
        return still, None
    first, gain = moving[0]
    for way, other in moving[1:]:
        while other:
            often = gain // other
            first, gain, way, other = way, other, _less(first, way, often), gain - often * other
        still.append(way)
    return still, (first, gain)


def _less(way: dict[int, int], other: dict[int, int], often: int) -> dict[int, int]:
    both = {unknown: way.get(unknown, 0) - often * other.get(unknown, 0) for unknown in {**way, **other}}
    return {unknown: times for unknown, times in both.items() if times}
