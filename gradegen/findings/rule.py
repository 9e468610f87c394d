"""A rule: the name of one fault, how grave it is, and whose rule it is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from gradegen.findings.finding import Finding, Severity
from gradegen.findings.place import Place

Whose = Literal["arithmetic", "trade standard", "common practice", "house", "file format"]


@dataclass(frozen=True, slots=True)
class Rule:
    """One fault by its stable, kebab-case name; every finding is made by calling its rule."""

    id: str
    severity: Severity
    whose: Whose
    about: str

    def at(
        self,
        place: Place,
        message: str,
        *,
        size: str | None = None,
        row: str | None = None,
        expected: str | None = None,
        found: str | None = None,
        because: str | None = None,
        hint: str | None = None,
        see_also: tuple[tuple[Place, str], ...] = (),
        follows: str | None = None,
        severity: Severity | None = None,
    ) -> Finding:
        """This fault at one place, in one size (None: it concerns all)."""
        return Finding(
            self.id,
            severity or self.severity,
            place,
            message,
            size,
            row,
            expected,
            found,
            because,
            hint,
            see_also,
            follows,
        )
