"""What the tests of the demo designs share: an edge that is a plain list, rows as plain text, sums worked with `ast`.

Nothing of gradegen is used here, so that these checks are a second opinion.
"""

from __future__ import annotations

import ast
import re
from fractions import Fraction
from pathlib import Path
from typing import Any

import yaml

ROOT = Path(__file__).resolve().parents[2]
PATTERNS = ROOT / "shared" / "patterns"


class Edge:
    """The round before as a list; every place must be worked or passed, in order, before the round closes."""

    def __init__(self, places: list[str]) -> None:
        self.places, self.at, self.made = places, 0, []

    @property
    def is_done(self) -> bool:
        return self.at == len(self.places)

    def take(self, what: str, times: int = 1) -> None:
        """Works into, or passes over, the next `times` places, all of one name."""
        found = self.places[self.at : self.at + times]
        assert found == [what] * times, f"wanted {times} {what}, met {found} at {self.at} of {len(self.places)}"
        self.at += times

    def work(self, what: str, *makes: str) -> None:
        self.take(what)
        self.make(*makes)

    def make(self, *makes: str) -> None:
        self.made.extend(makes)

    def close(self) -> list[str]:
        assert self.is_done, f"{len(self.places) - self.at} places left at the end of the round"
        return self.made


def read_yaml(name: str) -> dict[str, Any]:
    return yaml.safe_load((PATTERNS / name).read_text(encoding="utf-8"))


def rows_of(pattern: dict[str, Any]) -> list[str]:
    """The rows of all pieces, each on one line; a line that starts with a blank continues the row above."""
    rows: list[str] = []
    for piece in pattern["pieces"]:
        for line in piece["rows"].splitlines():
            if line.startswith(" "):
                rows[-1] += " " + line.strip()
            elif line.strip():
                rows.append(line.strip())
    return rows


def label_of(row: str) -> str:
    return row.split(":", 1)[0]


def stated_in(row: str, numbers: dict[str, int]) -> dict[str, int]:
    """The counts in the last brackets of a row: unit to number, sums worked out."""
    if not row.endswith(")"):
        return {}
    counts = {}
    for part in row[row.rindex("(") + 1 : -1].split(", "):
        number, unit = re.fullmatch(r"(\{[^}]*\}|\d+) (.+)", part).groups()
        counts[unit] = value_of(number.strip("{}"), numbers)
    return counts


def value_of(written: str, numbers: dict[str, int]) -> int:
    """A sum such as `2 * band + 1` with these numbers for its names; it must come out whole."""
    for name in sorted(numbers, key=len, reverse=True):
        written = re.sub(rf"\b{name}\b", str(numbers[name]), written)
    result = _value(ast.parse(written, mode="eval").body)
    assert result.denominator == 1, f"{written} is not a whole number"
    return int(result)


def _value(node: ast.expr) -> Fraction:
    if isinstance(node, ast.Constant):
        return Fraction(node.value)
    assert isinstance(node, ast.BinOp), ast.dump(node)
    left, right = _value(node.left), _value(node.right)
    signs = {ast.Add: left + right, ast.Sub: left - right, ast.Mult: left * right}
    return left / right if isinstance(node.op, ast.Div) else signs[type(node.op)]


def nearest(raw: Fraction, multiple: int, plus: int = 0, least: int = 1) -> int:
    """The nearest count on the multiple, found by trying them all; an exact half goes up."""
    counts = [n for n in range(plus, int(raw) + 2 * multiple + least, multiple) if n >= least]
    return min(counts, key=lambda n: (abs(n - raw), -n))
