"""What testers sent back, for other programs: as JSON, and as lines for a spreadsheet."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from typing import Any

from gradegen.design.testing import FilledForm
from gradegen.findings import Finding
from gradegen.numbers.units import in_unit
from gradegen.reckon.testers.spread import Spread
from gradegen.reckon.testers.tested import GaugeTested, MeasureTested, RowTested, Tested, YarnTested
from gradegen.reckon.yarn.amounts import YarnAmount
from gradegen.write.sheets.machine import finding_values

VERSION, PLACES = 1, 4
_HEADS = ("about", "name", "size", "tester", "file", "unit", "expected", "found")


def testers_json(all_tested: Sequence[Tested], findings: Iterable[Finding]) -> str:
    """The answer of `testers --json`: one entry per pattern, lengths in inches, then the findings."""
    answer = {
        "version": VERSION,
        "patterns": [_tested(tested) for tested in all_tested],
        "findings": [finding_values(finding) for finding in findings],
    }
    return json.dumps(answer, indent=1)


def _tested(tested: Tested) -> dict[str, Any]:
    return {
        "pattern": tested.pattern,
        "pattern_version": tested.version,
        "sizes": list(tested.sizes),
        "sizes_untested": list(tested.untested) if tested.has_pattern else None,
        "forms": [_form(form) for form in tested.forms],
        "gauge": [_gauge(one) for one in tested.gauges],
        "yarn": [_yarn(one) for one in tested.yarns],
        "measures": [_measure(one) for one in tested.measures],
        "time": [
            {"size": one.size, "reckoned_minutes": _decimal(one.reckoned), **_spread(one.spread)}
            for one in tested.times
        ],
        "errors": [_row(row) for row in tested.rows],
        "pieces": [
            {
                "piece": one.piece,
                "difficulty": _spread(one.difficulty) if one.difficulty else None,
                "clarity": _spread(one.clarity) if one.clarity else None,
            }
            for one in tested.pieces
        ],
        "remarks": {
            kind: [{"file": form.file, "size": form.asked.size, "words": words} for form, words in remarks]
            for kind, remarks in tested.remarks.items()
        },
        "evidence": {letter: list(lines) for letter, lines in tested.evidence.items()},
    }


def _gauge(one: GaugeTested) -> dict[str, Any]:
    return {
        "gauge": one.gauge,
        "counted": one.counted,
        "washed": one.after,
        "over_in": _decimal(one.over),
        "stated": _decimal(one.stated),
        **_spread(one.spread),
        "off_percent": _percent(one.off),
    }


def _yarn(one: YarnTested) -> dict[str, Any]:
    return {
        "yarn": one.letter,
        "size": one.size,
        "reckoned": _amount(one.reckoned),
        "used": [{"file": form.file, **(_amount(amount) or {})} for form, amount in one.each],
        "off_percent": [_percent(ratio - 1) for _, ratio in one.ratios],
        "with_testers": _amount(one.pooled),
        "with_margin": _amount(one.wanted),
        "to_print": _amount(one.to_print),
    }


def _measure(one: MeasureTested) -> dict[str, Any]:
    return {
        "measure": one.measure,
        "size": one.size,
        "expected_in": _decimal(one.expected),
        "found_in": [{"file": form.file, "in": _decimal(length)} for form, length in one.each],
        **_spread(one.spread),
        "off_in": _decimal(one.off),
    }


def _form(form: FilledForm) -> dict[str, Any]:
    return {
        "file": form.file,
        "tester": form.tester or None,
        "size": form.asked.size,
        "pattern_version": form.asked.version or None,
        "level": form.level or None,
        "body_in": _decimal(form.body),
        "yarn": {
            yarn.letter: {"skeins": _decimal(yarn.skeins), "words": yarn.words or None}
            for yarn in form.yarns
            if yarn.skeins is not None or yarn.words
        },
        "hook_mm": {gauge.name: _decimal(in_unit(gauge.hook, "mm")) for gauge in form.gauges if gauge.hook},
        "minutes": _decimal(form.minutes),
        "ticked": sorted(form.ticks),
    }


def _row(row: RowTested) -> dict[str, Any]:
    told = [
        {"file": form.file, "size": form.asked.size, "came_to": made, "pattern_makes": expected or None, "words": words}
        for form, made, expected, words in row.each
    ]
    return {"row": row.name, "line": row.line, "told": told}


def _spread(spread: Spread) -> dict[str, Any]:
    return {
        "testers": spread.many,
        "least": _decimal(spread.least),
        "median": _decimal(spread.median),
        "mean": _decimal(spread.mean),
        "most": _decimal(spread.most),
    }


def _amount(amount: YarnAmount | None) -> dict[str, Any] | None:
    if amount is None:
        return None
    return {"yards": _decimal(amount.yards), "metres": _decimal(amount.metres), "grams": _decimal(amount.grams)}


def testers_csv(all_tested: Sequence[Tested]) -> str:
    """The answer of `testers --csv`: one line per answer, what was expected beside what was found."""
    out = io.StringIO()
    lines = csv.writer(out, lineterminator="\n")
    lines.writerow(("pattern", *_HEADS))
    for tested in all_tested:
        for cells in _lines(tested):
            lines.writerow([tested.pattern, *("" if cell is None else cell for cell in cells)])
    return out.getvalue().rstrip("\n")


def _lines(tested: Tested) -> Iterator[Sequence[object]]:
    for gauge in tested.gauges:
        about = f"gauge {'after' if gauge.after else 'before'} washing"
        for form, number in gauge.each:
            yield about, gauge.gauge, *_of(form), gauge.counted, _decimal(gauge.stated), _decimal(number)
    for yarn in tested.yarns:
        for form, used in yarn.each:
            known = yarn.reckoned or YarnAmount(None, None)
            for unit, one, other in (("g", known.grams, used.grams), ("yd", known.yards, used.yards)):
                if other is not None:
                    yield "yarn", yarn.letter, *_of(form), unit, _decimal(one), _decimal(other)
    for measure in tested.measures:
        for form, length in measure.each:
            yield "measure", measure.measure, *_of(form), "in", _decimal(measure.expected), _decimal(length)
    for time in tested.times:
        for form, minutes in time.each:
            yield "time", "", *_of(form), "min", _decimal(time.reckoned), _decimal(minutes)
    for row in tested.rows:
        for form, made, expected, words in row.each:
            yield "error", _harmless(row.name), *_of(form), "", expected, _harmless(f"{made} {words}")
    for kind, remarks in tested.remarks.items():
        for form, words in remarks:
            yield "remark", kind, *_of(form), "", "", _harmless(words)


def _of(form: FilledForm) -> tuple[str, str, str]:
    return form.asked.size, _harmless(form.tester), form.file


def _harmless(words: str) -> str:
    """A tester's words on one line; a spreadsheet must not take them for a sum to work out."""
    line = " ".join(words.split())
    return "'" + line if line[:1] in ("=", "+", "-", "@") else line


def _percent(share: Fraction | None) -> int | float | None:
    return None if share is None else _decimal(100 * share)


def _decimal(number: Fraction | None) -> int | float | None:
    if number is None:
        return None
    rounded = round(number, PLACES)
    return rounded.numerator if rounded.denominator == 1 else rounded.numerator / rounded.denominator
