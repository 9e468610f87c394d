"""A value per size, put together the way the trade prints it: `84 (90, 96) (102, 108, 114)`."""

from __future__ import annotations

from collections.abc import Sequence

MOST_IN_BRACKETS = 4
NOT_WORKED = "–"


def groups_of(sizes: int) -> tuple[int, ...]:
    """How many values stand in each pair of brackets after the first value: even, the fuller ones last, four at most.

    Four can be told apart at a glance; the shape depends on the number of sizes alone, so it is the same everywhere.
    """
    rest = sizes - 1
    if rest < 1:
        return ()
    groups = -(-rest // MOST_IN_BRACKETS)
    least, fuller = divmod(rest, groups)
    return (least,) * (groups - fuller) + (least + 1,) * fuller


def fold(values: Sequence[str]) -> tuple[str, ...]:
    """The value that all sizes share, or the first value and each bracket group; no piece may break over a line."""
    printed = [NOT_WORKED if value in ("", "-") else value for value in values]
    if len(set(printed)) <= 1:
        return tuple(printed[:1])
    pieces, start = [printed[0]], 1
    for many in groups_of(len(printed)):
        pieces.append("(" + ", ".join(printed[start : start + many]) + ")")
        start += many
    return tuple(pieces)


def folded(values: Sequence[str]) -> str:
    """The same as one text."""
    return " ".join(fold(values))
