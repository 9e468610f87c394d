"""Working out a sum for one body: exact numbers that know what they measure, so that unlike ones are refused."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor
from typing import Protocol

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import mixed_text
from gradegen.numbers.rounding import nearest_whole
from gradegen.numbers.units import in_base_units, kind_of

UNITS_DO_NOT_MIX = Rule(
    "units-do-not-mix",
    Severity.ERROR,
    "arithmetic",
    "A sum joins things that can't be joined, such as inches and stitches.",
)
SUM_TOO_LARGE = Rule("sum-too-large", Severity.ERROR, "arithmetic", "A sum grows beyond any piece of crochet.")
DIVIDES_BY_NOTHING = Rule("divides-by-nothing", Severity.ERROR, "arithmetic", "A sum divides by zero.")

LARGEST_BITS = 256  # an honest sum of exact inches and gauges has numerators far below

KIND_WORDS = {"length": "a length", "mass": "a weight", "stitch": "stitches", "row": "rows", None: "a plain number"}


@dataclass(frozen=True, slots=True)
class Value:
    """An exact number of inches ("length"), grams ("mass"), stitches ("stitch"), rows ("row"), or just a number."""

    number: Fraction
    kind: str | None


class Refused(Exception):  # noqa: N818  # caught in this room; it never leaves it
    """The sum can't be worked out. `of_this_size`: another size may go well. No finding: it was told elsewhere."""

    def __init__(self, finding: Finding | None, *, of_this_size: bool = False) -> None:
        self.finding, self.of_this_size = finding, of_this_size


class Scope(Protocol):
    """What names and size lists mean for one body."""

    def named(self, name: Name) -> Value:
        """What a name stands for; raises Refused for a name nobody knows."""

    def entry(self, listed: PerSize) -> Value:
        """This body's entry of a size list."""


def names_in(formula: Formula) -> Iterator[Name]:
    """Every name in a sum, left to right."""
    match formula:
        case Name():
            yield formula
        case Sum():
            yield from names_in(formula.left)
            yield from names_in(formula.right)
        case Call():
            for part in formula.parts:
                yield from names_in(part)


def lists_in(formula: Formula) -> Iterator[PerSize]:
    """Every size list in a sum, left to right."""
    match formula:
        case PerSize():
            yield formula
        case Sum():
            yield from lists_in(formula.left)
            yield from lists_in(formula.right)
        case Call():
            for part in formula.parts:
                yield from lists_in(part)


def reckon(formula: Formula, scope: Scope) -> Value:
    """The value of a sum; raises Refused where it makes no sense."""
    match formula:
        case Amount():
            return value_of(formula)
        case PerSize():
            return scope.entry(formula)
        case Name():
            return scope.named(formula)
        case Sum():
            return _kept_small(formula, _joined(formula, reckon(formula.left, scope), reckon(formula.right, scope)))
        case Call():
            return _kept_small(formula, _called(formula, [reckon(part, scope) for part in formula.parts]))


def _kept_small(formula: Formula, value: Value) -> Value:
    """The value, unless counts multiplied by counts have run away: then nothing later could bear or print it."""
    if max(value.number.numerator.bit_length(), value.number.denominator.bit_length()) > LARGEST_BITS:
        raise Refused(SUM_TOO_LARGE.at(formula.place, "This sum grows beyond any piece of crochet."), of_this_size=True)
    return value


def value_of(amount: Amount) -> Value:
    """An amount in base units."""
    return Value(in_base_units(amount), kind_of(amount.unit))


def _joined(formula: Sum, left: Value, right: Value) -> Value:
    match formula.sign:
        case "+" | "-":
            _alike(formula, formula.left, left, formula.right, right)
            return Value(left.number + right.number if formula.sign == "+" else left.number - right.number, left.kind)
        case "*":
            if left.kind and right.kind:
                message = f"{_words(left).capitalize()} times {_words(right)} is no measure."
                raise Refused(UNITS_DO_NOT_MIX.at(formula.place, message, hint="Multiply by a plain number."))
            return Value(left.number * right.number, left.kind or right.kind)
    return _divided(formula, left, right)


def _divided(formula: Sum, left: Value, right: Value) -> Value:
    if right.kind not in (None, left.kind):
        hint = None
        if isinstance(formula.left, Amount) and isinstance(formula.right, Amount) and left.kind is None:
            hint = f"{formula.left.number}/{formula.right.number} {formula.right.unit} (without blanks round the /)"
        message = f"{_words(left).capitalize()} can't be divided by {_words(right)}."
        raise Refused(UNITS_DO_NOT_MIX.at(formula.place, message, hint=hint))
    if not right.number:
        literal = isinstance(formula.right, Amount)
        finding = DIVIDES_BY_NOTHING.at(formula.right.place, "This part is nothing, and nothing can be divided by it.")
        raise Refused(finding, of_this_size=not literal)
    return Value(left.number / right.number, None if right.kind else left.kind)


def _alike(whole: Formula, first: Formula, left: Value, second: Formula, right: Value) -> None:
    """Refuses two parts of unlike kinds: at the number that lacks its unit, else at the second part."""
    if left.kind == right.kind:
        return
    message = f"{_words(left).capitalize()} and {_words(right)} can't go together in one sum."
    bare = next((part for part in (second, first) if isinstance(part, Amount) and part.unit is None), None)
    if bare is not None and "length" in (left.kind, right.kind):
        raise Refused(UNITS_DO_NOT_MIX.at(bare.place, message, hint=f"{mixed_text(bare.number)} in"))
    spot = second if isinstance(second, (Amount, Name, PerSize)) else whole
    raise Refused(UNITS_DO_NOT_MIX.at(spot.place, message))


def _called(formula: Call, values: list[Value]) -> Value:
    if formula.function in ("max", "min"):
        for part, value in zip(formula.parts[1:], values[1:], strict=True):
            _alike(formula, formula.parts[0], values[0], part, value)
        numbers = [value.number for value in values]
        return Value(max(numbers) if formula.function == "max" else min(numbers), values[0].kind)
    step = values[1] if len(values) > 1 else Value(Fraction(1), None)
    if len(values) > 1:
        _alike(formula, formula.parts[0], values[0], formula.parts[1], step)
    elif values[0].kind == "length":
        message = f"{formula.function} of a length needs the step it goes by."
        hint = f"{formula.function}(..., 1/4 in)"
        raise Refused(UNITS_DO_NOT_MIX.at(formula.place, message, hint=hint))
    if step.number <= 0:
        raise Refused(DIVIDES_BY_NOTHING.at(formula.parts[1].place, "The step must be more than nothing."))
    steps = values[0].number / step.number
    whole = ceil(steps) if formula.function == "up" else floor(steps)
    whole = nearest_whole(steps) if formula.function == "round" else whole
    return Value(whole * step.number, values[0].kind)


def _words(value: Value) -> str:
    return KIND_WORDS[value.kind]
