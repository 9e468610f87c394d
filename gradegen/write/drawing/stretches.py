"""Which rows of a piece a graded length lies over, and how high each row is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate

from gradegen.design.checked import Checked
from gradegen.design.formula import Formula, Name, Sum
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule, Pattern
from gradegen.grade.body.sums import names_in
from gradegen.grade.measure.gauges import PerInch, gauges_per_inch
from gradegen.write.drawing.courses import Course, schedules_of

_DEEPEST = 20  # sums of sums


@dataclass(frozen=True, slots=True)
class Stretch:
    """The rows that a count of rows is for, counted from the beginning of the piece."""

    begins: int
    ends: int
    rule: CountRule


@dataclass(frozen=True, slots=True)
class Gauges:
    """The gauges of a pattern by name, and the one that a piece without any is worked in."""

    named: dict[str, PerInch]

    @classmethod
    def of(cls, pattern: Pattern) -> Gauges:
        """The usable ones."""
        return cls(gauges_per_inch(pattern.gauges)[0])

    def at(self, rule: CountRule | None) -> PerInch | None:
        """The gauge of a count; the pattern's first where it names none."""
        own = self.named.get(rule.gauge.text) if rule is not None and rule.gauge is not None else None
        return own or next(iter(self.named.values()), None)


def tops_of(courses: Sequence[Course]) -> list[int]:
    """Rows below each course, and in all."""
    return [0, *accumulate(course.rows for course in courses)]


def find_stretches(courses: Sequence[Course], checked: Checked, size: GradedSize) -> tuple[Stretch, ...]:
    """Every count of rows that the rows name, where so many rows lie between two of their borders."""
    tops = tops_of(courses)
    found: list[Stretch] = []
    for at, course in enumerate(courses):
        formulas = list(_formulas(course, checked, size))
        borders = {*tops, *(border for formula in formulas for border in _borders(formula, size))}
        for rule in _counts(formulas, checked.pattern):
            if rule.name in size.counts and all(one.rule is not rule for one in found):
                stretch = _stretch(rule, size.counts[rule.name].n, sorted(borders), tops[at + 1], found)
                found += [stretch] if stretch else []
    return tuple(found)


def _formulas(course: Course, checked: Checked, size: GradedSize) -> Iterator[Formula]:
    label = course.worked.row.label
    for number in (label.first, label.last, label.rows, *label.listed):
        if number is not None and number.formula is not None:
            yield number.formula
    for rule, _ in schedules_of(course, checked, size):
        if rule.over is not None:
            yield rule.over


def _counts(formulas: Sequence[Formula], pattern: Pattern) -> list[CountRule]:
    """The counts of rows named in these, themselves or in a sum."""
    names = [name.name for formula in formulas for name in names_in(formula)]
    for _ in range(_DEEPEST):
        sums = [pattern.counts[name].formula for name in names if name in pattern.counts]
        more = [one.name for formula in sums if formula is not None for one in names_in(formula)]
        if set(more) <= set(names):
            break
        names += [name for name in dict.fromkeys(more) if name not in names]
    rules = [pattern.counts[name] for name in dict.fromkeys(names) if name in pattern.counts]
    return [rule for rule in rules if rule.along is not None]


def _borders(formula: Formula, size: GradedSize) -> Iterator[int]:
    """In a label `{side rows + armhole rows}` the rows of the side end somewhere inside its range."""
    total = 0
    for part in _added(formula):
        if not isinstance(part, Name) or part.name not in size.counts:
            return
        total += size.counts[part.name].n
        yield total


def _added(formula: Formula) -> list[Formula]:
    if isinstance(formula, Sum) and formula.sign == "+":
        return [*_added(formula.left), formula.right]
    return [formula]


def _stretch(rule: CountRule, rows: int, borders: Sequence[int], end: int, found: Sequence[Stretch]) -> Stretch | None:
    """So many rows between two borders; rather where another stretch ends, and rather up to the row that names it."""
    ends = {0, *(one.ends for one in found)}
    places = [(low, high) for low in borders for high in borders if rows > 0 and high - low == rows]
    best = min(places, key=lambda one: (one[0] not in ends, one[1] != end, -one[0]), default=None)
    return None if best is None else Stretch(*best, rule)


@dataclass(frozen=True, slots=True)
class Heights:
    """How high a piece is after so many rows, in inches."""

    stretches: tuple[Stretch, ...]
    gauges: Gauges

    @property
    def are_known(self) -> bool:
        """True when every gauge that the rows are measured by says how high a row is."""
        gauges = [self.gauges.at(rule) for rule in (None, *(one.rule for one in self.stretches))]
        return all(gauge is not None and gauge.rows for gauge in gauges)

    def at(self, rows: int) -> Fraction:
        """Exact: each row is as high as the gauge of its stretch says."""
        total, at = Fraction(0), 0
        for border in sorted({edge for one in self.stretches for edge in (one.begins, one.ends)} | {rows}):
            upto = min(border, rows)
            if upto > at:
                total += (upto - at) / self._per_inch(at)
                at = upto
        return total

    def _per_inch(self, row: int) -> Fraction:
        own = next((one.rule for one in self.stretches if one.begins <= row < one.ends), None)
        gauge = self.gauges.at(own)
        assert gauge is not None
        assert gauge.rows is not None
        return gauge.rows
