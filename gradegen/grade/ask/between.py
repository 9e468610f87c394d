"""The maker between the sizes: her own counts and measures, and the printed size nearest to her."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Gauge, Pattern
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.ask.hand import gauge_named, own_gauges
from gradegen.grade.ask.nearest import Nearest, nearest_by_body, nearest_by_count, to_fit_inches
from gradegen.grade.body.bodies import Body, choose_bodies, folded, leading_column
from gradegen.grade.body.columns import columns_in_use
from gradegen.grade.body.naming import Naming
from gradegen.grade.counts import grade_counts
from gradegen.grade.grading import graded_size
from gradegen.grade.measure.ease import find_ease, find_key_eases
from gradegen.grade.measure.finish import finished_measures, ties
from gradegen.grade.measure.lengths import Words
from gradegen.grade.measure.measures import target_measures
from gradegen.read.size_tables.derived_columns import unknown_column

BODY_MEASURE_NEEDED = Rule(
    "body-measure-needed", Severity.ERROR, "house", "The measure that sizes go by is not among those given."
)
BODY_OUTSIDE_SIZES = Rule(
    "body-outside-sizes", Severity.WARNING, "common practice", "The body is smaller or larger than every size."
)
BODY_MEASURE_BETWEEN = Rule(
    "body-measure-between", Severity.NOTE, "house", "A measure that was not given is taken between two sizes."
)
OWN = "your size"


@dataclass(frozen=True, slots=True)
class Fitted:
    """One maker's own size.

    `own`: her counts and finished measures, `graded_body` all columns in exact inches. `taken`: column -> where its
    value comes from, in words ("given", "between M and L"). `nearest`: the printed size, and why.
    """

    own: GradedSize
    taken: Mapping[str, str]
    nearest: Nearest | None


def fit_body(
    pattern: Pattern,
    table: SizeTable,
    sizes: tuple[GradedSize, ...],
    body: Mapping[str, Fraction],
    gauge: Gauge | None = None,
) -> tuple[Fitted | None, tuple[Finding, ...]]:
    """The counts for one body, its columns in exact inches, at the pattern's gauge or the maker's own.

    Columns she did not give, and size lists, are taken between the two sizes her leading measure lies between.
    """
    bodies, _ = choose_bodies(pattern, table)
    by, _ = leading_column(pattern, table)
    given, findings = _given(pattern, table, body)
    if by is None or not bodies:
        return None, findings
    if by not in given:
        hint = f'--body "{by}=..."'
        return None, (
            *findings,
            BODY_MEASURE_NEEDED.at(pattern.sizes.place, f"Sizes go by {by}; give that too.", hint=hint),
        )
    own, taken = _between(table, bodies, given, by)
    naming, words = Naming.of(pattern, table), Words(pattern.units)
    targets, found = target_measures(pattern, table, (own,), naming)
    findings += found
    tied = ties(pattern, naming)
    ease = find_ease(pattern, naming, by)
    main = next(iter(tied.get(ease.measure, ())), None) if ease else None
    gauges, told = own_gauges(pattern, gauge, gauge_named(pattern, main))
    counted, scales, found = grade_counts(pattern, table, (own,), naming, targets, gauges)
    findings += (*told, *found, *_notes(pattern, naming, own, taken, sizes, by))
    measures = finished_measures(pattern, targets[0], counted[0], tied)
    size = graded_size(own, measures, counted[0], by, ease, find_key_eases(pattern, naming, ease))
    nearest = nearest_by_body(sizes, by, given[by], words)
    if gauge is not None and main in scales and main is not None and main in counted[0]:
        raw = counted[0][main].raw
        nearest = nearest_by_count(sizes, main, raw, scales[main].inches, words) if raw is not None else nearest
    return Fitted(size, taken, nearest), findings


def _given(
    pattern: Pattern, table: SizeTable, body: Mapping[str, Fraction]
) -> tuple[dict[str, Fraction], tuple[Finding, ...]]:
    """The maker's measures under the table's names; findings for those the table does not have."""
    known = {folded(name): name for name in table.columns}
    given = {known[folded(name)]: length for name, length in body.items() if folded(name) in known}
    unknown = [name for name in body if folded(name) not in known]
    return given, tuple(unknown_column(name, pattern.sizes.place, tuple(table.columns)) for name in unknown)


def _between(
    table: SizeTable, bodies: tuple[Body, ...], given: Mapping[str, Fraction], by: str
) -> tuple[Body, dict[str, str]]:
    """The maker as a body between two sizes, and where each of her measures comes from."""
    small, large, share = _neighbours(bodies, given[by], by)
    values, taken = dict(given), dict.fromkeys(given, "given")
    for column in table.columns:
        if column in given or column not in small.values or column not in large.values:
            continue
        values[column] = small.values[column] * (1 - share) + large.values[column] * share
        taken[column] = f"as in {small.name}" if small is large else f"between {small.name} and {large.name}"
    shares = ((small.index, 1 - share), (large.index, share)) if share else ((small.index, Fraction(1)),)
    closer = large if 2 * share > 1 else small
    return Body(OWN, closer.index, closer.rank, closer.wearer, {}, values, frozenset(), shares), taken


def _neighbours(bodies: tuple[Body, ...], length: Fraction, by: str) -> tuple[Body, Body, Fraction]:
    """The sizes below and above a body, and how far it lies from the one to the other (0 to 1)."""
    known = sorted((body for body in bodies if by in body.values), key=lambda body: body.values[by])
    if not known:
        return bodies[0], bodies[0], Fraction(0)
    below = [body for body in known if body.values[by] <= length]
    above = [body for body in known if body.values[by] > length]
    if not below or not above:
        edge = below[-1] if below else above[0]
        return edge, edge, Fraction(0)
    small, large = below[-1], above[0]
    share = (length - small.values[by]) / (large.values[by] - small.values[by])
    return (small, large, share) if share else (small, small, share)


def _notes(
    pattern: Pattern, naming: Naming, own: Body, taken: Mapping[str, str], sizes: tuple[GradedSize, ...], by: str
) -> list[Finding]:
    """Notes on measures taken between sizes, and a warning beyond all of them."""
    findings, words = [], Words(pattern.units)
    used = columns_in_use(pattern, naming)
    between = [column for column, how in taken.items() if how != "given" and column in used]
    if between:
        said = "; ".join(f"{column} {words.length(own.values[column])} ({taken[column]})" for column in between)
        message = "Measures you did not give are taken from the size table."
        findings.append(BODY_MEASURE_BETWEEN.at(pattern.sizes.place, message, size=OWN, because=said))
    bands = [band for size in sizes if (band := to_fit_inches(size.to_fit)) is not None]
    if bands and not min(low for low, _ in bands) <= own.values[by] <= max(high for _, high in bands):
        ends = f"{words.length(min(low for low, _ in bands))} to {words.length(max(high for _, high in bands))}"
        message = "This body lies beyond the sizes of the pattern; measures not given are those of the last size."
        findings.append(
            BODY_OUTSIDE_SIZES.at(
                pattern.sizes.place, message, size=OWN, expected=f"{by} {ends}", found=words.length(own.values[by])
            )
        )
    return findings
