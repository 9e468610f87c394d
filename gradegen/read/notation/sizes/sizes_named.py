"""The sizes a phrase names: `M, L and XL only`, `M to XL`, `L and larger`, `all sizes`."""

from __future__ import annotations

import re

_NOISE = re.compile(r"\b(?:sizes?|only|for|the)\b")
_UNITS = re.compile(r"\b(?:years?|yrs?|months?|mos?|cm|inch(?:es)?|in)\b\.?")
_BETWEEN = re.compile(r",|;|/|[()\[\]]|\band\b|&|\bor\b")
_SPAN = re.compile(r"(.+?)\s*(?:-|–|—|\bto\b|\bthrough\b|\bthru\b)\s*(.+)")
_UP = re.compile(r"(.+?)\s*(?:and|&)\s*(?:up|larger|above|over|bigger)$")
_DOWN = re.compile(r"(.+?)\s*(?:and|&)\s*(?:down|smaller|below|under)$")


def sizes_named(said: str, sizes: tuple[str, ...]) -> tuple[str, ...] | None:
    """The sizes in the pattern's order; None when any word is no size."""
    words = " ".join(_NOISE.sub(" ", said.lower()).strip(" .:").split())
    known = {size.lower(): size for size in sizes}
    if not any(_UNITS.search(size) for size in known):
        words = " ".join(_UNITS.sub(" ", words).split())
    if words in ("all", "every") and words not in known:
        return sizes
    for pattern, upward in ((_UP, True), (_DOWN, False)):
        found = pattern.fullmatch(words)
        if found is not None and found[1] in known:
            at = sizes.index(known[found[1]])
            return sizes[at:] if upward else sizes[: at + 1]
    parts = [words] if words in known else [part.strip(" .") for part in _BETWEEN.split(words)]
    wanted: set[str] = set()
    for part in parts:
        if not part:
            continue
        span = _spanned(part, sizes, known)
        if span is None:
            return None
        wanted.update(span)
    return tuple(size for size in sizes if size in wanted) if wanted else None


def _spanned(part: str, sizes: tuple[str, ...], known: dict[str, str]) -> tuple[str, ...] | None:
    """One size, or `M to XL`."""
    if part in known:
        return (known[part],)
    found = _SPAN.fullmatch(part)
    if found is None or found[1] not in known or found[2] not in known:
        return None
    first, last = sizes.index(known[found[1]]), sizes.index(known[found[2]])
    return sizes[first : last + 1] if first < last else None
