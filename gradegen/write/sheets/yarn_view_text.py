"""Yarn, time and stitches of every size as text and for a program."""

from __future__ import annotations

import json
from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from gradegen.design.checked import Checked
from gradegen.findings import Finding
from gradegen.numbers.exact import decimal_text
from gradegen.reckon import SizeYarn, YarnAmount, YarnNeed, stitch_census, yarn_per_size
from gradegen.reckon.census.census import Census
from gradegen.reckon.yarn.cross_checks import compare_with_published, yards_per_inch
from gradegen.reckon.yarn.evidence import all_weighed
from gradegen.reckon.yarn.time import SizeTime, time_per_size
from gradegen.trade.stitches import stitches
from gradegen.write.sheets.yarn_view import aligned, is_metric, percent, substitution_line, up, yarn_table

Findings = tuple[Finding, ...]
METRE_PER_CM = Fraction(36, 100)  # a yard to the inch is 0.9144 m to 2.54 cm


def yarn_text(checked: Checked) -> tuple[str, Findings]:
    """Everything about yarn and time, for a screen."""
    census = stitch_census(checked)
    needs, findings = yarn_per_size(checked, census)
    times, found = time_per_size(checked, census)
    parts = [_need_text(checked, need) for need in needs]
    if times:
        parts.append(_time_text(times))
    return "\n\n".join(parts) or "Nothing is known of the yarn.", (
        *findings,
        *found,
        *compare_with_published(checked, needs),
    )


def _need_text(checked: Checked, need: YarnNeed) -> str:
    table = yarn_table(need, checked)
    lines = [table.title, aligned(table.heads, table.lines), *table.notes]
    yarn = next(one for one in checked.pattern.yarns if one.letter == need.letter)
    lines.append(substitution_line(checked, yarn, need))
    lines += _per_inch(checked, need)
    return "\n".join(lines)


def _per_inch(checked: Checked, need: YarnNeed) -> Iterator[str]:
    shares = yards_per_inch(checked, need)
    if shares:
        metric = is_metric(checked.pattern)
        each = METRE_PER_CM if metric else Fraction(1)
        said = ", ".join(f"{one.size} {decimal_text(one.yards * each, 1)}" for one in shares)
        furthest = max(abs(one.off) for one in shares)
        what = "Meters per finished centimeter" if metric else "Yards per finished inch"
        yield f"{what} of width: {said}; at most {percent(furthest)} from their mean."


def _time_text(times: tuple[SizeTime, ...]) -> str:
    lines = [(one.size, hours_text(one.quick), hours_text(one.minutes), hours_text(one.slow)) for one in times]
    return "Time\n" + aligned(("size", "quick hand", "as timed", "slow hand"), lines)


def hours_text(minutes: Fraction) -> str:
    """Hours to the half hour, minutes below two hours to the five: `9½ h`, `45 min`."""
    if minutes < 120:
        return f"{max(5, 5 * int((minutes / 5 + Fraction(1, 2)) // 1))} min"
    halves = int((minutes / 30 + Fraction(1, 2)) // 1)
    return f"{halves // 2}{'½' if halves % 2 else ''} h"


def census_text(checked: Checked) -> str:
    """How many of each stitch every part of every size takes."""
    census = stitch_census(checked)
    sizes = [size.name for size in checked.sizes]
    keys = dict.fromkeys((part.name, part.colour) for parts in census.by_size.values() for part in parts)
    blocks = []
    for name, colour in keys:
        counts = {size: _part(census.by_size.get(size, ()), name, colour) for size in sizes}
        kinds = dict.fromkeys(kind for one in counts.values() for kind in one)
        lines = [(_name(kind, checked), *(str(counts[size].get(kind, 0)) for size in sizes)) for kind in kinds]
        lines.append(("stitches in all", *(str(_stitches(counts[size])) for size in sizes)))
        title = name if len({one for _, one in keys}) == 1 else f"{name}, yarn {colour}"
        blocks.append(f"{title}\n{aligned(('', *sizes), lines)}")
    return "\n\n".join([*blocks, *_to_write_down(checked, census)])


def _to_write_down(checked: Checked, census: Census) -> Iterator[str]:
    """The stitches of every piece weighed that has none written down, as the pattern file takes them."""
    for yarn in checked.pattern.yarns:
        for one in all_weighed(yarn):
            counted = census.of(one.size.text, yarn.letter) if one.size is not None and not one.stitches else None
            if one.size is not None and counted:
                said = ", ".join(f"{_name(kind, checked)}: {number}" for kind, number in counted.items())
                yield (
                    f"Beside the weight of the {one.what} in size {one.size.text}, so that later changes to that size "
                    f"leave the others' yarn as it is:\nstitches: {{{said}}}"
                )


def _part(parts: Any, name: str, colour: str) -> dict[str, int]:
    return next((dict(part.stitches) for part in parts if (part.name, part.colour) == (name, colour)), {})


def _stitches(counts: dict[str, int]) -> int:
    return sum(number for kind, number in counts.items() if kind not in ("ch", "sl st", "picot"))


def _name(kind: str, checked: Checked) -> str:
    known = stitches().get(kind)
    return known.abbreviation(checked.pattern.terms) if known else kind


def yarn_json(checked: Checked) -> tuple[str, Findings]:
    """The same for a program: whole yards, metres and grams, rounded up."""
    census = stitch_census(checked)
    needs, findings = yarn_per_size(checked, census)
    times, found = time_per_size(checked, census)
    answer = {
        "yarn": {need.letter: _need_values(need) for need in needs},
        "minutes": {one.size: [int(one.quick), int(one.minutes), int(one.slow)] for one in times},
        "stitches": {size: dict(census.of(size)) for size in census.by_size},
    }
    return json.dumps(answer, indent=1), (*findings, *found)


def _need_values(need: YarnNeed) -> dict[str, Any]:
    return {
        "margin_percent": int(need.margin * 100),
        "basis": need.basis,
        "evidence": [one.words for one in need.evidence],
        "spread_percent": [int(ratio * 100) for ratio in need.spread] if need.spread else None,
        "sizes": {size.size: _size_values(size) for size in need.sizes},
    }


def _size_values(size: SizeYarn) -> dict[str, Any]:
    return {
        "used": _amount_values(size.used),
        "with_margin": _amount_values(size.wanted),
        "skeins": size.skeins,
        "left_over_percent": None if size.slack is None else int(size.slack * 100),
        "lines": {line.what: _amount_values(line.amount) for line in size.lines},
        "whole": size.is_whole,
    }


def _amount_values(amount: YarnAmount) -> dict[str, int | None]:
    values = {"yards": amount.yards, "metres": amount.metres, "grams": amount.grams}
    return {name: None if value is None else int(up(value)) for name, value in values.items()}
