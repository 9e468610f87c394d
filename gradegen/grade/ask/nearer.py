"""Other gauges and multiples within reach, each tried on the whole pattern: which would halve the largest drift.

Within reach: up to one stitch or row more or less over 4 in (10 cm), by quarters; for the count that drifts most, a
multiple up to three smaller or two larger, or one that divides it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from gradegen.design.pattern import CountRule, Pattern
from gradegen.design.sizes import SizeTable
from gradegen.grade.body.bodies import Body, choose_bodies
from gradegen.grade.body.naming import Naming
from gradegen.grade.counts import grade_counts
from gradegen.grade.measure.gauges import PerInch, gauge_of, gauges_per_inch, usual_length
from gradegen.grade.measure.measures import Targets, target_measures
from gradegen.grade.measure.snapped import grid_fault
from gradegen.numbers.exact import mixed_text

QUARTERS = tuple(Fraction(quarters, 4) for quarters in (-1, 1, -2, 2, -3, 3, -4, 4))
FEWER, MORE = 3, 2
SHOWN = 5


@dataclass(frozen=True, slots=True)
class Drifted:
    """The largest drift of a pattern, in exact inches, either way: of which count, in which size."""

    off: Fraction
    count: str
    size: str


@dataclass(frozen=True, slots=True)
class Way:
    """One change, in words, and the largest drift then."""

    change: str
    largest: Drifted


@dataclass(frozen=True, slots=True)
class Nearer:
    """What was tried.

    `now`: the largest drift; `halving`: changes that bring it to half or less, the smallest change first; `best`: the
    one that comes nearest, where none halves it; `tried`: how many, within what `reach`.
    """

    now: Drifted
    halving: tuple[Way, ...]
    best: Way | None
    tried: int
    reach: str


@dataclass(frozen=True, slots=True)
class _Bench:
    """A pattern with its bodies and targets worked out once, so that changes are quick to try."""

    pattern: Pattern
    table: SizeTable
    bodies: tuple[Body, ...]
    naming: Naming
    targets: Targets
    usable: dict[str, PerInch]

    def largest(self, pattern: Pattern, usable: dict[str, PerInch], limit: Fraction | None = None) -> Drifted | None:
        """The largest drift with other rules or gauges; None where a size can't be counted, or it is over the limit.

        Counts rounded alone come at least as near as related ones, so what is over the limit alone is not solved.
        """
        if limit is not None and pattern.relations:
            single = self._largest(_apart(pattern), usable)
            if single is None or single.off > limit:
                return None
        found = self._largest(pattern, usable)
        return None if found is None or (limit is not None and found.off > limit) else found

    def _largest(self, pattern: Pattern, usable: dict[str, PerInch]) -> Drifted | None:
        counted, scales, found = grade_counts(pattern, self.table, self.bodies, self.naming, self.targets, usable)
        if any(finding.rule == "relations-clash" for finding in found):
            return None
        drifted = [
            Drifted(abs(counts[name].drift or Fraction(0)), name, body.name)
            for body, counts in zip(self.bodies, counted, strict=True) for name in scales if name in counts
        ]  # fmt: skip
        return max(drifted, key=lambda one: one.off, default=None)


def find_nearer(pattern: Pattern, table: SizeTable) -> Nearer | None:
    """What was tried and what comes nearer; None where no count has a measure, or all come out even."""
    bodies, _ = choose_bodies(pattern, table)
    naming = Naming.of(pattern, table)
    targets, _ = target_measures(pattern, table, bodies, naming)
    usable, _ = gauges_per_inch(pattern.gauges)
    bench = _Bench(pattern, table, bodies, naming, targets, usable)
    now = bench.largest(pattern, usable)
    if now is None or not now.off:
        return None
    return _tried(bench, now)


def _tried(bench: _Bench, now: Drifted) -> Nearer:
    ways: list[Way] = []
    tried = 0
    for change, pattern, usable in _changes(bench, now):
        tried += 1
        largest = bench.largest(pattern, usable, now.off)
        if largest is not None and largest.off < now.off:
            ways.append(Way(change, largest))
    halving = tuple(way for way in ways if 2 * way.largest.off <= now.off)
    best = min(ways, key=lambda way: way.largest.off, default=None) if not halving else None
    rule = bench.pattern.counts[now.count]
    reach = f"up to one stitch or row over {_over(bench, rule)} more or less, and other multiples of {now.count}"
    return Nearer(now, halving[:SHOWN], best, tried, reach)


def _changes(bench: _Bench, now: Drifted) -> Iterator[tuple[str, Pattern, dict[str, PerInch]]]:
    """Each change, the smallest first: multiples of the count that drifts most, then its gauge."""
    rule = bench.pattern.counts[now.count]
    for multiple in _multiples(rule):
        other = replace(rule, multiple=multiple)
        if grid_fault(other) is None:
            counts = {**bench.pattern.counts, rule.name: other}
            words = f"multiple: {multiple} of {rule.name} instead of {rule.multiple}"
            yield words, replace(bench.pattern, counts=counts), bench.usable
    gauge, _ = gauge_of(rule.gauge, rule.place, bench.pattern, bench.usable)
    if gauge is not None:
        yield from _gauges(bench, gauge, "stitches" if rule.across is not None else "rows")


def _gauges(bench: _Bench, gauge: PerInch, part: str) -> Iterator[tuple[str, Pattern, dict[str, PerInch]]]:
    length, over = usual_length(bench.pattern.gauges[gauge.name])
    rate = gauge.stitches if part == "stitches" else gauge.rows
    for more in QUARTERS:
        counted = (rate or Fraction(0)) * length + more
        if rate is not None and counted > 0:
            other = replace(gauge, stitches=counted / length) if part == "stitches" else gauge
            other = replace(gauge, rows=counted / length) if part == "rows" else other
            said = f"{mixed_text(counted)} {part} over {over} instead of {mixed_text(rate * length)}"
            yield f"gauge {gauge.name}: {said}", bench.pattern, {**bench.usable, gauge.name: other}


def _multiples(rule: CountRule) -> list[int]:
    near = range(max(1, rule.multiple - FEWER), rule.multiple + MORE + 1)
    dividing = [one for one in range(1, rule.multiple) if not rule.multiple % one]
    return sorted({*near, *dividing} - {rule.multiple}, key=lambda one: (abs(one - rule.multiple), one))


def _apart(pattern: Pattern) -> Pattern:
    """The pattern with every count on its own."""
    single = {
        name: replace(rule, even_steps=False, centre=None if rule.centre == "same" else rule.centre)
        for name, rule in pattern.counts.items()
    }
    return replace(pattern, relations=(), counts=single)


def _over(bench: _Bench, rule: CountRule) -> str:
    gauge, _ = gauge_of(rule.gauge, rule.place, bench.pattern, bench.usable)
    return usual_length(bench.pattern.gauges[gauge.name])[1] if gauge is not None else "4 in"
