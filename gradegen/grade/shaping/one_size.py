"""One shaping in one size: how many events, and on which rows they fall."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from gradegen.design.formula import Formula
from gradegen.design.graded import GradedSize
from gradegen.design.schedule import Schedule, ScheduleRule
from gradegen.findings import Finding, Place, Rule
from gradegen.grade.body.printed import Printed
from gradegen.grade.body.sums import Refused, Value, reckon
from gradegen.grade.measure.gauges import PerInch
from gradegen.grade.shaping.faults import LONGER_THAN_SECTION, ODD_AT_BOTH_ENDS, SHORT_ROWS, TOO_DENSE, TOTAL_DIFFERS
from gradegen.numbers.rounding import nearest_whole
from gradegen.numbers.slopes import cap, fit_rates, hollow, line_through, rounded, short_row_steps
from gradegen.numbers.snap import NoCount
from gradegen.numbers.spread import Spread, increase_after, plain_between, spread


class Impossible(Exception):  # noqa: N818 - caught in this room; it never leaves it
    """A schedule no size can work; `finding` says why."""

    def __init__(self, finding: Finding | None) -> None:
        self.finding = finding


@dataclass(frozen=True, slots=True)
class InSize:
    """What the sums of a schedule come to in one size; a length becomes stitches or rows at the gauge."""

    rule: ScheduleRule
    size: GradedSize
    gauge: PerInch | None

    def stitches(self, formula: Formula) -> int:
        """A whole number of stitches."""
        return self._whole(formula, self.gauge.stitches if self.gauge else None)

    def rows(self, formula: Formula) -> int:
        """A whole number of rows."""
        return self._whole(formula, self.gauge.rows if self.gauge else None)

    def inches(self, formula: Formula) -> Fraction:
        """A length."""
        value = self._value(formula)
        if value.kind != "length":
            raise self.fault(TOTAL_DIFFERS, formula.place, "A length is needed here, such as 1 in.")
        return value.number

    def _whole(self, formula: Formula, per_inch: Fraction | None) -> int:
        value = self._value(formula)
        number = value.number
        if value.kind == "length":
            if per_inch is None:
                message = "This length cannot be turned into stitches or rows: there is no one gauge for it."
                raise self.fault(TOTAL_DIFFERS, formula.place, message, hint="gauge: ... in this schedule")
            number = Fraction(nearest_whole(number * per_inch))
        if number.denominator != 1 or number < 0:
            raise self.fault(TOTAL_DIFFERS, formula.place, "This is no whole number.", found=str(number))
        return int(number)

    def _value(self, formula: Formula) -> Value:
        try:
            return reckon(formula, Printed(self.size))
        except Refused as refused:
            raise Impossible(refused.finding) from None

    def fault(
        self,
        rule: Rule,
        place: Place,
        message: str,
        *,
        expected: str | None = None,
        found: str | None = None,
        because: str | None = None,
        hint: str | None = None,
    ) -> Impossible:
        """What is wrong, in this size."""
        both = expected is not None and found is not None
        return Impossible(
            rule.at(
                place,
                message,
                size=self.size.name,
                expected=expected if both else None,
                found=found if both else None,
                because=because or (f"it comes to {found}" if found and not both else None),
                hint=hint,
            )
        )


def begin_schedule(at: InSize) -> Schedule:
    """The schedule with its counts and rows, before its events are placed."""
    rule = at.rule
    assert rule.before is not None
    before = at.stitches(rule.before)
    to = at.stitches(rule.to) if rule.to is not None else before
    by = at.stitches(rule.by) if rule.by is not None else 1
    return Schedule(
        name=rule.name,
        size=at.size.name,
        before=before,
        to=to,
        by=by if to >= before else -by,
        ends=2 if rule.each == "both ends" else 1,
        leave=at.stitches(rule.leave) if rule.leave is not None else 0,
        first_is_next=rule.first_is_next,
        rows=at.rows(rule.over) if rule.over is not None else 0,
        after=at.rows(rule.after) if rule.after is not None else 0,
    )


def events_needed(at: InSize, begun: Schedule) -> int:
    """How many events make the change."""
    change = abs(begun.to - begun.before) - begun.leave * begun.ends
    each = abs(begun.by) * begun.ends
    if change < 0 or (begun.leave and begun.to > begun.before):
        place = at.rule.places.get("leave", at.rule.place)
        raise at.fault(
            TOTAL_DIFFERS,
            place,
            "More stitches are left at the start than the shaping takes away.",
            expected=f"{abs(begun.to - begun.before)} sts or fewer",
            found=f"{begun.leave * begun.ends} sts",
        )
    if not each or change % each:
        raise _no_events(at, begun, change, each)
    return change // each


def _no_events(at: InSize, begun: Schedule, change: int, each: int) -> Impossible:
    odd = begun.ends == 2 and change % 2 == 1
    near = sorted({begun.to - (change % each), begun.to + (each - change % each)} if each else {begun.to})
    return at.fault(
        ODD_AT_BOTH_ENDS if odd else TOTAL_DIFFERS,
        at.rule.places.get("to", at.rule.place),
        "An odd change cannot be the same at both ends." if odd else "These events never come to this count.",
        expected=" or ".join(f"{number} sts" for number in near),
        found=f"{begun.to} sts",
        because=f"from {begun.before} to {begun.to}, {begun.leave * begun.ends} of them at once, leaves {change}; each "
        f"event changes {each}",
        hint="give the count a parity, or shape one end more often than the other" if odd else None,
    )


def over_rows(at: InSize, begun: Schedule, events: int, rates: tuple[int, ...]) -> Schedule:
    """The events placed over the rows there are."""
    rule = at.rule
    rows = begun.rows - int(begun.leaves_first)
    left = events
    if rule.first_is_next and events:
        rows, left = rows - 1, events - 1
    found = _placed(rule, left, rows, rates)
    if isinstance(found, NoCount):
        raise _too_dense(at, begun, left, rows, found)
    first = rule.first_is_next and bool(events)
    return replace(begun, runs=found.runs, plain=found.plain, first_is_next=first)


def _placed(rule: ScheduleRule, events: int, rows: int, rates: tuple[int, ...]) -> Spread | NoCount:
    if rows < 0:
        return NoCount("there are no rows for it")
    if not events:
        return Spread(tuple((every, 0) for every in rates), rows)
    if rates:
        return fit_rates(events, rows, rates, _line(rule, events))
    return spread(events, rows, order=rule.order, tail=rule.tail, right_side_only=rule.right_side_only)


def _line(rule: ScheduleRule, events: int) -> Sequence[Fraction]:
    """The share of the rows at which each event should fall."""
    if rule.slope:
        across, up = rule.slope[-1]
        points = [(x / across if across else Fraction(1), y / up if up else Fraction(1)) for x, y in rule.slope]
        return line_through(points, events)
    if rule.curve == "straight":
        return line_through([(Fraction(1), Fraction(1))], events)
    return {"hollow": hollow, "round": rounded, "cap": cap}[rule.curve](events)


def _too_dense(at: InSize, begun: Schedule, events: int, rows: int, why: NoCount) -> Impossible:
    per = abs(begun.by) * begun.ends
    fits = rows // 2 if at.rule.right_side_only else rows
    hint = "leave more stitches at the start"
    if fits > 0:
        hint = f"shape {-(-events // fits)} times as much in each event (by: ...), or {hint}"
    return at.fault(
        LONGER_THAN_SECTION if at.rule.rates and fits >= events else TOO_DENSE,
        at.rule.places.get("over", at.rule.place),
        "There are too few rows for this shaping.",
        expected=f"{events * (2 if at.rule.right_side_only else 1)} rows or more",
        found=f"{max(rows, 0)} rows",
        because=f"{events} events of {per} sts: {why.why}",
        hint=hint,
    )


def common_rates(rule: ScheduleRule, wanted: Sequence[tuple[int, int]]) -> tuple[int, ...]:
    """The intervals all sizes share: those given, or three that suit a curve at the middle size's pace."""
    if rule.rates or (rule.curve == "straight" and not rule.slope):
        return rule.rates
    unit = 2 if rule.right_side_only else 1
    paces = sorted(rows // (events * unit) for events, rows in wanted if events)
    pace = max(1, paces[len(paces) // 2]) if paces else 1
    quick, slow = max(1, pace // 2), 2 * pace
    usual = (quick, pace, slow) if quick < pace else (quick, slow, 2 * slow)
    if rule.curve == "cap":
        return tuple(unit * each for each in (quick, slow if slow > quick else quick + 1, quick))
    ordered = usual if rule.curve != "round" else usual[::-1]
    return tuple(unit * each for each in ordered)


# slopes that are no schedule of rows ---------------------------------------------------------------------------------


def in_short_rows(at: InSize, begun: Schedule) -> Schedule:
    """The stitches each short row leaves, in steps."""
    rule = at.rule
    stitches, odd = divmod(abs(begun.before - begun.to), begun.ends)
    if odd:
        raise _no_events(at, begun, abs(begun.before - begun.to), begun.ends)
    steps = at.stitches(rule.steps) if rule.steps is not None else _turns(at) + 1
    if rule.by is not None and abs(begun.by) * steps != stitches:
        raise at.fault(
            SHORT_ROWS,
            rule.places.get("steps", rule.place),
            "The steps do not make the slope.",
            expected=f"{stitches} sts",
            found=f"{abs(begun.by) * steps} sts",
            because=f"{steps} steps of {abs(begun.by)} sts",
        )
    return replace(begun, groups=_grouped(_steps(at, stitches, steps)))


def as_bust_dart(at: InSize, begun: Schedule) -> Schedule:
    """Pairs of short rows that add length over the bust: `drop` rows more at the middle than at the sides."""
    rule, gauge = at.rule, at.gauge
    stitches = abs(begun.before - begun.to) // begun.ends
    pairs = _turns(at)
    inset = at.stitches(rule.inset) if rule.inset is not None else _inch(gauge)
    if pairs < 1:
        return replace(begun, groups=())
    if pairs == 1:
        return replace(begun, groups=((stitches, 1),))
    rest = _steps(at, stitches - inset, pairs - 1)
    return replace(begun, groups=_grouped((inset, *rest)))


def _inch(gauge: PerInch | None) -> int:
    return nearest_whole(gauge.stitches) if gauge and gauge.stitches else 1


def _turns(at: InSize) -> int:
    """Pairs of rows that add the length wanted: drop times rows per inch, halved."""
    assert at.rule.drop is not None
    if at.gauge is None or at.gauge.rows is None:
        raise at.fault(SHORT_ROWS, at.rule.drop.place, "A length needs a gauge with rows.", hint="steps: 3")
    return nearest_whole(at.inches(at.rule.drop) * at.gauge.rows / 2)


def _steps(at: InSize, stitches: int, steps: int) -> tuple[int, ...]:
    found = short_row_steps(stitches, steps) if stitches >= 0 else NoCount("the first step is wider than the slope")
    if isinstance(found, NoCount):
        place = at.rule.places.get("steps", at.rule.places.get("drop", at.rule.place))
        raise at.fault(SHORT_ROWS, place, "The steps do not make the slope.", because=found.why)
    return found


def by_heights(at: InSize, begun: Schedule) -> Schedule:
    """Stitches of rising height side by side in one row, the wider groups last."""
    found = short_row_steps(begun.before, len(at.rule.heights))
    if isinstance(found, NoCount):
        place = at.rule.places.get("heights", at.rule.place)
        raise at.fault(SHORT_ROWS, place, "There are more heights than stitches.", because=found.why)
    return replace(begun, groups=tuple((number, 1) for number in found))


def in_one_row(at: InSize, begun: Schedule, flat: bool) -> Schedule:
    """Increases or decreases spread over one row: (plain stitches, times), the edges' own first and last."""
    events = abs(begun.to - begun.before)
    if not events:
        return begun
    if begun.to < begun.before:
        found = plain_between(begun.before, events)
        if isinstance(found, NoCount):
            raise _one_row_dense(at, begun, events, begun.before // 2)
        return replace(begun, groups=found)
    after = increase_after(begun.before, events, "flat" if flat else "round")
    if isinstance(after, NoCount):
        raise _one_row_dense(at, begun, events, begun.before)
    gaps = sorted((b - a - 1 for a, b in pairwise(after)), reverse=True)
    edge = ((after[0] - 1, 1),) if flat else ()
    first = gaps if flat else sorted([*gaps, after[0] - 1], reverse=True)
    last = ((begun.before - after[-1], 1),) if flat else ()
    return replace(begun, groups=(*edge, *_grouped(first), *last))


def _one_row_dense(at: InSize, begun: Schedule, events: int, most: int) -> Impossible:
    return at.fault(
        TOO_DENSE,
        at.rule.places.get("to", at.rule.place),
        "This many cannot be placed in one row.",
        expected=f"{most} or fewer",
        found=str(events),
        because=f"there are {begun.before} sts",
        hint="spread it over two rows or more",
    )


def _grouped(numbers: Sequence[int]) -> tuple[tuple[int, int], ...]:
    """Equal neighbours as (number, times)."""
    found: list[tuple[int, int]] = []
    for number in numbers:
        if found and found[-1][0] == number:
            found[-1] = (number, found[-1][1] + 1)
        else:
            found.append((number, 1))
    return tuple(found)
