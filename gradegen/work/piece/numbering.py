"""The numbers of a piece's rows as they go on: rows that are left out, and numbers that begin again."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from gradegen.design.passages import EvenRows, Shaping
from gradegen.design.rows import Row, RowsAgain
from gradegen.work.step.beginnings import begins_anew

Follows = Literal["on", "anew", "elsewhere"]
_ORDINAL = re.compile(r"\s*\d+(?:st|nd|rd|th)\b", re.IGNORECASE)


def is_booklet_label(text: str) -> bool:
    """True for `2nd Row`, the mid-century manner, in which `repeat from * 5 times` means five more."""
    return _ORDINAL.match(text) is not None


@dataclass(slots=True)
class Numbering:
    """Where the numbers have come to. `last`: the number of the last row worked; None: not known."""

    last: int | None = 0
    labelled: int | None = 0  # the same, but for the even rows told behind that row's own words

    def follows(self, row: Row) -> Follows:
        """How a row stands to the one above: it goes on, it begins anew, or rows between them are not written here."""
        number, named = _first_number(row), row.label.name
        last, labelled = self.last, self.labelled
        self.labelled = self._after(row, number)
        self.last = None if self.labelled is None else with_even_rows(row, self.labelled)
        if begins_anew(row):
            return "anew" if last != 0 else "on"
        if number is None or last is None or number in (1, last - 1, last, last + 1, (labelled or 0) + 1):
            return "on"
        return "on" if named else "elsewhere"

    def _after(self, row: Row, number: int | None) -> int | None:
        """The number the row comes to, with the rows it works again; None where it can't be told."""
        if number is None and begins_anew(row):
            number = 1
        if number is None:
            number = None if self.last is None else self.last + 1
        if number is None or len(row.label.listed) > 0:
            return _last_listed(row)
        for step in row.steps:
            if isinstance(step, RowsAgain):
                return None
        rows = row.label.rows if row.label.rows is not None else row.label.last
        if rows is None:
            return number
        value = rows.values[0] if len(rows.values) == 1 else None
        if value is None:
            return None
        return value if row.label.rows is None else number + value - 1


def with_even_rows(row: Row, number: int) -> int | None:
    """`6th Round: ... Work 1 round even`: the 7th; None where the words do not say how many rows they are."""
    for step in row.steps:
        if isinstance(step, Shaping) or (isinstance(step, EvenRows) and step.rows is None):
            return None
        if isinstance(step, EvenRows) and step.rows is not None:
            even = step.rows.values[0] if len(step.rows.values) == 1 else None
            if even is None:
                return None
            number += even
    return number


def _first_number(row: Row) -> int | None:
    """The number in a row's label; where it differs by size, that of the first size."""
    first = row.label.first
    return first.values[0] if first is not None and first.values else None


def _last_listed(row: Row) -> int | None:
    listed = row.label.listed
    return listed[-1].values[0] if listed and len(listed[-1].values) == 1 else None
