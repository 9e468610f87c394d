"""Project levels: what a pattern asks of its maker."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from gradegen.trade.sources import Source, source_of
from gradegen.trade.tables import read_table


@dataclass(frozen=True, slots=True)
class ProjectLevel:
    """One level: its name, what it covers, and the name of the older set in the same position."""

    number: int
    name: str
    covers: str
    older_name: str
    source: Source
    trust: str


@cache
def project_levels() -> tuple[ProjectLevel, ...]:
    """The four levels, the simplest first."""
    table = read_table("project_levels")
    source = source_of(table["source"])
    return tuple(
        ProjectLevel(level["number"], level["name"], level["covers"], level["older name"], source, table["trust"])
        for level in table["levels"]
    )


def find_level(words: str) -> ProjectLevel | None:
    """The level of that name, new or older, or number."""
    level = words.strip().casefold()
    return next(
        (known for known in project_levels() if level in (known.name.casefold(), str(known.number))),
        next((known for known in project_levels() if level == known.older_name.casefold()), None),
    )
