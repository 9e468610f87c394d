"""The edge a row is worked into: nested repeats of targets, so a row of a million stitches costs what ten cost."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache
from operator import index
from typing import Literal, NamedTuple

Kind = Literal["st", "sp", "ch", "free loop", "row end", "ring", "gap"]


@dataclass(frozen=True, slots=True)
class Target:
    """One place to work into.

    `name`: stitch id or own stitch name ("st" when unknown); for spaces "sp" with `length` chains. `group`: the shell
    or cluster it belongs to, `nth` of `size` (from 1, in the order this row meets them). `chain`: a turning or starting
    chain standing for a stitch.
    """

    kind: Kind
    name: str
    length: int = 0
    group: str = ""
    nth: int = 0
    size: int = 0
    chain: bool = False
    hashed: int = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        length = index(self.length)  # a plain number: counts that stand for several rows or sizes are refused
        parts = (self.kind, self.name, length, self.group, self.nth, self.size, self.chain)
        object.__setattr__(self, "hashed", hash(parts))

    def __hash__(self) -> int:
        """Worked out once: edges are looked up by their targets all the time."""
        return self.hashed


class Run(NamedTuple):
    """`times` times `items`, one after the other; a plain tuple, since runs are made anew all the time."""

    times: int
    items: Edge


Edge = tuple[Target | Run, ...]


@lru_cache(maxsize=4096)
def stitches_in(edge: Edge) -> int:
    """How many countable places: stitches, chains, free loops and row ends; spaces are none."""
    total = 0
    for item in edge:
        if isinstance(item, Run):
            total += item.times * stitches_in(item.items)
        elif item.kind in ("st", "ch", "free loop", "row end"):
            total += 1
    return total
