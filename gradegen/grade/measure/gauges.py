"""A gauge block as stitches and rows per inch, exactly, whatever unit and whatever was counted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.pattern import Gauge, Pattern, Text
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.grade.body.bodies import folded
from gradegen.numbers.units import inches_of
from gradegen.read.yaml.fields import nearest

GAUGE_INCOMPLETE = Rule("gauge-incomplete", Severity.ERROR, "trade standard", "A gauge lacks a part that is needed.")
UNKNOWN_GAUGE = Rule("unknown-gauge", Severity.ERROR, "file format", "A count names a gauge the pattern does not have.")


@dataclass(frozen=True, slots=True)
class PerInch:
    """Stitches and rows per inch of finished fabric, and before washing; None: not given."""

    name: str
    stitches: Fraction | None
    rows: Fraction | None
    before_stitches: Fraction | None
    before_rows: Fraction | None
    place: Place


def gauges_per_inch(gauges: Mapping[str, Gauge]) -> tuple[dict[str, PerInch], tuple[Finding, ...]]:
    """Every usable gauge per inch; one that has no length, or counts nothing over it, is told about and left out."""
    usable: dict[str, PerInch] = {}
    findings: list[Finding] = []
    for name, gauge in gauges.items():
        found = gauge_per_inch(gauge)
        if isinstance(found, Finding):
            findings.append(found)
        else:
            usable[name] = found
    return usable, tuple(findings)


def gauge_per_inch(gauge: Gauge) -> PerInch | Finding:
    """One gauge per inch, or what is wrong with it."""
    over = inches_of(gauge.over)
    if over is None or over <= 0:
        return GAUGE_INCOMPLETE.at(gauge.over.place, "A gauge is counted over a length.", hint="over: 4 in")
    if gauge.repeats is not None and not gauge.repeat_of:
        place = gauge.places.get("repeats", gauge.place)
        return GAUGE_INCOMPLETE.at(place, "Say how many stitches one repeat has.", hint="repeat of: 4")
    stitches = gauge.stitches
    if stitches is None and gauge.repeats is not None and gauge.repeat_of:
        stitches = gauge.repeats * gauge.repeat_of
    counted = {"stitches": stitches, "rows": gauge.rows}
    for part, number in counted.items():
        if number is not None and number <= 0:
            return GAUGE_INCOMPLETE.at(gauge.places.get(part, gauge.place), f"A gauge has more than 0 {part}.")

    def per(number: Fraction | None) -> Fraction | None:
        return number / over if number else None

    before = per(gauge.before_stitches), per(gauge.before_rows)
    return PerInch(gauge.name, per(stitches), per(gauge.rows), *before, gauge.place)


def gauge_of(
    wanted: Text | None, place: Place, pattern: Pattern, usable: Mapping[str, PerInch]
) -> tuple[PerInch | None, tuple[Finding, ...]]:
    """The gauge a count names; with none named, the pattern's only one."""
    names = tuple(pattern.gauges)
    if wanted is None and len(names) == 1:
        return usable.get(names[0]), ()
    if wanted is None:
        hint = f"gauge: {names[0]}" if names else "Add a gauge block."
        message = "Say which gauge this is counted by." if names else "The pattern has no gauge to count by."
        return None, (GAUGE_INCOMPLETE.at(place, message, hint=hint),)
    for name in names:
        if folded(name) == folded(wanted.text):
            return usable.get(name), ()
    guess = nearest(wanted.text, names)
    hint = (
        f"Did you mean {guess}?" if guess else f"The gauges are {', '.join(names)}." if names else "Add a gauge block."
    )
    return None, (UNKNOWN_GAUGE.at(wanted.place, f"There is no gauge {wanted.text}.", hint=hint),)


def usual_length(gauge: Gauge) -> tuple[Fraction, str]:
    """The length gauges are compared over, in exact inches and in words: 10 cm for a metric gauge, else 4 in."""
    if gauge.over.unit in ("cm", "mm", "m"):
        return Fraction(1000, 254), "10 cm"
    return Fraction(4), "4 in"
