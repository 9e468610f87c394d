"""Which foundation chains work: the true multiple and what is left over, derived from the rows alone and proved.

The proof: with M chains more, every row comes to the same outcome. An edge is nested runs, and a row is worked along a
run by going round a fixed circle of places; so where three chains M apart leave edges of one shape whose runs grow by
the same step each time, the circle has closed, and every further M does the same again. A chain that fails at the same
row with the same fault at three such steps fails for ever in the same way. This is shown for every chain of one step.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import gcd

from gradegen.design.edge import Edge, Run
from gradegen.reckon.multiples.trial import Tried

FEWEST, MOST = 12, 420  # chains tried at first and at most


@dataclass(frozen=True, slots=True)
class Derived:
    """The chains that work: from `least` on those that leave one of `left` over whole steps of `multiple`.

    `multiple` 0: none from `least` on. `also`: shorter chains that work as well, in no step. `proved`: the chains that
    were worked for the proof.
    """

    multiple: int
    left: tuple[int, ...]
    least: int
    also: tuple[int, ...]
    proved: tuple[int, ...]

    def allows(self, chains: int) -> bool:
        """True when so many chains come out even in every row."""
        if chains < self.least:
            return chains in self.also
        return bool(self.multiple) and chains % self.multiple in self.left

    @property
    def words(self) -> str:
        """`a multiple of 6 plus 3`, `any number from 2`, `15 alone`."""
        if not self.multiple:
            return f"{', '.join(map(str, self.also))} alone" if self.also else "none"
        if self.multiple == 1:
            return f"any number from {self.smallest}"
        step = f"a multiple of {self.multiple}"
        return " or ".join(f"{step} plus {left}" if left else step for left in self.left)

    @property
    def smallest(self) -> int:
        """The fewest chains that work; 0 when none do."""
        later = [chains for chains in range(self.least, self.least + self.multiple) if self.allows(chains)]
        return min((*self.also, *later), default=0)


def derive_multiple(work: Callable[[int], Tried], most: int = MOST) -> Derived | None:
    """The chains that work, proved; None where a row can't be followed, or no step shows up to `most` chains."""
    tried: dict[int, Tried] = {}

    def at(chains: int) -> Tried:
        if chains not in tried:
            tried[chains] = work(chains)
        return tried[chains]

    reach = FEWEST
    while reach <= most:
        working = [chains for chains in range(1, reach + 1) if at(chains).works]
        if any(not at(chains).is_clear for chains in range(1, reach + 1)):
            return None
        for step in _likely_steps(working, reach) if working or reach > most // 2 else ():
            if found := _proved(step, reach, at, most):
                return found
        reach = max(reach + 1, reach * 3 // 2)
    return None


def _likely_steps(working: list[int], reach: int) -> list[int]:
    """Steps that what works so far may repeat by, the shortest first; four of them must lie in reach."""
    seen = set(working)
    return [
        step
        for step in range(1, reach // 4 + 1)
        if all((chains in seen) == (chains + step in seen) for chains in range(reach // 4, reach - step + 1))
    ]


def _proved(step: int, reach: int, at: Callable[[int], Tried], most: int) -> Derived | None:
    """The chains that work by this step, from the first whole step on that repeats for ever; None where none does.

    That nothing works for ever is believed only of chains tried far beyond the longest that worked.
    """
    for least in range(1, reach - 3 * step + 2):
        block = range(least, least + step)
        if all(_goes_on(at(chains), at(chains + step), at(chains + 2 * step)) for chains in block):
            if any(at(chains).works for chains in block):
                return _smallest_from(step, least, at)
            if not any(at(chains).works for chains in range(least, reach + 1)):
                return _smallest_from(step, least, at) if reach > max(most // 2, 3 * least) else None
    return None


def _smallest_from(step: int, least: int, at: Callable[[int], Tried]) -> Derived:
    left = {chains % step for chains in range(least, least + step) if at(chains).works}
    while least > 1 and ((least - 1) % step in left) == at(least - 1).works:
        least -= 1
    also = tuple(chains for chains in range(1, least) if at(chains).works)
    shortest = _shortest(step, left)
    proved = tuple(range(least, least + 3 * step))
    left_over = tuple(sorted({one % shortest for one in left}))
    return Derived(shortest if left else 0, left_over, least, also, proved)


def _shortest(step: int, left: set[int]) -> int:
    """The shortest step the same chains can be said in: 2 plus 0 for 4 plus 0 or 2."""
    for shorter in range(1, step):
        if step % shorter == 0 and all((one + shorter) % step in left for one in left):
            return shorter
    return step


def _goes_on(first: Tried, second: Tried, third: Tried) -> bool:
    """True when three chains a step apart come to the same, each edge growing evenly."""
    if not first.works:
        return first.stopped == second.stopped == third.stopped
    if not second.works or not third.works:
        return False
    return all(grows_evenly(*three) for three in zip(first.edges, second.edges, third.edges, strict=True))


def grows_evenly(first: Edge, second: Edge, third: Edge) -> bool:
    """True when three edges have one shape, and every run of it grows by the same step each time."""
    if not len(first) == len(second) == len(third):
        return False
    for one, two, three in zip(first, second, third, strict=True):
        if isinstance(one, Run) and isinstance(two, Run) and isinstance(three, Run):
            if one.times - 2 * two.times + three.times or not grows_evenly(one.items, two.items, three.items):
                return False
        elif not one == two == three:
            return False
    return True


def common_step(one: int, other: int) -> int:
    """The least common multiple."""
    return one * other // gcd(one, other)
