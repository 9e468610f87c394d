"""Chains, joins, slip stitches, skips and loose increases in house style."""

from __future__ import annotations

import re

from gradegen.design.rows import Chain, Change, Counts, Join, Skip, Slip, Thing
from gradegen.write.notation.places import place_words, thing_words
from gradegen.write.notation.style import Notation

_SPACE = re.compile(r"ch-(\d+) sp")


def chain_words(chain: Chain, says: Notation) -> str:
    """`ch 3 (counts as dc)`."""
    if says.figures.is_nothing(chain.number):
        return ""
    counts, number = chain.counts, says.figures.text(chain.number)
    if counts is None:
        return says.style.chain["plain"].format(n=number)
    form = ("counts" if counts.as_ else "does not count") + (" from here on" if counts.from_here_on else "")
    return says.style.chain[form].format(n=number, **{"as": _as(counts, says)})


def _as(counts: Counts, says: Notation) -> str:
    return says.style.chain["as"].join(_counted(name, says) for name in counts.as_)


def _counted(name: str, says: Notation) -> str:
    """`dc`, or `ch 2` for a "ch-2 sp"."""
    space = _SPACE.fullmatch(name)
    return says.style.chain["plain"].format(n=space.group(1)) if space else says.stitch(name)


def join_words(join: Join, says: Notation) -> str:
    """`join with sl st in first st`: how a round or ring is closed."""
    st = says.stitch("sl st")
    if join.half_twist:
        return says.step("join half twist").format(st=st)
    match join.to:
        case "ring":
            return says.step("join ring").format(st=st)
        case "first st":
            return says.step("join first").format(st=st)
        case "top of chain" if join.nth:
            return says.step("join chain numbered").format(st=st, nth=says.figures.ordinal(join.nth))
        case "top of chain":
            return says.step("join chain").format(st=st)
        case _:
            return says.step("join")


def slip_words(slip: Slip, says: Notation) -> str:
    """`sl st in next 3 sts`, `sl st to next ch-2 sp`."""
    if says.figures.is_nothing(slip.into.number):
        return ""
    place = place_words(slip.into, says)
    if slip.to:
        return says.step("sl st to").format(thing=place.removeprefix("in "), st=says.stitch("sl st"))
    return says.step("sl st").format(place=place, st=says.stitch("sl st"))


def skip_words(skip: Skip, says: Notation) -> str:
    """`sk next 2 sts`."""
    if says.figures.is_nothing(skip.into.number):
        return ""
    words = says.step("hold" if skip.held else "skip")
    return words.format(thing=place_words(skip.into, says).removeprefix("in "))


def skipped_words(counts: Counts, says: Notation) -> str:
    """What the chains before the first stitch were said to count as."""
    forms = says.style.chain
    return forms["skipped count"].format(**{"as": _as(counts, says)}) if counts.as_ else forms["skipped do not count"]


def change_words(change: Change, says: Notation) -> str:
    """`inc 4 sts evenly`, `dec 1 st at each end`."""
    if says.figures.is_nothing(change.number):
        return ""
    number = says.figures.text(change.number)
    form = says.step("increase" if change.sign > 0 else "decrease")
    words = form.format(n=number, thing=thing_words(Thing("st"), number, says))
    return says.step(change.where).format(change=words)
