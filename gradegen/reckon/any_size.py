"""Every count the whole pattern allows between two widths, each proved by working all rows with it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Amount, Name
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule, Measure, Pattern
from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade import grade_sizes
from gradegen.grade.measure.snapped import grid_of
from gradegen.grade.shaping.schedules import shape_rows
from gradegen.numbers.snap import NoCount
from gradegen.reckon.census.census import stitch_census
from gradegen.reckon.census.rows_of_size import for_one_size
from gradegen.reckon.multiples.foundation import Foundation, foundations
from gradegen.reckon.yarn.amounts import SizeYarn
from gradegen.reckon.yarn.fitted_yarn import FittedYarn, fit_yarn
from gradegen.work.rows import work_rows

NO_LEADING_COUNT = Rule(
    "no-leading-count", Severity.ERROR, "house", "No count of the pattern stands for its width, so it can't be varied."
)
NOTHING_BETWEEN = Rule(
    "no-size-between", Severity.WARNING, "arithmetic", "No count between the two widths lets every row come out."
)
ROWS_NOT_FOLLOWED = Rule(
    "rows-not-followed", Severity.ERROR, "house", "Rows could not be followed, so no other size can be proved."
)
SEVERAL_WIDTHS = Rule(
    "several-widths", Severity.ERROR, "house", "A design has several widths of its own, so one count gives no size."
)
MOST_COUNTS = 2_000

Findings = tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class AnySize:
    """One count that works: `repeats` whole repeats, `chains` to make (None: begun without a chain).

    `width` and `depth` are finished, in exact inches; `rows` how many make the depth. `follows`: the size whose depth
    and lists it takes; `named`: the sizes of the pattern that have this very count.
    """

    count: int
    repeats: int
    chains: int | None
    first_made: int | None
    width: Fraction
    depth: Fraction | None
    rows: int | None
    follows: str
    named: tuple[str, ...]
    yarn: Mapping[str, SizeYarn]


@dataclass(frozen=True, slots=True)
class LeadingCount:
    """The count that stands for the width: its rule, the inches of one stitch, and the chain made from it if any."""

    rule: CountRule
    inches: Fraction
    foundation: Foundation | None

    def chains(self, count: int) -> int | None:
        """The chain for a count; None for a piece begun without one."""
        return self.foundation.chains_for(count) if self.foundation is not None else None


@dataclass(frozen=True, slots=True)
class AnySizeSheet:
    """All sizes between two widths. `step`: the stitches from each to the next where that is the same all through.

    `left_out`: counts on the stated multiple with which some row does not come out, with the row.
    """

    leading: LeadingCount
    low: Fraction
    high: Fraction
    sizes: tuple[AnySize, ...]
    left_out: Mapping[int, str]

    @property
    def step(self) -> int | None:
        """The stitches from each size to the next; None where they differ."""
        steps = {two.count - one.count for one, two in zip(self.sizes, self.sizes[1:], strict=False)}
        return steps.pop() if len(steps) == 1 else None


def leading_count(checked: Checked) -> LeadingCount | None:
    """The count of the first foundation chain, else the one that makes the first piece's width.

    None where counts go by several widths, or are related to each other: one of them then gives no size.
    """
    pattern = checked.pattern
    if len(widths_of(pattern)) > 1:
        return None
    found = next((one for one in foundations(pattern) if one.count is not None), None)
    name = found.count if found is not None and found.count is not None else _width_count(pattern)
    rule = pattern.counts.get(name) if name is not None else None
    size = next((size for size in checked.sizes if name in size.counts), None)
    if rule is None or size is None or name is None:
        return None
    count = size.counts[name]
    if not count.finished or not count.n or rule.across is None:
        return None
    return LeadingCount(rule, count.finished / count.n, found)


def widths_of(pattern: Pattern) -> tuple[str, ...]:
    """The measures that stitches are counted over, each once; a sum counts as a measure of its own."""
    found: dict[str, None] = {}
    for rule in pattern.counts.values():
        if rule.across is not None:
            found[rule.across.name if isinstance(rule.across, Name) else rule.name] = None
    return tuple(found)


def _width_count(pattern: Pattern) -> str | None:
    width = next((piece.width.text for piece in pattern.pieces if piece.width is not None), None)
    rules = pattern.counts.values()
    return next((rule.name for rule in rules if isinstance(rule.across, Name) and rule.across.name == width), None)


def any_size_sheet(checked: Checked, low: Fraction, high: Fraction) -> tuple[AnySizeSheet | None, Findings]:
    """Every count whose finished width lies from `low` to `high` exact inches and with which all rows come out."""
    leading = leading_count(checked)
    widths = widths_of(checked.pattern)
    if len(widths) > 1:
        message = f"Stitches are counted over several widths here ({', '.join(widths[:4])}); one count gives no size."
        place = next(iter(checked.pattern.counts.values())).place
        return None, (
            SEVERAL_WIDTHS.at(place, message, hint='Fit one body instead: gradegen fit FILE --body "bust=41 in".'),
        )
    if leading is None:
        message = "No count of this pattern stands for its width, so other sizes can't be worked out."
        hint = "Give the foundation chain as a count: counts: {band: {across: ..., gauge: ...}}, and Ch {band}."
        return None, (NO_LEADING_COUNT.at(checked.pattern.place, message, hint=hint),)
    if unproved := _not_proved(checked):
        return None, (unproved,)
    grid = grid_of(leading.rule)
    if isinstance(grid, NoCount):
        return None, ()
    sizes: list[AnySize] = []
    left_out: dict[int, str] = {}
    yarns = _fitted(checked)
    for count in _counts(grid, leading, low, high):
        found = size_with(checked, leading, count, yarns)
        if isinstance(found, AnySize):
            sizes.append(found)
        else:
            left_out[count] = found
    if not sizes:
        message = "No count between these widths lets every row come out even."
        return None, (NOTHING_BETWEEN.at(leading.rule.place, message, hint="Ask for a wider span."),)
    return AnySizeSheet(leading, low, high, tuple(sizes), left_out), ()


def _not_proved(checked: Checked) -> Finding | None:
    for rows in checked.worked.values():
        for row in rows:
            if row.applies and row.status != "proved" and row.why_not != "prose":
                message = "This row could not be followed to its end, so no other size can be proved."
                return ROWS_NOT_FOLLOWED.at(row.row.place, message, size=row.size, row=row.label or None)
    return None


def _counts(grid: object, leading: LeadingCount, low: Fraction, high: Fraction) -> Iterator[int]:
    """The counts of the rule between two widths, at most 2,000."""
    rule = leading.rule
    first, last = -int(-low / leading.inches // 1), int(high / leading.inches // 1)
    given = 0
    for count in range(max(first, 1), last + 1):
        on_grid = (count - rule.plus) % rule.multiple == 0 and count >= max(rule.least or 0, rule.plus)
        if on_grid and (rule.most is None or count <= rule.most) and _has_parity(count, rule):
            given += 1
            if given > MOST_COUNTS:
                return
            yield count


def _has_parity(count: int, rule: CountRule) -> bool:
    return rule.parity is None or (count % 2 == 0) == (rule.parity == "even")


def _fitted(checked: Checked) -> list[FittedYarn]:
    census = stitch_census(checked)
    fitted = [fit_yarn(checked, census, yarn) for yarn in checked.pattern.yarns]
    return [one for one in fitted if one is not None]


def size_with(checked: Checked, leading: LeadingCount, count: int, yarns: Sequence[FittedYarn] = ()) -> AnySize | str:
    """The size that a count makes; else the row that does not come out, or the count that is not whole."""
    name = leading.rule.name
    slot = min(
        (size for size in checked.sizes if name in size.counts),
        key=lambda size: (abs(size.counts[name].n - count), -size.counts[name].n),
    )
    pattern = with_count(checked.pattern, leading, count)
    graded, _ = grade_sizes(pattern, checked.table)
    size = graded[slot.index]
    pattern, _ = shape_rows(pattern, graded)
    missing = [other for other in checked.pattern.counts if other not in size.counts]
    if missing:
        return f"{missing[0]} is not whole"
    worked, findings = work_rows(for_one_size(pattern, size.name), graded)
    rows = tuple(row for row in worked[size.name] if row.applies)
    stopped = next((row for row in rows if row.status != "proved" and row.why_not != "prose"), None)
    faults = [one for one in findings if one.severity is Severity.ERROR]
    if stopped is not None or faults:
        return (stopped.label if stopped else faults[0].row) or "a row"
    trial = replace(checked, pattern=pattern, sizes=(size,), worked={size.name: rows})
    parts = stitch_census(trial).by_size[size.name]
    return AnySize(
        count=count,
        repeats=(count - leading.rule.plus) // leading.rule.multiple,
        chains=leading.chains(count),
        first_made=_first_made(rows),
        width=leading.inches * count,
        depth=_depth(pattern, size),
        rows=_row_count(pattern, size),
        follows=size.name,
        named=tuple(one.name for one in checked.sizes if name in one.counts and one.counts[name].n == count),
        yarn={one.yarn.letter: one.of_trial(trial, size.name, parts) for one in yarns if one.each is not None},
    )


def with_count(pattern: Pattern, leading: LeadingCount, count: int) -> Pattern:
    """The pattern with this count in every size, and the width it makes in place of the one wanted."""
    rule = leading.rule
    fixed = replace(
        rule, across=None, along=None, formula=Amount(Fraction(count), None, rule.place), multiple=1, plus=0,
        parity=None, least=None, most=None,
    )  # fmt: skip
    measures = dict(pattern.measures)
    if isinstance(rule.across, Name) and rule.across.name in measures:
        old = measures[rule.across.name]
        measures[old.name] = Measure(old.name, Amount(leading.inches * count, "in", old.place), old.place)
    return replace(pattern, counts={**pattern.counts, rule.name: fixed}, measures=measures)


def _first_made(rows: Sequence[WorkedRow]) -> int | None:
    return next((row.made for row in rows if row.made), None)


def _depth(pattern: Pattern, size: GradedSize) -> Fraction | None:
    name = next((piece.length.text for piece in pattern.pieces if piece.length is not None), None)
    measure = size.measures.get(name) if name is not None else None
    return measure.printed if measure is not None else None


def _row_count(pattern: Pattern, size: GradedSize) -> int | None:
    """The count of rows that makes the first piece's length."""
    name = next((piece.length.text for piece in pattern.pieces if piece.length is not None), None)
    rules = pattern.counts.values()
    made = [rule.name for rule in rules if isinstance(rule.along, Name) and rule.along.name == name]
    return size.counts[made[0]].n if made and made[0] in size.counts else None


def usual_span(checked: Checked) -> tuple[Fraction, Fraction]:
    """From the width of the smallest size to that of the largest; 0 to 0 where no count stands for the width."""
    leading = leading_count(checked)
    if leading is None:
        return Fraction(0), Fraction(0)
    name = leading.rule.name
    widths = [size.counts[name].n * leading.inches for size in checked.sizes if name in size.counts]
    return min(widths), max(widths)
