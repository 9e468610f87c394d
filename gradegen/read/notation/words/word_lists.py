"""Word lists as they are written in the reader: `words("row rows")`, `phrases("do not join|fasten off")`."""

from __future__ import annotations

from functools import lru_cache

Phrases = dict[str, tuple[tuple[str, ...], ...]]


def words(text: str) -> frozenset[str]:
    """The words of a text as a set."""
    return frozenset(text.split())


ROWS = words("row rows rnd rnds round rounds")


@lru_cache(maxsize=512)
def phrases(text: str) -> Phrases:
    """The phrases of a text, parted by |, by their first word; the longest first."""
    found: dict[str, list[tuple[str, ...]]] = {}
    for phrase in text.split("|"):
        parts = tuple(phrase.split())
        found.setdefault(parts[0], []).append(parts)
    return {first: tuple(sorted(group, key=len, reverse=True)) for first, group in found.items()}
