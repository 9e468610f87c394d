"""Where we are in a row: the edge before, the next thing on it, and what was made so far."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from slow_worker.stitches import matches


@dataclass
class Hands:
    """Where we are in a row: the edge before, the next thing on it, and what we made so far."""

    edge: list[str]
    at: int = 0
    here: int | None = None  # the place worked last, for "same st"
    fresh: bool = False  # we only moved here with slip stitches: the place is still free
    made: list[str] = field(default_factory=list)
    groups: list[tuple[int, tuple[str, ...]]] = field(default_factory=list)  # (place, what went in), ring: -1
    named: dict[str, int] = field(default_factory=dict)
    owes: set[str] = field(default_factory=set)
    optional: int | None = None  # from here on nothing is owed (passed at the start by slip stitches)
    leaves: bool = False
    ring: bool = False
    round_: bool = False
    tops: list[str] = field(default_factory=list)
    skipped: int = 0  # how many places the last skip passed

    def copy(self) -> Hands:
        """The same hands, free to go another way; the edge itself is never changed, only exchanged."""
        return Hands(
            self.edge,
            self.at,
            self.here,
            self.fresh,
            list(self.made),
            list(self.groups),
            dict(self.named),
            set(self.owes),
            self.optional,
            self.leaves,
            self.ring,
            self.round_,
            self.tops,
            self.skipped,
        )

    @property
    def owed_end(self) -> int:
        return len(self.edge) if self.optional is None else self.optional

    def left(self) -> list[int]:
        """Places that were asked for and never reached."""
        if self.leaves or self.ring:
            return []
        return [at for at in range(self.at, self.owed_end) if self.any_of(tuple(self.owes), at)]

    def any_of(self, kinds: Sequence[str], at: int) -> bool:
        for kind in kinds:  # noqa: SIM110  asked more often than anything else, and `any` takes twice as long
            if matches(kind, self.edge[at], self.edge):
                return True
        return False

    def find(self, kinds: Sequence[str]) -> int | None:
        return next((at for at in range(self.at, len(self.edge)) if self.any_of(kinds, at)), None)

    def rest(self, kinds: Sequence[str]) -> list[int]:
        return [at for at in range(self.at, len(self.edge)) if self.any_of(kinds, at)]


def into(hands: Hands, spot: int, atoms: tuple[str, ...], unit: str) -> None:
    """Works `atoms` into one place and remembers what went there."""
    if spot >= 0 and hands.groups and hands.groups[-1][0] == spot:
        hands.groups[-1] = (spot, hands.groups[-1][1] + atoms)
    else:
        hands.groups.append((spot, atoms))
    if unit and spot < 0:
        hands.named[unit] = hands.named.get(unit, 0) + 1
    make(hands, atoms)


def make(hands: Hands, atoms: tuple[str, ...]) -> None:
    """Adds to what is made."""
    hands.made += atoms


def close_loop(hands: Hands, height: int) -> Hands:
    """The last chain and a stitch of `height` chains become one loop."""
    length = int(hands.made.pop()[3:-3]) + height
    make(hands, (f"ch-{length} sp",))
    return hands


def other_side(hands: Hands) -> Hands:
    """The free loops of the chains worked so far, without the end chain, whose one place holds both sides' stitches."""
    worked = [spot for spot, _ in hands.groups if spot >= 0]
    hands.tops = list(hands.edge)
    hands.edge = ["ch"] * max(0, len(set(worked)) - 1)
    hands.at, hands.here, hands.owes = 0, None, {"ch"}
    return hands
