"""Conditions that can't all hold: a small set of them, none to spare, and what leaving each out would buy."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gradegen.grade.related.best import best_of_block, satisfies
from gradegen.grade.related.conditions import Condition
from gradegen.grade.related.joint import Joint, Key
from gradegen.grade.related.parts import Parts
from gradegen.grade.related.programme import programme_of
from gradegen.grade.related.smooth import Block, Bound
from gradegen.grade.related.solver import GaveUp

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
    """Conditions that can't all hold in these sizes, though any but one can; and each left out in turn.

    `in_each`: they clash in each of the sizes; else only in all of them taken together.
    """

    sizes: Block
    in_each: bool
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
        alone = [size for size in block if _clash(joint, kept, (size,))]
        sizes = tuple(alone[:1]) or _fewest_sizes(joint, kept, block)
        conditions = _fewest_conditions(joint, kept, sizes)
        if alone:
            sizes = tuple(size for size in alone if _clash(joint, conditions, (size,)))
        loosened = tuple(_loosen(joint, kept, block, conditions))
        clashes.append(Clash(sizes, bool(alone), conditions, loosened))
        cheapest = clashes[-1].cheapest
        if cheapest.bound is not None:
            return tuple(clashes), cheapest.counts
        kept.remove(cheapest.condition)
    return tuple(clashes), {}


def _fewest_sizes(joint: Joint, kept: Sequence[Condition], block: Block) -> Block:
    """Sizes that clash together, none to spare: each is left out, and stays out if the others clash still."""
    sizes = block
    for size in block:
        fewer = tuple(one for one in sizes if one != size)
        sizes = fewer if fewer and _clash(joint, kept, fewer) else sizes
    return sizes


def _fewest_conditions(joint: Joint, kept: Sequence[Condition], sizes: Block) -> tuple[Condition, ...]:
    """Conditions that clash in these sizes, none to spare, found the same way."""
    names = {joint.sizes[size] for size in sizes}
    conditions = tuple(condition for condition in kept if condition.size is None or condition.size in names)
    for condition in sorted(reversed(conditions), key=lambda condition: _FIRST_OUT.index(condition.kind)):
        fewer = tuple(one for one in conditions if one != condition)
        conditions = fewer if _clash(joint, fewer, sizes) else conditions
    return conditions


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
