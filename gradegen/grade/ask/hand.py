"""The maker's own gauge in place of the pattern's."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.pattern import Gauge, Pattern
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import folded
from gradegen.grade.measure.gauges import PerInch, gauge_per_inch, gauges_per_inch

OWN_GAUGE_USED_FOR = Rule(
    "own-gauge-used-for", Severity.NOTE, "house", "One gauge was given and the pattern has several."
)


def own_gauges(pattern: Pattern, own: Gauge | None, main: str | None) -> tuple[dict[str, PerInch], tuple[Finding, ...]]:
    """The gauges to count by: the maker's own for the main one, the pattern's for what she did not measure.

    `main`: the gauge her one swatch stands for where the pattern has several (None: the first). Rows she did not count,
    and washing, are the pattern's.
    """
    usable, findings = gauges_per_inch(pattern.gauges)
    if own is None:
        return usable, findings
    hers = gauge_per_inch(own)
    if isinstance(hers, Finding):
        return usable, (*findings, hers)
    name = main if main in usable else next(iter(usable), None)
    if name is None:
        return {gauge: replace(hers, name=gauge) for gauge in pattern.gauges}, findings
    told = findings
    if len(pattern.gauges) > 1:
        others = ", ".join(other for other in pattern.gauges if other != name)
        message = f"Your gauge is used for {name}; {others} stay as printed."
        told += (OWN_GAUGE_USED_FOR.at(pattern.gauges[name].place, message),)
    return {**usable, name: _merged(hers, usable[name])}, told


def _merged(hers: PerInch, printed: PerInch) -> PerInch:
    """Her stitches and rows; what shrinks in the wash shrinks in the same proportion for her."""
    stitches, rows = hers.stitches or printed.stitches, hers.rows or printed.rows
    before_stitches, before_rows = printed.before_stitches, printed.before_rows
    if before_stitches and printed.stitches and stitches:
        before_stitches = before_stitches * stitches / printed.stitches
    if before_rows and printed.rows and rows:
        before_rows = before_rows * rows / printed.rows
    return PerInch(printed.name, stitches, rows, before_stitches, before_rows, printed.place)


def gauge_named(pattern: Pattern, count: str | None) -> str | None:
    """The gauge one count goes by; the pattern's first when the count names none."""
    rule = pattern.counts.get(count) if count is not None else None
    wanted = folded(rule.gauge.text) if rule and rule.gauge else None
    return next((name for name in pattern.gauges if wanted is None or folded(name) == wanted), None)
