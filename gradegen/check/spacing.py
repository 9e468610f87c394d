"""Where increases and decreases go in one row, in words to paste."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import groupby, pairwise

from gradegen.numbers.snap import NoCount
from gradegen.numbers.spread import increase_after, plain_between
from gradegen.trade.stitches import stitches


def spacing_words(before: int, change: int, made: Mapping[str, int], flat: bool) -> str | None:
    """`(sc in next 5 sts, sc2tog) 6 times`; None where the row cannot hold them. `made`: the row's stitches by name."""
    stitch = _plain_stitch(made)
    if change < 0:
        groups = plain_between(before, -change)
        if isinstance(groups, NoCount):
            return None
        return ", ".join(_group(plain, times, f"{stitch}2tog", stitch) for plain, times in groups)
    after = increase_after(before, change, "flat" if flat else "round")
    if isinstance(after, NoCount):
        return None
    gaps = [after[0] - 1, *(later - earlier - 1 for earlier, later in pairwise(after))]
    parts = [_group(gap, len(list(same)), f"2 {stitch} in next st", stitch) for gap, same in groupby(gaps)]
    rest = before - after[-1]
    return ", ".join(parts + ([f"{stitch} in next {rest} sts"] if rest else []))


def _plain_stitch(made: Mapping[str, int]) -> str:
    """The stitch most of the row is made of; sc where it has no name."""
    known = stitches()
    plain = {
        name: number for name, number in made.items() if name in known and known[name].base is None and name != "ch"
    }
    return max(plain, key=lambda name: plain[name]) if plain else "sc"


def _group(plain: int, times: int, event: str, stitch: str) -> str:
    inside = f"{stitch} in next {plain} st{'s' if plain > 1 else ''}, {event}" if plain else event
    return f"({inside}) {times} times" if times > 1 else inside
