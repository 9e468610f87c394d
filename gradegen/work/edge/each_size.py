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


@dataclass(slots=True, eq=False)
class EachSize:
    """A count in each of several sizes, not the same in all of them."""

    counts: tuple[int, ...]

    def __add__(self, other: object) -> int:
        if isinstance(other, int):
            if other == 0:
                return cast("int", self)
            return cast("int", EachSize(tuple([count + other for count in self.counts])))  # still not all the same
        return self._with(operator.add, other)

    __radd__ = __add__

    def __neg__(self) -> int:
        return cast("int", EachSize(tuple([-count for count in self.counts])))

    def __sub__(self, other: object) -> int:
        if isinstance(other, int):
            return self + -other
        return self._with(operator.sub, other)

    def __rsub__(self, other: int) -> int:
        return -self + other

    def __mul__(self, other: object) -> int:
        if isinstance(other, int) and other == 1:
            return cast("int", self)
        return self._with(operator.mul, other)

    __rmul__ = __mul__

    def __floordiv__(self, other: object) -> int:
        return self._with(operator.floordiv, other)

    def __mod__(self, other: object) -> int:
        return self._with(operator.mod, other)

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
        if 0 in self.counts:
            raise Unlike
        return True

    def __hash__(self) -> int:
        return hash(self.counts)

    def __index__(self) -> int:
        """Never a number to count up to: the sizes differ in it."""
        raise Unlike

    def __str__(self) -> str:
        """Never part of a sentence, which is about one size."""
        raise Unlike

    def _with(self, sign: Sign, other: object) -> int:
        """What the sign makes of each size's count and the other's."""
        if isinstance(other, int):
            return each_size([sign(count, other) for count in self.counts])
        if isinstance(other, EachSize):
            return each_size(list(map(sign, self.counts, other.counts)))
        raise Unlike

    def _alike(self, sign: Sign, other: object) -> bool:
        """The answer that all sizes give."""
        if isinstance(other, int):
            answers = {sign(count, other) for count in self.counts}
        elif isinstance(other, EachSize):
            answers = set(map(sign, self.counts, other.counts))
        else:
            raise Unlike
        if len(answers) > 1:
            raise Unlike
        return bool(answers.pop())


def each_size(counts: Iterable[int]) -> int:
    """These counts, to be reckoned with like any other; a plain number where they are all the same."""
    found = tuple(counts)
    return found[0] if found.count(found[0]) == len(found) else cast("int", EachSize(found))


def in_sizes(number: int, sizes: int) -> Sequence[int]:
    """The count of each of so many sizes; a plain number is the same in all of them."""
    return number.counts if isinstance(number, EachSize) else (number,) * sizes


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


def edges_in(edge: Edge, sizes: int) -> Sequence[Edge]:
    """The edge of each of so many sizes."""
    columns = [_items_in(item, sizes) for item in edge]
    if all(column is None for column in columns):
        return (edge,) * sizes
    filled = [column or (item,) * sizes for column, item in zip(columns, edge, strict=True)]
    return list(zip(*filled, strict=True))


def _items_in(item: Target | Run, sizes: int) -> Sequence[Target | Run] | None:
    """An item of an edge in each size; None where it is the same in all."""
    if isinstance(item, Target):
        return None
    inner = edges_in(item.items, sizes)
    if isinstance(item.times, int) and inner[0] is item.items:
        return None
    return [Run(*one) for one in zip(in_sizes(item.times, sizes), inner, strict=True)]
