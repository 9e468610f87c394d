"""What every run of a repeat passes on its way to its first place, and the round's end passes once more.

`*shell in next shell, ch 3, sk next ch-3 sp, sc in next ch-3 lp; rep from * around`: the loop before each shell.
"""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.edge import Target
from gradegen.design.rows import Chain, Repeat, Skip, Work
from gradegen.work.along.walk import Walk
from gradegen.work.edge.kinds import Kind

_MOST = 8  # places that a run may pass without a word


def before_next(walk: Walk, kind: Kind, stop: Kind) -> int | None:
    """How many of a kind stand before the next of another, itself not counted; None where none of those is ahead."""
    spot, there, both = walk.cursor.save(), walk.remaining(kind), walk.remaining(kind & stop)
    if not walk.cursor.pass_over(stop.key, stop.fits, 1):
        return None
    passed = there - walk.remaining(kind) - (both - walk.remaining(kind & stop))
    walk.cursor.load(spot)
    return passed


def passed_first(walk: Walk, step: Repeat) -> tuple[Target, ...]:
    """What stands here before the first place the repeat works in, when that place is a group of its own."""
    first = next((one for one in step.body if not isinstance(one, Chain)), None)
    if not isinstance(first, Work) or first.into.which != "next" or first.into.number is not None:
        return ()
    if not first.into.things or first.into.things[0].name in ("ring", "group", "below", "st", "sp", "place", "gap"):
        return ()
    fits = walk.kind(first.into.things).fits
    spot = walk.cursor.save()
    found: list[Target] = []
    while (one := walk.cursor.peek()) is not None and not fits(one) and len(found) <= _MOST:
        found.append(one)
        walk.cursor.step()
    walk.cursor.load(spot)
    return tuple(found) if len(found) <= _MOST else ()


def passes_once_more(walk: Walk, passed: Sequence[Target]) -> bool:
    """Goes to the end where nothing is left but what every run has passed."""
    if not passed or walk.cursor.rest() != tuple(passed):
        return False
    walk.cursor.to_end()
    return True


def passes_last_stitch(walk: Walk, step: Repeat) -> bool:
    """`*ch 1, skip next sc, sc in next ch-1 sp; rep to end`: past the one stitch behind the last space."""
    works = [one for one in step.body if isinstance(one, Work)]
    skips = any(isinstance(one, Skip) for one in step.body)
    in_spaces = all(one.into.which == "next" and [t.name for t in one.into.things] == ["sp"] for one in works)
    rest = walk.cursor.rest()
    if not works or not skips or not in_spaces or len(rest) != 1 or not isinstance(rest[0], Target):
        return False
    if rest[0].kind != "st":
        return False
    walk.cursor.to_end()
    return True
