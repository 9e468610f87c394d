"""Conditions that can't all hold: a small set of them, none to spare, and what leaving each out would buy."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gradegen.grade.best import best_of_block, satisfies
from gradegen.grade.conditions import Condition
from gradegen.grade.joint import Joint, Key
from gradegen.grade.parts import Parts
from gradegen.grade.programme import programme_of
from gradegen.grade.smooth import Block, Bound
from gradegen.grade.solver import GaveUp

# what is left out first where there is a choice: a clash is told by relations rather than by multiples
_FIRST_OUT = ("parity", "multiple", "centre", "least", "most", "steps", "pin", "sum", "relation")
MOST_CLASHES = 4  # told for one size; the rest shows when these are mended


@dataclass(frozen=True, slots=True)
class Loosened:
    """What leaving one condition out gives: counts and their cost (None: others clash still)."""

    condition: Condition
    counts: Mapping[Key, int]
    bound: Bound | None


@dataclass(frozen=True, slots=True)
class Clash:
    """Conditions that can't all hold in these sizes, though any but one can; and each left out in turn."""

    sizes: Block
    conditions: tuple[Condition, ...]
    loosened: tuple[Loosened, ...]

    @property
    def cheapest(self) -> Loosened:
        """The condition whose leaving out costs least, by the largest drift; the first where none does alone."""
        solved = [(one.bound.largest, one.bound.total, at) for at, one in enumerate(self.loosened) if one.bound]
        return self.loosened[min(solved)[-1]] if solved else self.loosened[0]


def find_clashes(joint: Joint, block: Block) -> tuple[tuple[Clash, ...], Mapping[Key, int]]:
    """The clashes of a block in which nothing satisfies everything, and its counts with the cheapest ones left out."""
    clashes: list[Clash] = []
    kept = list(joint.conditions)
    while len(clashes) < MOST_CLASHES:
        sizes, conditions = _least_clash(joint, kept, block)
        clashes.append(Clash(sizes, conditions, tuple(_loosen(joint, kept, block, conditions))))
        cheapest = clashes[-1].cheapest
        if cheapest.bound is not None:
            return tuple(clashes), cheapest.counts
        kept.remove(cheapest.condition)
    return tuple(clashes), {}


def _least_clash(joint: Joint, kept: Sequence[Condition], block: Block) -> tuple[Block, tuple[Condition, ...]]:
    """The fewest sizes, then conditions, that clash with none to spare: each is left out, and stays out if it may."""
    sizes = list(block)
    for size in block:
        if len(sizes) > 1 and _clash(joint, kept, fewer := [one for one in sizes if one != size]):
            sizes = fewer
    names = {joint.sizes[size] for size in sizes}
    conditions = [condition for condition in kept if condition.size is None or condition.size in names]
    order = sorted(reversed(conditions), key=lambda condition: _FIRST_OUT.index(condition.kind))
    for condition in order:
        if _clash(joint, fewer_kept := [one for one in conditions if one != condition], sizes):
            conditions = fewer_kept
    return tuple(sizes), tuple(conditions)


def _clash(joint: Joint, kept: Sequence[Condition], sizes: Sequence[int]) -> bool:
    programme = programme_of(joint, kept, sizes, Parts(1, False))
    try:
        return programme.rules_itself_out() or satisfies(programme) is None
    except GaveUp:
        return False


def _loosen(
    joint: Joint, kept: Sequence[Condition], block: Block, conditions: Sequence[Condition]
) -> Iterator[Loosened]:
    parts = Parts.of(joint.wishes)
    for condition in conditions:
        programme = programme_of(joint, [one for one in kept if one != condition], block, parts)
        try:
            found = best_of_block(programme)
        except GaveUp:
            found = None
        yield Loosened(condition, programme.counts(found[0]) if found else {}, found[1] if found else None)
