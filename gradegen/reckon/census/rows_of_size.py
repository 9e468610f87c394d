"""A pattern as one size alone works it."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.pattern import Pattern


def for_one_size(pattern: Pattern, size: str) -> Pattern:
    """The pattern with its rows for one size alone."""
    pieces = tuple(
        replace(
            piece,
            rows=tuple(replace(row, sizes=(size,)) for row in piece.rows if row.sizes is None or size in row.sizes),
        )
        for piece in pattern.pieces
    )
    return replace(pattern, pieces=pieces)
