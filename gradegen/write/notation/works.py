"""Stitches and where they go, in house style."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.rows import Make, Thing, Work
from gradegen.trade.stitches import Stitch, stitches
from gradegen.write.notation.chains import skipped_words
from gradegen.write.notation.places import place_words
from gradegen.write.notation.style import Notation


def work_words(work: Work, says: Notation) -> str:
    """`2 sc in each of next 3 sts`; "" when the written size does not work it."""
    if says.figures.is_nothing(work.into.number):
        return ""
    makes = makes_words(work.makes, says)
    if not makes:
        return ""
    words = f"{makes} {where_words(work, says)}".rstrip()
    return words + (skipped_words(work.skipped, says) if work.skipped else "")


def makes_words(makes: Sequence[Make], says: Notation) -> str:
    """`sc`, `2 dc`, `(2 dc, ch 2, 2 dc)`: what goes into one place."""
    parts = [_make(make, says) for make in makes if not says.figures.is_nothing(make.times)]
    return f"({', '.join(parts)})" if len(parts) > 1 else "".join(parts)


def _make(make: Make, says: Notation) -> str:
    number = says.figures.text(make.times)
    if make.stitch == "ch":
        return says.style.chain["plain"].format(n=number or "1")
    name = says.stitch(make.stitch, number)
    return f"{number} {name}" if number else name


def where_words(work: Work, says: Notation) -> str:
    """The place of a work; a stitch that says itself what it takes (inc, sc2tog) needs none when that comes next."""
    into, alone = work.into, len(work.makes) == 1 and work.makes[0].times is None
    known = stitches().get(work.makes[0].stitch) if alone else None
    plain = into.which == "next" and into.number is None and into.loop is None and into.things in ((), (Thing("st"),))
    if known is not None and plain and _says_its_place(known):
        return ""
    if known is not None and known.takes > 1 and into.which == "next" and into.number is not None:
        return place_words(into, says, word="over")
    return place_words(into, says, word="around" if known is not None and known.post else "in", shared=not alone)


def _says_its_place(stitch: Stitch) -> bool:
    """True for sc2tog, inc, picot, foundation stitches: how many places they take, and which, needs no words."""
    is_increase = len(stitch.makes) == 2 and len(set(stitch.makes)) == 1
    return stitch.takes != 1 or is_increase
