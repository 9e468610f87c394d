"""Counts the designer pinned in single sizes: each size known, each count one that the count's own keys allow."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace

from gradegen.design.pattern import CountRule, Pattern
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.measure.snapped import grid_of, place_of
from gradegen.numbers.snap import Grid
from gradegen.read.size_tables.table import UNKNOWN_SIZE
from gradegen.read.yaml.fields import nearest

PIN_NOT_ALLOWED = Rule(
    "pin-not-allowed", Severity.ERROR, "arithmetic", "A pinned count is none that its multiple and limits allow."
)


def keep_sound_pins(pattern: Pattern, table: SizeTable) -> tuple[Mapping[str, CountRule], tuple[Finding, ...]]:
    """The rules by name with only those pins that can hold; a finding for every other."""
    wanted = pattern.sizes.wanted
    sizes = tuple(size.text for size in wanted) if wanted is not None else table.sizes
    rules: dict[str, CountRule] = {}
    findings: list[Finding] = []
    for name, rule in pattern.counts.items():
        faults = {size: fault for size in rule.pins if (fault := _fault(rule, size, sizes))}
        findings += faults.values()
        pins = {size: n for size, n in rule.pins.items() if size not in faults}
        rules[name] = replace(rule, pins=pins) if faults else rule
    return rules, tuple(findings)


def _fault(rule: CountRule, size: str, sizes: Collection[str]) -> Finding | None:
    place, n = place_of(rule, f"pin {size}"), rule.pins[size]
    if size not in sizes:
        guess = nearest(size, tuple(sizes))
        hint = f"Did you mean {guess}?" if guess else f"The sizes are {', '.join(sizes)}."
        return UNKNOWN_SIZE.at(place, f"There is no size {size}.", hint=hint)
    grid = grid_of(rule)
    if not isinstance(grid, Grid) or _is_on(grid, n):
        return None
    below = grid.first + (n - grid.first) // grid.step * grid.step
    near = [count for count in (below, below + grid.step) if _is_on(grid, count)] or [grid.last or grid.first]
    message = f"{n} is none of the counts that the other keys of {rule.name} allow."
    hint = f"Pin {' or '.join(map(str, near))}, or change the multiple or limits."
    return PIN_NOT_ALLOWED.at(place, message, size=size, hint=hint)


def _is_on(grid: Grid, n: int) -> bool:
    return n >= grid.first and (n - grid.first) % grid.step == 0 and (grid.last is None or n <= grid.last)
