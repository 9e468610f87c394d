"""A body size table: bands per size and column, inches and centimetres both as published."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from gradegen.findings import Place


@dataclass(frozen=True, slots=True)
class Band:
    """One published cell in one unit: lowest and highest body of the size (equal where one number is printed)."""

    low: Fraction
    high: Fraction


@dataclass(frozen=True, slots=True)
class Cell:
    """One body column of one size; inches and centimetres never derived from each other. None: not published."""

    inches: Band | None
    cm: Band | None
    place: Place = field(compare=False)
    extrapolated: bool = False


@dataclass(frozen=True, slots=True)
class Column:
    """One body measure over all sizes, with how far it can be trusted.

    `derived`: worked out from another column by a survey fit, with its residual spread in `spread_cm`; `note` says so.
    `known_error`: what is wrong with the row as published; where other values are used instead, `cells` holds those
    and `published` the row as printed (else it is empty).
    """

    name: str
    cells: tuple[Cell | None, ...]
    trust: str
    trust_cm: str | None
    note: str | None
    derived: str | None
    spread_cm: Fraction | None
    place: Place = field(compare=False)
    known_error: str | None = None
    published: tuple[Cell | None, ...] = ()


@dataclass(frozen=True, slots=True)
class SizeTable:
    """A size table with its source; `by` is the column a body is looked up by (bust, chest, head)."""

    name: str
    file: str
    title: str
    publisher: str
    year: str
    address: str
    wearer: str
    by: str
    sizes: tuple[str, ...]
    columns: Mapping[str, Column]
    oddities: tuple[str, ...]
    place: Place = field(compare=False)
    wearer_by_size: tuple[str, ...] = ()
