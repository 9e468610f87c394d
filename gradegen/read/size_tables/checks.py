"""What a designer should know about a size table before grading from it: gaps, overlaps, steps, units that disagree."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from gradegen.design.sizes import Band, Cell, Column, SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text

BAND_ENDS_SWAPPED = Rule(
    "band-ends-swapped", Severity.ERROR, "arithmetic", "The low end of a band is above the high one."
)
SIZE_BAND_GAP = Rule("size-band-gap", Severity.NOTE, "common practice", "No size fits these bodies.")
SIZE_BAND_OVERLAP = Rule("size-band-overlap", Severity.NOTE, "common practice", "Two sizes fit these bodies.")
SIZE_STEP_FALLS = Rule("size-step-falls", Severity.WARNING, "common practice", "A larger size has a smaller measure.")
SIZE_STEP_FLAT = Rule("size-step-flat", Severity.NOTE, "common practice", "Two sizes have the same measure.")
SIZE_STEP_JUMPS = Rule("size-step-jumps", Severity.NOTE, "common practice", "One step between sizes is very large.")
INCH_AND_CM_DIFFER = Rule(
    "inch-and-cm-differ", Severity.WARNING, "arithmetic", "Inches and centimetres of one cell are not the same length."
)
PUBLISHED_ERROR_KNOWN = Rule(
    "published-error-known", Severity.NOTE, "common practice", "The published row contradicts itself."
)
BEYOND_SURVEY = Rule("beyond-survey", Severity.NOTE, "common practice", "A derived measure is extrapolated.")
TABLE_UNCHECKED = Rule(
    "table-unchecked", Severity.NOTE, "common practice", "Columns were not held against their source."
)

INCH = Fraction(254, 100)
AGREES_WITHIN = Fraction(55, 100)  # cm: half centimetres, rounded by the publisher both ways
WIDEST_GAP = {"in": Fraction(2), "cm": Fraction(51, 10)}  # common practice: to-fit bands leave up to 2 in

MOST_TOLD = 8


@dataclass(frozen=True, slots=True)
class Step:
    """From one size to the next, in one unit."""

    size: str
    before: Band
    after: Band
    cell: Cell
    words: str

    @property
    def growth(self) -> Fraction:
        """How much the middle of the band grows."""
        return (self.after.low + self.after.high - self.before.low - self.before.high) / 2


def check_size_table(table: SizeTable, columns: Collection[str] | None = None) -> tuple[Finding, ...]:
    """Everything odd in the table, or in some of its columns; what its file calls a known error is only a note."""
    findings: list[Finding] = []
    for name, column in table.columns.items():
        if columns is not None and name not in columns:
            continue
        found = [*_swapped(table, column), *_differing(table, column)]
        if not any(finding.rule == BAND_ENDS_SWAPPED.id for finding in found):
            found += [*_steps(table, column), *(_look_up(table, column) if name == table.by else ())]
        findings += [*found, *_known(table, column), *_extrapolated(table, column)]
    return tuple(findings) + tuple(_unchecked(table, columns))


def _bands(column: Column, unit: str) -> list[Band | None]:
    return [(cell.inches if unit == "in" else cell.cm) if cell else None for cell in column.cells]


def _text(band: Band, unit: str) -> str:
    ends = decimal_text(band.low, 2)
    return f"{ends if band.low == band.high else f'{ends}-{decimal_text(band.high, 2)}'} {unit}"


def _swapped(table: SizeTable, column: Column) -> Iterator[Finding]:
    for size, cell in zip(table.sizes, column.cells, strict=True):
        for unit, band in (("in", cell.inches), ("cm", cell.cm)) if cell else ():
            if cell and band and band.low > band.high:
                message = f"The band {_text(band, unit)} of {column.name} runs from high to low."
                yield BAND_ENDS_SWAPPED.at(cell.place, message, size=size, hint="Swap its two ends.")


def _differing(table: SizeTable, column: Column) -> Iterator[Finding]:
    severity = Severity.NOTE if column.known_error else None
    for size, cell in zip(table.sizes, column.cells, strict=True):
        if cell and not column.derived and (ends := units_differ(cell)):
            inches, cm = ends
            yield INCH_AND_CM_DIFFER.at(
                cell.place,
                f"{column.name} in {size}: inches and centimetres are not the same length.",
                size=size,
                expected=f"{decimal_text(inches * INCH)} cm",
                found=f"{decimal_text(cm)} cm",
                because=f"{decimal_text(inches)} in x 2.54 = {decimal_text(inches * INCH)} cm",
                severity=severity,
            )


def units_differ(cell: Cell) -> tuple[Fraction, Fraction] | None:
    """The inches and centimetres of one end of a cell that are over 0.55 cm apart; None when both ends agree."""
    if cell.inches is None or cell.cm is None:
        return None
    ends = ((cell.inches.low, cell.cm.low), (cell.inches.high, cell.cm.high))
    return next(((inches, cm) for inches, cm in ends if abs(inches * INCH - cm) > AGREES_WITHIN), None)


def _steps(table: SizeTable, column: Column) -> Iterator[Finding]:
    """Falling, level and jumping steps, told in inches where there are any, else in centimetres."""
    if column.derived:
        return
    steps = list(_pairs(table, column))
    level: list[Step] = []
    for step in steps:
        if step.after == step.before:
            level.append(step)
        elif step.after.low < step.before.low or step.after.high < step.before.high:
            severity = Severity.NOTE if column.known_error else None
            message = f"{column.name} gets smaller from one size to the next."
            yield SIZE_STEP_FALLS.at(step.cell.place, message, size=step.size, because=step.words, severity=severity)
    yield from _level_steps(table, column, level)
    for at, step in enumerate(steps):
        beside = [near.growth for near in (*steps[max(at - 1, 0) : at], *steps[at + 1 : at + 2])]
        if len(steps) > 2 and step.growth > 2 * max(beside) > 0:
            message = f"{column.name} grows far more here than to the sizes beside it."
            yield SIZE_STEP_JUMPS.at(step.cell.place, message, size=step.size, because=step.words)


def _pairs(table: SizeTable, column: Column) -> Iterator[Step]:
    wearers = table.wearer_by_size or (table.wearer,) * len(table.sizes)
    named = [one for one in zip(table.sizes, column.cells, wearers, strict=True) if one[1] is not None]
    for (before, first, younger), (size, second, wearer) in pairwise(named):
        if first is None or second is None or younger != wearer:
            continue
        unit = "in" if first.inches and second.inches else "cm"
        low, high = (first.inches, second.inches) if unit == "in" else (first.cm, second.cm)
        if low is not None and high is not None:
            yield Step(size, low, high, second, f"{before} {_text(low, unit)}, {size} {_text(high, unit)}")


def _level_steps(table: SizeTable, column: Column, level: list[Step]) -> Iterator[Finding]:
    if column.name == table.by:
        for step in level:
            message = f"Two sizes have the same {column.name}, so a body can't be told from the other."
            yield SIZE_STEP_FLAT.at(
                step.cell.place, message, size=step.size, because=step.words, severity=Severity.WARNING
            )
    elif level:
        message = f"{column.name} does not grow between some sizes."
        yield SIZE_STEP_FLAT.at(column.place, message, because="; ".join(step.words for step in level))


def _look_up(table: SizeTable, column: Column) -> Iterator[Finding]:
    """Bodies that no size or more than one size fits; single numbers are middles and leave no gap."""
    unit = "in" if all(cell.inches for cell in column.cells if cell) else "cm"
    named = zip(table.sizes, _bands(column, unit), strict=True)
    bands = [(size, band) for size, band in named if band is not None]
    if not any(band.low < band.high for _, band in bands):
        return
    bands.sort(key=lambda pair: (pair[1].low, pair[1].high))
    gaps: list[tuple[str, Band, str]] = []
    reach, reached_by = bands[0][1].high, bands[0][0]
    for size, band in bands[1:]:
        if band.low > reach:
            gaps.append((reached_by, Band(reach, band.low), size))
        if band.high >= reach:
            reach, reached_by = band.high, size
    usual = [gap for gap in gaps if gap[1].high - gap[1].low <= WIDEST_GAP[unit]]
    if usual:
        yield _usual_gaps(column, usual, unit)
    for below, gap, above in (gap for gap in gaps if gap not in usual):
        message = f"No size fits a {column.name} of {_text(gap, unit)}, between {below} and {above}."
        hint = "Add a size between them, or say in the pattern that it is left out."
        yield SIZE_BAND_GAP.at(column.place, message, because=_which_way(gap, below, above, unit), hint=hint,
                               severity=Severity.WARNING)  # fmt: skip
    yield from _overlaps(column, bands, unit)


def _usual_gaps(column: Column, gaps: list[tuple[str, Band, str]], unit: str) -> Finding:
    texts = ", ".join(_text(gap, unit).removesuffix(f" {unit}") for _, gap, _ in gaps)
    message = f"A {column.name} of {texts} {unit} falls between sizes and takes the nearer one, the middle the larger."
    below, gap, above = gaps[0]
    return SIZE_BAND_GAP.at(column.place, message, because=_which_way(gap, below, above, unit))


def _which_way(gap: Band, below: str, above: str, unit: str) -> str:
    middle = decimal_text((gap.low + gap.high) / 2, 2)
    return f"from {_text(gap, unit)}: below {middle} {unit} takes {below}, {middle} {unit} and above takes {above}"


def _overlaps(column: Column, bands: list[tuple[str, Band]], unit: str) -> Iterator[Finding]:
    shared = [
        f"{_text(Band(two.low, min(one.high, two.high)), unit)} fits {first} and {second}"
        for at, (first, one) in enumerate(bands)
        for second, two in bands[at + 1 :]
        if two.low <= one.high
    ]
    if shared:
        shared[MOST_TOLD:] = [f"{len(shared) - MOST_TOLD} more"] if len(shared) > MOST_TOLD else []
        message = f"Some bodies fit more than one size by {column.name}; a look-up gives them all."
        yield SIZE_BAND_OVERLAP.at(column.place, message, because="; ".join(shared))


def _known(table: SizeTable, column: Column) -> Iterator[Finding]:
    if not column.known_error:
        return
    pairs = zip(table.sizes, column.published, column.cells, strict=False)
    used = [size for size, printed, cell in pairs if printed != cell]
    message = f"{column.name}: {column.known_error}"
    because = f"other values are used for {', '.join(used)}" if used else None
    yield PUBLISHED_ERROR_KNOWN.at(column.place, message, because=because)


def _extrapolated(table: SizeTable, column: Column) -> Iterator[Finding]:
    beyond = [size for size, cell in zip(table.sizes, column.cells, strict=True) if cell and cell.extrapolated]
    if beyond:
        message = f"{column.name} in {', '.join(beyond)} lies beyond the bodies that were measured."
        hint = "Measure a body of such a size before you rely on it."
        yield BEYOND_SURVEY.at(column.place, message, because=column.derived, hint=hint)


def _unchecked(table: SizeTable, columns: Collection[str] | None) -> Iterator[Finding]:
    looked_at = [column for name, column in table.columns.items() if columns is None or name in columns]
    unchecked = [column.name for column in looked_at if "unchecked" in column.trust]
    if unchecked:
        message = f"From memory, not yet held against the published page: {', '.join(unchecked)}."
        yield TABLE_UNCHECKED.at(table.place, message, hint="Compare these with the source before you sell.")
