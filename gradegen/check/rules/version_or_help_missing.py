"""What it finds.

A pattern without a version, or without an address to ask for help.

Why it matters.

Corrections happen. Without a version makers can't tell whether they have the corrected page, and without an address
nobody tells the designer.

Example.

    designer: {name: Demo House, year: 2026}

Written right.

    designer: {name: Demo House, help: help@example.org, year: 2026}

Whose rule.

Trade standard: patterns carry a version and an address for help and corrections.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("version-or-help-missing", Severity.WARNING, "trade standard", "Readers can't find corrections.")


def find(checked: Checked) -> Iterator[Finding]:
    """At most one finding, naming what is missing."""
    pattern = checked.pattern
    missing = [
        words
        for words, there in (
            ('a version (version: "1.0")', pattern.version),
            ("an address for help (designer: {help: ...})", pattern.designer and pattern.designer.help),
        )
        if not there
    ]
    if missing:
        designer = pattern.designer
        place = designer.name.place if designer and pattern.version else pattern.title.place
        yield RULE.at(
            place, "Readers can't find corrections to this pattern.", hint="Add " + " and ".join(missing) + "."
        )
