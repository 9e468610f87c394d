"""One finding: what contradicts what, where, in which size, and why."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from gradegen.findings.place import Place


class Severity(StrEnum):
    """How grave a finding is; later members are graver."""

    NOTE = "note"
    WARNING = "warning"
    ERROR = "error"
    INTERNAL = "internal"


@dataclass(frozen=True, slots=True)
class Finding:
    """One fault at one place in one size; many are folded to one line only for the eye.

    `expected` and `found` are texts in the user's units, both or neither. `because` is the working. `hint` is a
    repair to paste and is never applied by itself. `follows` names the rule of the finding that caused this one.
    """

    rule: str
    severity: Severity
    place: Place
    message: str
    size: str | None = None
    row: str | None = None
    expected: str | None = None
    found: str | None = None
    because: str | None = None
    hint: str | None = None
    see_also: tuple[tuple[Place, str], ...] = ()
    follows: str | None = None
