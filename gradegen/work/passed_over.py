"""Chain spaces that every run of a repeat passes on its way to its first place, and the round's end passes once more.

`*shell in next shell, ch 3, sk next ch-3 sp, sc in next ch-3 lp; rep from * around`: the loop before each shell.
"""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.edge import Target
from gradegen.design.rows import Chain, Repeat, Skip, Work
from gradegen.work.walk import Walk

_MOST = 4  # spaces that a run may pass without a word


def leading_spaces(walk: Walk, step: Repeat) -> tuple[Target, ...]:
    """The spaces that stand here before the first place the repeat works in."""
    first = next((one for one in step.body if not isinstance(one, Chain)), None)
    if not isinstance(first, (Work, Skip)) or first.into.which != "next" or first.into.number is not None:
        return ()
    things = first.into.things
    if not things or things[0].name in ("ring", "group", "below", "sp", "place", "gap"):
        return ()
    fits = walk.kind(things).fits
    spot = walk.cursor.save()
    found: list[Target] = []
    while (one := walk.cursor.peek()) is not None and _is_space(one) and not fits(one) and len(found) <= _MOST:
        found.append(one)
        walk.cursor.step()
    walk.cursor.load(spot)
    return tuple(found) if len(found) <= _MOST else ()


def passes_once_more(walk: Walk, spaces: Sequence[Target]) -> bool:
    """Goes to the end where nothing but these spaces is left."""
    if not spaces or walk.cursor.rest() != tuple(spaces):
        return False
    walk.cursor.to_end()
    return True


def _is_space(one: Target) -> bool:
    return one.kind == "sp" and one.name == "sp" and not one.group
