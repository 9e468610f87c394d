"""What it finds.

A hook size in the rows, notes or finishing that no gauge of the pattern lists.

Why it matters.

The materials list is made from the gauges. A maker who has gathered everything on it finds out half-way that she needs
another hook.

Example.

    notes:
      - Work the edging with a 4 mm hook.

Written right.

    notes:
      - Work the edging with a 5.5 mm hook.

Whose rule.

Trade standard: materials list every hook that is used. Millimetres are what counts; US sizes are only their names.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.pattern import Pattern
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.numbers.units import in_base_units

RULE = Rule("hook-not-listed", Severity.ERROR, "trade standard", "A hook is used that is not listed.")
A_HOOK = re.compile(r"(?<![\d.,/])(\d{1,2}(?:[.,]\d{1,2})?)[ -]?mm(?: crochet)? hooks?\b", re.IGNORECASE)
MM = Fraction(254, 10)  # 1 in = 25.4 mm by definition


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per text that names an unlisted hook."""
    pattern = checked.pattern
    listed = {in_base_units(gauge.hook) * MM for gauge in pattern.gauges.values() if gauge.hook is not None}
    listed |= {size for notion in pattern.notions for size, _ in _hooks_in(notion.what.text)}
    if not listed:
        return
    for text, place in _texts(pattern):
        for size, written in _hooks_in(text):
            if size not in listed:
                yield RULE.at(
                    place,
                    "This hook is in no gauge, so it is missing from the materials.",
                    expected=" or ".join(f"{_plain(known)} mm" for known in sorted(listed)),
                    found=f"{written} mm",
                    hint="Give the part that is worked with it a gauge of its own, or list the hook under notions.",
                )


def _hooks_in(text: str) -> Iterator[tuple[Fraction, str]]:
    for found in A_HOOK.finditer(text):
        yield Fraction(found[1].replace(",", ".")), found[1]


def _texts(pattern: Pattern) -> Iterator[tuple[str, Place]]:
    for text in (*pattern.notes, *pattern.finishing):
        yield text.text, text.place
    for piece in pattern.pieces:
        for note in piece.notes:
            yield note.text, note.place
        for row in piece.rows:
            yield row.text, row.place


def _plain(number: Fraction) -> str:
    return str(number.numerator) if number.denominator == 1 else f"{number.numerator / number.denominator:g}"
