"""What it finds.

A finished upper arm smaller than the body's, in a garment that is larger than the body around the bust or chest; or
one that fitting the stitch pattern left more than half an inch tighter than planned.

Why it matters.

A sleeve that grips the arm is the fault makers above a 40 in bust name first. Upper arms grow as fast as busts do,
unlike necks and lengths.

Example.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      upper arm: body upper arm - 0.5 in

Written right.

    measures:
      around: bust + 3 in
      depth: "[10, 10, 11, 11, 12] in"
      upper arm: body upper arm + 2 in

Whose rule.

House: half an inch is our default. That sleeves are too tight for large sizes comes from a survey of 848 makers.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.check.garment import growing_parts, words_of
from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import folded

RULE = Rule("arm-tighter-than-planned", Severity.WARNING, "house", "The upper arm is tighter than the ease says.")
MOST = Fraction(1, 2)


def find(checked: Checked) -> Iterator[Finding]:
    """One finding per size whose upper arm is too tight."""
    column = next((name for name in checked.table.columns if folded(name) == "upper arm"), None)
    words = words_of(checked)
    for growing in growing_parts(checked, "upper arm") if column is not None else ():
        for size in growing.sizes:
            arm, body = size.measures[growing.measure.name], size.graded_body.get(column or "")
            if body is None:
                continue
            grips = arm.printed < body and (size.ease is None or size.ease >= 0)
            if grips or arm.target - arm.printed > MOST:
                yield RULE.at(
                    growing.place(size),
                    f"{growing.measure.name} is smaller than the arm it is for."
                    if grips
                    else f"Fitting the stitch pattern left {growing.measure.name} tighter than planned.",
                    size=size.name,
                    expected=words.length(max(arm.target, body) if grips else arm.target),
                    found=words.length(arm.printed),
                    because=f"the body's upper arm is {words.length(body)}; {growing.why}",
                )
