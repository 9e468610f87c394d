"""What other programs read: findings and grading as JSON and CSV. Numbers leave the exact world here, and only here."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from gradegen.design.graded import GradedCount, GradedMeasure, GradedSize
from gradegen.design.sizes import Band, SizeTable
from gradegen.findings import Finding, Place

if TYPE_CHECKING:
    from gradegen.grade.ask.nearest import Nearest

VERSION = 1
PLACES = 4  # decimals of printed inches and raw counts


def findings_json(
    findings: Iterable[Finding], proved: int, wrong: int, not_checked: int, timings: Mapping[str, float] | None = None
) -> str:
    """The answer of `check --json`: every finding, one per size, and how many row-size pairs were proved."""
    answer: dict[str, Any] = {
        "version": VERSION,
        "findings": [finding_values(finding) for finding in findings],
        "proved": proved,
        "wrong": wrong,
        "not_checked": not_checked,
    }
    if timings is not None:
        answer["timings"] = {stage: round(seconds, PLACES) for stage, seconds in timings.items()}
    return json.dumps(answer, indent=1)


def finding_values(finding: Finding) -> dict[str, Any]:
    """One finding with every field, empty ones as null."""
    return {
        "rule": finding.rule,
        "severity": str(finding.severity),
        "place": place_values(finding.place),
        "size": finding.size,
        "row": finding.row,
        "message": finding.message,
        "expected": finding.expected,
        "found": finding.found,
        "because": finding.because,
        "hint": finding.hint,
        "see_also": [{"place": place_values(place), "words": words} for place, words in finding.see_also],
        "follows": finding.follows,
    }


def place_values(place: Place) -> dict[str, Any]:
    """A place by its five numbers and names."""
    return {
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "end_line": place.end_line,
        "end_column": place.end_column,
    }


def grading_json(sizes: Sequence[GradedSize]) -> str:
    """The answer of `grade --json`: sizes in order, then per measure and per count one entry per size."""
    measures = {
        name: [measure_values(size.measures[name]) for size in sizes if name in size.measures]
        for name in _names(sizes, "measures")
    }
    counts = {
        name: [count_values(size.counts[name]) for size in sizes if name in size.counts]
        for name in _names(sizes, "counts")
    }
    answer = {
        "sizes": [size.name for size in sizes],
        "measures": measures,
        "counts": counts,
        "eases": ease_values(sizes),
    }
    return json.dumps(answer, indent=1)


def ease_values(sizes: Sequence[GradedSize]) -> dict[str, Any]:
    """Measure -> the body column it goes with, and per size the body graded for, what is finished, and the ease."""
    found: dict[str, Any] = {}
    for size in sizes:
        for key in size.key_eases:
            told = found.setdefault(key.measure, {"body": key.body, "sizes": {}})
            told["sizes"][size.name] = {
                "body_in": _decimal(size.graded_body[key.body]),
                "finished_in": _decimal(size.measures[key.measure].printed),
                "ease_in": _decimal(key.ease),
            }
    return found


def measure_values(measure: GradedMeasure) -> dict[str, Any]:
    """One measure in one size, decimal inches and centimetres."""
    return {
        "target_in": _decimal(measure.target),
        "finished_in": _decimal(measure.finished),
        "printed_in": _decimal(measure.printed),
        "printed_cm": _decimal(measure.printed * Fraction(254, 100)),
        "drift_in": _decimal(measure.drift),
    }


def count_values(count: GradedCount) -> dict[str, Any]:
    """One count in one size: raw, snapped, what it measures, and how it was rounded."""
    return {
        "target_in": _decimal(count.target),
        "raw": _decimal(count.raw),
        "count": count.n,
        "chain": count.chain,
        "repeats": count.repeats,
        "unit": count.unit,
        "finished_in": _decimal(count.finished),
        "drift_in": _decimal(count.drift),
        "rounded": count.rounded,
        "below": count.below,
        "above": count.above,
    }


def grading_csv(sizes: Sequence[GradedSize]) -> str:
    """The answer of `grade --csv`: one line per count or measure and size."""
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    table.writerow(
        ["kind", "name", "size", "target in", "raw", "count", "chain", "finished in", "drift in", "unit", "rounded"]
    )
    for name in _names(sizes, "measures"):
        for size in sizes:
            if name in size.measures:
                one = measure_values(size.measures[name])
                table.writerow(
                    [
                        "measure",
                        name,
                        size.name,
                        one["target_in"],
                        "",
                        "",
                        "",
                        one["printed_in"],
                        one["drift_in"],
                        "in",
                        "",
                    ]
                )
    for name in _names(sizes, "counts"):
        for size in sizes:
            if name in size.counts:
                table.writerow(_count_cells(name, size.name, count_values(size.counts[name])))
    return out.getvalue().rstrip("\n")


def fit_json(own: GradedSize, taken: Mapping[str, str], nearest: Nearest | None) -> str:
    """The answer of `fit --json`: the maker's own counts and measures, and the nearest printed size."""
    body = {
        name: {"in": _decimal(length), "from": taken.get(name)}
        for name, length in own.graded_body.items()
        if name in taken
    }
    answer = {
        "nearest": nearest and {"size": nearest.size, "why": nearest.why, "also": list(nearest.also)},
        "measures": {name: measure_values(measure) for name, measure in own.measures.items()},
        "counts": {name: count_values(count) for name, count in own.counts.items()},
        "body": body,
    }
    return json.dumps(answer, indent=1)


def size_table_json(table: SizeTable) -> str:
    """A body size table: its source, and per column one [low, high] per size, inches and centimetres as published."""
    columns = {
        column.name: {
            "in": [_ends(cell.inches if cell else None) for cell in column.cells],
            "cm": [_ends(cell.cm if cell else None) for cell in column.cells],
            "trust": column.trust,
            "trust_cm": column.trust_cm,
            "derived": column.derived,
            "spread_cm": _decimal(column.spread_cm),
            "note": column.note,
        }
        for column in table.columns.values()
    }
    source = {"title": table.title, "publisher": table.publisher, "year": table.year, "address": table.address}
    answer = {"name": table.name, "source": source, "by": table.by, "sizes": list(table.sizes), "columns": columns}
    return json.dumps(answer | {"oddities": list(table.oddities)}, indent=1)


def size_table_csv(table: SizeTable) -> str:
    """A body size table: one line per column, unit and end of the band."""
    out = io.StringIO()
    lines = csv.writer(out, lineterminator="\n")
    lines.writerow(["column", "unit", "end", *table.sizes, "trust"])
    for column in table.columns.values():
        for unit, trust in (("in", column.trust), ("cm", column.trust_cm or column.trust)):
            ends = [_ends((cell.inches if unit == "in" else cell.cm) if cell else None) for cell in column.cells]
            for at, end in enumerate(("low", "high")):
                lines.writerow([column.name, unit, end, *("" if pair is None else pair[at] for pair in ends), trust])
    return out.getvalue().rstrip("\n")


def _ends(band: Band | None) -> list[int | float | None] | None:
    return None if band is None else [_decimal(band.low), _decimal(band.high)]


def _count_cells(name: str, size: str, one: Mapping[str, Any]) -> list[Any]:
    fields = ("target_in", "raw", "count", "chain", "finished_in", "drift_in", "unit", "rounded")
    return ["count", name, size, *("" if one[field] is None else one[field] for field in fields)]


def _names(sizes: Sequence[GradedSize], kind: str) -> list[str]:
    return list(dict.fromkeys(name for size in sizes for name in getattr(size, kind)))


def _decimal(number: Fraction | None) -> int | float | None:
    if number is None:
        return None
    rounded = round(number, PLACES)
    return rounded.numerator if rounded.denominator == 1 else float(rounded)
