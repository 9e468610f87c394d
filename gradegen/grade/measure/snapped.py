"""A length at a gauge, snapped to what the stitch pattern allows, and what that measures."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from gradegen.design.graded import GradedCount
from gradegen.design.pattern import CountRule
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.grade.measure.gauges import PerInch
from gradegen.numbers.exact import decimal_text
from gradegen.numbers.snap import Grid, NoCount, Snapped, good_counts, snap

NO_COUNT_FITS = Rule(
    "no-count-fits", Severity.ERROR, "arithmetic", "No count has this multiple, parity and these limits together."
)


@dataclass(frozen=True, slots=True)
class Scale:
    """How many inches of the whole measure one stitch or row makes; `washed_off`: on the hook, before washing."""

    inches: Fraction
    on_hook: Fraction | None
    unit: str

    @classmethod
    def of(cls, rule: CountRule, gauge: PerInch) -> Scale | None:
        """The scale of one count; None when the gauge lacks the stitches or rows it needs.

        Equal pieces share the measure, so each stitch counts once per piece; a round of a half-twist band adds its
        height on both sides.
        """
        across = rule.across is not None
        rate, before = (gauge.stitches, gauge.before_stitches) if across else (gauge.rows, gauge.before_rows)
        if rate is None:
            return None
        times = rule.pieces * (2 if rule.both_sides else 1)
        return cls(times / rate, times / before if before else None, "sts" if across else "rows")


def grid_fault(rule: CountRule) -> Finding | None:
    """What is wrong when no count at all can satisfy the rule."""
    if rule.pieces < 1:
        return NO_COUNT_FITS.at(
            place_of(rule, "pieces"), f"{rule.name} is shared by {rule.pieces} pieces.", hint="pieces: 1"
        )
    grid = grid_of(rule)
    if isinstance(grid, Grid):
        return None
    keys = (*(("parity",) if rule.parity else ()), *(("centre",) if rule.centre else ()), "most", "least", "multiple")
    return NO_COUNT_FITS.at(place_of(rule, *keys), f"{rule.name}: {grid.why}.")


def grid_of(rule: CountRule) -> Grid | NoCount:
    """The counts the rule allows."""
    return good_counts(*centred(rule), rule.parity, rule.least, rule.most)


def centred(rule: CountRule) -> tuple[int, int]:
    """The multiple and what is plus, doubled where a motif (odd repeats) or a gap (even) always lies in the middle."""
    if rule.centre not in ("motif", "gap"):
        return rule.multiple, rule.plus
    return 2 * rule.multiple, rule.plus + (rule.multiple if rule.centre == "motif" else 0)


def repeat_of(rule: CountRule) -> int:
    """How far apart the good counts are: the repeat, twice that where parity or the centre halves the choice."""
    multiple, plus = centred(rule)
    grid = good_counts(2 * multiple if rule.centre == "same" else multiple, plus, rule.parity)
    return grid.step if isinstance(grid, Grid) else multiple


def ties_its_sizes(rule: CountRule) -> bool:
    """True for a count whose sizes depend on each other, whatever it is related to."""
    return rule.even_steps or rule.centre == "same"


def neighbours(rule: CountRule, n: int) -> tuple[int | None, int | None]:
    """The good counts next below and above one."""
    grid = grid_of(rule)
    return grid.neighbours(n) if isinstance(grid, Grid) else (None, None)


def snap_to_rule(raw: Fraction, rule: CountRule) -> Snapped | NoCount:
    """The nearest count the rule allows."""
    found = snap(raw, *centred(rule), parity=rule.parity, least=rule.least, most=rule.most, tie=rule.tie)
    return found if isinstance(found, NoCount) else replace(found, repeats=(found.n - rule.plus) // rule.multiple)


def count_of_length(length: Fraction, rule: CountRule, scale: Scale, size: str | None = None) -> GradedCount | NoCount:
    """The count for one length in one size, with what it measures; the count pinned in that size where one is."""
    raw = length / scale.inches
    if size is not None and size in rule.pins:
        return pinned_count(raw, rule, scale.unit, length, scale, rule.pins[size])
    snapped = snap_to_rule(raw, rule)
    if isinstance(snapped, NoCount):
        return snapped
    return _graded(rule, snapped, raw, scale.unit, length, scale)


def pinned_count(
    raw: Fraction, rule: CountRule, unit: str, length: Fraction | None, scale: Scale | None, n: int
) -> GradedCount:
    """The count the designer wrote for one size."""
    grid = repeat_of(rule)
    moved = n - raw
    words = f"pinned at {n}; {moved_words(moved, unit)}" if moved else f"pinned at {n}, which comes out even"
    snapped = Snapped(n, (n - rule.plus) // rule.multiple, n - grid if n > grid else None, n + grid, False, False, grid)
    return replace(_graded(rule, snapped, raw, unit, length, scale), rounded=words, pinned=True)


def count_of_sum(value: Fraction, rule: CountRule, unit: str) -> GradedCount | NoCount:
    """The count for a sum of other counts; a rule with a multiple, parity or limits snaps it too."""
    snapped = snap_to_rule(value, rule)
    if isinstance(snapped, NoCount):
        return snapped
    count = _graded(rule, snapped, value, unit, None, None)
    return count if snapped.n != value else _as_it_comes(count)


def plain_count(n: int, rule: CountRule, unit: str) -> GradedCount:
    """A sum of other counts taken as it comes."""
    return _as_it_comes(
        GradedCount(rule.name, n, n + rule.base_extra, None, None, None, None, "", None, None, unit, rule.place)
    )


def _as_it_comes(count: GradedCount) -> GradedCount:
    return replace(count, raw=None, rounded="worked out from other counts")


def _graded(
    rule: CountRule, snapped: Snapped, raw: Fraction, unit: str, length: Fraction | None, scale: Scale | None
) -> GradedCount:
    return GradedCount(
        name=rule.name,
        n=snapped.n,
        chain=snapped.n + rule.base_extra,
        raw=raw,
        repeats=snapped.repeats,
        target=length,
        finished=snapped.n * scale.inches if scale else None,
        rounded=rounding_in_words(snapped, raw, unit, rule),
        below=snapped.below,
        above=snapped.above,
        unit=unit,
        place=rule.place,
        on_hook=snapped.n * scale.on_hook if scale and scale.on_hook else None,
    )


def rounding_in_words(snapped: Snapped, raw: Fraction, unit: str, rule: CountRule) -> str:
    """How a count was rounded, as a designer would say it: `nearest of 140 and 144; 0.4 sts up`."""
    moved = snapped.n - raw
    if not moved:
        return "comes out even"
    way = moved_words(moved, unit)
    if snapped.held:
        limit = f"at least {rule.least}" if rule.least is not None and moved > 0 else f"at most {rule.most}"
        return f"{limit}; {way}"
    other = snapped.n - snapped.grid if moved > 0 else snapped.n + snapped.grid
    low, high = sorted((snapped.n, other))
    if snapped.tie:
        return f"half-way between {low} and {high}, taken {rule.tie}; {way}"
    if abs(moved) > Fraction(snapped.grid, 2):
        return f"{snapped.n} is the smallest there is; {way}"
    return f"nearest of {low} and {high}; {way}"


def moved_words(moved: Fraction, unit: str) -> str:
    """`0.4 sts up`, `1 row down`."""
    named = {"number": "", "sts": " st", "rows": " row"}[unit] + ("s" if unit != "number" and abs(moved) != 1 else "")
    return f"{_some(abs(moved))}{named} {'up' if moved > 0 else 'down'}"


def _some(amount: Fraction) -> str:
    """An amount to two decimals, to as many as show it when it is smaller."""
    return decimal_text(amount, 2 if amount >= Fraction(1, 200) else 4)


def place_of(rule: CountRule, *keys: str) -> Place:
    """The place of the first of these keys that was written, else of the whole count."""
    return next((rule.places[key] for key in keys if key in rule.places), rule.place)
