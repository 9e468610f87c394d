"""The sizes a phrase names: `M, L and XL only`."""

from __future__ import annotations

import re

_NOISE = re.compile(r"\b(?:sizes?|only|for|the)\b")
_BETWEEN = re.compile(r",|;|/|\band\b|&|\bor\b")


def sizes_named(said: str, sizes: tuple[str, ...]) -> tuple[str, ...] | None:
    """The sizes in the pattern's order; None when any word is no size."""
    parts = [part.strip(" .") for part in _BETWEEN.split(_NOISE.sub(" ", said.lower()))]
    parts = [part for part in parts if part]
    known = {size.lower(): size for size in sizes}
    if not parts or any(part not in known for part in parts):
        return None
    wanted = {known[part] for part in parts}
    return tuple(size for size in sizes if size in wanted)
