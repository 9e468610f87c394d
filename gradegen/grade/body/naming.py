"""What the names in sums stand for: body columns, measures and counts, whatever their capitals and blanks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from gradegen.design.formula import Name
from gradegen.design.pattern import Pattern
from gradegen.design.sizes import SizeTable
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import folded
from gradegen.read.yaml.fields import nearest

UNKNOWN_NAME = Rule(
    "unknown-name", Severity.ERROR, "file format", "A sum names neither a body column, nor a measure, nor a count."
)
NAME_HAS_TWO_MEANINGS = Rule(
    "name-has-two-meanings", Severity.NOTE, "house", "A name is a measure's and a body column's; the measure is meant."
)

What = Literal["body", "measure", "count", "chain"]


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a name stands for, under the name it has in its own list."""

    what: What
    name: str


@dataclass(frozen=True, slots=True)
class Naming:
    """Every name a sum may use, folded, to the name as it was given."""

    columns: Mapping[str, str]
    measures: Mapping[str, str]
    counts: Mapping[str, str]

    @classmethod
    def of(cls, pattern: Pattern, table: SizeTable) -> Naming:
        """The names of one pattern and its size table."""
        lists = (table.columns, pattern.measures, pattern.counts)
        return cls(*({folded(name): name for name in names} for names in lists))

    def meaning(self, name: Name, own: str | None = None) -> Meaning | None:
        """What a name stands for; a measure's own name within its own sum is the body column."""
        plain = folded(name.name)
        if plain in self.measures and self.measures[plain] != own:
            return Meaning("measure", self.measures[plain])
        if plain in self.columns:
            return Meaning("body", self.columns[plain])
        if plain in self.counts:
            return Meaning("count", self.counts[plain])
        return self._said_in_full(plain)

    def meaning_among_counts(self, name: Name) -> Meaning | None:
        """What a name stands for between counts, where a measure of the same name does not come first."""
        plain = folded(name.name)
        return Meaning("count", self.counts[plain]) if plain in self.counts else self.meaning(name)

    def _said_in_full(self, plain: str) -> Meaning | None:
        """`body bust` for the column where a measure has its name too; `band chain` for the chain of a count."""
        if plain.startswith("body ") and plain[5:] in self.columns:
            return Meaning("body", self.columns[plain[5:]])
        if plain.endswith(" chain") and plain[:-6] in self.counts:
            return Meaning("chain", self.counts[plain[:-6]])
        return None

    def has_two_meanings(self, name: Name, own: str | None) -> bool:
        """True when the name is a column's too, and the measure of that name is meant."""
        plain = folded(name.name)
        return plain in self.columns and plain in self.measures and self.measures[plain] != own

    def unknown(self, name: Name, own: str | None = None) -> Finding:
        """The finding for a name nobody knows, with the nearest known one."""
        known = (*self.measures.values(), *self.columns.values(), *self.counts.values())
        guess = nearest(name.name, tuple(one for one in known if one != own))
        parts = [folded(part) for part in name.name.split("-")]
        if len(parts) > 1 and all(part in {folded(one) for one in known} for part in parts):
            return UNKNOWN_NAME.at(
                name.place, f"There is no {name.name} here.", hint=f"{' - '.join(parts)}, with blanks"
            )
        if guess:
            return UNKNOWN_NAME.at(name.place, f"There is no {name.name} here.", hint=f"Did you mean {guess}?")
        listed = ", ".join(known[:12]) or "none"
        return UNKNOWN_NAME.at(name.place, f"There is no {name.name} here.", hint=f"Known names: {listed}.")


def two_meanings(name: Name) -> Finding:
    """The note that the measure is meant, and how to say the other."""
    message = f"{name.name} is a measure here and a body column too; the finished measure is taken."
    return NAME_HAS_TWO_MEANINGS.at(name.place, message, hint=f"body {name.name}")
