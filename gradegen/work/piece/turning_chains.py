"""What the other rows of a piece tell of the chain that a row begins with."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from gradegen.design.rows import Chain, Elsewhere, Into, Row, Skip, Step, Work
from gradegen.work.edge.doubts import opened


def told_loops(rows: Sequence[Row]) -> frozenset[int]:
    """Lengths of the turning chains that a later row works into along the side, `5 dc in next ch-5 loop`: loops."""
    turned: set[int] = set()
    found: set[int] = set()
    for row in rows:
        found |= turned & {length for work in _along_side(row.steps) for length in _lengths(work)}
        if row.turning_chain is not None:
            turned |= set(_known(row.turning_chain.number.values))
    return frozenset(found)


def chain_for_all(rows: Sequence[Row]) -> Chain | None:
    """The chain that ends every row of the piece, `ch 4 to turn all rows`; None where none is said, or several are."""
    said = [row.turning_chain for row in rows if row.turning_chain is not None and row.turning_chain.for_all]
    return said[0] if len({chain.number.values for chain in said}) == 1 else None


def told_skips(rows: Sequence[Row]) -> frozenset[int]:
    """Chains skipped before a foundation row's first stitch, besides its height, as the row after it tells them.

    `Dc in 8th ch from hook`, then `skip 2 ch, dc in next ch`: 3 chains are a dc, 2 a space, and 2 lie below it.
    """
    found: set[int] = set()
    for row, after in pairwise(rows):
        if any(isinstance(step, Work) and step.into.which == "from hook" for step in row.steps):
            for skip, work in pairwise(opened(after.steps)):
                if isinstance(skip, Skip) and isinstance(work, Work) and _are_chains(skip.into, work.into):
                    found |= {2 * number for number in _known(skip.into.number.values if skip.into.number else (1,))}
    return frozenset(found)


def _are_chains(*places: Into) -> bool:
    return all(any(thing.name == "ch" for thing in place.things) for place in places)


def _along_side(steps: Sequence[Step]) -> Iterator[Work]:
    """The works behind the words that send them to the side of the piece."""
    is_aside = False
    for step in opened(steps):
        is_aside = is_aside or isinstance(step, Elsewhere)
        if is_aside and isinstance(step, Work):
            yield step


def _lengths(work: Work) -> Iterator[int]:
    for thing in work.into.things:
        if thing.name == "sp" and thing.length is not None:
            yield from _known(thing.length.values)


def _known(values: Sequence[int | None]) -> Iterator[int]:
    yield from (value for value in values if value is not None)
