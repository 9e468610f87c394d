"""What stitches take beside each other, and what whole pieces take, as published."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from gradegen.trade.sources import Source, source_of
from gradegen.trade.stitches import Stitch, stitches
from gradegen.trade.tables import exact, read_table


@dataclass(frozen=True, slots=True)
class StitchUse:
    """Yarn in one stitch, in hundredths of a single crochet's; in a seam, in lengths of the seam."""

    use: Fraction
    source: Source
    trust: str


@dataclass(frozen=True, slots=True)
class PieceRange:
    """Published yards for a whole piece by yarn category number; None holds for any category."""

    what: str
    wearer: str
    yards: Mapping[int | None, tuple[Fraction, Fraction]]
    source: Source
    trust: str


@cache
def one_stitch_uses() -> Mapping[str, StitchUse]:
    """The stitches that are listed, by id."""
    table = read_table("yarn_use")
    return {
        name: StitchUse(exact(one["use"]), source_of(table["sources"][one["source"]]), one["trust"])
        for name, one in table["one stitch"].items()
    }


@cache
def seam_use() -> StitchUse:
    """Lengths of yarn in one length of a sewn seam."""
    table = read_table("yarn_use")
    one = table["seam"]
    return StitchUse(exact(one["use"]), source_of(table["sources"][one["source"]]), one["trust"])


@cache
def relative_use(name: str) -> Fraction | None:
    """Yarn in one stitch, single crochet being 100; None for a name that is no stitch of the trade."""
    listed = one_stitch_uses().get(name)
    if listed is not None:
        return listed.use
    known = stitches().get(name)
    return _derived(known) if known is not None else None


def _derived(stitch: Stitch) -> Fraction | None:
    """A stitch that is not listed, from the plain ones it is made of."""
    kinds = {kind: exact(use) for kind, use in read_table("yarn_use")["kinds"].items()}
    if stitch.own_chain:
        return _together((stitch.id.removeprefix("f"), "ch"))
    if stitch.makes and stitch.makes != (stitch.id,):
        return _together(stitch.makes)
    if legs := _legs(stitch):
        base, number = legs
        shared = 0 if "popcorn" in stitch.id else number - 1
        use = relative_use(base)
        return None if use is None else number * use - shared * kinds["closing"]
    plain = _plain(stitch)
    use = relative_use(plain) if plain != stitch.id else None
    more = (kinds["post"] if stitch.post else 0) + (kinds["extended"] if stitch.id == f"e{stitch.base}" else 0)
    return None if use is None else use + more


def _together(names: tuple[str, ...]) -> Fraction | None:
    uses = [relative_use(name) for name in names]
    return sum((use for use in uses if use is not None), Fraction(0)) if None not in uses else None


def _plain(stitch: Stitch) -> str:
    if stitch.post:
        return stitch.id.removeprefix("FP").removeprefix("BP")
    return stitch.base or stitch.id


_JOINED = {
    "puff": ("hdc", 3),
    "bobble": ("dc", 5),
    "popcorn": ("dc", 5),
    "cluster": ("dc", 3),
    "invisible dec": ("sc", 2),
}


def _legs(stitch: Stitch) -> tuple[str, int] | None:
    """The plain stitch and how many of it share a top: dc and 2 for dc2tog, hdc and 3 for a puff as usual."""
    if stitch.id in _JOINED:
        return _JOINED[stitch.id]
    if stitch.id.endswith("tog") and (body := stitch.id[:-3])[-1:].isdigit():
        return body.rstrip("0123456789"), int(body[len(body.rstrip("0123456789")) :])
    first, _, rest = stitch.id.partition("-")
    words = rest.split()
    return (words[0], int(first)) if first.isdigit() and len(words) == 2 else None


@cache
def piece_ranges() -> tuple[PieceRange, ...]:
    """Published yards for whole pieces."""
    table = read_table("yarn_use")
    return tuple(_range(one, table["sources"]) for one in table["ranges"])


def _range(one: Mapping[str, Any], sources: Mapping[str, Any]) -> PieceRange:
    yards = {
        None if number == "any" else int(number): (exact(low), exact(high))
        for number, (low, high) in one["yards"].items()
    }
    return PieceRange(one["what"], one["sizes"], yards, source_of(sources[one["source"]]), one["trust"])


@cache
def use_disagreements() -> tuple[str, ...]:
    """What published tests say differently, one line each."""
    lines = []
    for one in read_table("yarn_use")["disagreements"]:
        found = ", ".join(f"{name} {value}" for name, value in one.items() if name != "test")
        lines.append(f"{one['test']}: {found}")
    return tuple(lines)
