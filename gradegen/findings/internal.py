"""A fault of our own, told as a finding: the rest of the run goes on."""

from __future__ import annotations

import traceback
from pathlib import Path

from gradegen.findings.finding import Finding, Severity
from gradegen.findings.place import Place
from gradegen.findings.rule import Rule

INTERNAL = Rule("internal", Severity.INTERNAL, "house", "A part of gradegen failed: a fault in the program.")


def fault_finding(part: str, fault: Exception, place: Place) -> Finding:
    """The one finding that stands for a failed part, with the spot in our code for whoever mends it."""
    frames = traceback.extract_tb(fault.__traceback__)
    where = f"{Path(frames[-1].filename).name}, line {frames[-1].lineno}" if frames else "an unknown spot"
    return INTERNAL.at(
        place,
        f"{part} failed on this pattern. This is a fault in gradegen, not in your pattern.",
        because=f"{type(fault).__name__} in {where}: {str(fault)[:200]}",
        hint="Please report it with the pattern; what the other parts found still stands.",
    )
