"""Measures and counts of a pattern, and whether each count has the one measure and the gauge it needs."""

from __future__ import annotations

from fractions import Fraction

from gradegen.design.formula import Name
from gradegen.design.pattern import CountRule, Gauge, Measure
from gradegen.findings import Finding, Rule, Severity
from gradegen.read.pattern import keys
from gradegen.read.pattern.parts import GAUGE_INCOMPLETE
from gradegen.read.pattern.relations import counts_named
from gradegen.read.sums.formula import read_formula
from gradegen.read.yaml.fields import Given, nearest
from gradegen.read.yaml.nodes import Scalar

UNKNOWN_GAUGE = Rule("unknown-gauge", Severity.ERROR, "file format", "A count names a gauge that is not given.")
COUNT_NEEDS_ONE_MEASURE = Rule(
    "count-needs-one-measure", Severity.ERROR, "file format", "A count has no measure, or more than one."
)
NAME_UNUSABLE = Rule("name-unusable", Severity.ERROR, "file format", "A name that no sum could use.")
LIMITS_CROSSED = Rule(
    "limits-crossed", Severity.ERROR, "arithmetic", "The smallest count allowed is above the largest."
)

Findings = tuple[Finding, ...]


def read_measures(given: Given) -> tuple[dict[str, Measure], Findings]:
    """The measures by name."""
    named = given.value(keys.MEASURES) or ()
    findings = tuple(finding for key, _ in named if (finding := _unusable(key)))
    return {key.text: Measure(key.text, formula, key.place) for key, formula in named if formula}, findings


def _unusable(key: Scalar) -> Finding | None:
    """A name that a sum could not mention, such as `2nd band`."""
    formula, _ = read_formula(key.trimmed)
    if isinstance(formula, Name) and formula.name == key.text:
        return None
    hint = "Use words of letters, such as brim or upper arm: no sign, no number at the start, no unit."
    return NAME_UNUSABLE.at(key.place, f"“{key.text[:40]}” can't be used as a name in sums.", hint=hint)


def read_counts(given: Given, gauges: dict[str, Gauge]) -> tuple[dict[str, CountRule], Findings]:
    """The counts by name; `gauges` are those that could be read."""
    counts: dict[str, CountRule] = {}
    findings: list[Finding] = []
    every_gauge = tuple(key.text for key, _ in given.value(keys.GAUGE) or ())
    related = {_folded(name) for one in given.value(keys.RELATIONS) or () for name in counts_named(one)}
    for key, count in given.value(keys.COUNTS) or ():
        if unusable := _unusable(key):
            findings.append(unusable)
        if count is None:
            continue
        counts[key.text] = _count(key, count)
        is_related = _folded(key.text) in related
        if not count.has_unknown and (fault := _fault(counts[key.text], every_gauge, gauges, is_related)):
            findings += (
                [] if any((fault.rule, fault.place) == (told.rule, told.place) for told in findings) else [fault]
            )
    return counts, tuple(findings)


def _folded(name: str) -> str:
    return " ".join(name.replace("_", " ").split()).casefold()


def _count(key: Scalar, given: Given) -> CountRule:
    multiple, pins = given.value(keys.MULTIPLE), given.value(keys.PIN) or ()
    return CountRule(
        name=key.text,
        across=given.value(keys.ACROSS),
        along=given.value(keys.ALONG),
        formula=given.value(keys.SUM_OF),
        gauge=given.value(keys.COUNT_GAUGE),
        multiple=1 if multiple is None else multiple,
        plus=given.value(keys.PLUS) or 0,
        base_extra=given.value(keys.BASE_EXTRA) or 0,
        parity=given.value(keys.PARITY),
        least=given.value(keys.LEAST),
        most=given.value(keys.MOST),
        tie=given.value(keys.TIE) or "up",
        both_sides=given.value(keys.BOTH_SIDES) or False,
        pieces=given.value(keys.PIECES_SHARING) or 1,
        place=key.place,
        places={**given.places, **{f"pin {size.text}": size.place for size, _ in pins}},
        centre=given.value(keys.CENTRE),
        even_steps=given.value(keys.STEPS) == "even",
        weight=given.value(keys.WEIGHT) or Fraction(1),
        pins={size.text: n for size, n in pins if n is not None},
    )


def _fault(
    count: CountRule, every_gauge: tuple[str, ...], gauges: dict[str, Gauge], is_related: bool
) -> Finding | None:
    ways = [way for way in ("across", "along", "sum") if way in count.places]
    if len(ways) != 1 and (ways or not is_related):
        message = f"{count.name} has {' and '.join(ways) if ways else 'no measure'}; a count is found in one way."
        hint = "Give one of across: (stitches), along: (rows) or sum: (of other counts), or name it in a relation."
        return COUNT_NEEDS_ONE_MEASURE.at(count.place, message, hint=hint)
    if count.least is not None and count.most is not None and count.least > count.most:
        message = f"{count.name} must have at least {count.least} and at most {count.most}."
        return LIMITS_CROSSED.at(count.places["least"], message, hint="Swap the two.")
    if ways in ([], ["sum"]) or not every_gauge:
        return None
    return _gauge_fault(count, every_gauge, gauges)


def _gauge_fault(count: CountRule, every: tuple[str, ...], gauges: dict[str, Gauge]) -> Finding | None:
    if count.gauge is None and len(every) > 1:
        if len(gauges) < len(every) or "gauge" in count.places:  # told elsewhere
            return None
        message = f"{count.name} does not say which gauge it is worked at."
        return UNKNOWN_GAUGE.at(count.place, message, hint=f"Add gauge: and one of {', '.join(every)}.")
    name = count.gauge.text if count.gauge else every[0]
    if count.gauge is not None and name not in every:
        guess = nearest(name, every)
        hint = f"Did you mean {guess}?" if guess else f"The gauges are {', '.join(every)}."
        return UNKNOWN_GAUGE.at(count.gauge.place, f"There is no gauge {name}.", hint=hint)
    needed = ("rows",) if count.along is not None else ("stitches", "repeats")
    if name not in gauges or gauges[name].places.keys() & set(needed):
        return None
    message = f"Gauge {name} has no {needed[0]}, and {count.name} needs them."
    see_also = ((count.place, "needed here"),)
    return GAUGE_INCOMPLETE.at(
        gauges[name].place, message, hint=f"Add {needed[0]}: over the length.", see_also=see_also
    )
