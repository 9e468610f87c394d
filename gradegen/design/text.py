"""Prose as written, with the size lists and sums that stand in it."""

from __future__ import annotations

from dataclasses import dataclass, field

from gradegen.design.number import Listed
from gradegen.findings import Place


@dataclass(frozen=True, slots=True)
class Text:
    """A stretch of prose with its place, and the size lists and `{names}` that stand in it."""

    text: str
    place: Place = field(compare=False)
    lists: tuple[Listed, ...] = field(default=(), compare=False)
