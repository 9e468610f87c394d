"""Where a datum comes from, and how far it can be trusted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

TRUST_MARKS = (
    "several published copies agree",
    "published copy seen",
    "common practice, no source",
    "from memory, unchecked",
)


@dataclass(frozen=True, slots=True)
class Source:
    """A published source: what, by whom, when, and where to look."""

    title: str
    publisher: str
    year: str
    address: str

    def __str__(self) -> str:
        return f"{self.title} ({self.publisher}, {self.year})"


def source_of(written: Mapping[str, Any]) -> Source:
    """A source block of a data file; parts it leaves out are "not known"."""
    parts = (str(written.get(part, "not known")) for part in ("title", "publisher", "year", "address"))
    return Source(*parts)
