"""Sums of counts that a relation can use: each count so many times, and a plain number."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.design.pattern import Pattern
from gradegen.findings import Rule, Severity
from gradegen.grade.body.bodies import Body
from gradegen.grade.body.naming import Naming
from gradegen.grade.body.sums import DIVIDES_BY_NOTHING, UNITS_DO_NOT_MIX, Refused, value_of

RELATION_NOT_PLAIN = Rule(
    "relation-not-plain",
    Severity.ERROR,
    "file format",
    "A relation holds something besides counts, numbers, + and -, and a number times a count.",
)
ONE = Fraction(1)


@dataclass(frozen=True, slots=True)
class Linear:
    """`2 * band + 1`: how many times each count goes in, and the plain number."""

    times: Mapping[str, Fraction]
    number: Fraction

    def plus(self, other: Linear, times: Fraction = ONE) -> Linear:
        """The sum of this and so many times another; counts that cancel are gone."""
        both = {
            name: self.times.get(name, Fraction(0)) + times * other.times.get(name, Fraction(0))
            for name in {**self.times, **other.times}
        }
        return Linear({name: n for name, n in both.items() if n}, self.number + times * other.number)

    def by(self, times: Fraction) -> Linear:
        """So many times this."""
        return Linear({name: n * times for name, n in self.times.items() if times}, self.number * times)

    def value(self, counts: Mapping[str, int]) -> Fraction:
        """What it comes to with these counts."""
        return sum((times * counts[name] for name, times in self.times.items()), self.number)


def linear_of(formula: Formula, pattern: Pattern, naming: Naming, body: Body) -> Linear:
    """The sum for one body; raises Refused for anything but counts, numbers, and numbers times counts."""
    match formula:
        case Amount():
            return _number(formula)
        case PerSize():
            parts = [_number(formula.each[index]).number * share for index, share in body.shares]
            return Linear({}, sum(parts, Fraction(0)))
        case Name():
            return _named(formula, pattern, naming)
        case Call():
            message = f"{formula.function} can't stand in a relation."
            raise Refused(RELATION_NOT_PLAIN.at(formula.place, message, hint="Give the result a count of its own."))
    left = linear_of(formula.left, pattern, naming, body)
    right = linear_of(formula.right, pattern, naming, body)
    if formula.sign in "+-":
        return left.plus(right, ONE if formula.sign == "+" else -ONE)
    return _scaled(formula, left, right)


def _number(amount: Amount) -> Linear:
    value = value_of(amount)
    if value.kind in ("length", "mass"):
        message = "A relation is between counts; a length has no place in it."
        raise Refused(UNITS_DO_NOT_MIX.at(amount.place, message, hint="Count it across or along a measure first."))
    return Linear({}, value.number)


def _named(name: Name, pattern: Pattern, naming: Naming) -> Linear:
    meaning = naming.meaning_among_counts(name)
    if meaning is None:
        raise Refused(naming.unknown(name))
    if meaning.what == "count":
        return Linear({meaning.name: ONE}, Fraction(0))
    if meaning.what == "chain":
        return Linear({meaning.name: ONE}, Fraction(pattern.counts[meaning.name].base_extra))
    what = "a measure" if meaning.what == "measure" else "a body measure"
    message = f"{name.name} is {what}; a relation is between counts."
    raise Refused(RELATION_NOT_PLAIN.at(name.place, message, hint=f"counts: a name: {{across: {name.name}}}"))


def _scaled(formula: Sum, left: Linear, right: Linear) -> Linear:
    if formula.sign == "*":
        if left.times and right.times:
            message = "A count times a count can't stand in a relation."
            raise Refused(RELATION_NOT_PLAIN.at(formula.place, message))
        return left.by(right.number) if left.times else right.by(left.number)
    if right.times:
        message = "Division by a count can't stand in a relation."
        raise Refused(RELATION_NOT_PLAIN.at(formula.place, message))
    if not right.number:
        message = "This part is nothing, and nothing can be divided by it."
        raise Refused(DIVIDES_BY_NOTHING.at(formula.right.place, message))
    return left.by(1 / right.number)
