"""Groups of related counts made at random, and what is best for them, found by trying everything."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise, product

from gradegen.design.pattern import CountRule
from gradegen.findings import Place
from gradegen.grade.related.conditions import Condition, conditions_of
from gradegen.grade.related.joint import Held, Joint, Key, Wish
from gradegen.grade.related.linear import Linear

HERE = Place("p.yaml", 1, 1, 1, 2)


def rule(name: str, **given: object) -> CountRule:
    plain = {"multiple": 1, "plus": 0, "parity": None, "least": None, "most": None, "tie": "up"}
    return CountRule(
        name=name, across=None, along=None, formula=None, gauge=None, base_extra=0, both_sides=False, pieces=1,
        place=HERE, **{**plain, **given},
    )  # type: ignore[arg-type]  # fmt: skip


def joint(
    rules: list[CountRule],
    raws: dict[str, list[Fraction]],
    relations: list[tuple[str, dict[str, int], int]],
    scales: dict[str, Fraction],
    sizes: int,
) -> Joint:
    """`relations`: sign "=" or "<=", times by count, number: the sum is nothing, or at most nothing, in every size."""
    held, conditions = [], []
    for at, (sign, times, number) in enumerate(relations):
        condition = Condition("relation", f"relation {at}", words=f"relation {at}", place=HERE)
        conditions.append(condition)
        whole = Linear({name: Fraction(n) for name, n in times.items()}, Fraction(number))
        held += [Held(condition, size, whole, sign == "=") for size in range(sizes)]
    for one in rules:
        conditions += conditions_of(one)
    wishes = [
        Wish(name, size, Linear({name: Fraction(1)}, -raw), scales[name], one.weight)
        for one in rules for name in [one.name] if name in raws for size, raw in enumerate(raws[name])
    ]  # fmt: skip
    present = frozenset((one.name, size) for one in rules for size in range(sizes))
    names = tuple(f"S{size}" for size in range(sizes))
    return Joint(
        {one.name: one for one in rules}, names, tuple(held), tuple(wishes), present,
        tuple(pairwise(range(sizes))), tuple(conditions), frozenset(),
    )  # fmt: skip


def random_joint(seed: int, sizes: int, counts: int, coupled: bool = False, largest: int = 30) -> Joint:
    """Related counts as patterns have them: sums that nearly add up, multiples, parities, limits."""
    rng = random.Random(seed)
    names = [f"c{at}" for at in range(counts)]
    base = {name: rng.randint(largest // 3, largest) for name in names}
    relations: list[tuple[str, dict[str, int], int]] = []
    for at in range(2, counts):
        if rng.random() < 0.7:
            first, second = rng.sample(names[:at], 2)
            times = rng.choice([1, 2, 2])
            relations.append(("=", {names[at]: 1, first: -1, second: -times}, 0))
            base[names[at]] = base[first] + times * base[second] + rng.randint(-2, 2)
    if rng.random() < 0.5:
        low, high = sorted(rng.sample(names, 2), key=lambda name: base[name])
        relations.append(("<=", {low: 1, high: -1}, rng.randint(-1, 1)))
    rules, raws = [], {}
    for name in names:
        multiple = rng.choice([1, 1, 2, 2, 3, 4])
        given: dict[str, object] = {
            "multiple": multiple,
            "plus": rng.choice([0, 0, 1]),
            "tie": rng.choice(["up", "down"]),
        }
        if rng.random() < 0.2 and multiple % 2:
            given["parity"] = rng.choice(["even", "odd"])
        if rng.random() < 0.15:
            given["least"] = max(1, base[name] - rng.randint(0, 4))
        if rng.random() < 0.15:
            given["most"] = base[name] + sizes * 3 + rng.randint(0, 6)
        if rng.random() < 0.2:
            given["weight"] = Fraction(rng.choice([1, 3]), 2)
        if coupled and rng.random() < 0.4:
            given["even_steps"] = True
        elif coupled and rng.random() < 0.3:
            given["centre"] = "same"
        rules.append(rule(name, **given))
        if rng.random() < 0.8:
            grown = rng.randint(1, 3)
            raws[name] = [Fraction(4 * base[name] + 4 * grown * at + rng.randint(-3, 3), 4) for at in range(sizes)]
    scales = {name: rng.choice([Fraction(2, 7), Fraction(1, 4), Fraction(4, 15)]) for name in names}
    return joint(rules, raws, relations, scales, sizes)


def allowed(one: CountRule, most: int) -> list[int]:
    """The counts a rule allows, from its own words: nothing is shared with the grading room."""
    found = []
    for n in range(max(1, one.least or 1, one.plus), min(most, one.most or most) + 1):
        repeats, over = divmod(n - one.plus, one.multiple)
        centred = {"motif": repeats % 2 == 1, "gap": repeats % 2 == 0}.get(one.centre or "", True)
        if not over and centred and (one.parity is None or n % 2 == (one.parity == "odd")):
            found.append(n)
    return found


def drifts(of: Joint, counts: dict[Key, int], size: int) -> list[Fraction]:
    """How far the counts of one size are off, in weighted inches."""
    return [
        abs(counts[wish.name, size] + wish.off.number) * wish.inches * wish.weight
        for wish in of.wishes
        if wish.size == size
    ]


def steps_off(of: Joint, counts: dict[Key, int]) -> Fraction:
    """How far all steps are from those wanted, in weighted inches."""
    off = {
        (wish.name, wish.size): (counts[wish.name, wish.size] + wish.off.number) * wish.inches * wish.weight
        for wish in of.wishes
    }
    return sum(
        (abs(off[name, after] - off[name, before]) for name in of.rules for before, after in of.neighbours
         if (name, before) in off and (name, after) in off),
        Fraction(0),
    )  # fmt: skip


def holds(of: Joint, counts: dict[Key, int], size: int) -> bool:
    """True when every relation holds in one size."""
    for held in of.held:
        if held.size == size:
            total = sum((times * counts[name, size] for name, times in held.sum.times.items()), held.sum.number)
            if total > 0 or (held.is_equal and total):
                return False
    return True


def best_by_trying(of: Joint, size: int, most: int) -> tuple[Fraction, Fraction] | None:
    """The smallest largest drift of one size, and the smallest sum with it; all counts up to `most` are tried."""
    choices = [[(name, n) for n in allowed(one, most)] for name, one in of.rules.items()]
    costs = []
    for chosen in product(*choices):
        counts = {(name, size): n for name, n in chosen}
        if holds(of, counts, size):
            each = drifts(of, counts, size)
            costs.append((max(each, default=Fraction(0)), sum(each, Fraction(0))))
    return min(costs, default=None)


def with_relations(of: Joint, relations: list[tuple[str, dict[str, int], int]]) -> Joint:
    """The same group with relations more."""
    held, conditions = list(of.held), list(of.conditions)
    for at, (sign, times, number) in enumerate(relations):
        condition = Condition("relation", f"more {at}", words=f"more {at}", place=HERE)
        conditions.insert(0, condition)
        whole = Linear({name: Fraction(n) for name, n in times.items()}, Fraction(number))
        held += [Held(condition, size, whole, sign == "=") for size in range(len(of.sizes))]
    return replace(of, held=tuple(held), conditions=tuple(conditions))


def possible(of: Joint, kept: Sequence[Condition], size: int, most: int) -> bool:
    """True when some counts up to `most` keep these conditions in one size; all are tried."""
    rules = [_loosened(one, kept) for one in of.rules.values()]
    fewer = replace(of, held=tuple(held for held in of.held if held.condition in kept))
    return any(
        holds(fewer, {(one.name, size): n for one, n in zip(rules, chosen, strict=True)}, size)
        for chosen in product(*(allowed(one, most) for one in rules))
    )


def holds_of(of: Joint, kept: Sequence[Condition], counts: dict[Key, int], size: int) -> bool:
    """True when these counts keep these conditions in one size."""
    fewer = replace(of, held=tuple(held for held in of.held if held.condition in kept))
    own = all(counts[one.name, size] in allowed(_loosened(one, kept), 10_000) for one in of.rules.values())
    return own and holds(fewer, counts, size)


def _loosened(one: CountRule, kept: Sequence[Condition]) -> CountRule:
    kinds = {condition.kind for condition in kept if condition.of == one.name}
    repeat = (one.multiple, one.plus) if "multiple" in kinds else (1, 0)
    return replace(
        one, multiple=repeat[0], plus=repeat[1], parity=one.parity if "parity" in kinds else None,
        least=one.least if "least" in kinds else None, most=one.most if "most" in kinds else None,
    )  # fmt: skip
