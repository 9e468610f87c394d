"""Sums as the designer wrote them: `bust + 3 in`, `2 * band + 1`, `[11, 11, 12] in`; a tree, not a value."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from gradegen.findings import Place


@dataclass(frozen=True, slots=True)
class Amount:
    """A number with its unit as written ("in", "cm", "mm", "yd", "m", "sts", "rows"), or None for a bare number."""

    number: Fraction
    unit: str | None
    place: Place = field(compare=False)


@dataclass(frozen=True, slots=True)
class PerSize:
    """One amount per size, in the pattern's order of sizes."""

    each: tuple[Amount, ...]
    place: Place = field(compare=False)


@dataclass(frozen=True, slots=True)
class Name:
    """A body column, a measure or a count, by its name (spaces allowed: `upper arm`)."""

    name: str
    place: Place = field(compare=False)


@dataclass(frozen=True, slots=True)
class Sum:
    """Two parts joined by one of + - * /."""

    sign: str
    left: Formula
    right: Formula
    place: Place = field(compare=False)


@dataclass(frozen=True, slots=True)
class Call:
    """`max(...)`, `min(...)`, `round(...)`, `up(...)`, `down(...)` of its parts."""

    function: str
    parts: tuple[Formula, ...]
    place: Place = field(compare=False)


Formula = Amount | PerSize | Name | Sum | Call
