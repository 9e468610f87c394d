"""The engine's nested edges written out, for comparing. Only this file knows how the engine keeps an edge."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any


def plain(edge: Iterable[Any]) -> list[str]:
    """The names of an edge, one entry for each stitch and space."""
    items: list[str] = []
    for item in edge:
        if hasattr(item, "times"):
            items += plain(item.items) * item.times
        elif item.kind == "sp":
            items.append(f"ch-{item.length} sp")
        else:
            items.append(item.name if item.kind in ("st", "gap") else item.kind)
    return items
