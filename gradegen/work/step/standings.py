"""What a starting or turning chain stands for: nothing, a stitch, or a stitch and a chain space."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.edge import Target
from gradegen.design.rows import Counts, Join, Repeat, Step, Work
from gradegen.trade.stitches import stitches
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import space, target
from gradegen.work.edge.kinds import family

Standing = tuple[str, ...]  # what a chain stands for: () nothing, ("dc",), ("dc", "ch-2 sp")
BY_LENGTH = {1: "sc", 2: "hdc", 3: "dc", 4: "tr", 5: "dtr", 6: "trtr"}


def say(number: int, way: Standing) -> str:
    """`ch 3 counts as dc`."""
    return f"ch {number} counts as {' and '.join(way)}" if way else f"ch {number} does not count as a st"


def stand(stands_for: Standing) -> list[Target]:
    """The targets a counting chain leaves."""
    found = []
    for name in stands_for:
        if name.startswith("ch-"):
            found.append(space(int("".join(sign for sign in name if sign.isdigit()) or 1)))
        else:
            found.append(target("st", name, chain=True))
    return found


def standings(walk: Walk, number: int, counts: Counts | None, following: str) -> list[Standing]:
    """Every way to read a starting chain, likeliest first: its own words, the notes, the join, the trade's habit."""
    if counts is not None:
        return [spelled(counts.as_, number, following)]
    for note in walk.site.notes.chains:
        if note.length in (None, number) and note.before in (None, following):
            noted = spelled(note.as_, number, following)
            return [(), noted] if number == 1 and note.length is None and noted else [noted]
    counted = spelled(("st",), number, following)
    if _joined_to_chain(walk.ahead):
        return [counted]
    if walk.site.turning_chain is not None and number in walk.site.told_loops:
        return [()]
    if number > height(following) and _joined_to(following, walk.ahead):
        return [(f"ch-{number} sp",), ()]
    if number == 1:
        return [()]
    if number < height(following) - 1 and walk.site.shape != "flat":
        return [(f"ch-{number} sp",)]  # `ch 2, tr in next loop`: too low to stand for the stitch
    if number == 2 and following in ("hdc", "dc"):
        return [(), (following,)]
    if following == "sc" and number > 1:
        loop: Standing = (f"ch-{number} sp",)
        if number == height("dc") and _holds(walk.ahead, "dc"):
            return [(), ("dc",), counted, loop]  # `ch 3, turn, *sc in next dc, dc in next sc`
        return [loop, (), counted] if number > 3 else [(), counted, *_others(number, following), loop]
    if walk.site.after_group and walk.site.turning_chain is not None:
        return [(), counted]
    return [counted, (), *_others(number, following)]


def _holds(steps: Sequence[Step], name: str) -> bool:
    """True where the row works this stitch itself."""
    return any(
        _holds(step.body, name) if isinstance(step, Repeat) else isinstance(step, Work) and step.makes[0].stitch == name
        for step in steps
    )


def _others(number: int, following: str) -> list[Standing]:
    by_length = BY_LENGTH.get(number)
    return [(by_length,)] if by_length and by_length != following and number > 2 else []


def spelled(as_: Sequence[str], number: int, following: str) -> Standing:
    """`("st",)` as the stitch it stands for, with the chain space that is left over."""
    if not as_:
        return ()
    if list(as_) not in (["st"], ["place"]):
        if len(as_) == 1 and number - height(as_[0]) >= 1 and number > 3:
            return (as_[0], f"ch-{number - height(as_[0])} sp")
        return tuple(as_)
    high = height(following)
    if high and number > high:
        return (following, f"ch-{number - high} sp")
    return (following,)


def height(name: str) -> int:
    """How many chains stand as high as this stitch; 0 where that is not known."""
    known = stitches().get(name)
    return (known.height or 0) if known else 0


def _joined_to_chain(steps: Sequence[Step]) -> bool:
    return any(isinstance(step, Join) and step.to == "top of chain" for step in steps)


def _joined_to(stitch: str, steps: Sequence[Step]) -> bool:
    """`sl st in 1st dtr`: where the round begins with a longer chain, that is no dtr."""
    return any(isinstance(step, Join) and step.stitch == stitch for step in steps)


def first_stitch(steps: Sequence[Step], walk: Walk, depth: int = 0) -> str | None:
    """The plain stitch a row begins with, after its starting chain."""
    for step in steps:
        found: str | None = None
        if isinstance(step, Work) and step.makes:
            found = plain_name(step.makes[0].stitch, walk, depth)
        elif isinstance(step, Repeat) and depth < 6:
            found = first_stitch(step.body, walk, depth + 1)
        elif hasattr(step, "readings"):
            found = first_stitch(step.readings[0], walk, depth + 1)
        elif hasattr(step, "works"):
            found = first_stitch(step.works, walk, depth + 1)
        if found:
            return found
    return None


def plain_name(name: str, walk: Walk, depth: int) -> str | None:
    """The plain stitch that one of this name begins with: dc for a shell of dc; None where it is no stitch."""
    definition = walk.site.definitions.get(name)
    if definition and definition.makes and depth < 6 and definition.makes[0].stitch != name:
        return plain_name(definition.makes[0].stitch, walk, depth + 1)
    known = stitches().get(name)
    if known is None:
        return "dc"
    if known.makes and known.makes[0] != name and known.makes[0] in stitches():
        return family(known.makes[0])
    kin = family(name)
    return kin if height(kin) else ("dc" if known.counts else None)


def put_on_edge(walk: Walk, stands_for: Standing) -> None:
    """Put what a counting chain stands for on the new edge; its spaces are counted there, and not as chains besides."""
    standing = stand(stands_for)
    walk.out.extend(standing)
    for one in standing:
        if one.kind == "sp":
            walk.spent["ch"] = walk.spent.get("ch", 0) - one.length
    if walk.placing is not None:
        walk.placing.stand(standing)
