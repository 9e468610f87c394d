"""Counts of several sizes, reckoned with as one.

Such a count answers only what holds in all of its sizes alike, and raises `Unlike` where they part. So whatever is
worked out with them is what each size alone would come to.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import cast

from gradegen.design.edge import Edge, Run, Target
from gradegen.work.edge.lines import Unlike

Sign = Callable[[int, int], int]


@dataclass(frozen=True, slots=True, eq=False)
class EachSize:
    """A count in each of several sizes, not the same in all of them."""

    counts: tuple[int, ...]

    def __add__(self, other: object) -> int:
        return each_size(self._with(operator.add, other))

    __radd__ = __add__

    def __neg__(self) -> int:
        return each_size([-count for count in self.counts])

    def __sub__(self, other: object) -> int:
        return each_size(self._with(operator.sub, other))

    def __rsub__(self, other: int) -> int:
        return -self + other

    def __mul__(self, other: object) -> int:
        return each_size(self._with(operator.mul, other))

    __rmul__ = __mul__

    def __floordiv__(self, other: object) -> int:
        return each_size(self._with(operator.floordiv, other))

    def __mod__(self, other: object) -> int:
        return each_size(self._with(operator.mod, other))

    def __lt__(self, other: object) -> bool:
        return self._alike(operator.lt, other)

    def __le__(self, other: object) -> bool:
        return self._alike(operator.le, other)

    def __gt__(self, other: object) -> bool:
        return self._alike(operator.gt, other)

    def __ge__(self, other: object) -> bool:
        return self._alike(operator.ge, other)

    def __eq__(self, other: object) -> bool:
        return self._alike(operator.eq, other)

    def __bool__(self) -> bool:
        return self._alike(operator.ne, 0)

    def __hash__(self) -> int:
        return hash(self.counts)

    def __index__(self) -> int:
        """Never a number to count up to: the sizes differ in it."""
        raise Unlike

    def __str__(self) -> str:
        """Never part of a sentence, which is about one size."""
        raise Unlike

    def _with(self, sign: Sign, other: object) -> list[int]:
        """What the sign makes of each size's count and the other's."""
        if isinstance(other, int):
            return [sign(count, other) for count in self.counts]
        if isinstance(other, EachSize):
            return list(map(sign, self.counts, other.counts))
        raise Unlike

    def _alike(self, sign: Sign, other: object) -> bool:
        """The answer that all sizes give."""
        answers = self._with(sign, other)
        if answers.count(answers[0]) != len(answers):
            raise Unlike
        return bool(answers[0])


def each_size(counts: Iterable[int]) -> int:
    """These counts, to be reckoned with like any other; a plain number where they are all the same."""
    found = tuple(counts)
    return found[0] if found.count(found[0]) == len(found) else cast("int", EachSize(found))


def in_size(number: int, i: int) -> int:
    """The count of the i-th of the sizes; a plain number is the same in all of them."""
    return number.counts[i] if isinstance(number, EachSize) else number


def edge_of_all(edges: Sequence[Edge]) -> Edge:
    """The edge that stands for all of these; raises Unlike where they are not of one make."""
    first = edges[0]
    if any(len(edge) != len(first) for edge in edges):
        raise Unlike
    return tuple([_item_of_all(item, [edge[k] for edge in edges]) for k, item in enumerate(first)])


def _item_of_all(first: Target | Run, items: Sequence[Target | Run]) -> Target | Run:
    if items.count(first) == len(items):
        return first
    runs = [item for item in items if isinstance(item, Run)]
    if len(runs) < len(items):
        raise Unlike
    return Run(each_size([run.times for run in runs]), edge_of_all([run.items for run in runs]))


def edge_in(edge: Edge, i: int) -> Edge:
    """The edge of the i-th of the sizes."""
    return tuple([Run(in_size(one.times, i), edge_in(one.items, i)) if isinstance(one, Run) else one for one in edge])
