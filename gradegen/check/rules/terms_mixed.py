"""What it finds.

A stitch name that only US writers use in the rows of a pattern in UK terms, or the other way round.

Why it matters.

dc and tr stand in both vocabularies for different stitches. One foreign name makes a maker doubt all the others, and
half of those who guess will guess wrong.

Example.

    terms: US
    pieces:
      - name: Scarf
        shape: flat
        rows: |
          Row 1: Ch 21. Sc in 2nd ch from hook, sc in each ch across. (20 sc)
          Row 2: Ch 2 (does not count as a st), turn, htr in each st across. (20 htr)

Written right.

    terms: US
    pieces:
      - name: Scarf
        shape: flat
        rows: |
          Row 1: Ch 21. Sc in 2nd ch from hook, sc in each ch across. (20 sc)
          Row 2: Ch 2 (does not count as a st), turn, hdc in each st across. (20 hdc)

Whose rule.

Trade standard: a pattern names its terms once and keeps to them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from gradegen.design.checked import Checked
from gradegen.design.pattern import Terms
from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.trade.stitches import stitches

RULE = Rule("terms-mixed", Severity.ERROR, "trade standard", "US and UK names stand side by side.")
PLAIN = ("sc", "hdc", "dc", "tr", "dtr")  # stitches every pattern uses; the other names are made from theirs


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per foreign name, where it stands first."""
    pattern = checked.pattern
    other: Terms = "UK" if pattern.terms == "US" else "US"
    own = {definition.name.lower() for definition in pattern.definitions}
    told: set[str] = set()
    for place, line in _row_lines(checked):
        for found in _only_in(other).finditer(line):
            name = found[0].lower()
            if name not in told and name not in own:
                told.add(name)
                column = place.column + found.start()
                yield RULE.at(
                    Place(place.file, place.line, column, place.line, column + len(found[0])),
                    f"This is a name of {other} terms, and the pattern is in {pattern.terms} terms.",
                    expected=f"{pattern.terms} terms",
                    found=found[0],
                )


@cache
def _only_in(terms: Terms) -> re.Pattern[str]:
    """The names of plain stitches that these terms have and the others have not."""
    names = {side: {name.lower() for id_ in PLAIN for name in stitches()[id_].names[side]} for side in ("US", "UK")}
    only = names[terms] - names["UK" if terms == "US" else "US"]
    words = "|".join(re.escape(name) for name in sorted(only, key=len, reverse=True))
    return re.compile(rf"(?<![\w-])(?:{words})(?![\w-])", re.IGNORECASE)


def _row_lines(checked: Checked) -> Iterator[tuple[Place, str]]:
    """Every file line of every row with its place, from where the row begins to where it ends."""
    written = checked.pattern.sources.get(checked.pattern.file)
    lines = written.text.split("\n") if written else []
    for row in (row for piece in checked.pattern.pieces for row in piece.rows):
        for number in range(row.place.line, min(row.place.end_line, len(lines)) + 1):
            start = row.place.column - 1 if number == row.place.line else 0
            end = row.place.end_column - 1 if number == row.place.end_line else None
            yield Place(row.place.file, number, start + 1, number, start + 1), lines[number - 1][start:end]
