"""What a pattern's notes settle for its rows: turning chains, what inc and dec mean, the multiple."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from gradegen.design.rows import Definition


@dataclass(frozen=True, slots=True)
class ChainNote:
    """What a starting or turning chain counts as.

    `length`: chains (None: any length). `as_`: () it does not count, ("dc",), ("dc", "ch-2 sp"), ("st",) for "counts as
    a stitch". `before`: only before rows that begin with this stitch ("S c rnds have no counted ch"); None: any.
    """

    length: int | None
    as_: tuple[str, ...]
    before: str | None = None


@dataclass(frozen=True, slots=True)
class Multiple:
    """`Multiple of 14 + 1, plus 2 for the foundation ch`: k * of + plus stitches, and `extra` chains more.

    `of_stitches`: the words speak of stitches, so the chain itself need not be on it.
    """

    of: int
    plus: int
    extra: int
    of_stitches: bool = False


@dataclass(frozen=True, slots=True)
class NoteFacts:
    """All that the notes settle."""

    chains: tuple[ChainNote, ...] = ()
    definitions: Mapping[str, Definition] = field(default_factory=dict)
    multiple: Multiple | None = None
