"""What it finds.

A gauge that does not say whether the swatch was measured blocked or unblocked.

Why it matters.

Washing changes a fabric, open ones most. A maker who compares an unblocked swatch with a blocked gauge changes her hook
for nothing.

Example.

    gauge:
      mesh: {stitches: 13, rows: 8, over: 4 in, hook: 5.5 mm}

Written right.

    gauge:
      mesh: {stitches: 13, rows: 8, over: 4 in, hook: 5.5 mm, state: blocked}

Whose rule.

Trade standard: a gauge names stitches and rows, the length, the stitch, the hook, and blocked or unblocked.
"""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity

RULE = Rule("blocking-not-stated", Severity.WARNING, "trade standard", "A gauge says neither blocked nor unblocked.")


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per gauge."""
    for gauge in checked.pattern.gauges.values():
        if gauge.state is None:
            yield RULE.at(
                gauge.place,
                f"The gauge {gauge.name} does not say whether the swatch was blocked.",
                hint="Add state: blocked, or state: unblocked.",
            )
