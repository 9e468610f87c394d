"""How far snapping moved a measure, and whose doing that is.

A snapped count misses its length for one of four reasons, and they are told apart.

1. The repeat. The count is the nearest the stitch pattern allows, so nobody can do better on that repeat; the miss
   is at most half a repeat, and that is no contradiction. It is never an error. Up to 1/4 in nothing is said; beyond,
   a note records the choice, for what is printed is the finished measure, never the wanted one. It becomes a warning,
   `repeat-too-wide-for-step`, only where it does harm: it is over 1/2 in AND
   - for a girth that grows as the bodies do: over half the step to the nearest size, so that the size measures more
     like its neighbour than like itself. That needs a repeat wider than the step: sizes may then fall together. A
     narrower repeat keeps neighbours at least one repeat apart (K. Atherley, on pattern repeats: 4 cm are fine for
     steps of 5 to 8 cm, with 7.5 cm sizes sit 3 in apart). From a repeat of half the step on, the note carries the
     same advice: plain stitches at the sides, a narrower repeat, or the repeat on one panel only;
   - for other measures (lengths, depths, upper arms), where two sizes may well share one number: over a tenth of the
     length wanted, whatever the step.
2. A limit. `least` or `most` kept the count from the nearest one. Then two numbers the designer wrote say different
   things, and the miss counts in full: a note above 1/4 in, a warning above 1/2 in, an error above half a size step
   (and 1/2 in, so that hairline steps make no errors).
3. A relation to other counts, even steps or one centre in all sizes gave it another count than the nearest. The
   measures of related counts may not add up, so this is told as a limit is.
4. A pin. The designer chose the count for this size, against its measure: a note above 1/4 in, a warning above 1/2 in.

The quarter inch, the half inch, the half step and the tenth are our defaults; no publisher states such figures. Two
sizes that should differ and come out with one count are told about too: they are one size under two names.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from gradegen.design.graded import GradedCount
from gradegen.design.pattern import CountRule
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import Body
from gradegen.grade.measure.lengths import Words
from gradegen.grade.measure.snapped import Scale, place_of, repeat_of, snap_to_rule
from gradegen.numbers.snap import Snapped

SNAPPING_MOVED_MEASURE = Rule(
    "snapping-moved-measure", Severity.NOTE, "house", "Rounding to the stitch pattern moved this measure."
)
REPEAT_TOO_WIDE = Rule(
    "repeat-too-wide-for-step",
    Severity.WARNING,
    "common practice",
    "The repeat is too wide for the steps between sizes.",
)
SIZES_COME_OUT_ALIKE = Rule(
    "sizes-come-out-alike", Severity.WARNING, "arithmetic", "Two sizes that should differ have the same count."
)
UNEVEN_SIZE_STEP = Rule(
    "uneven-size-step", Severity.WARNING, "common practice", "One step between sizes is unlike the others."
)

RELATION_MOVED_MEASURE = Rule(
    "relation-moved-measure", Severity.WARNING, "arithmetic", "What a count is related to keeps it off its measure."
)
COUNT_PINNED_OFF = Rule(
    "count-pinned-off", Severity.WARNING, "arithmetic", "A pinned count is off the measure that size wants."
)

NOTED = Fraction(1, 4)  # inches
WARNED = Fraction(1, 2)
OF_A_STEP = Fraction(1, 2)
OF_A_LENGTH = Fraction(1, 10)
UNEVEN = Fraction(35, 100)


@dataclass(frozen=True, slots=True)
class Series:
    """One count over the sizes, smallest first, with the length wanted in each. `grows`: it grows as the bodies do."""

    rule: CountRule
    scale: Scale
    sizes: tuple[tuple[Body, GradedCount, Fraction], ...]
    grows: bool

    @property
    def repeat(self) -> int:
        """How far apart the good counts are: the repeat, twice that where parity or the centre halves the choice."""
        return repeat_of(self.rule)

    def step_at(self, position: int) -> Fraction | None:
        """The smaller step wanted to the sizes next to one; None where none differs."""
        wanted = [length for _, _, length in self.sizes[max(position - 1, 0) : position + 2]]
        return min((abs(b - a) for a, b in pairwise(wanted) if a != b), default=None)


@dataclass(frozen=True, slots=True)
class Miss:
    """One size that came out other than wanted."""

    series: Series
    body: Body
    count: GradedCount
    wanted: Fraction
    step: Fraction | None
    words: Words

    @property
    def made(self) -> Fraction:
        """The inches the count makes."""
        return self.count.n * self.series.scale.inches

    @property
    def off(self) -> Fraction:
        """How far that is from the length wanted, either way."""
        return abs(self.made - self.wanted)

    @property
    def is_held(self) -> bool:
        """True when a limit, not the repeat, decided the count."""
        snapped = snap_to_rule(self.count.raw or Fraction(0), self.series.rule)
        return isinstance(snapped, Snapped) and snapped.held

    @property
    def is_harmful(self) -> bool:
        """True when the repeat moved the size further than its neighbours, or its length, can bear."""
        by_step = self.series.grows and self.step is not None
        limit = OF_A_STEP * self.step if by_step and self.step is not None else OF_A_LENGTH * self.wanted
        return self.off > max(WARNED, limit)

    @property
    def two_numbers_clash(self) -> Severity:
        """How grave it is where it is not the repeat but another number of the designer's that says otherwise."""
        if self.step is not None and self.off > WARNED and 2 * self.off > self.step:
            return Severity.ERROR
        return Severity.WARNING if self.off > WARNED else Severity.NOTE

    def told(
        self,
        rule: Rule,
        key: str,
        message: str,
        severity: Severity | None = None,
        more: str = "",
        hint: str | None = None,
    ) -> Finding:
        """The finding, with what was wanted, what is made, and how the count was rounded."""
        return rule.at(
            place_of(self.series.rule, key, "along"), message, size=self.body.name, severity=severity,
            expected=self.words.length(self.wanted), found=self.words.length(self.made),
            because=self.count.rounded + more, hint=hint,
        )  # fmt: skip


def series_of(
    rule: CountRule, scale: Scale, bodies: tuple[Body, ...], counted: list[dict[str, GradedCount]], by: str | None
) -> Series:
    """One count's series."""
    found = ((body, counts.get(rule.name)) for body, counts in zip(bodies, counted, strict=True))
    known = [(body, count, count.target) for body, count in found if count is not None]
    sizes = sorted(
        ((body, count, target) for body, count, target in known if target is not None), key=lambda one: one[0].rank
    )
    return Series(rule, scale, tuple(sizes), grows_with_bodies(tuple((body, length) for body, _, length in sizes), by))


def grows_with_bodies(sizes: tuple[tuple[Body, Fraction], ...], by: str | None) -> bool:
    """True for girths, whole or half: from the first size to the last they grow at least half as much as the bodies."""
    known = [(body.values[by], length) for body, length in sizes if by is not None and by in body.values]
    if len(known) < 2:
        return False
    grown, wanted = known[-1][0] - known[0][0], known[-1][1] - known[0][1]
    return grown > 0 and 2 * wanted >= grown


def find_drift(series: Series, words: Words) -> Iterator[Finding]:
    """Findings for one count over all sizes."""
    follows = None
    for position, (body, count, wanted) in enumerate(series.sizes):
        miss = Miss(series, body, count, wanted, series.step_at(position), words)
        if miss.off > NOTED:
            finding = _told(miss)
            follows = finding.rule if finding.severity is not Severity.NOTE else follows
            yield finding
    if series.grows:
        yield from _steps(series, follows, words)


def _told(miss: Miss) -> Finding:
    if miss.count.pinned:
        return _pinned(miss)
    raw = miss.count.raw if miss.count.raw is not None else Fraction(miss.count.n)
    if miss.count.nearest is not None and 2 * abs(miss.count.n - raw) > miss.series.repeat:
        return _related(miss)
    return _held(miss) if miss.is_held else _moved(miss)


def _pinned(miss: Miss) -> Finding:
    """What to say of a count the designer chose against its measure."""
    name, size = miss.count.name, miss.body.name
    severity = None if miss.off > WARNED else Severity.NOTE
    nearest = snap_to_rule(miss.count.raw or Fraction(0), miss.series.rule)
    hint = f"{nearest.n} is the nearest to the measure." if isinstance(nearest, Snapped) else None
    message = f"{name} is pinned at {miss.count.n} in {size}, which is not what its measure wants."
    return miss.told(COUNT_PINNED_OFF, f"pin {size}", message, severity, hint=hint)


def _related(miss: Miss) -> Finding:
    """What to say of a count that relations keep off its length."""
    others = ", ".join(miss.count.together)
    message = f"{miss.count.name} is kept off its length by what it is related to."
    hint = f"Look whether the measures of {miss.count.name} and {others} go together." if others else None
    return miss.told(RELATION_MOVED_MEASURE, "across", message, miss.two_numbers_clash, hint=hint)


def _moved(miss: Miss) -> Finding:
    """What to say of a count that is the nearest its repeat allows."""
    name, rule = miss.count.name, miss.series.rule
    unit, width = miss.count.unit, miss.series.repeat * miss.series.scale.inches
    more, hint = f"; one repeat makes {miss.words.length(width)}", None
    by_step = miss.series.grows and miss.step is not None
    if miss.is_harmful or (by_step and miss.step is not None and 2 * width > miss.step):
        hint = f"Work the odd {unit} plain at the edges, take a narrower repeat, or use it on one panel only."
    if hint and by_step and miss.step is not None:
        more += f", and the next size is {miss.words.length(miss.step)} away"
        fitting = int(miss.step / 2 / miss.series.scale.inches)
        hint += f" A repeat of {fitting} {unit} or fewer suits these sizes." if 0 < fitting < rule.multiple else ""
    if miss.is_harmful:
        message = f"The repeat of {name} is too wide to come near this size."
        return miss.told(REPEAT_TOO_WIDE, "multiple", message, more=more, hint=hint)
    message = f"{name} is on the nearest count its repeat allows; the finished measure is printed."
    return miss.told(SNAPPING_MOVED_MEASURE, "multiple", message, more=more, hint=hint)


def _held(miss: Miss) -> Finding:
    """What to say of a count that a limit keeps off its length."""
    rule, count = miss.series.rule, miss.count
    severity = miss.two_numbers_clash
    key, limit = ("least", rule.least) if count.n > (count.raw or 0) else ("most", rule.most)
    message = f"{count.name} is kept off its length by {key}: {limit}."
    return miss.told(SNAPPING_MOVED_MEASURE, key, message, severity, hint=f"Change {key}, or the measure.")


def _steps(series: Series, follows: str | None, words: Words) -> Iterator[Finding]:
    """Sizes with the same count though they should differ, and steps that came out unlike what was wanted."""
    place = place_of(series.rule, "multiple")
    for (before, small, less), (body, large, more) in pairwise(series.sizes):
        wanted, made = more - less, (large.n - small.n) * series.scale.inches
        if wanted <= WARNED:
            continue
        if large.n == small.n:
            message = f"{before.name} and {body.name} come out with the same {series.rule.name}."
            because = f"they should be {words.length(wanted)} apart"
            yield SIZES_COME_OUT_ALIKE.at(place, message, size=body.name, because=because, follows=follows)
        elif abs(made - wanted) > max(2 * WARNED, UNEVEN * wanted):
            message = (
                f"Snapping {series.rule.name} made the step from {before.name} to {body.name} unlike the one wanted."
            )
            yield UNEVEN_SIZE_STEP.at(
                place, message, size=body.name, expected=words.length(wanted), found=words.length(made),
                severity=Severity.NOTE, follows=follows,
            )  # fmt: skip
