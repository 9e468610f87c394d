"""Measures over the sizes: none may shrink in a larger size, and a girth grows about as the bodies do."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import pairwise

from gradegen.design.formula import Call, Formula, Sum
from gradegen.design.graded import GradedCount, GradedMeasure
from gradegen.design.pattern import CountRule, Measure
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.grade.body.bodies import Body
from gradegen.grade.body.naming import Naming
from gradegen.grade.body.sums import lists_in, names_in
from gradegen.grade.measure.drift import UNEVEN, UNEVEN_SIZE_STEP, WARNED, grows_with_bodies
from gradegen.grade.measure.lengths import Words

COUNT_FALLS = Rule(
    "count-falls", Severity.WARNING, "common practice", "A typed list gives a larger size a smaller count."
)
MEASURE_SHRINKS = Rule("measure-shrinks", Severity.ERROR, "arithmetic", "A measure gets smaller in a larger size.")

Sized = tuple[tuple[Body, GradedMeasure], ...]


def find_steps(measure: Measure, sized: Sized, by: str | None, naming: Naming, words: Words) -> Iterator[Finding]:
    """Findings for one measure over the sizes, smallest first; a measure that shrinks is not also called uneven."""
    shrinking = tuple(_shrinks(measure, sized, naming, words))
    yield from shrinking
    if not shrinking and any(lists_in(measure.formula)):
        yield from _uneven(measure, sized, by, words)


def _shrinks(measure: Measure, sized: Sized, naming: Naming, words: Words) -> Iterator[Finding]:
    """A plateau is no fault. Sizes for other wearers are not compared.

    An honest difference (a sleeve that gets shorter because the shoulder drops lower) or a body column that itself
    falls may make a measure smaller; then it is a warning, for nothing written contradicts itself.
    """
    for (before, smaller), (body, larger) in pairwise(sized):
        if larger.printed >= smaller.printed or before.wearer != body.wearer:
            continue
        falls = _takes_away(measure.formula) or _body_falls(measure, naming, before, body)
        message = f"{measure.name} gets smaller from {before.name} to {body.name}."
        yield MEASURE_SHRINKS.at(
            _entry(measure.formula, body) or measure.formula.place,
            message,
            size=body.name,
            expected=f"at least {words.length(smaller.printed)}",
            found=words.length(larger.printed),
            severity=Severity.WARNING if falls else None,
        )


def _takes_away(formula: Formula) -> bool:
    """True when a sum subtracts, or divides by, something that may grow with the sizes."""
    match formula:
        case Sum():
            grows = any(names_in(formula.right)) or any(lists_in(formula.right))
            return (formula.sign in "-/" and grows) or _takes_away(formula.left) or _takes_away(formula.right)
        case Call():
            return any(_takes_away(part) for part in formula.parts)
    return False


def _body_falls(measure: Measure, naming: Naming, before: Body, body: Body) -> bool:
    for name in names_in(measure.formula):
        meaning = naming.meaning(name, measure.name)
        if meaning and meaning.what == "body":
            small, large = before.values.get(meaning.name), body.values.get(meaning.name)
            if small is not None and large is not None and large < small:
                return True
    return False


def _entry(formula: Formula, body: Body) -> Place | None:
    """The place of this size's entry in the first size list of a sum."""
    listed = next(lists_in(formula), None)
    return listed.each[body.index].place if listed and body.index < len(listed.each) else None


def _uneven(measure: Measure, sized: Sized, by: str | None, words: Words) -> Iterator[Finding]:
    """Typed girths whose step is not as the bodies'; one odd entry spoils two steps and is told once."""
    if by is None or not grows_with_bodies(tuple((body, one.target) for body, one in sized), by):
        return
    known = [(body, one.target) for body, one in sized if by in body.values]
    grown = known[-1][0].values[by] - known[0][0].values[by]
    share = (known[-1][1] - known[0][1]) / grown
    told_off = Fraction(0)
    for (before, small), (body, large) in pairwise(known):
        wanted = (body.values[by] - before.values[by]) * share
        off = large - small - wanted
        if abs(off) <= max(WARNED, UNEVEN * wanted) or before.wearer != body.wearer or off * told_off < 0:
            told_off = Fraction(0)
        else:
            told_off = off
            message = f"The step of {measure.name} from {before.name} to {body.name} is unlike the others."
            yield UNEVEN_SIZE_STEP.at(
                _entry(measure.formula, body) or measure.place, message, size=body.name,
                expected=f"about {words.length(wanted)}", found=words.length(large - small),
            )  # fmt: skip


def find_falling(
    rule: CountRule, bodies: tuple[Body, ...], counted: Sequence[Mapping[str, GradedCount]]
) -> Iterator[Finding]:
    """Warnings where a list typed into the count itself falls; what a measure or another count does is told there."""
    formula = rule.across or rule.along or rule.formula
    if formula is None or not any(lists_in(formula)) or _takes_away(formula):
        return
    sized = [(body, counts[rule.name]) for body, counts in zip(bodies, counted, strict=True) if rule.name in counts]
    for (before, small), (body, large) in pairwise(sorted(sized, key=lambda size: size[0].rank)):
        if large.n < small.n and before.wearer == body.wearer:
            place = _entry(formula, body) or formula.place
            message = f"{rule.name} gets smaller from {before.name} to {body.name}."
            sides = f"at least {small.n}", str(large.n)
            yield COUNT_FALLS.at(place, message, size=body.name, expected=sides[0], found=sides[1])


def sized_measures(name: str, bodies: tuple[Body, ...], finished: Sequence[Mapping[str, GradedMeasure]]) -> Sized:
    """One measure over the sizes that have it, smallest first."""
    found = [(body, one[name]) for body, one in zip(bodies, finished, strict=True) if name in one]
    return tuple(sorted(found, key=lambda size: size[0].rank))
