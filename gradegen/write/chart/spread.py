"""Where things stand along a row: each as near as can be to where it belongs, in order, none nearer than its room."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(slots=True)
class _Block:
    """Neighbours that touch: their mean place, their weight, and how many they are."""

    place: float
    weight: float
    number: int


def spread(
    wanted: Sequence[float], weights: Sequence[float], gaps: Sequence[float], low: float = -1e9, high: float = 1e9
) -> list[float]:
    """Places in order, each at least its gap beyond the one before, so that the weighted squares of the ways are least.

    `gaps[i]` lies between thing i and thing i + 1. `low`, `high`: no place beyond these, as far as there is room.
    """
    if not wanted:
        return []
    offsets = [0.0]
    for gap in gaps:
        offsets.append(offsets[-1] + gap)
    blocks: list[_Block] = []
    for want, weight, offset in zip(wanted, weights, offsets, strict=True):
        blocks.append(_Block(want - offset, weight, 1))
        while len(blocks) > 1 and blocks[-2].place > blocks[-1].place:
            last = blocks.pop()
            total = blocks[-1].weight + last.weight
            blocks[-1].place = (blocks[-1].place * blocks[-1].weight + last.place * last.weight) / total
            blocks[-1].weight, blocks[-1].number = total, blocks[-1].number + last.number
    most = max(low, high - offsets[-1])
    levels = [min(max(block.place, low), most) for block in blocks for _ in range(block.number)]
    return [level + offset for level, offset in zip(levels, offsets, strict=True)]
