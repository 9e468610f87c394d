"""Finished measures as they are wanted, per body, in exact inches: sums of body columns, ease and size lists."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.design.formula import Amount, Formula, Name, PerSize
from gradegen.design.pattern import Measure, Pattern
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.grade.body.bodies import Body, size_count
from gradegen.grade.body.each_body import BodyScope, check_lists, reckon_each
from gradegen.grade.body.naming import Naming, two_meanings
from gradegen.grade.body.order import work_order
from gradegen.grade.body.sums import KIND_WORDS, Value, names_in
from gradegen.numbers.exact import decimal_text, mixed_text
from gradegen.read.yaml.kinds import UNIT_WRONG

SUM_IN_A_CIRCLE = Rule(
    "sum-in-a-circle", Severity.ERROR, "arithmetic", "Sums need each other, so none can be worked out."
)
MEASURE_NOT_POSITIVE = Rule("measure-not-positive", Severity.ERROR, "arithmetic", "A measure comes to nothing or less.")
COUNT_IN_A_MEASURE = Rule(
    "count-in-a-measure",
    Severity.ERROR,
    "file format",
    "A measure is made from a count, but counts are found from measures.",
)

Targets = list[dict[str, Fraction]]  # one mapping per body: measure -> exact inches wanted


def target_measures(
    pattern: Pattern, table: SizeTable, bodies: tuple[Body, ...], naming: Naming
) -> tuple[Targets, tuple[Finding, ...]]:
    """What every measure should be for every body; a measure that can't be worked out is told about and left out."""
    findings: list[Finding] = []
    sound: dict[str, Measure] = {}
    for name, measure in pattern.measures.items():
        found = (*check_names(measure.formula, naming, name), *check_lists(measure.formula, size_count(pattern, table)))
        findings += found
        if not any(finding.severity is Severity.ERROR for finding in found):
            sound[name] = measure
    needs = {name: _needs(measure, naming) for name, measure in sound.items()}
    order = work_order(needs)
    findings += (_circle(circle, pattern, naming) for circle in order.circles)
    targets: Targets = [{} for _ in bodies]
    for name in order.names:
        if all(need not in pattern.measures or any(need in target for target in targets) for need in needs[name]):
            findings += _work_out(sound[name], table, bodies, naming, targets)
    return targets, tuple(findings)


def check_names(formula: Formula, naming: Naming, own: str | None) -> Iterator[Finding]:
    """Findings for names nobody knows, for counts among measures, and a note where a name could mean two things."""
    for name in names_in(formula):
        meaning = naming.meaning(name, own)
        if meaning is None:
            yield naming.unknown(name, own)
        elif meaning.what in ("count", "chain"):
            message = f"{name.name} is a count; a measure can only be made of body columns, measures and lengths."
            yield COUNT_IN_A_MEASURE.at(name.place, message)
        elif naming.has_two_meanings(name, own):
            yield two_meanings(name)


def _needs(measure: Measure, naming: Naming) -> tuple[str, ...]:
    meanings = (naming.meaning(name, measure.name) for name in names_in(measure.formula))
    return tuple(meaning.name for meaning in meanings if meaning and meaning.what == "measure")


def _circle(circle: tuple[str, ...], pattern: Pattern, naming: Naming) -> Finding:
    first = pattern.measures[circle[0]]
    spot = next(name for name in names_in(first.formula) if _means(naming, name, first.name, circle))
    message = f"These measures need each other: {', '.join((*circle, circle[0]))}."
    return SUM_IN_A_CIRCLE.at(spot.place, message)


def _means(naming: Naming, name: Name, own: str, circle: tuple[str, ...]) -> bool:
    meaning = naming.meaning(name, own)
    return meaning is not None and meaning.what == "measure" and meaning.name in circle


def _work_out(
    measure: Measure, table: SizeTable, bodies: tuple[Body, ...], naming: Naming, targets: Targets
) -> tuple[Finding, ...]:
    """Adds one measure to the targets of all bodies."""
    scopes = [
        BodyScope(body, naming, table, known, {}, measure.name) for body, known in zip(bodies, targets, strict=True)
    ]
    values, findings = reckon_each(measure.formula, scopes)
    other = next((value for value in values if value and value.kind != "length"), None)
    if other:
        return (*findings, _no_length(measure.formula, other))
    told = list(findings)
    for body, target, value in zip(bodies, targets, values, strict=True):
        if value and value.number > 0:
            target[measure.name] = value.number
        elif value:
            place = _entry_place(measure.formula, body) or measure.formula.place
            message = f"{measure.name} comes to {decimal_text(value.number)} in; a measure is more than nothing."
            told.append(MEASURE_NOT_POSITIVE.at(place, message, size=body.name))
    return tuple(told)


def _no_length(formula: Formula, value: Value) -> Finding:
    hint = None
    if value.kind is None and isinstance(formula, Amount):
        hint = f"{mixed_text(formula.number)} in"
    elif value.kind is None and isinstance(formula, PerSize):
        hint = f"[{', '.join(mixed_text(entry.number) for entry in formula.each)}] in"
    message = f"A measure must come to a length; this is {KIND_WORDS[value.kind]}."
    return UNIT_WRONG.at(formula.place, message, hint=hint)


def _entry_place(formula: Formula, body: Body) -> Place | None:
    """The place of this size's entry where the whole measure is a size list."""
    return formula.each[body.shares[0][0]].place if isinstance(formula, PerSize) else None
