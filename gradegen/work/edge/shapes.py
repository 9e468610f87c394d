"""Groups told by their shape: on an edge that is only described, `3 dc, ch-2 sp, 3 dc` is the shell a row speaks of."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.notes import NoteFacts
from gradegen.design.rows import Definition, Into, Repeat, Row, Skip, Slip, Step, Work
from gradegen.work.edge.edges import target
from gradegen.work.edge.makes import targets_of
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import Fault, Unclear

_WIDEST = 24  # targets of one stretch that are looked through


def with_groups_named(edge: Edge, row: Row, definitions: Mapping[str, Definition]) -> Edge:
    """The edge with the groups named that the row works into, where their shape leaves no doubt."""
    for name in _named_places(row.steps):
        definition = definitions.get(name)
        shape = _shape(definition) if definition is not None else ()
        if len(shape) > 2 and any(kind == "sp" for kind, _, _ in shape) and not _has_group(edge, name):
            edge = _named(edge, name, shape)
        elif definition is None and name in _FIGURES:
            edge = _with_figures(edge, name)
    return edge


_FIGURES = ("petal", "scallop", "point", "leaf")


def _with_figures(edge: Edge, name: str) -> Edge:
    """`8 x (sc, hdc, 3 dc, hdc, sc)` and nothing else: each time the same from both ends, so each is one petal."""
    only = edge[0] if len(edge) == 1 else None
    flat = _flat(only.items) if isinstance(only, Run) and only.times > 1 else None
    parts = [one for one in flat or () if isinstance(one, Target) and one.kind == "st" and not one.group]
    looks = [one.name for one in parts]
    if not isinstance(only, Run) or len(parts) < 3 or len(parts) != len(flat or ()) or looks != looks[::-1]:
        return edge
    size = len(parts)
    figure = (target(one.kind, one.name, one.length, name, i, size, one.chain) for i, one in enumerate(parts, 1))
    return (Run(only.times, tuple(figure)),)


def _named_places(steps: Sequence[Step]) -> list[str]:
    """The names of all places that the steps work into, skip or travel to."""
    found: list[str] = []
    for step in steps:
        if isinstance(step, (Work, Skip, Slip)):
            found += _names(step.into)
        elif isinstance(step, Repeat):
            found += _named_places(step.body)
    return list(dict.fromkeys(found))


def _names(into: Into) -> list[str]:
    return [
        *(thing.of or "" if thing.name == "gap" else thing.name for thing in into.things),
        *(_names(into.of) if into.of is not None else ()),
    ]


Shape = tuple[tuple[str, str, int], ...]


def _shape(definition: Definition) -> Shape:
    if not definition.makes or definition.one:
        return ()
    site = Site(0, ("one",), "flat", {}, NoteFacts())
    try:
        return tuple(_look(one) for one in targets_of(definition.makes, site))
    except (Fault, Unclear):
        return ()


def _look(one: Target) -> tuple[str, str, int]:
    return one.kind, one.name if one.kind == "st" else "", one.length


def _has_group(edge: Edge, name: str) -> bool:
    return any(_has_group(item.items, name) if isinstance(item, Run) else item.group == name for item in edge)


def _named(edge: Edge, name: str, shape: Shape) -> Edge:
    """The edge with that shape under its name, in this stretch and within its runs."""
    items = tuple(
        Run(item.times, _named(item.items, name, shape)) if isinstance(item, Run) and len(item.items) > 1 else item
        for item in edge
    )
    flat = _flat(items)
    if flat is None:
        return items
    starts = [i for i in range(len(flat) - len(shape) + 1) if _fits(flat[i : i + len(shape)], shape)]
    starts = [i for i in starts if _stands_alone(flat, i, i + len(shape))] or starts
    if not starts or any(later - earlier < len(shape) for earlier, later in pairwise(starts)):
        return items
    size = len(shape)
    for start in starts:
        flat[start : start + size] = [
            target(one.kind, one.name, one.length, name, nth + 1, size, one.chain)
            for nth, one in enumerate(flat[start : start + size])
            if isinstance(one, Target)
        ]
    return tuple(flat)


def _stands_alone(flat: Sequence[Target | Run], begin: int, end: int) -> bool:
    """True where the stitches at both its ends are not some of a longer row of the same."""
    return (begin == 0 or flat[begin - 1] != flat[begin]) and (end == len(flat) or flat[end] != flat[end - 1])


def _flat(items: Edge) -> list[Target | Run] | None:
    """The stretch with its short runs of one kind opened; None where it is too long to be looked through."""
    flat: list[Target | Run] = []
    for item in items:
        if isinstance(item, Run) and len(item.items) == 1 and item.times <= _WIDEST:
            flat += list(item.items) * item.times
        else:
            flat.append(item)
    return flat if len(flat) <= 4 * _WIDEST else None


def _fits(part: Sequence[Target | Run], shape: Shape) -> bool:
    pairs = zip(part, shape, strict=True)
    return all(isinstance(one, Target) and not one.group and _look(one) == look for one, look in pairs)
