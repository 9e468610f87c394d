"""What must hold for related counts, one condition at a time, each with its place and its words."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass, field
from typing import Literal

from gradegen.design.pattern import CountRule
from gradegen.findings import Place
from gradegen.grade.measure.snapped import place_of
from gradegen.numbers.snap import Grid, NoCount, good_counts

ConditionKind = Literal["relation", "sum", "multiple", "parity", "centre", "least", "most", "pin", "steps"]


@dataclass(frozen=True, slots=True)
class Condition:
    """One thing that must hold. `of`: the count, or the relation as written; `size`: the only size it is for."""

    kind: ConditionKind
    of: str
    size: str | None = None
    words: str = field(default="", compare=False)
    place: Place = field(kw_only=True)


def conditions_of(rule: CountRule) -> Iterator[Condition]:
    """What one count's own keys ask, whatever it is related to."""
    name = rule.name
    if rule.multiple > 1 or rule.plus:
        plus = f" {'plus' if rule.plus > 0 else 'less'} {abs(rule.plus)}" if rule.plus else ""
        words = f"multiple: {rule.multiple}{plus} of {name}"
        yield Condition("multiple", name, words=words, place=place_of(rule, "multiple", "plus"))
    if rule.parity is not None:
        yield Condition("parity", name, words=f"parity: {rule.parity} of {name}", place=place_of(rule, "parity"))
    if rule.centre is not None:
        yield Condition("centre", name, words=f"centre: {rule.centre} of {name}", place=place_of(rule, "centre"))
    if rule.least is not None:
        yield Condition("least", name, words=f"least: {rule.least} of {name}", place=place_of(rule, "least"))
    if rule.most is not None:
        yield Condition("most", name, words=f"most: {rule.most} of {name}", place=place_of(rule, "most"))
    if rule.even_steps:
        yield Condition("steps", name, words=f"steps: even of {name}", place=place_of(rule, "steps"))
    for size, n in rule.pins.items():
        place = place_of(rule, f"pin {size}")
        yield Condition("pin", name, size, f"pin: {{{size}: {n}}} of {name}", place=place)


def grid_kept(rule: CountRule, kept: Collection[ConditionKind], *, may_be_none: bool) -> Grid | NoCount:
    """The counts a rule allows when only some of its conditions are kept; from 0 where it `may_be_none`."""
    multiple, plus = repeat_kept(rule, kept)
    if "centre" in kept and rule.centre in ("motif", "gap") and "multiple" in kept:
        multiple, plus = 2 * multiple, plus + multiple * (rule.centre == "motif")
    parity = rule.parity if "parity" in kept else None
    least = rule.least if "least" in kept else None
    most = rule.most if "most" in kept else None
    grid = good_counts(multiple, plus, parity, least, most)
    if isinstance(grid, Grid) and may_be_none and not least and plus <= 0 and grid.first - grid.step == 0:
        return Grid(0, grid.step, grid.last)
    return grid


def repeat_kept(rule: CountRule, kept: Collection[ConditionKind]) -> tuple[int, int]:
    """Stitches in one repeat, and those besides; each stitch a repeat where the multiple is not kept."""
    return (rule.multiple, rule.plus) if "multiple" in kept else (1, 0)
