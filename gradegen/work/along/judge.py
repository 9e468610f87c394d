"""Counting what a row made, and comparing it with what is printed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from gradegen.design.edge import Run, Target
from gradegen.design.rows import Chain, Definition, Stated
from gradegen.findings import Place
from gradegen.read.notation.words.row_names import spellings_of
from gradegen.trade.stitches import stitches
from gradegen.work.along.walk import Walk
from gradegen.work.edge.bridges import counted_with_bridges
from gradegen.work.edge.edges import tally
from gradegen.work.edge.kinds import family
from gradegen.work.edge.site import Site


@dataclass(frozen=True, slots=True)
class Mismatch:
    """A printed count that the row does not make."""

    stated: Stated
    place: Place
    written: int
    worked: int
    unit: str


def units_of(standing: Mapping[Target, int]) -> dict[str, int]:
    """What stands on an edge by name: stitches, spaces by length, groups by their name, picots."""
    found: dict[str, int] = {}

    def add(name: str, number: int) -> None:
        found[name] = found.get(name, 0) + number

    for one, number in standing.items():
        if one.kind == "sp":
            add(f"ch-{one.length} sp", number)
            add("sp", number)
        elif one.kind in ("st", "ch", "gap"):
            add(one.name, number)
            if one.kind == "st" and family(one.name) != one.name:
                add(family(one.name), number)
        if one.nth == 1 and one.size > 1:
            add(one.group or "group", number)
            if one.group:
                add("group", number)
    return found


def census_of(standing: Mapping[Target, int], spent: Mapping[str, int]) -> dict[str, int]:
    """Every stitch that was made, by name: those on the new edge, chains of spaces, and what leaves no place on it.

    A chain that stands for a stitch is counted as chains alone. A picot of the pattern's own is one "picot".
    """
    found = dict(spent)
    for one, number in standing.items():
        if one.kind == "sp":
            found["ch"] = found.get("ch", 0) + number * one.length
        elif one.kind == "st" and not one.chain:
            found[one.name] = found.get(one.name, 0) + number
        elif one.kind == "gap" and one.group:
            found["picot"] = found.get("picot", 0) + number
    return found


def add_census(found: dict[str, int], more: Mapping[str, int]) -> None:
    """What another row made, added to what was made before."""
    for name, number in more.items():
        found[name] = found.get(name, 0) + number


def made_of(standing: Mapping[Target, int]) -> int:
    """Stitches, chains and row ends among what stands on an edge; spaces and picots are none."""
    return sum(number for one, number in standing.items() if one.kind not in ("sp", "gap", "ring"))


def name_groups(stated: Sequence[Stated], units: dict[str, int], site: Site) -> None:
    """`12 scallops`: a name the pattern does not explain belongs to the row's groups where their number is the same."""
    for one in stated:
        name = one.unit.name
        if (
            site.has_none(one.number)
            or name in units
            or (name in stitches() and name not in _BY_SHAPE)
            or name in site.definitions
            or name in ("sp", "ch", "st", "corner")
        ):
            continue
        if units.get("group") == site.number(one.number):
            units[name] = units["group"]


class Compared(NamedTuple):
    """The printed counts that a row misses, and those that nothing it makes could be held against."""

    missed: tuple[Mismatch, ...]
    open: tuple[Stated, ...]


def compare(stated: Sequence[Stated], made: int, units: Mapping[str, int], walk: Walk) -> Compared:
    """Every printed count that differs from what was made; counts of the same unit are added up."""
    totals: dict[str, tuple[int, Stated]] = {}
    for one in stated:
        if walk.site.has_none(one.number):
            continue
        name = _unit_name(one, walk.site)
        written = walk.site.number(one.number)
        before = totals.get(name, (0, one))[0]
        totals[name] = (before + written, one)
    lone = len(totals) == 1
    found, unknown = [], []
    for name, (written, one) in totals.items():
        worked = _worked(name, one, made, units, walk)
        if worked is None:
            worked = _full_or_half(name, totals, walk)
        if worked is None:
            unknown += [] if _is_seen(written, totals, made, walk, units) else [one]
            continue
        if worked == written or (lone and name in stitches() and made == written):
            continue
        if name == "st" and counted_with_bridges(walk.ahead, walk.site, worked, written):
            continue
        if _besides_groups(name, worked - written, totals):
            continue  # `24 clusters, 2 dc`
        if worked - _within_others(name, totals, units, walk) == written:
            continue  # `20 crossed sts and 2 dc`: those beside them
        found.append(Mismatch(one, walk.site.place_of(one.number), written, worked, "sts" if name == "st" else name))
    return Compared(tuple(found), tuple(unknown))


def _is_seen(
    written: int, totals: Mapping[str, tuple[int, Stated]], made: int, walk: Walk, units: Mapping[str, int]
) -> bool:
    """Whether so many of something stand in the row, whatever it is called: `6 corners`, and 6 chain spaces."""
    standing = tally(tuple(walk.out))
    chains = sum(one.length * number for one, number in standing.items() if one.kind == "sp")
    together = sum(number for number, _ in totals.values())
    there = {*units.values(), *_groups_by_size(walk.out).values(), chains}
    return written in there or (len(totals) == 1 and written == made) or together == units.get("group")


def _besides_groups(name: str, more: int, totals: Mapping[str, tuple[int, Stated]]) -> bool:
    """Whether the stitches counted are those beside groups that are counted too, all of them alike."""
    known = stitches().get(name)
    if known is None or known.varies or more <= 0:
        return False
    for other, (written, one) in totals.items():
        grouped = other == "group" or one.unit.name not in stitches() or stitches()[one.unit.name].varies
        places = other in ("st", "sp", "ch", "corner", "loop", "picot") or other.endswith(" sp")
        if other != name and grouped and not places and written and more % written == 0 and more // written > 1:
            return True
    return False


def _within_others(name: str, totals: Mapping[str, object], units: Mapping[str, int], walk: Walk) -> int:
    """How many of these stitches are parts of the pattern's own stitches that are counted beside them."""
    found = 0
    for other in totals:
        definition = walk.site.definitions.get(other) if other != name else None
        if definition is not None and not definition.one:
            parts = [make for make in definition.makes if name in (make.stitch, family(make.stitch))]
            made = units.get(other, 0) or units.get(_other_name(definition), 0)
            found += made * sum(walk.site.number(make.times) for make in parts)
        elif other != name and other in stitches() and family(other) == name:
            found += units.get(other, 0)  # `11 dc, 10 fpdc`
    return found


def _unit_name(one: Stated, site: Site) -> str:
    if one.unit.name == "sp" and one.unit.length is not None:
        return f"ch-{site.number(one.unit.length)} sp"
    return one.unit.name


def clusters_called(name: str, definition: Definition, units: Mapping[str, int]) -> int:
    """All clusters of a row that calls several makings so: `ch 3, 2 dc (cluster), * 3 dc (cluster)`."""
    if not definition.in_passing or not name.endswith("cluster") or len(definition.makes) != 1:
        return 0
    return sum(number for made, number in units.items() if _CLUSTER.fullmatch(made))


_CLUSTER = re.compile(r"\d+-\S+ cluster|[a-z]+\d+tog")
_BY_SHAPE = ("shell", "fan", "scallop", "V-st")  # groups that rows also make without their name


def _groups_by_size(items: Sequence[Target | Run]) -> dict[int, int]:
    """How many groups of so many targets the row made."""
    found: dict[int, int] = {}
    for one, number in tally(tuple(items)).items():
        if one.nth == 1 and one.size > 1:
            found[one.size] = found.get(one.size, 0) + number
    return found


def _alike(items: Sequence[Target | Run]) -> int | None:
    """How many groups of three and more the row made, where all its groups are alike; None where they are not."""
    groups = _groups_by_size(items)
    return sum(groups.values()) if len(groups) == 1 and min(groups) > 2 else None


def _other_name(definition: Definition) -> str:
    """The stitch that the pattern has a name of its own for: `p`, a picot; "" for what is made of several."""
    only = definition.makes[0] if len(definition.makes) == 1 else None
    return only.stitch if only is not None and only.times is None else ""


def _told_in_parts(definition: Definition, units: Mapping[str, int], walk: Walk) -> int | None:
    """Open meshes, `ch 2, skip 2 sts, dc in next st`, by their chain spaces; None for longer steps with other names."""
    first = definition.steps[0] if definition.steps else None
    if not isinstance(first, Chain) or not {"sp", "space", "mesh", "open mesh"} & {*spellings_of(definition.name)}:
        return None
    return units.get(f"ch-{walk.site.number(first.number)} sp")


def _full_or_half(name: str, totals: Mapping[str, object], walk: Walk) -> int | None:
    """`5 shells and 2 half shells`: a row's groups by size; None where they are not of two sizes."""
    full = name.removeprefix("half ")
    if full not in totals or f"half {full}" not in totals:
        return None
    groups = _groups_by_size(walk.out)
    return groups[max(groups) if name == full else min(groups)] if len(groups) == 2 else None


def _works(steps: Sequence[object], name: str) -> bool:
    """True when any of the steps works a stitch of that name."""
    for step in steps:
        inner = getattr(step, "body", None) or getattr(step, "works", None) or ()
        inner = inner or [one for reading in getattr(step, "readings", ()) for one in reading]
        if any(make.stitch == name for make in getattr(step, "makes", ())) or _works(inner, name):
            return True
    return False


def _parted(walk: Walk) -> int:
    """How many runs of stitches the chain spaces of the new edge part: those a space follows, and the last of a row."""
    followed, _, last = _runs_followed(tuple(walk.out))
    first = next(iter(_leaves(walk.out)), None)
    return followed + int(last == "st" and (walk.site.shape == "flat" or first == "sp"))


def _leaves(items: Sequence[Target | Run]) -> Iterator[str]:
    for item in items:
        if isinstance(item, Run):
            yield from _leaves(item.items)
        elif item.kind in ("st", "sp"):
            yield item.kind


def _runs_followed(items: Sequence[Target | Run]) -> tuple[int, str, str]:
    """How often a stitch is followed by a space, and the kinds that come first and last ("": neither)."""
    number, first, last = 0, "", ""
    for item in items:
        if isinstance(item, Run):
            inner, begins, ends = _runs_followed(item.items)
            inner = inner * item.times + (item.times - 1) * (ends == "st" and begins == "sp")
        else:
            inner, begins, ends = 0, *(2 * (item.kind,) if item.kind in ("st", "sp") else ("", ""))
        number += inner + (last == "st" and begins == "sp")
        first, last = first or begins, ends or last
    return number, first, last


def _worked(name: str, one: Stated, made: int, units: Mapping[str, int], walk: Walk) -> int | None:
    """The worked number of a unit; None when the unit cannot be told."""
    if name == "st":
        return made
    if name == "group" and _parted(walk) == walk.site.number(one.number):
        return None  # each side of a corner is a group to some
    if name == "picot" and name not in units and units.get("sp"):
        return None  # a small loop of chains is a picot to some
    if name in ("sp", "group", "picot") or name.endswith(" sp"):
        return units.get(name, 0)
    if name == "ch":
        return walk.fresh_chain or None
    definition = walk.site.definitions.get(name)
    known = stitches().get(name)
    if definition is not None and not definition.makes and not definition.one:
        return _told_in_parts(definition, units, walk)
    if definition is not None and name not in units and (together := clusters_called(name, definition, units)):
        return together
    if definition is not None and name not in units:
        name = _other_name(definition) or name
    if definition is not None and len(definition.makes) > 1 and name not in units and not _works(walk.ahead, name):
        return None  # its parts were told one by one
    if definition is None and name in _BY_SHAPE and name not in units:
        return _alike(walk.out)
    if definition is not None or (known and known.varies):
        return units.get(name, 0) if name in units or definition is not None else None
    if known is None:
        return None
    return units.get(name, 0) + (units.get("st", 0) if known.takes == 1 else 0)
