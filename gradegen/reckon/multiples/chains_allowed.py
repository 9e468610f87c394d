"""For every piece of a pattern: which foundation chains its rows allow, or why there is none to choose."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from gradegen.design.checked import Checked
from gradegen.design.pattern import Piece
from gradegen.reckon.multiples.foundation import Foundation, begins_in_ring, foundations, piece_groups
from gradegen.reckon.multiples.multiples import Derived, derive_multiple
from gradegen.reckon.multiples.solved_trial import SolvedTrial
from gradegen.reckon.multiples.stated_multiple import Stated, stated_multiples
from gradegen.reckon.multiples.trial import Trial

BEYOND = 16  # chains tried past the size's own, where counts are solved anew for each


@dataclass(frozen=True, slots=True)
class SolvedChains:
    """The chains that work up to `reach` when all other counts are worked out anew for each."""

    allowed: tuple[int, ...]
    reach: int

    @property
    def words(self) -> str:
        """`a multiple of 4, from 20 to 88`, `a multiple of 4, from 20 as far as tried, to 120`, or the chains."""
        if not self.allowed:
            return f"none up to {self.reach}"
        first, last = self.allowed[0], self.allowed[-1]
        steps = {two - one for one, two in zip(self.allowed, self.allowed[1:], strict=False)}
        if len(steps) != 1:
            return ", ".join(map(str, self.allowed))
        (step,) = steps
        left = f" plus {first % step}" if first % step else ""
        what = "any number" if step == 1 else f"a multiple of {step}{left}"
        is_open = last > self.reach - step
        return f"{what}, from {first}{f' as far as tried, to {self.reach}' if is_open else f' to {last}'}"


@dataclass(frozen=True, slots=True)
class PieceChains:
    """A piece and those that go on from it. `begins`: how it begins where it has no chain to choose ("": it has one).

    `held`: the chains with which its rows come out, all other counts as they are in `size`. `solved`: those that work
    when the other counts follow, asked where the held ones leave one chain or none.
    """

    pieces: tuple[str, ...]
    size: str
    begins: str = ""
    foundation: Foundation | None = None
    stated: tuple[Stated, ...] = ()
    held: Derived | None = None
    solved: SolvedChains | None = None


def chains_allowed(checked: Checked, slot: int = 0, reach: int | None = None) -> tuple[PieceChains, ...]:
    """Every piece's chains in one size, in working order; those solved anew are tried up to `reach`."""
    return tuple(_allowed(checked, slot, reach))


def _allowed(checked: Checked, slot: int, reach: int | None) -> Iterator[PieceChains]:
    found = {id(one.pieces[0]): one for one in foundations(checked.pattern)}
    size = checked.sizes[slot].name
    for group in piece_groups(checked.pattern):
        names = tuple(piece.name.text for piece in group)
        foundation = found.get(id(group[0]))
        if foundation is None:
            yield PieceChains(names, size, how_it_begins(group[0]))
            continue
        held = derive_multiple(Trial(checked.pattern, checked.sizes, slot, foundation).work)
        solved = None
        if foundation.count is not None and (held is None or not held.multiple):
            solved = solved_chains(checked, slot, foundation, reach)
        yield PieceChains(names, size, "", foundation, stated_multiples(checked, foundation), held, solved)


def solved_chains(checked: Checked, slot: int, foundation: Foundation, reach: int | None) -> SolvedChains:
    """The chains up to `reach` that work when all other counts follow; a little past the size's own where not said."""
    count = checked.sizes[slot].counts.get(foundation.count or "")
    own = foundation.chains_for(count.n) if count is not None else None
    most = reach or (own or 0) + BEYOND
    trial = SolvedTrial(checked, slot, foundation)
    return SolvedChains(tuple(chains for chains in range(1, most + 1) if trial.work(chains).works), most)


def how_it_begins(piece: Piece) -> str:
    """Why a piece has no chain to choose: `begins in a ring`."""
    if begins_in_ring(piece):
        return "begins in a ring"
    if piece.begin is not None:
        return f"is worked on {piece.begin.piece}"
    return "begins without a chain of one count"
