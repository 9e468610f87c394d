"""Every count for every body: lengths at a gauge, snapped, then sums of other counts, in whatever order they stand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Amount, Call, Formula, Sum
from gradegen.design.graded import GradedCount
from gradegen.design.pattern import CountRule, Pattern
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import Body, size_count
from gradegen.grade.body.each_body import BodyScope, check_lists, reckon_each
from gradegen.grade.body.naming import Naming, two_meanings
from gradegen.grade.body.order import work_order
from gradegen.grade.body.sums import KIND_WORDS, Value, names_in
from gradegen.grade.measure.gauges import GAUGE_INCOMPLETE, PerInch, gauge_of, gauges_per_inch
from gradegen.grade.measure.lengths import Words
from gradegen.grade.measure.measures import MEASURE_NOT_POSITIVE, SUM_IN_A_CIRCLE, Targets, check_names
from gradegen.grade.measure.pins import keep_sound_pins
from gradegen.grade.measure.snapped import (
    Scale,
    count_of_length,
    count_of_sum,
    grid_fault,
    place_of,
    plain_count,
    ties_its_sizes,
)
from gradegen.numbers.exact import decimal_text, mixed_text
from gradegen.numbers.snap import NoCount
from gradegen.read.yaml.kinds import UNIT_WRONG

COUNT_NOT_WHOLE = Rule("count-not-whole", Severity.ERROR, "arithmetic", "A sum of counts is not a whole number.")
COUNT_BELOW_ZERO = Rule("count-below-zero", Severity.ERROR, "arithmetic", "A sum of counts comes to less than nothing.")

Counted = list[dict[str, GradedCount]]  # one mapping per body


@dataclass(frozen=True, slots=True)
class Counting:
    """What counts are worked out from; `sums`, `scales`: the sound rules, the latter with their gauge."""

    pattern: Pattern
    table: SizeTable
    bodies: tuple[Body, ...]
    naming: Naming
    targets: Targets
    scales: dict[str, Scale]
    sums: dict[str, CountRule]
    rules: Mapping[str, CountRule]


def grade_counts(
    pattern: Pattern,
    table: SizeTable,
    bodies: tuple[Body, ...],
    naming: Naming,
    targets: Targets,
    gauges: Mapping[str, PerInch] | None = None,
) -> tuple[Counted, dict[str, Scale], tuple[Finding, ...]]:
    """Every count per body, and how many inches a stitch of each makes; what can't be counted is told and left out.

    `gauges`: another hand's gauge for each of the pattern's, instead of those written.
    """
    usable, found = gauges_per_inch(pattern.gauges) if gauges is None else (gauges, ())
    rules, more = keep_sound_pins(pattern, table)
    findings = [*found, *more]
    work = Counting(pattern, table, bodies, naming, targets, {}, {}, rules)
    for rule in rules.values():
        told = tuple(_faults(rule, work))
        findings += told
        if not any(finding.severity is Severity.ERROR for finding in told):
            findings += _sort_in(rule, work, usable)
    counted: Counted = [{} for _ in bodies]
    for name, scale in work.scales.items():
        findings += _count_lengths(rules[name], scale, work, counted)
    if pattern.relations or any(ties_its_sizes(rule) for rule in rules.values()):
        findings += _count_related(work, counted)
    findings += _count_sums(work, counted)
    return [_in_order(pattern, counts) for counts in counted], work.scales, tuple(findings)


def _faults(rule: CountRule, work: Counting) -> Iterator[Finding]:
    """What is wrong with one rule whatever the size."""
    formula = rule.across or rule.along or rule.formula
    if formula is None:
        return
    if formula is rule.formula:
        for name in names_in(formula):
            if work.naming.meaning(name) is None:
                yield work.naming.unknown(name, rule.name)
            elif work.naming.has_two_meanings(name, None):
                yield two_meanings(name)
    else:
        yield from check_names(formula, work.naming, None)
    yield from check_lists(formula, size_count(work.pattern, work.table))
    if fault := grid_fault(rule):
        yield fault


def _sort_in(rule: CountRule, work: Counting, usable: Mapping[str, PerInch]) -> tuple[Finding, ...]:
    """Adds a sound rule to the sums, or with its gauge to the scales."""
    if rule.across is None and rule.along is None:
        if rule.formula is not None:
            work.sums[rule.name] = rule
        return ()
    gauge, findings = gauge_of(rule.gauge, place_of(rule, "gauge", "across", "along"), work.pattern, usable)
    if gauge is None:
        return findings
    scale = Scale.of(rule, gauge)
    if scale is None:
        part = "stitches" if rule.across is not None else "rows"
        message = f"The gauge {gauge.name} gives no {part}, and {rule.name} is counted by them."
        place = rule.gauge.place if rule.gauge else rule.place
        return (GAUGE_INCOMPLETE.at(place, message, hint=f"{part}: ...", see_also=((gauge.place, "the gauge"),)),)
    work.scales[rule.name] = scale
    return ()


def _scopes(work: Counting, counted: Counted) -> list[BodyScope]:
    return [
        BodyScope(
            body, work.naming, work.table, known, {name: (count.n, count.chain) for name, count in counts.items()}
        )
        for body, known, counts in zip(work.bodies, work.targets, counted, strict=True)
    ]


def _count_lengths(rule: CountRule, scale: Scale, work: Counting, counted: Counted) -> tuple[Finding, ...]:
    formula = rule.across or rule.along
    assert formula is not None
    values, found = reckon_each(formula, _scopes(work, [{} for _ in counted]))
    other = next((value for value in values if value and value.kind != "length"), None)
    if other:
        return (*found, _no_length(rule, formula, other))
    findings = list(found)
    for body, counts, value in zip(work.bodies, counted, values, strict=True):
        if value is None:
            continue
        if value.number <= 0:
            message = f"{rule.name} is counted over {decimal_text(value.number)} in; a length is more than nothing."
            findings.append(MEASURE_NOT_POSITIVE.at(formula.place, message, size=body.name))
            continue
        count = count_of_length(value.number, rule, scale, body.name)
        if not isinstance(count, NoCount):
            counts[rule.name] = count
    return tuple(findings)


def _no_length(rule: CountRule, formula: Formula, value: Value) -> Finding:
    hint = None
    if value.kind is None and isinstance(formula, Amount):
        hint = f"{mixed_text(formula.number)} in, or sum: {mixed_text(formula.number)}"
    what = "Stitches are" if rule.across is not None else "Rows are"
    return UNIT_WRONG.at(formula.place, f"{what} counted over a length; this is {KIND_WORDS[value.kind]}.", hint=hint)


def _count_related(work: Counting, counted: Counted) -> tuple[Finding, ...]:
    """Puts counts solved together in the place of those rounded alone, and adds what follows from relations."""
    from gradegen.grade.related.related import Known
    from gradegen.grade.related.together import solve_related

    order = sorted(range(len(work.bodies)), key=lambda at: work.bodies[at].rank)
    ordered = [counted[at] for at in order]
    sums = work_order({name: _needs(rule, work.naming) for name, rule in work.sums.items()}).names
    free = [rule.name for rule in work.rules.values() if not (rule.across or rule.along or rule.formula)]
    known = Known(
        work.pattern, work.naming, tuple(work.bodies[at] for at in order), size_count(work.pattern, work.table),
        {name: rule for name, rule in work.rules.items() if name in work.scales or name in sums or name in free},
        work.scales,
        {name: tuple(counts[name].raw if name in counts else None for counts in ordered) for name in work.scales},
    )  # fmt: skip
    return solve_related(known, ordered, Words(work.pattern.units))


def _count_sums(work: Counting, counted: Counted) -> tuple[Finding, ...]:
    needs = {name: _needs(rule, work.naming) for name, rule in work.sums.items()}
    order = work_order(needs)
    findings = [_circle(circle, work) for circle in order.circles]
    for name in order.names:
        rule = work.sums[name]
        if all(any(need in counts for counts in counted) for need in needs[name]):
            findings += _count_sum(rule, work, counted)
    return tuple(findings)


def _needs(rule: CountRule, naming: Naming) -> tuple[str, ...]:
    assert rule.formula is not None
    meanings = (naming.meaning(name) for name in names_in(rule.formula))
    return tuple(meaning.name for meaning in meanings if meaning and meaning.what in ("count", "chain"))


def _circle(circle: tuple[str, ...], work: Counting) -> Finding:
    rule = work.sums[circle[0]]
    assert rule.formula is not None
    spots = ((name, work.naming.meaning(name)) for name in names_in(rule.formula))
    place = next(name.place for name, meaning in spots if meaning and meaning.name in circle)
    return SUM_IN_A_CIRCLE.at(place, f"These counts need each other: {', '.join((*circle, circle[0]))}.")


def _count_sum(rule: CountRule, work: Counting, counted: Counted) -> tuple[Finding, ...]:
    formula = rule.formula
    assert formula is not None
    values, found = reckon_each(formula, _scopes(work, counted))
    findings = list(found)
    other = next((value for value in values if value and value.kind in ("length", "mass")), None)
    if other:
        message = f"A count is a plain number; this sum comes to {KIND_WORDS[other.kind]}."
        return (
            *findings,
            UNIT_WRONG.at(formula.place, message, hint="across: ... with a gauge turns a length into stitches"),
        )
    for body, counts, value in zip(work.bodies, counted, values, strict=True):
        if value is None or rule.name in counts:
            continue
        count = _summed(rule, value.number, _unit(rule, counts, work.naming), body)
        if isinstance(count, Finding):
            findings.append(count)
        else:
            counts[rule.name] = count
    return tuple(findings)


def _summed(rule: CountRule, number: Fraction, unit: str, body: Body) -> GradedCount | Finding:
    """One sum in one size; it has to be whole, unless the rule's own multiple or parity rounds it."""
    assert rule.formula is not None
    snaps = rule.multiple > 1 or rule.parity is not None or rule.least is not None or rule.most is not None
    if snaps and number > 0:
        count = count_of_sum(number, rule, unit)
        assert not isinstance(count, NoCount)  # a rule no count satisfies was told about and left out before
        return count
    if number < 0:
        message = f"{rule.name} comes to {decimal_text(number)}; a count is never less than nothing."
        return COUNT_BELOW_ZERO.at(rule.formula.place, message, size=body.name)
    if number.denominator != 1:
        message = f"{rule.name} comes to {mixed_text(number)}; a count is whole."
        hint = "round(...), up(...) or down(...) round the sum"
        return COUNT_NOT_WHOLE.at(rule.formula.place, message, size=body.name, hint=hint)
    return plain_count(int(number), rule, unit)


def _unit(rule: CountRule, counts: Mapping[str, GradedCount], naming: Naming) -> str:
    """Rows when the sum holds rows, or is called so; "number" for a share of a count (`band / 6`); else stitches."""
    if any(word in ("row", "rows", "round", "rounds", "rnd", "rnds") for word in rule.name.lower().split()):
        return "rows"
    if any(counts[need].unit == "rows" for need in _needs(rule, naming) if need in counts):
        return "rows"
    return "number" if rule.formula is not None and _divides(rule.formula) else "sts"


def _divides(formula: Formula) -> bool:
    match formula:
        case Sum():
            return formula.sign == "/" or _divides(formula.left) or _divides(formula.right)
        case Call():
            return any(_divides(part) for part in formula.parts)
    return False


def _in_order(pattern: Pattern, counts: Mapping[str, GradedCount]) -> dict[str, GradedCount]:
    """The counts in the order the pattern names them."""
    return {name: counts[name] for name in pattern.counts if name in counts}
