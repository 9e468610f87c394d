"""The order in which things that are made of each other can be worked out, whatever order they were written in."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class WorkOrder:
    """`names`: each after all it needs. `circles`: names that need each other; what needs those is in neither."""

    names: tuple[str, ...]
    circles: tuple[tuple[str, ...], ...]


def work_order(needs: Mapping[str, Sequence[str]]) -> WorkOrder:
    """The order for name -> names it needs; needs that are no names here count as met."""
    waiting = {name: {need for need in wanted if need in needs} for name, wanted in needs.items()}
    done: list[str] = []
    while ready := [name for name, wanted in waiting.items() if not wanted]:
        done += ready
        for name in ready:
            del waiting[name]
        for wanted in waiting.values():
            wanted.difference_update(ready)
    return WorkOrder(tuple(done), tuple(_circles(waiting)))


def _circles(waiting: Mapping[str, set[str]]) -> list[tuple[str, ...]]:
    """The circles among names that wait for each other, each once; followed along one need per name."""
    circles: list[tuple[str, ...]] = []
    seen: set[str] = set()
    for start in waiting:
        path: list[str] = []
        name = start
        while name not in seen:
            seen.add(name)
            path.append(name)
            name = min(waiting[name])
        if name in path:
            circles.append(tuple(path[path.index(name) :]))
    return circles
