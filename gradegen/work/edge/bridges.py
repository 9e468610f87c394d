"""Chains over stitches passed by (a thumb, a buttonhole, an underarm): some count them in the total of the row."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.rows import Aside, Chain, Repeat, Skip, Step
from gradegen.work.edge.site import Site

_LEAST = 2  # chains: a single one beside a single skipped stitch is a mesh, whose spaces are not stitches
_WAYS = ("its chains are no stitches", "its chains are counted as stitches")


def counted_with_bridges(steps: Sequence[Step], site: Site, made: int, written: int) -> bool:
    """True where the printed total holds the chains over skipped stitches, in the reading that is being tried."""
    bridges = _bridges(steps)
    if not bridges or made + sum(site.number(chain.number) for chain in bridges) != written:
        return False
    return site.choose("bridge", "the chain over the skipped stitches", _WAYS, bridges[0].place) == 1


def _bridges(steps: Sequence[Step]) -> list[Chain]:
    """The chains that stand right beside a skip, outside repeats."""
    said = [step for step in steps if not isinstance(step, Aside)]
    found = []
    for before, step, after in zip([None, *said], said, [*said[1:], None], strict=False):
        beside = isinstance(before, Skip) or isinstance(after, Skip)
        if isinstance(step, Chain) and beside and all((value or 0) >= _LEAST for value in step.number.values):
            found.append(step)
    return found if not any(isinstance(step, Repeat) for step in said) else []
