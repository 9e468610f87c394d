"""What a step leaves on the new edge: stitches, chain spaces, and which group they belong to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from gradegen.design.edge import Target
from gradegen.design.rows import Definition, Make
from gradegen.read.notation.words.row_names import spellings_of
from gradegen.trade.stitch_names import begun_name
from gradegen.trade.stitches import stitches
from gradegen.work.edge.edges import space, target
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import UNDEFINED, Fault, Unclear

_PICOT = target("gap", "picot")
_DEEPEST = 8
_MOST_IN_ONE = 200


def takes_of(makes: Sequence[Make], definitions: Mapping[str, Definition]) -> int:
    """How many places one working of these takes: 2 for sc2tog, else 1."""
    most, trade = 1, stitches()
    for make in makes:
        definition = definitions.get(make.stitch) if definitions else None
        known = definition if definition is not None and definition.takes else trade.get(make.stitch)
        if known is not None and known.takes is not None and known.takes > most:
            most = known.takes
    return most


def targets_of(makes: Sequence[Make], site: Site) -> tuple[Target, ...]:
    """Everything that goes into one place, in order; two or more together form a group."""
    names = {make.stitch for make in makes}
    if names <= {"inc"} or (len(makes) == 1 and _is_increase(makes[0].stitch)):
        return tuple(one for make in makes for one in _of_make(make, site, 0))
    found = _parts(makes, site, 0)
    return grouped(found, site) if len(found) > 1 else tuple(found)


def _parts(makes: Sequence[Make], site: Site, depth: int) -> list[Target]:
    """The parts in order; a chain that opens a tile (`sl st, ch 3, 3 dc`) stands for a stitch and is a space too."""
    found: list[Target] = []
    for i, make in enumerate(makes):
        if opens_tile(makes, i):
            found += [space(site.number(make.times)), target("st", makes[i + 1].stitch, chain=True)]
        else:
            found += _of_make(make, site, depth)
    return found


def opens_tile(makes: Sequence[Make], i: int) -> bool:
    """True for the chain of a corner-to-corner tile: first in it, or after a slip stitch, as high as its stitches."""
    if makes[i].stitch != "ch" or makes[i].times is None or i + 1 >= len(makes):
        return False
    first = i == 0 or (i == 1 and makes[0].stitch == "sl st")
    known = stitches().get(makes[i + 1].stitch)
    times = makes[i].times
    height = times.values[0] if times is not None and len(times.values) == 1 else None
    return first and known is not None and known.height is not None and known.height == height and height > 1


def _is_increase(name: str) -> bool:
    known = stitches().get(name)
    return known is not None and len(known.makes) > 1 and not known.varies


def _of_make(make: Make, site: Site, depth: int) -> tuple[Target, ...]:
    times = site.number(make.times)
    if make.stitch == "ch":
        return (space(times),) if times else ()
    one = _of_name(make, site, depth)
    if times * len(one) > _MOST_IN_ONE:
        raise Unclear("too many stitches in one place", make.place)
    return one * times


def _of_name(make: Make, site: Site, depth: int) -> tuple[Target, ...]:
    definition = site.definitions.get(make.stitch)
    if definition is not None:
        return _of_definition(definition, site, make, depth)
    known = stitches().get(make.stitch)
    if known is None:
        raise Fault(
            UNDEFINED, make.place, f"{make.stitch} is not a usual abbreviation, and the pattern does not explain it."
        )
    if make.stitch == "picot":
        return (_PICOT,)
    if not known.counts or make.stitch == "sl st":
        return ()
    if known.varies and len(known.makes) > 1:
        raise Unclear(f"the pattern does not say how its {make.stitch} is made", make.place)
    return tuple(target("st", name) for name in known.makes)


def _of_definition(definition: Definition, site: Site, make: Make, depth: int) -> tuple[Target, ...]:
    if depth > _DEEPEST:
        raise Unclear(f"{definition.name} is explained by itself", make.place)
    name = _name_on_edge(definition.name, site)
    if definition.one:
        return (target("st", name),)
    if not definition.makes:
        known = stitches().get(definition.name)
        if definition.name == "picot" or (known and not known.counts):
            return (_PICOT,)
        if known and not known.varies:
            return tuple(target("st", name) for name in known.makes)
        if definition.steps:
            raise Unclear(f"{definition.name} goes over several places", make.place)
        raise Unclear(f"what {definition.name} makes could not be read", make.place)
    parts = _parts(definition.makes, site, depth + 1)
    return _labelled(parts, name)


def _name_on_edge(name: str, site: Site) -> str:
    """A beginning shell stands on the edge as a shell, where the pattern or the trade knows shells."""
    rest = begun_name(name)
    if not rest:
        return name
    wanted = {begun_name(one) or one for one in spellings_of(name)}
    return next((other for other in site.definitions if other != name and wanted & {*spellings_of(other)}), name)


def _labelled(parts: Sequence[Target], name: str) -> tuple[Target, ...]:
    size = len(parts)
    return tuple(target(p.kind, p.name, p.length, name, i + 1, size, p.chain) for i, p in enumerate(parts))


def _shape(parts: Sequence[Target]) -> tuple[tuple[str, int], ...]:
    return tuple((part.name, part.length) for part in parts)


def grouped(parts: Sequence[Target], site: Site) -> tuple[Target, ...]:
    """The parts as one group; under the name of the pattern's own stitch they are alike, where there is one."""
    if any(part.group for part in parts):
        return tuple(parts)
    shape = _shape(parts)
    for definition in site.definitions.values():
        if definition.makes and not definition.one and not any(m.stitch == definition.name for m in definition.makes):
            try:
                own = _parts(definition.makes, site, 1)
            except (Fault, Unclear):
                continue
            if _shape(own) == shape:
                return _labelled(parts, definition.name)
    return _labelled(parts, "")
