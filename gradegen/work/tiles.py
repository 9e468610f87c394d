"""Corner-to-corner tiles begun on a fresh chain: its skipped chains are the tile's own chain."""

from __future__ import annotations

from gradegen.design.edge import Run, Target
from gradegen.design.rows import Definition
from gradegen.work.edges import space
from gradegen.work.makes import grouped, opens_tile
from gradegen.work.walk import Walk


def close_tile(walk: Walk) -> None:
    """Mark a chain stitch and the stitches after it as one tile, where the pattern explains such a tile."""
    if walk.tiled or not walk.skipped or not any(_is_tile(d) for d in walk.site.definitions.values()):
        return
    start = next((i for i, t in enumerate(walk.out) if isinstance(t, Target) and t.chain and not t.group), None)
    if start is None:
        return
    parts, used = _stitches_from(walk, start)
    tile = grouped([space(walk.skipped), *parts], walk.site)
    if tile[0].group:
        walk.out[start : start + used] = list(tile)
        walk.tiled = True


def _is_tile(definition: Definition) -> bool:
    return bool(definition.makes) and opens_tile(definition.makes, 0)


def _stitches_from(walk: Walk, start: int) -> tuple[list[Target], int]:
    """The lone stitches from here on, short runs opened, and how many items of the edge they are."""
    parts: list[Target] = []
    used = 0
    for item in walk.out[start:]:
        if isinstance(item, Run):
            if item.times > 12 or len(item.items) != 1 or not isinstance(item.items[0], Target):
                break
            parts += [item.items[0]] * item.times
        elif item.kind != "st" or item.group:
            break
        else:
            parts.append(item)
        used += 1
    return parts, used
