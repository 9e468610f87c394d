"""What is worth saying about the body columns a pattern uses: where their numbers come from and how far they hold."""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.formula import Name
from gradegen.design.pattern import Pattern
from gradegen.design.sizes import Column, SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import Body
from gradegen.grade.body.naming import Naming
from gradegen.grade.body.sums import names_in
from gradegen.numbers.exact import decimal_text
from gradegen.read.size_tables.checks import check_size_table

INCHES_FROM_CENTIMETRES = Rule(
    "inches-from-centimetres", Severity.NOTE, "arithmetic", "A body measure is published in centimetres only."
)
BODY_MEASURE_DERIVED = Rule(
    "body-measure-derived",
    Severity.NOTE,
    "house",
    "A body measure is worked out from another by a survey, not published.",
)


def find_column_notes(
    pattern: Pattern, table: SizeTable, bodies: tuple[Body, ...], naming: Naming
) -> Iterator[Finding]:
    """Notes for each body column in use, once, at its first use."""
    for column, name in columns_in_use(pattern, naming).items():
        yield from _notes(table.columns[column], name, bodies)


def find_table_faults(
    pattern: Pattern, table: SizeTable, bodies: tuple[Body, ...], naming: Naming
) -> Iterator[Finding]:
    """What is wrong in the columns and sizes of the size table that the pattern uses; its oddities stay with it."""
    used = {table.by, *columns_in_use(pattern, naming)}
    sizes = {None, *(body.name for body in bodies)}
    for finding in check_size_table(table, used):
        if finding.severity is not Severity.NOTE and finding.size in sizes:
            yield finding


def columns_in_use(pattern: Pattern, naming: Naming) -> dict[str, Name]:
    """Body columns the pattern's sums name, each with its first use."""
    uses: dict[str, Name] = {}
    formulas = [(measure.formula, measure.name) for measure in pattern.measures.values()]
    for rule in pattern.counts.values():
        formulas += [(one, "") for one in (rule.across, rule.along, rule.formula) if one is not None]
    for formula, own in formulas:
        for name in names_in(formula):
            meaning = naming.meaning(name, own)
            if meaning and meaning.what == "body":
                uses.setdefault(meaning.name, name)
    return uses


def _notes(column: Column, name: Name, bodies: tuple[Body, ...]) -> Iterator[Finding]:
    seen = ((column.place, "the column"),)
    converted = [body.name for body in bodies if column.name in body.converted]
    if converted:
        message = f"{column.name} is published in centimetres only; inches are taken from them exactly."
        yield INCHES_FROM_CENTIMETRES.at(name.place, message, because=f"sizes {', '.join(converted)}", see_also=seen)
    if column.derived is not None:
        yield BODY_MEASURE_DERIVED.at(name.place, _derived(column, bodies), because=column.derived, see_also=seen)


def _derived(column: Column, bodies: tuple[Body, ...]) -> str:
    message = f"No table gives {column.name}; it follows another measure by a survey's line."
    if column.spread_cm is not None:
        message += f" Bodies lie about {decimal_text(column.spread_cm, 1)} cm to either side of it."
    beyond = [body.name for body in bodies if column.name in body.cells and body.cells[column.name].extrapolated]
    return message + (f" Sizes {', '.join(beyond)} lie beyond the survey." if beyond else "")
