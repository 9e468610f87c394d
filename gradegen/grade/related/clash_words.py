"""A clash between relations as a finding: what can't all hold, in which size, and what loosening each would buy."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.grade.measure.lengths import Words
from gradegen.grade.related.clash import Clash, Loosened
from gradegen.grade.related.joint import Joint
from gradegen.numbers.exact import mixed_text

RELATIONS_CLASH = Rule(
    "relations-clash", Severity.ERROR, "arithmetic", "Relations, multiples and limits can't all hold together."
)
RELATIONS_NOT_SOLVED = Rule(
    "relations-not-solved", Severity.ERROR, "house", "Related counts are too many or too tangled to be solved."
)
SEARCH_CUT_SHORT = Rule(
    "search-cut-short", Severity.NOTE, "house", "Related counts hold, but the search for better ones was cut short."
)


def clash_findings(joint: Joint, clash: Clash, words: Words) -> Iterator[Finding]:
    """One clash, at the first of its conditions in the file, with the places of the others; one finding per size."""
    conditions = sorted(clash.conditions, key=lambda condition: condition.place)
    listed = "; ".join(condition.words for condition in conditions)
    names = [joint.sizes[size] for size in clash.sizes]
    among = "" if clash.in_each else f" in {', '.join(names)} together"
    found = "This can't hold" if len(conditions) == 1 else "These can't all hold"
    for size in clash.sizes if clash.in_each else clash.sizes[:1]:
        cheapest = clash.cheapest
        bought = _bought(joint, clash, cheapest, size, words) if cheapest.bound is not None else None
        yield RELATIONS_CLASH.at(
            conditions[0].place,
            f"{found}{among}: {listed}.",
            size=joint.sizes[size] if clash.in_each else None,
            because="; ".join(
                f"without {one.condition.words}: {_bought(joint, clash, one, size, words)}" for one in clash.loosened
            ),
            hint=f"Loosen {cheapest.condition.words}: {bought}." if bought else None,
            see_also=tuple((condition.place, condition.words) for condition in conditions[1:]),
        )


def not_solved(joint: Joint) -> Finding:
    """The finding where the search came to no end."""
    message = f"{', '.join(joint.rules)} could not be solved together; each is rounded alone."
    return RELATIONS_NOT_SOLVED.at(_first(joint), message, hint=_FEWER)


def cut_short(joint: Joint) -> Finding:
    """The note where everything holds, but a better answer was not ruled out."""
    message = f"{', '.join(joint.rules)}: everything asked holds, but perhaps other counts come nearer still."
    return SEARCH_CUT_SHORT.at(_first(joint), message, hint=_FEWER)


def _first(joint: Joint) -> Place:
    return min(condition.place for condition in joint.conditions)


_FEWER = "Give some of them limits (least, most), or a pin."


def _bought(joint: Joint, clash: Clash, one: Loosened, size: int, words: Words) -> str:
    """What leaving a condition out gives: what it then comes to, and how far off the measures are."""
    if one.bound is None:
        return "other conditions still clash"
    off = largest_off(joint, one, (size,) if clash.in_each else clash.sizes)
    fits = f"no measure is more than {words.length(off)} off" if off else "every measure comes out even"
    then = _then(joint, one, size)
    return f"{then}, and {fits}" if then else fits


def _then(joint: Joint, one: Loosened, size: int) -> str:
    """What the condition left out comes to in one size: the count it was for, or how far apart its sides are."""
    condition = one.condition
    if condition.size is not None:
        size = joint.sizes.index(condition.size)
    if condition.kind != "relation":
        return f"{condition.of} is {n}" if (n := one.counts.get((condition.of, size))) is not None else ""
    held = next((held for held in joint.held if held.condition == condition and held.size == size), None)
    if held is None or any((name, size) not in one.counts for name in held.sum.times):
        return ""
    apart = held.sum.value({name: one.counts[name, size] for name in held.sum.times})
    return f"its sides are {mixed_text(abs(apart))} apart"


def largest_off(joint: Joint, one: Loosened, sizes: tuple[int, ...]) -> Fraction:
    """The largest drift of these sizes in exact inches."""
    offs = [
        abs(wish.off.value({name: one.counts[name, wish.size] for name in wish.off.times})) * wish.inches
        for wish in joint.wishes
        if wish.size in sizes and all((name, wish.size) in one.counts for name in wish.off.times)
    ]
    return max(offs, default=Fraction(0))
