"""How finely a pattern depends on its gauge and its repeats: what half a stitch does, what limits each measure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Name
from gradegen.design.graded import GradedCount, GradedSize
from gradegen.design.pattern import CountRule, Pattern
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.ask.nearer import Nearer, find_nearer
from gradegen.grade.measure.gauges import PerInch, gauge_of, gauges_per_inch, usual_length
from gradegen.grade.measure.lengths import Words
from gradegen.grade.measure.snapped import place_of, repeat_of

GAUGE_SENSITIVITY = Rule(
    "gauge-sensitivity", Severity.NOTE, "arithmetic", "Half a stitch of gauge changes a girth by this much."
)
HALF = Fraction(1, 2)
TOLD_APART = Fraction(1)  # inches; measures that grow by less are no way to tell sizes


@dataclass(frozen=True, slots=True)
class FeltInSize:
    """One size of a count: what it measures, and how much more or less with half a stitch fewer or more in the gauge.

    `step`: how far the nearest other size is meant to be away (None: none differs). All in exact inches.
    """

    size: str
    finished: Fraction
    looser: Fraction
    tighter: Fraction
    step: Fraction | None

    @property
    def is_a_size(self) -> bool:
        """True when the maker then holds the next size rather than her own: for girths that sizes tell apart."""
        return self.step is not None and self.step >= TOLD_APART and 2 * max(self.looser, -self.tighter) > self.step


@dataclass(frozen=True, slots=True)
class Felt:
    """One count at its gauge. `over`: the length that half a stitch or row is counted over, in words (`4 in`)."""

    count: str
    gauge: str
    unit: str
    over: str
    sizes: tuple[FeltInSize, ...]


@dataclass(frozen=True, slots=True)
class Limited:
    """How near a count can come, and what keeps it from coming nearer, in exact inches.

    `half_repeat`: the most a repeat alone can move the measure; `half_one`: the most that single stitches could.
    `by`: what limits it, in the designer's words; "" where single stitches would come no nearer.
    """

    count: str
    largest: Fraction
    size: str
    half_repeat: Fraction
    half_one: Fraction
    by: str


@dataclass(frozen=True, slots=True)
class Sensitivity:
    """All of it. `nearer`: other gauges and multiples that were tried, those that halve the largest drift first."""

    felt: tuple[Felt, ...]
    limited: tuple[Limited, ...]
    nearer: Nearer | None


def sensitivity(
    pattern: Pattern, table: SizeTable, sizes: tuple[GradedSize, ...]
) -> tuple[Sensitivity, tuple[Finding, ...]]:
    """What gauge and repeats do to every count that has a measure, and which others within reach come nearer."""
    usable, _ = gauges_per_inch(pattern.gauges)
    measured = _measured(pattern, sizes)
    felt = tuple(one for rule in measured if (one := _felt(rule, pattern, usable, sizes)) is not None)
    limited = limited_counts(pattern, sizes)
    findings = tuple(_notes(pattern, felt, sizes))
    return Sensitivity(felt, limited, find_nearer(pattern, table)), findings


def limited_counts(pattern: Pattern, sizes: Sequence[GradedSize]) -> tuple[Limited, ...]:
    """How near every count with a measure comes, in its worst size, and what keeps it there."""
    return tuple(_limited(rule, sizes) for rule in _measured(pattern, sizes))


def _measured(pattern: Pattern, sizes: Sequence[GradedSize]) -> list[CountRule]:
    return [rule for rule in pattern.counts.values() if any(_finished(size, rule) for size in sizes)]


def _finished(size: GradedSize, rule: CountRule) -> GradedCount | None:
    count = size.counts.get(rule.name)
    return count if count is not None and count.finished is not None and count.n else None


def _felt(rule: CountRule, pattern: Pattern, usable: dict[str, PerInch], sizes: Sequence[GradedSize]) -> Felt | None:
    gauge, _ = gauge_of(rule.gauge, rule.place, pattern, usable)
    if gauge is None:
        return None
    rate = gauge.stitches if rule.across is not None else gauge.rows
    length, over = usual_length(pattern.gauges[gauge.name])
    half = HALF / length
    if rate is None or rate <= half:
        return None
    known = [(size.name, count) for size in sizes if (count := _finished(size, rule)) is not None]
    targets = [count.target or Fraction(0) for _, count in known]
    felt = []
    for at, (name, count) in enumerate(known):
        finished = count.finished or Fraction(0)
        step = min(
            (abs(one - targets[at]) for one in targets[max(at - 1, 0) : at + 2] if one != targets[at]), default=None
        )
        looser, tighter = finished * rate / (rate - half) - finished, finished * rate / (rate + half) - finished
        felt.append(FeltInSize(name, finished, looser, tighter, step))
    return Felt(rule.name, gauge.name, known[0][1].unit, over, tuple(felt))


def _limited(rule: CountRule, sizes: Sequence[GradedSize]) -> Limited:
    known = [(size, count) for size in sizes if (count := _finished(size, rule)) is not None]
    size, worst = max(known, key=lambda one: abs(one[1].drift or Fraction(0)))
    one = (worst.finished or Fraction(0)) / worst.n
    largest = abs(worst.drift or Fraction(0))
    return Limited(
        rule.name, largest, size.name, one * repeat_of(rule) / 2, one / 2, _by(rule, worst) if largest > one / 2 else ""
    )


def _by(rule: CountRule, count: GradedCount) -> str:
    """What keeps a count from the nearest single stitch."""
    if count.pinned:
        return "the pin"
    raw = count.raw if count.raw is not None else Fraction(count.n)
    if count.nearest is not None and 2 * abs(count.n - raw) > repeat_of(rule):
        return f"what it is related to: {', '.join(count.together)}" if count.together else "its even steps"
    if (rule.least is not None and count.n == rule.least) or (rule.most is not None and count.n == rule.most):
        return f"{'least' if count.n == rule.least else 'most'}: {count.n}"
    parts = [f"multiple: {rule.multiple}"] if rule.multiple > 1 else []
    parts += [f"parity: {rule.parity}"] if rule.parity is not None and rule.multiple % 2 else []
    parts += [f"centre: {rule.centre}"] if rule.centre is not None else []
    return ", ".join(parts)


def _notes(pattern: Pattern, felt: Sequence[Felt], sizes: Sequence[GradedSize]) -> Iterator[Finding]:
    """A note for the girth the sizes go by: half a stitch in each size, and where that makes another size."""
    of = next((size.ease_measure for size in sizes if size.ease_measure), None)
    across = [one for one in felt if one.unit == "sts"]
    main = next((one for one in across if _is_over(pattern.counts[one.count], of)), across[0] if across else None)
    if main is None:
        return
    words, rule = Words(pattern.units), pattern.counts[main.count]
    for size in main.sizes:
        then = ", more than half the step to the next size" if size.is_a_size else ""
        yield GAUGE_SENSITIVITY.at(
            place_of(rule, "across"),
            f"Half a stitch over {main.over} changes what {main.count} measures.",
            size=size.size,
            because=f"looser {words.length(size.looser)} more, tighter {words.length(-size.tighter)} less{then}",
        )


def _is_over(rule: CountRule, measure: str | None) -> bool:
    return measure is not None and isinstance(rule.across, Name) and rule.across.name == measure
