"""Which counts of a pattern depend on each other, and what is asked of them together."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from gradegen.design.formula import Formula
from gradegen.design.pattern import CountRule, Pattern
from gradegen.design.relation import Relation
from gradegen.findings import Finding
from gradegen.grade.body.bodies import Body
from gradegen.grade.body.each_body import check_lists
from gradegen.grade.body.naming import Naming
from gradegen.grade.body.sums import Refused
from gradegen.grade.measure.snapped import Scale, ties_its_sizes
from gradegen.grade.related.conditions import Condition, conditions_of
from gradegen.grade.related.joint import Held, Joint, Key, Wish
from gradegen.grade.related.linear import RELATION_NOT_PLAIN, Linear, linear_of

ONE = Fraction(1)
USUAL_STITCH = Fraction(1, 4)  # inches, where nothing tells how wide a stitch of a sum is


@dataclass(frozen=True, slots=True)
class Known:
    """What is known of the counts before any is solved.

    `bodies`: smallest first; `entries`: how many a size list has; `rules`: sound ones by name; `scales`: of those with
    a measure; `raws`: the length each of these wants in stitches, per body (None: it can't be told).
    """

    pattern: Pattern
    naming: Naming
    bodies: tuple[Body, ...]
    entries: int
    rules: Mapping[str, CountRule]
    scales: Mapping[str, Scale]
    raws: Mapping[str, tuple[Fraction | None, ...]]

    def sums(self, *formulas: tuple[Formula, Fraction]) -> tuple[Linear, ...]:
        """For each body the sum of formulas, each so many times; raises Refused."""
        made = []
        for body in self.bodies:
            whole = Linear({}, Fraction(0))
            for formula, times in formulas:
                whole = whole.plus(linear_of(formula, self.pattern, self.naming, body), times)
            made.append(whole)
        return tuple(made)


@dataclass(frozen=True, slots=True)
class Plain:
    """A relation, or what a sum of counts comes to, as one sum per body that is nothing or at most nothing.

    `is_wished`: the sum is only wished to be nothing, for its count is rounded to a multiple.
    """

    condition: Condition
    sums: tuple[Linear, ...]
    is_equal: bool = True
    is_wished: bool = False

    @property
    def counts(self) -> frozenset[str]:
        """The counts in it."""
        return frozenset(name for one in self.sums for name in one.times)


def find_joints(known: Known) -> tuple[tuple[Joint, ...], tuple[Finding, ...]]:
    """The groups of counts that are solved together, in the order of the pattern, and what is wrong with relations."""
    plains: list[Plain] = []
    findings: list[Finding] = []
    for relation in known.pattern.relations:
        found = _relation(known, relation)
        if isinstance(found, Finding):
            findings.append(found)
        elif found is not None:
            plains.append(found)
    sums, faults = _sums_in(known, plains)
    findings += [fault for fault in faults.values() if fault is not None]
    plains = _sound([*plains, *sums], faults.keys())
    alone = [frozenset((rule.name,)) for rule in known.rules.values() if ties_its_sizes(rule)]
    order = list(known.rules)
    groups = sorted(_joined([*(plain.counts for plain in plains), *alone]), key=lambda g: min(map(order.index, g)))
    return tuple(_joint(known, group, plains) for group in groups), tuple(findings)


def _sound(plains: list[Plain], faulty: Iterable[str]) -> list[Plain]:
    """Those that need no faulty count, nor a sum of one."""
    bad = set(faulty)
    while more := {one.condition.of for one in plains if one.condition.kind == "sum" and one.counts & bad} - bad:
        bad |= more
    return [plain for plain in plains if not plain.counts & bad]


def _relation(known: Known, relation: Relation) -> Plain | Finding | None:
    """A relation in plain sums; what is wrong with it; None where a count in it is faulty, which was told."""
    for side in (relation.left, relation.right):
        if faults := check_lists(side, known.entries):
            return faults[0]
    way = -ONE if relation.sign in (">", ">=") else ONE
    try:
        sums = known.sums((relation.left, way), (relation.right, -way))
    except Refused as refused:
        return refused.finding
    if relation.sign in ("<", ">"):
        sums = tuple(one.plus(Linear({}, ONE)) for one in sums)
    plain = Plain(
        Condition("relation", relation.text, words=relation.text, place=relation.place), sums, relation.sign == "="
    )
    if not plain.counts:
        message = "No count is left in this relation, so it can tie nothing."
        return RELATION_NOT_PLAIN.at(relation.place, message, hint="front = neck + 2 * shoulder")
    return plain if plain.counts <= known.rules.keys() else None


def _sums_in(known: Known, plains: Iterable[Plain]) -> tuple[list[Plain], dict[str, Finding | None]]:
    """The sums of all counts in relations, and of those in these sums; by count, why no relation can use it.

    A count that is faulty itself was told about already: nothing is said of it here.
    """
    found: list[Plain] = []
    faults: dict[str, Finding | None] = {}
    waiting = list(dict.fromkeys(name for plain in plains for name in sorted(plain.counts)))
    for name in waiting:
        rule = known.rules.get(name)
        if rule is None:
            faults[name] = None
        if rule is None or rule.formula is None:
            continue
        try:
            sums = known.sums((rule.formula, -ONE))
        except Refused as refused:
            hint = f"{name} stands in a relation, so its sum may hold counts and numbers only."
            faults[name] = replace(refused.finding, hint=hint) if refused.finding else None
            continue
        condition = Condition("sum", name, words=f"sum of {name}", place=rule.formula.place)
        own = Linear({name: ONE}, Fraction(0))
        found.append(Plain(condition, tuple(one.plus(own) for one in sums), is_wished=is_rounded(rule)))
        waiting += [other for other in sorted(found[-1].counts) if other not in waiting]
    return found, faults


def is_rounded(rule: CountRule) -> bool:
    """True for a sum that is rounded to a multiple, a parity or limits of its own."""
    return rule.multiple > 1 or any(limit is not None for limit in (rule.parity, rule.centre, rule.least, rule.most))


def _joined(links: Iterable[frozenset[str]]) -> list[frozenset[str]]:
    """Names linked directly or through others, in one group each."""
    groups: list[frozenset[str]] = []
    for link in links:
        touching = [group for group in groups if group & link]
        groups = [group for group in groups if not group & link]
        groups.append(link.union(*touching))
    return groups


def _joint(known: Known, group: frozenset[str], plains: Iterable[Plain]) -> Joint:
    rules = {name: rule for name, rule in known.rules.items() if name in group}
    own = [plain for plain in plains if plain.counts <= group]
    present = _present(known, rules, own)
    wishes = [
        Wish(name, at, Linear({name: ONE}, -raw), known.scales[name].inches, rule.weight)
        for name, rule in rules.items() if name in known.scales
        for at, raw in enumerate(known.raws[name]) if raw is not None
    ]  # fmt: skip
    held = []
    for plain in own:
        for at, one in enumerate(plain.sums):
            if any((name, at) not in present for name in one.times):
                continue
            if plain.is_wished:
                rule = rules[plain.condition.of]
                wishes.append(Wish(rule.name, at, one, _stitch(known, one), rule.weight))
            else:
                held.append(Held(plain.condition, at, one, plain.is_equal))
    conditions = [plain.condition for plain in own if not plain.is_wished]
    conditions += [condition for rule in rules.values() for condition in conditions_of(rule)]
    return Joint(
        rules=rules,
        sizes=tuple(body.name for body in known.bodies),
        held=tuple(held),
        wishes=tuple(wishes),
        present=present,
        neighbours=tuple(
            (at, at + 1) for at, (one, two) in enumerate(pairwise(known.bodies)) if one.wearer == two.wearer
        ),
        conditions=tuple(conditions),
        may_be_none=frozenset(name for name, rule in rules.items() if _may_be_none(rule)),
    )


def _present(known: Known, rules: Mapping[str, CountRule], plains: Iterable[Plain]) -> frozenset[Key]:
    """Counts and sizes in which they can be told: their length is known, and that of all they follow from."""
    missing = {
        (name, at) for name in rules if name in known.scales for at, raw in enumerate(known.raws[name]) if raw is None
    }
    found = bool(missing)
    while found:
        found = False
        for plain in plains:
            for at, one in enumerate(plain.sums):
                if any((name, at) in missing for name in one.times):
                    more = {(name, at) for name in one.times if name not in known.scales} - missing
                    missing |= more
                    found |= bool(more)
    return frozenset((name, at) for name in rules for at in range(len(known.bodies)) if (name, at) not in missing)


def _stitch(known: Known, of: Linear) -> Fraction:
    return next((known.scales[name].inches for name in of.times if name in known.scales), USUAL_STITCH)


def _may_be_none(rule: CountRule) -> bool:
    """Sums may come to nothing; a count that relations alone give may where its least is 0."""
    if rule.across is not None or rule.along is not None:
        return False
    return rule.formula is not None or rule.least == 0
