"""Numbers of a row as written: one for all sizes, one per size, or a sum in braces."""

from __future__ import annotations

from dataclasses import dataclass, field

from gradegen.design.formula import Formula
from gradegen.findings import Place


@dataclass(frozen=True, slots=True)
class Number:
    """A whole number as written: one for all sizes, one per size (None: `-`, size not worked), or a sum in braces.

    `places` holds one place per value, so that a wrong entry of a list can be pointed at.
    """

    values: tuple[int | None, ...] = ()
    formula: Formula | None = None
    place: Place = field(compare=False, kw_only=True)
    places: tuple[Place, ...] = field(default=(), compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Listed:
    """A size list or a `{sum}` wherever it stands in a text, prose included, for printing one size alone.

    `start`, `end`: offsets into the text it stands in. `values`: one printed text per size ("17½", "24", "-"), or ()
    when `formula` holds a sum of graded counts or a measure instead.
    """

    start: int
    end: int
    values: tuple[str, ...] = ()
    formula: Formula | None = None
