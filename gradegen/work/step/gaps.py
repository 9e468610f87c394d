"""Between stitches: `sc between next 2 tr`, `dc between 2nd and 3rd dc`, `3 dc in next sp` where two groups meet."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Into, Thing, Work
from gradegen.work.along import petals
from gradegen.work.along.walk import Walk
from gradegen.work.edge.kinds import ANY_SPACE, Kind
from gradegen.work.edge.stops import Unclear
from gradegen.work.step import groups


def is_between(into: Into) -> bool:
    """True for a place between stitches."""
    return bool(into.things) and into.things[0].name == "gap"


def work_between(walk: Walk, step: Work) -> None:
    """Stitches between the next two of a kind: the first of them is passed, a chain space between them is used."""
    into = step.into
    if petals.passes_petal(walk, into):
        walk.last_kind = "@between"
        walk.make(step.makes)
        return
    kind = walk.kind((Thing(into.things[0].of or "st"),))
    if walk.site.blind:
        walk.make(step.makes)
        return
    if into.which == "of" and into.of is not None:
        groups.find_part(walk, replace(into, things=(Thing(into.things[0].of or "st"),)))
        walk.use_next()
    else:
        number = walk.site.number(into.nth) if into.which == "of" else 1
        if walk.remaining(kind) <= number and into.which == "of":
            raise Unclear("from where these stitches are counted is not certain", into.place)
        if walk.remaining(kind) <= number:
            raise walk.short(kind, number + 1, into.place)
        walk.take(kind, number, into.place)
    _use_space(walk, kind)
    walk.begun, walk.here, walk.last_kind = True, False, "@between"
    walk.make(step.makes)


def _use_space(walk: Walk, kind: Kind) -> None:
    """Use the chain space that lies here, where the second of the two stands right behind it."""
    one = walk.cursor.peek()
    if one is None or not ANY_SPACE.fits(one):
        return
    spot = walk.cursor.save()
    walk.cursor.step()
    after = walk.cursor.peek()
    if after is None or not kind.fits(after):
        walk.cursor.load(spot)


def begin_between(walk: Walk, into: Into) -> bool:
    """`attach thread in any sp between dtr`: the round goes between stitches, so that every gap is a space."""
    if not is_between(into) or walk.begun or walk.out:
        return False
    walk.between = True
    return True


def meets_group(walk: Walk, into: Into) -> bool:
    """True where `next sp` is the gap before the next group: whole groups were just skipped, and no chain lies here."""
    if not walk.skipped_to_end or walk.between or walk.site.blind or len(into.things) != 1:
        return False
    one, thing = walk.cursor.peek(), into.things[0]
    if one is None or thing.name != "sp" or thing.length is not None or thing.said != "sp":
        return False
    return one.kind == "st" and one.nth == 1 and one.size > 1
