"""What pieces leave for later pieces: stretches held, their last rows, the other side of their foundations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from gradegen.design.begin import Begin, Left
from gradegen.design.edge import Edge, Run, Target
from gradegen.work.along.walk import Stretch
from gradegen.work.edge.edges import plain, stitches, tidy


@dataclass(frozen=True, slots=True)
class LeftBehind:
    """One thing a piece left in one size; `label`: the row that held it; `stretches`: one for a last row.

    "lost": a row that was not followed, which may hold anything.
    """

    what: Left | Literal["lost"]
    piece: str
    label: str
    stretches: tuple[Stretch, ...]

    @property
    def most(self) -> int:
        """Stitches of the longest stretch."""
        return max(stitches(one.edge) for one in self.stretches)


def left_by(
    label: str, piece: str, kept: tuple[Stretch, ...] | None, before: tuple[LeftBehind, ...]
) -> tuple[LeftBehind, ...]:
    """What is left after a row (None: it was not followed); a row worked again leaves the same once."""
    if kept is None:
        known = any(one.what == "lost" and one.piece == piece for one in before)
        return before if known else (*before, LeftBehind("lost", piece, label, ()))
    if not kept:
        return before
    others = tuple(one for one in before if (one.what, one.piece, one.label) != ("held", piece, label))
    return (*others, LeftBehind("held", piece, label, kept))


def left_at_end(
    piece: str, edge: Edge | None, underside: Edge, before: tuple[LeftBehind, ...]
) -> tuple[LeftBehind, ...]:
    """What is left when a piece is done: its last row, and the other side of its foundation."""
    found = list(before)
    if edge:
        found.append(LeftBehind("end", piece, "", (Stretch(edge, 0),)))
    if underside:
        found.append(LeftBehind("foundation", piece, "", (Stretch(underside, 0),)))
    return tuple(found)


def named_in(begin: Begin, left: Sequence[LeftBehind]) -> LeftBehind | None:
    """What a piece is said to be worked on: of several rows that hold stitches the one that holds most."""
    fitting = [one for one in left if one.what == begin.what and _same(one.piece, begin.piece)]
    if begin.row:
        fitting = [one for one in fitting if _same(one.label, begin.row)]
    return max(fitting, key=lambda one: one.most, default=None)


def may_hold_more(begin: Begin, left: Sequence[LeftBehind]) -> bool:
    """True when rows of the piece could not be followed, so that nobody knows all it holds."""
    return any(one.what == "lost" and _same(one.piece, begin.piece) for one in left)


def held_last(left: Sequence[LeftBehind], piece: str) -> LeftBehind | None:
    """What `the unworked sts` are: those left last in this piece, else the most an earlier one holds."""
    held = [one for one in left if one.what == "held"]
    if not held or held[-1].piece == piece:
        return held[-1] if held else None
    return max((one for one in held if one.piece == held[-1].piece), key=lambda one: one.most)


def _same(one: str, other: str) -> bool:
    return " ".join(one.casefold().split()) == " ".join(other.casefold().split())


def beginnings(stretch: Stretch, begin: Begin | None) -> tuple[Edge, ...]:
    """The edge of a stretch and the other side of the chain across it, from each place the work may begin."""
    chain, start = stretch.chain, begin.start if begin else ""
    if not chain:
        return (tidy(stretch.edge),)
    half = chain // 2
    ways: dict[str, tuple[int, ...]] = {"middle": (half, chain - half), "underarm": (chain,), "stitches": (0,)}
    firsts = ways[start] if start else (*ways["middle"], chain, 0)
    return tuple(tidy(_around(stretch, first)) for first in dict.fromkeys(firsts))


def _around(stretch: Stretch, first: int) -> tuple[Target | Run, ...]:
    return (*plain(first, "ch", "ch"), *stretch.edge, *plain(stretch.chain - first, "ch", "ch"))
