"""Corner-to-corner tiles begun on a fresh chain: its skipped chains are the tile's own chain."""

from __future__ import annotations

from gradegen.design.edge import Run, Target
from gradegen.design.rows import Definition
from gradegen.trade.stitches import stitches
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import space
from gradegen.work.edge.kinds import holds
from gradegen.work.edge.makes import grouped, opens_tile


def close_tile(walk: Walk) -> None:
    """Mark a chain stitch and the stitches after it as one tile, explained by the pattern or plain to see."""
    if walk.tiled or not walk.skipped:
        return
    start = next((i for i, t in enumerate(walk.out) if isinstance(t, Target) and t.chain and not t.group), None)
    if start is None:
        return
    parts, used = _stitches_from(walk, start)
    explained = any(_is_tile(d) for d in walk.site.definitions.values())
    if not explained and not _is_whole_block(walk, parts):
        return
    tile = grouped([space(walk.skipped), *parts], walk.site)
    if tile[0].group or not explained:
        walk.out[start : start + used] = list(tile)
        walk.tiled = True


def _is_whole_block(walk: Walk, parts: list[Target]) -> bool:
    """True for a chain of six with three stitches on it, the usual block, and none of the chain left."""
    names = {part.name for part in parts}
    known = stitches().get(parts[0].name) if parts else None
    as_high = known is not None and known.height == walk.skipped
    if walk.fresh_chain not in (0, walk.skipped + _BLOCK):
        return False
    return as_high and len(names) == 1 and len(parts) == _BLOCK + 1 and not holds(walk.cursor.rest(), _is_chain)


_BLOCK = 3  # stitches of a block, besides its chain (common practice, no source)


def _is_chain(one: Target) -> bool:
    return one.kind == "ch"


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
