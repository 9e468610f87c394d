"""Sizes that are only names: for a text pattern, which is proved but not graded."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Pattern
from gradegen.design.sizes import SizeTable


def plain_sizes(names: Sequence[str]) -> tuple[GradedSize, ...]:
    """One size per name, with no body, measures or counts."""
    return tuple(GradedSize(name, i, "adult", {}, {}, None, {}, {}) for i, name in enumerate(names))


def plain_table(pattern: Pattern, names: Sequence[str]) -> SizeTable:
    """A size table with names and no columns."""
    return SizeTable(
        name="",
        file=pattern.file,
        title="",
        publisher="",
        year="",
        address="",
        wearer="adult",
        by="",
        sizes=tuple(names),
        columns={},
        oddities=(),
        place=pattern.place,
    )
