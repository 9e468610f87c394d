"""Which measure goes round the body that sizes are chosen by, and how much larger than that body it is."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.design.graded import GradedMeasure, KeyEase
from gradegen.design.pattern import Pattern
from gradegen.grade.body.bodies import Body, folded
from gradegen.grade.body.naming import Naming
from gradegen.trade.ease import fit_name, fit_names

NEAR_ONE = (Fraction(4, 5), Fraction(6, 5))  # `0.95 * head` is ease in percent; `0.4 * head` is a height
DEEPEST = 20  # measures made of measures


@dataclass(frozen=True, slots=True)
class EaseOf:
    """A measure and the body column it goes round."""

    measure: str
    column: str


def find_ease(pattern: Pattern, naming: Naming, by: str | None) -> EaseOf | None:
    """The measure whose ease is reported: one made of the leading column plus ease, else a piece's width so made."""
    made_of = {name: _parts(measure.formula, pattern, naming, name, 0) for name, measure in pattern.measures.items()}
    for name, parts in made_of.items():
        if by is not None and parts is not None and set(parts) == {by} and _near_one(parts[by]):
            return EaseOf(name, by)
    widths = {folded(piece.width.text) for piece in pattern.pieces if piece.width}
    for name, parts in made_of.items():
        if folded(name) in widths and parts is not None and len(parts) == 1:
            column, times = next(iter(parts.items()))
            if times == 1:
                return EaseOf(name, column)
    return None


def find_key_eases(pattern: Pattern, naming: Naming, of: EaseOf | None) -> tuple[EaseOf, ...]:
    """For every body column the first measure that is that column and ease alone; the one whose ease is reported first.

    A share of a column (`bust / 2`, `0.9 * foot`) has no ease in inches.
    """
    found = {of.column: of} if of is not None else {}
    for name, measure in pattern.measures.items():
        parts = _parts(measure.formula, pattern, naming, name, 0)
        if parts is not None and len(parts) == 1:
            column, times = next(iter(parts.items()))
            if times == 1 and (of is None or name != of.measure):
                found.setdefault(column, EaseOf(name, column))
    return tuple(found.values())


def key_eases_in_size(
    wanted: Sequence[EaseOf], body: Body, measures: Mapping[str, GradedMeasure]
) -> tuple[KeyEase, ...]:
    """Each of them in exact inches as it comes out."""
    return tuple(
        KeyEase(of.measure, of.column, measures[of.measure].printed - body.values[of.column])
        for of in wanted
        if of.measure in measures and of.column in body.values
    )


def ease_in_size(
    of: EaseOf | None, body: Body, measures: Mapping[str, GradedMeasure]
) -> tuple[Fraction | None, str | None]:
    """The ease in exact inches as it comes out, and its published name where there is one for this column."""
    if of is None or of.measure not in measures or of.column not in body.values:
        return None, None
    ease = measures[of.measure].printed - body.values[of.column]
    named = folded(of.column) in ("bust", "chest") and folded(of.column) in fit_names().columns
    return ease, fit_name(ease) if named else None


def _near_one(times: Fraction) -> bool:
    return NEAR_ONE[0] <= times <= NEAR_ONE[1]


def _parts(formula: Formula, pattern: Pattern, naming: Naming, own: str, depth: int) -> dict[str, Fraction] | None:
    """How many times each body column goes into a sum; None where that can't be said."""
    match formula:
        case Amount() | PerSize():
            return {}
        case Name():
            return _named(formula, pattern, naming, own, depth)
        case Call():
            return _chosen([_parts(part, pattern, naming, own, depth) for part in formula.parts], formula.function)
    left = _parts(formula.left, pattern, naming, own, depth)
    right = _parts(formula.right, pattern, naming, own, depth)
    if left is None or right is None:
        return None
    if formula.sign in "+-":
        way = 1 if formula.sign == "+" else -1
        return {name: left.get(name, Fraction(0)) + way * right.get(name, Fraction(0)) for name in {**left, **right}}
    return _scaled(formula, left, right)


def _named(formula: Name, pattern: Pattern, naming: Naming, own: str, depth: int) -> dict[str, Fraction] | None:
    meaning = naming.meaning(formula, own)
    if meaning is None or depth > DEEPEST:
        return None
    if meaning.what == "body":
        return {meaning.name: Fraction(1)}
    if meaning.what == "measure":
        return _parts(pattern.measures[meaning.name].formula, pattern, naming, meaning.name, depth + 1)
    return None


def _chosen(parts: list[dict[str, Fraction] | None], function: str) -> dict[str, Fraction] | None:
    """The larger or smaller of two is about as large as the first that has a body in it."""
    if function in ("max", "min") and all(part is not None for part in parts):
        return next((part for part in parts if part), {})
    return parts[0] if function not in ("max", "min") else None


def _scaled(formula: Sum, left: dict[str, Fraction], right: dict[str, Fraction]) -> dict[str, Fraction] | None:
    """A sum times or by a plain number."""
    if formula.sign == "*" and isinstance(formula.left, Amount):
        return {name: times * formula.left.number for name, times in right.items()}
    if isinstance(formula.right, Amount) and formula.right.number:
        by = formula.right.number if formula.sign == "*" else 1 / formula.right.number
        return {name: times * by for name, times in left.items()}
    return None if left or right else {}
