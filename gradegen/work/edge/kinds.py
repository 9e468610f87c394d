"""Which targets a written name answers to: "st", "dc", "ch-2 sp", "next shell", "corner"."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from itertools import islice

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.rows import Definition
from gradegen.trade.stitches import stitches
from gradegen.work.edge.edges import tally

Fits = Callable[[Target], bool]
_DRAWN = ("cluster", "puff", "bobble", "popcorn")
_FOUNDATION = ("ch", "free loop", "row end")


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of target: `key` names it (equal keys, equal kinds), `fits` recognises it."""

    key: str
    fits: Fits
    words: str

    @property
    def of_several(self) -> bool:
        """True for a name of several stitches together (shell, V-st): plain stitches may be one without saying so."""
        known = stitches().get(self.words)
        return self.key[0] in "@=" and (known is None or len(known.makes) != 1)

    def __or__(self, other: Kind) -> Kind:
        one, two = self.fits, other.fits
        return Kind(f"{self.key}|{other.key}", lambda t: one(t) or two(t), f"{self.words} and {other.words}")

    def __and__(self, other: Kind) -> Kind:
        one, two = self.fits, other.fits
        return Kind(f"{self.key}&{other.key}", lambda t: one(t) and two(t), other.words)


def _is_stitch(one: Target) -> bool:
    return one.kind == "st" or one.kind in _FOUNDATION


ANY_STITCH = Kind("st", _is_stitch, "st")
ANY_PLACE = Kind("place", lambda t: _is_stitch(t) or t.kind == "sp", "st or sp")
ANYTHING = Kind("any", lambda t: True, "place")
ANY_SPACE = Kind("sp", lambda t: t.kind == "sp", "sp")
HELD_STITCH = Kind("held", lambda t: t.kind == "st", "held st")


@cache
def sized_space_kind(edge: Edge, size: str) -> Kind:
    """The large or the small loops of an edge, by their chains; all of them where they are alike."""
    lengths = {one.length for one in tally(edge) if one.kind == "sp"}
    if len(lengths) < 2:
        return ANY_SPACE
    least = min(lengths)
    if size == "small":
        return Kind("sp small", lambda t: t.kind == "sp" and t.length == least, "small loop")
    return Kind("sp large", lambda t: t.kind == "sp" and t.length > least, "large loop")


def _is_small(one: Target) -> bool:
    """`sc, ch 3, sc in one place`: hardly more than a picot."""
    return one.kind == "sp" and one.size == 3 and one.nth == 2


LARGE_SPACE = Kind("sp outside", lambda t: t.kind == "sp" and not _is_small(t), "large loop")


def has_small_spaces(edge: Edge) -> bool:
    """True where little loops stand within groups beside loops that don't."""
    return holds(edge, _is_small) and holds(edge, LARGE_SPACE.fits)


def space_kind(length: int | None) -> Kind:
    """Chain spaces of one length (None: of any)."""
    if length is None:
        return ANY_SPACE
    return Kind(f"sp{length}", lambda t: t.kind == "sp" and t.length in (length, 0), f"ch-{length} sp")


def space_on(edge: Edge, length: int | None) -> Kind:
    """Chain spaces of one length on this edge; where it has none, the one that a chain of that length begins with."""
    kind = space_kind(length)
    begun = _begun_space(edge, length) if length is not None and not holds(edge, kind.fits) else None
    return begun or kind


@cache
def _begun_space(edge: Edge, length: int) -> Kind | None:
    """The `ch-4 sp` of a `ch 4` that stands for a dc and a ch-1 sp at an end of this edge; None where none does."""
    for ends in (islice(_targets(edge), 2), islice(_targets(edge, back=True), 2)):
        pair = tuple(ends)
        if len(pair) < 2 or not pair[0].chain or pair[1].kind != "sp":
            continue
        known, left = stitches().get(pair[0].name), pair[1].length
        if known is not None and (known.height or 0) + left == length:
            return replace(space_kind(left), words=f"ch-{length} sp")
    return None


def _targets(edge: Edge, *, back: bool = False) -> Iterator[Target]:
    for item in reversed(edge) if back else edge:
        if isinstance(item, Run):
            for _ in range(min(item.times, 2)):
                yield from _targets(item.items, back=back)
        else:
            yield item


@cache
def family(name: str) -> str:
    """The plain stitch a name answers to: dc for FPdc, dc2tog, sc for an own `spike sc`; else the name itself."""
    known = stitches().get(name)
    if known is not None:
        return known.base or name
    last = name.rpartition(" ")[2]
    return last if last != name and (plain := stitches().get(last)) is not None and plain.base is None else name


@cache
def stitch_kind(name: str) -> Kind:
    """Stitches of one name: as made, as seen from the other side, and its family."""
    known = stitches().get(name)
    names = {name, "st"}
    if known and known.behind:
        names.add(known.behind)
    if known and known.post:
        names.add("FP st" if known.post == "front" else "BP st")
        names |= {"FP st", "BP st"}
    plain = known is not None and known.base is None
    drawn = name in _DRAWN

    def fits(one: Target) -> bool:
        if one.kind != "st":
            return one.kind in _FOUNDATION and name == "st"
        if drawn and (one.name.endswith(f" {name}") or (name == "cluster" and one.name.endswith("tog"))):
            return True
        return one.name in names or (plain and family(one.name) == name)

    return Kind(f"={name}", fits, name)


def is_of_trade(name: str) -> bool:
    """True for a stitch of the trade and the places every edge may have; not for petals, points and the like."""
    return name in stitches() or name in _PLACES or name.startswith("half ")


_PLACES = frozenset({"st", "sp", "FP st", "BP st", "sl st", "tch", "inc", "dec"})


@cache
def group_kind(name: str) -> Kind:
    """The middle of every group of that name: its space, or its centre stitch."""
    return Kind(f"@{name}", lambda t: t.group == name and t.nth == (t.size + 1) // 2, name)


@cache
def group_start_kind(name: str) -> Kind:
    """The first target of every group of that name."""
    return Kind(f"@<{name}", lambda t: t.group == name and t.nth == 1, name)


@cache
def group_end_kind(name: str) -> Kind:
    """The last target of every group of that name."""
    return Kind(f"@>{name}", lambda t: t.group == name and t.nth == t.size, name)


@cache
def foundation_kind(name: str) -> Kind:
    """Chains, free loops or row ends; plain unnamed stitches answer to these too."""
    also = {"free loop": ("free loop", "ch"), "ch": ("ch",), "row end": ("row end",)}[name]
    return Kind(
        f"#{name}",
        lambda t: t.kind in also or (t.kind == "st" and (t.name == "st" or (name == "ch" and t.chain))),
        name,
    )


def _longest_space(edge: Edge) -> int:
    longest = 0
    for item in edge:
        if isinstance(item, Run):
            longest = max(longest, _longest_space(item.items))
        elif item.kind == "sp":
            longest = max(longest, item.length)
    return longest


def corner_kind(edge: Edge) -> Kind:
    """Corners of this edge: its longest chain spaces, or the centre stitch of three or more in one place."""
    longest = _longest_space(edge)
    if longest:
        return Kind(f"corner{longest}", lambda t: t.kind == "sp" and t.length == longest, "corner sp")
    centre = Kind("corner", lambda t: t.size >= 3 and t.nth == (t.size + 1) // 2, "corner st")
    return centre if holds(edge, centre.fits) else ANY_STITCH


def outside(kind: Kind, groups: frozenset[str]) -> Kind:
    """Targets of a kind that stand in none of these groups: who works into a shell owes nothing to its stitches."""
    if not groups:
        return kind
    fits = kind.fits
    return Kind(f"{kind.key}!{'|'.join(sorted(groups))}", lambda t: fits(t) and t.group not in groups, kind.words)


def holds(edge: Edge, fits: Fits) -> bool:
    """True when any target of the edge fits."""
    return any(holds(item.items, fits) if isinstance(item, Run) else fits(item) for item in edge)


def own_stitch_kind(name: str, definitions: Mapping[str, Definition], edge: Edge) -> Kind:
    """What `in next shell` means on this edge: the group made under that name, the one stitch, or a like space."""
    spots = {one.nth for one in tally(edge) if one.group == name and one.kind == "sp"}
    if len(spots) == 1:
        return Kind(f"@{name}", lambda t: t.group == name and t.kind == "sp", name)
    middle = group_kind(name)
    if holds(edge, middle.fits):
        return middle
    definition = definitions.get(name)
    alike = {name} | ({definition.makes[0].stitch} if definition and len(definition.makes) == 1 else set())
    drawn = stitch_kind(name) if name in _DRAWN else None
    one = Kind(f"={name}", lambda t: t.name in alike or (drawn is not None and drawn.fits(t)), name)
    if definition is None or holds(edge, one.fits):
        return one
    lengths = {make.times.values[0] or 0 for make in definition.makes if make.stitch == "ch" and make.times}
    if any(make.stitch == "ch" and make.times is None for make in definition.makes):
        lengths.add(1)
    return Kind(f"~{name}", lambda t: t.kind == "sp" and t.length in lengths, name) if lengths else one
