"""Finished measures: what the snapped counts make of what was wanted."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from gradegen.design.formula import Name
from gradegen.design.graded import GradedCount, GradedMeasure
from gradegen.design.pattern import CountRule, Pattern
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import Body
from gradegen.grade.body.naming import Naming
from gradegen.grade.measure.lengths import Words

MEASURE_MADE_TWICE = Rule(
    "measure-made-twice", Severity.NOTE, "house", "Two counts make one measure differently; the first is printed."
)
APART = Fraction(1, 4)  # inches two counts may differ unsaid: half the finest printed step each way


def ties(pattern: Pattern, naming: Naming) -> dict[str, list[str]]:
    """Measure -> the counts that are counted over just that measure, in the order of the pattern."""
    tied: dict[str, list[str]] = {}
    for rule in pattern.counts.values():
        measure = _measure_of(rule, naming)
        if measure is not None:
            tied.setdefault(measure, []).append(rule.name)
    return tied


def _measure_of(rule: CountRule, naming: Naming) -> str | None:
    formula = rule.across or rule.along
    meaning = naming.meaning(formula) if isinstance(formula, Name) else None
    return meaning.name if meaning and meaning.what == "measure" else None


def finished_measures(
    pattern: Pattern, targets: Mapping[str, Fraction], counts: Mapping[str, GradedCount], tied: Mapping[str, list[str]]
) -> dict[str, GradedMeasure]:
    """Every measure of one size, with what its count makes of it."""
    finished: dict[str, GradedMeasure] = {}
    for name, measure in pattern.measures.items():
        if name in targets:
            count = next((counts[count] for count in tied.get(name, ()) if count in counts), None)
            finished[name] = GradedMeasure(name, targets[name], count.finished if count else None, measure.place)
    return finished


def find_made_twice(
    pattern: Pattern,
    bodies: tuple[Body, ...],
    counted: list[dict[str, GradedCount]],
    tied: Mapping[str, list[str]],
    words: Words,
) -> list[Finding]:
    """Notes where a second count makes a measure more than 1/4 in otherwise than the first."""
    findings: list[Finding] = []
    for measure, (first, *others) in tied.items():
        for other in others:
            for body, counts in zip(bodies, counted, strict=True):
                one, two = (counts[name].finished if name in counts else None for name in (first, other))
                if one is not None and two is not None and abs(one - two) > APART:
                    message = f"{first} and {other} make {measure} differently; what {first} makes is printed."
                    sides = words.length(one), words.length(two)
                    findings.append(_twice(pattern.counts[other], body, message, sides))
    return findings


def _twice(rule: CountRule, body: Body, message: str, sides: tuple[str, str]) -> Finding:
    return MEASURE_MADE_TWICE.at(rule.place, message, size=body.name, expected=sides[0], found=sides[1])
