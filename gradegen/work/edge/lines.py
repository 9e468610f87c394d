"""Counts that grow from row to row, reckoned with as one: `start + t * step` for every t from 0 to `last`.

A line answers only what holds for all of its counts alike, and raises `Unlike` where they part. So whatever is worked
out with lines is what each of the counts alone would come to.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast

from gradegen.design.edge import Edge, Run, Target


class Unlike(Exception):  # noqa: N818 - it is an answer, no error
    """Some of the counts of a line answer otherwise than others."""


@dataclass(frozen=True, slots=True, eq=False)
class Line:
    """A count in each of several rows."""

    start: int
    step: int
    last: int

    def __add__(self, other: object) -> int:
        start, step = _parts(other, self.last)
        return line(self.start + start, self.step + step, self.last)

    __radd__ = __add__

    def __neg__(self) -> int:
        return line(-self.start, -self.step, self.last)

    def __sub__(self, other: int) -> int:
        return self + -other

    def __rsub__(self, other: int) -> int:
        return -self + other

    def __mul__(self, other: int) -> int:
        if isinstance(other, Line):
            raise Unlike
        return line(self.start * other, self.step * other, self.last)

    __rmul__ = __mul__

    def __floordiv__(self, by: int) -> int:
        if isinstance(by, Line) or not by or self.step % by:
            raise Unlike
        return line(self.start // by, self.step // by, self.last)

    def __mod__(self, by: int) -> int:
        return self - self // by * by

    def _beyond(self, other: object) -> int:
        """1, 0 or -1: greater than the other in every row, the same, or less."""
        start, step = _parts(other, self.last)
        first, end = self.start - start, self.start - start + (self.step - step) * self.last
        if first == end == 0:
            return 0
        if first * end <= 0:
            raise Unlike
        return 1 if first > 0 else -1

    def __lt__(self, other: int) -> bool:
        return self._beyond(other) < 0

    def __le__(self, other: int) -> bool:
        return self._beyond(other) <= 0

    def __gt__(self, other: int) -> bool:
        return self._beyond(other) > 0

    def __ge__(self, other: int) -> bool:
        return self._beyond(other) >= 0

    def __eq__(self, other: object) -> bool:
        return self._beyond(other) == 0

    def __bool__(self) -> bool:
        return self._beyond(0) != 0

    def __hash__(self) -> int:
        return hash((self.start, self.step, self.last))

    def __index__(self) -> int:
        """Never a number to count up to: the rows differ in it."""
        raise Unlike


def _parts(other: object, last: int) -> tuple[int, int]:
    """Start and step of a number or of another line over the same rows."""
    if isinstance(other, Line) and other.last == last:
        return other.start, other.step
    if isinstance(other, int):
        return other, 0
    raise Unlike


def line(start: int, step: int, last: int) -> int:
    """The count `start + t * step`, to be reckoned with like any other; a plain number where it stays the same."""
    return cast("int", Line(start, step, last)) if step else start


def at(number: int, t: int) -> int:
    """The count of the row t; a number is the same in all of them."""
    return number.start + t * number.step if isinstance(number, Line) else number


def total(number: int, rows: int) -> int:
    """The sum over the first so many rows."""
    start, step = (number.start, number.step) if isinstance(number, Line) else (number, 0)
    return start * rows + step * (rows * (rows - 1) // 2)


def growing(before: Edge, now: Edge, last: int) -> Edge | None:
    """The edge that grows as from `before` to `now`, from now on; None where these are not of one make."""
    if len(before) != len(now):
        return None
    found: list[Target | Run] = []
    for old, new in zip(before, now, strict=True):
        if isinstance(old, Run) and isinstance(new, Run):
            items = growing(old.items, new.items, last)
            if items is None:
                return None
            found.append(Run(line(new.times, new.times - old.times, last), items))
        elif old == new:
            found.append(new)
        else:
            return None
    return tuple(found)


def edge_at(edge: Edge, t: int) -> Edge:
    """The edge of the row t."""
    return tuple(Run(at(item.times, t), edge_at(item.items, t)) if isinstance(item, Run) else item for item in edge)


def next_edge(edge: Edge) -> Edge:
    """The edge a row further on, in every row."""
    return tuple(Run(_next(item.times), next_edge(item.items)) if isinstance(item, Run) else item for item in edge)


def _next(number: int) -> int:
    return line(number.start + number.step, number.step, number.last) if isinstance(number, Line) else number
