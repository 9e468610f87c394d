"""Related counts solved together, and each told how it came about."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from gradegen.design.graded import GradedCount
from gradegen.design.pattern import CountRule
from gradegen.findings import Finding
from gradegen.grade.measure.lengths import Words
from gradegen.grade.measure.snapped import Scale, moved_words, neighbours, plain_count, snap_to_rule
from gradegen.grade.related.clash_words import clash_findings, cut_short, not_solved
from gradegen.grade.related.joint import Joint, Key
from gradegen.grade.related.related import Known, find_joints
from gradegen.numbers.snap import NoCount

Counted = Sequence[dict[str, GradedCount]]  # one mapping per body, smallest first


def solve_related(known: Known, counted: Counted, words: Words) -> tuple[Finding, ...]:
    """Puts jointly solved counts in the place of those rounded alone; findings for relations that can't hold."""
    joints, findings = find_joints(known)
    told = list(findings)
    for joint in joints:
        counts, found = _solve(joint, words)
        told += found
        for rule in joint.rules.values():
            _put(known, joint, rule, counts, counted)
    return tuple(told)


def _solve(joint: Joint, words: Words) -> tuple[Mapping[Key, int], tuple[Finding, ...]]:
    """The best counts of one group; where conditions clash, the best with the cheapest of them left out."""
    from gradegen.grade.related.best import best_counts
    from gradegen.grade.related.clash import find_clashes
    from gradegen.grade.related.solver import GaveUp

    try:
        best = best_counts(joint, joint.conditions)
    except GaveUp:
        return {}, (not_solved(joint),)
    findings: list[Finding] = [] if best.is_proved else [cut_short(joint)]
    counts = dict(best.counts)
    for block in best.unsolved:
        clashes, loosened = find_clashes(joint, block)
        for clash in clashes:
            findings += clash_findings(joint, clash, words)
        counts |= loosened
    return counts, tuple(findings)


def _put(known: Known, joint: Joint, rule: CountRule, counts: Mapping[Key, int], counted: Counted) -> None:
    partners = _partners(joint, rule.name)
    for at, body in enumerate(known.bodies):
        n = counts.get((rule.name, at))
        if n is None:
            continue
        alone = counted[at].get(rule.name)
        scale = known.scales.get(rule.name)
        if alone is not None and scale is not None:
            counted[at][rule.name] = _measured(rule, alone, n, scale, partners)
            continue
        solved = {name: counts[name, at] for name in joint.rules if (name, at) in counts}
        counted[at][rule.name] = _unmeasured(known, joint, rule, at, solved, partners, body.name in rule.pins)


def _partners(joint: Joint, name: str) -> tuple[str, ...]:
    """The counts that stand in a relation or a sum with this one."""
    near = {name}
    for sums in (*(held.sum for held in joint.held), *(wish.off for wish in joint.wishes)):
        if name in sums.times:
            near.update(sums.times)
    return tuple(other for other in joint.rules if other in near and other != name)


def _measured(rule: CountRule, alone: GradedCount, n: int, scale: Scale, partners: tuple[str, ...]) -> GradedCount:
    """A count with a length of its own, as relations leave it."""
    below, above = neighbours(rule, n)
    raw = alone.raw if alone.raw is not None else Fraction(n)
    is_pinned = alone.pinned and n == alone.n
    if alone.pinned and not is_pinned:  # a pin that clashes
        snapped = snap_to_rule(raw, rule)
        alone = replace(alone, n=n if isinstance(snapped, NoCount) else snapped.n, pinned=False, rounded="")
    is_near = abs(n - raw) <= abs(alone.n - raw)
    with_what = _with(rule, partners)
    if is_pinned:
        rounded = alone.rounded
    elif n == alone.n:
        rounded = f"{alone.rounded}; {with_what}".removeprefix("; ")
    else:
        off = f"{with_what}: {_off(n - alone.n, alone.unit)} the nearest, {alone.n}"
        rounded = f"{f'as near as {alone.n}; {with_what}' if is_near else off}; {moved_words(n - raw, alone.unit)}"
    return replace(
        alone, n=n, chain=n + rule.base_extra, repeats=(n - rule.plus) // rule.multiple, finished=n * scale.inches,
        rounded=rounded, below=below, above=above, on_hook=n * scale.on_hook if scale.on_hook else None,
        together=partners, nearest=None if is_near else alone.n,
    )  # fmt: skip


def _off(moved: int, unit: str) -> str:
    named = "row" if unit == "rows" else "st"
    return f"{abs(moved)} {named}{'s' * (abs(moved) > 1)} {'below' if moved < 0 else 'above'}"


def _with(rule: CountRule, partners: tuple[str, ...]) -> str:
    """`solved together with neck and shoulder, in even steps`."""
    ties = [words for words, is_so in _TIES if is_so(rule)]
    if partners:
        ties.insert(0, f"solved together with {_listed(partners)}")
    return ", ".join(ties) or "held by a relation"


_TIES: tuple[tuple[str, Callable[[CountRule], bool]], ...] = (
    ("in even steps", lambda rule: rule.even_steps),
    ("one centre in all sizes", lambda rule: rule.centre == "same"),
)


def _listed(names: tuple[str, ...]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def _unmeasured(
    known: Known, joint: Joint, rule: CountRule, at: int, solved: Mapping[str, int], partners: tuple[str, ...],
    is_pinned: bool,
) -> GradedCount:  # fmt: skip
    """A sum, or a count that follows from relations alone."""
    n = solved[rule.name]
    count = plain_count(n, rule, _unit(known, joint, rule))
    wish = next((wish for wish in joint.wishes if wish.name == rule.name and wish.size == at), None)
    if wish is not None:
        raw = n - wish.off.value({name: solved[name] for name in wish.off.times})
        below, above = neighbours(rule, n)
        moved = moved_words(n - raw, count.unit) if n != raw else "comes out even"
        count = replace(count, raw=raw, rounded=f"{_with(rule, partners)}: {moved}", below=below, above=above)
        count = replace(count, repeats=(n - rule.plus) // rule.multiple)
    elif rule.formula is None:
        rounded = f"pinned at {n}" if is_pinned else f"follows from {_listed(partners)}" if partners else "the least"
        count = replace(count, rounded=rounded, pinned=is_pinned)
    return replace(count, together=partners)


def _unit(known: Known, joint: Joint, rule: CountRule) -> str:
    """Rows where it is called so, or all that it is tied to are rows; else stitches."""
    if any(word in ("row", "rows", "round", "rounds", "rnd", "rnds") for word in rule.name.lower().split()):
        return "rows"
    units = {known.scales[name].unit for name in _partners(joint, rule.name) if name in known.scales}
    return "rows" if units == {"rows"} else "sts"
