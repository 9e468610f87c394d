"""Yarn categories: by name, by gauge; look-ups give all that fit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from gradegen.trade.sources import Source, source_of
from gradegen.trade.tables import exact, read_table


@dataclass(frozen=True, slots=True)
class Span:
    """From `low` to `high`, both included; None is an open end."""

    low: Fraction | None
    high: Fraction | None

    def holds(self, number: Fraction | int) -> bool:
        """True when the number lies in it."""
        return (self.low is None or number >= self.low) and (self.high is None or number <= self.high)


@dataclass(frozen=True, slots=True)
class YarnWeight:
    """One yarn category; gauges in stitches to 4 inches, hooks and needles in mm.

    `gauge_stitch`: the stitch (US id) its crochet gauge is counted in. `types`: the publisher's type names;
    `also`: names in common use beside them.
    """

    number: int
    name: str
    types: tuple[str, ...]
    also: tuple[str, ...]
    crochet_gauge: Span
    gauge_stitch: str
    gauge_note: str | None
    hook_mm: Span
    steel_hook_mm: Span | None
    hook_us: tuple[str | None, str | None]
    knit_gauge: Span
    needle_mm: Span
    wraps_per_inch: str | None
    yards_per_pound: str | None
    source: Source
    trust: str


@cache
def yarn_weights() -> tuple[YarnWeight, ...]:
    """All categories, the finest first."""
    return tuple(_weight(written, read_table("yarn_weights")) for written in read_table("yarn_weights")["categories"])


def _span(ends: Sequence[Any]) -> Span:
    low, high = (None if end is None else exact(end) for end in ends)
    return Span(low, high)


def _weight(written: Mapping[str, Any], table: Mapping[str, Any]) -> YarnWeight:
    rough, number = table["rough guides"], written["number"]
    steel = written.get("steel hook mm")
    low_us, high_us = written["hook US"]
    return YarnWeight(
        number=number,
        name=written["name"],
        types=tuple(written["types"]),
        also=tuple(written["also"]),
        crochet_gauge=_span(written["crochet"]["sts in 4 in"]),
        gauge_stitch=written["crochet"]["stitch"],
        gauge_note=written["crochet"].get("note"),
        hook_mm=_span(written["hook mm"]),
        steel_hook_mm=_span(steel) if steel else None,
        hook_us=(low_us, high_us),
        knit_gauge=_span(written["knit"]["sts in 4 in"]),
        needle_mm=_span(written["knit"]["needle mm"]),
        wraps_per_inch=rough["wraps per inch"].get(number),
        yards_per_pound=rough["yards per pound"].get(number),
        source=source_of(table["source"]),
        trust=table["trust"],
    )


def find_yarn_weights(words: str) -> tuple[YarnWeight, ...]:
    """Every category these words name: its number (`4`, `#4`), its name, or a type (`worsted`, `DK`, `baby`)."""
    level = " ".join(words.casefold().replace("-", " ").replace("#", " ").split())
    level = level.removeprefix("category ").removesuffix(" yarn").removesuffix(" weight")
    by_name = tuple(weight for weight in yarn_weights() if level in (str(weight.number), weight.name.casefold()))
    return by_name or tuple(weight for weight in yarn_weights() if level in _type_names(weight))


def _type_names(weight: YarnWeight) -> set[str]:
    return {name.casefold().replace("-", " ") for name in weight.types + weight.also}


def weights_for_gauge(stitches_in_4_inches: Fraction | int, stitch: str = "sc") -> tuple[YarnWeight, ...]:
    """Every category whose crochet gauge, counted in this stitch (US id), holds this one; often two, sometimes none."""
    return tuple(
        weight
        for weight in yarn_weights()
        if weight.gauge_stitch == stitch and weight.crochet_gauge.holds(stitches_in_4_inches)
    )


def weights_for_hook(mm: Fraction) -> tuple[YarnWeight, ...]:
    """Every category that is usually worked with this hook."""
    return tuple(
        weight
        for weight in yarn_weights()
        if weight.hook_mm.holds(mm) or (weight.steel_hook_mm is not None and weight.steel_hook_mm.holds(mm))
    )


@cache
def yarn_credit_line() -> str:
    """The line the publisher asks for wherever its chart is shown."""
    return str(read_table("yarn_weights")["credit line"])


@cache
def yarn_disagreements() -> tuple[str, ...]:
    """What different printings of the chart say differently."""
    return tuple(read_table("yarn_weights")["disagreements"])
