"""A clash between relations as a finding: what can't all hold, in which size, and what loosening each would buy."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.clash import Clash, Loosened
from gradegen.grade.joint import Joint
from gradegen.grade.lengths import Words
from gradegen.numbers.exact import mixed_text

RELATIONS_CLASH = Rule(
    "relations-clash", Severity.ERROR, "arithmetic", "Relations, multiples and limits can't all hold together."
)
RELATIONS_NOT_SOLVED = Rule(
    "relations-not-solved", Severity.ERROR, "house", "Related counts are too many or too tangled to be solved."
)


def clash_finding(joint: Joint, clash: Clash, words: Words) -> Finding:
    """One clash, at the first of its conditions in the file, with the places of the others."""
    conditions = sorted(clash.conditions, key=lambda condition: condition.place)
    listed = "; ".join(condition.words for condition in conditions)
    names = [joint.sizes[size] for size in clash.sizes]
    among = f" (sizes {', '.join(names)} together)" if len(names) > 1 else ""
    found = "This can't hold" if len(conditions) == 1 else "These can't all hold"
    cheapest = clash.cheapest
    hint = None
    if cheapest.bound is not None:
        hint = f"Loosen {cheapest.condition.words}: {_bought(joint, clash, cheapest, words)}."
    return RELATIONS_CLASH.at(
        conditions[0].place,
        f"{found}{among}: {listed}.",
        size=names[0] if len(names) == 1 else None,
        because="; ".join(_told(joint, clash, one, words) for one in clash.loosened),
        hint=hint,
        see_also=tuple((condition.place, condition.words) for condition in conditions[1:]),
    )


def not_solved(joint: Joint) -> Finding:
    """The finding where the solver came to no end."""
    first = min((condition for condition in joint.conditions), key=lambda condition: condition.place)
    message = f"{', '.join(joint.rules)} could not be solved together; each is rounded alone."
    return RELATIONS_NOT_SOLVED.at(first.place, message, hint="Give some of them limits (least, most), or a pin.")


def _told(joint: Joint, clash: Clash, one: Loosened, words: Words) -> str:
    return f"without {one.condition.words}: {_bought(joint, clash, one, words)}"


def _bought(joint: Joint, clash: Clash, one: Loosened, words: Words) -> str:
    if one.bound is None:
        return "other conditions still clash"
    off = largest_off(joint, one, clash.sizes)
    fits = f"no measure is more than {words.length(off)} off" if off else "every measure comes out even"
    then = ", ".join(_then(joint, clash, one))
    return f"{then}, and {fits}" if then else fits


def _then(joint: Joint, clash: Clash, one: Loosened) -> Iterator[str]:
    """What the condition left out comes to: the count it was for, or how far apart its sides are."""
    for size in clash.sizes[:1]:
        if one.condition.kind == "relation":
            held = next((held for held in joint.held if held.condition == one.condition and held.size == size), None)
            if held is not None and all((name, size) in one.counts for name in held.sum.times):
                apart = held.sum.value({name: one.counts[name, size] for name in held.sum.times})
                yield f"its sides are {mixed_text(abs(apart))} apart"
        elif (one.condition.of, size) in one.counts:
            yield f"{one.condition.of} is {one.counts[one.condition.of, size]}"


def largest_off(joint: Joint, one: Loosened, sizes: tuple[int, ...]) -> Fraction:
    """The largest drift of these sizes in exact inches."""
    offs = [
        abs(wish.off.value({name: one.counts[name, wish.size] for name in wish.off.times})) * wish.inches
        for wish in joint.wishes
        if wish.size in sizes and all((name, wish.size) in one.counts for name in wish.off.times)
    ]
    return max(offs, default=Fraction(0))
