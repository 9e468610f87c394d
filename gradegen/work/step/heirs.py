"""Groups worked into a shell are shells too: `3 dc, ch 4, 3 dc in next shell` leaves shells of that make."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.rows import Row, Work, worked
from gradegen.trade.stitches import stitches
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import target
from gradegen.work.edge.makes import targets_of
from gradegen.work.edge.stops import Fault, Unclear

_Shape = tuple[tuple[str, int], ...]


def name_heirs(walk: Walk, row: Row) -> None:
    """Give the new groups without a name the name of the group they went into, or the name this row explains."""
    names = dict(_names(walk))
    if names:
        walk.out = list(_renamed(tuple(walk.out), names))
    for definition in row.defines:
        made = targets_of(definition.makes, walk.site) if len(definition.makes) > 2 else ()
        if any(one.kind == "sp" for one in made):
            walk.out = list(_laid_out(tuple(walk.out), _shape(made), definition.name))


def _laid_out(edge: Edge, shape: _Shape, name: str) -> Iterator[Target | Run]:
    """The edge with every stretch of this shape as one group: `3 dc in next st, ch 2, 3 dc in next st (shell)`."""
    i = 0
    while i < len(edge):
        item = edge[i]
        if isinstance(item, Run):
            yield Run(item.times, tuple(_laid_out(item.items, shape, name)))
            i += 1
            continue
        stretch = [one for one in edge[i : i + len(shape)] if isinstance(one, Target)]
        if _shape(stretch) == shape and not any(one.group for one in stretch):
            size = len(shape)
            yield from (target(g.kind, g.name, g.length, name, n + 1, size, g.chain) for n, g in enumerate(stretch))
            i += size
        else:
            yield item
            i += 1


def _names(walk: Walk) -> Iterator[tuple[_Shape, str]]:
    for work in worked(walk.ahead):
        name = _place_name(walk, work) if len(work.makes) > 1 else ""  # of one making, groups have its name
        if name:
            try:
                made = walk.targets(work.makes)
            except (Fault, Unclear):
                continue
            if len(made) > 1 and not made[0].group and any(one.kind == "sp" for one in made):
                yield _shape(made), name


def _place_name(walk: Walk, work: Work) -> str:
    """The own or usual group that a step goes into: "shell"."""
    into = work.into.of if work.into.which == "of" and work.into.of is not None else work.into
    for thing in into.things:
        known = stitches().get(thing.name)
        if thing.name in walk.site.definitions or (known is not None and known.varies):
            return thing.name
    return ""


def _shape(parts: Sequence[Target]) -> _Shape:
    return tuple((part.name, part.length) for part in parts)


def _renamed(edge: Edge, names: dict[_Shape, str]) -> Iterator[Target | Run]:
    i = 0
    while i < len(edge):
        item = edge[i]
        if isinstance(item, Run):
            yield Run(item.times, tuple(_renamed(item.items, names)))
            i += 1
            continue
        group = [one for one in edge[i : i + item.size] if isinstance(one, Target)] if item.nth == 1 else []
        name = names.get(_shape(group), "") if len(group) == item.size and not item.group else ""
        if not name:
            yield item
            i += 1
            continue
        yield from (target(g.kind, g.name, g.length, name, g.nth, g.size, g.chain) for g in group)
        i += item.size
