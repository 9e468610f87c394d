"""What every command ends with: an exit code, the findings on screen, and one closing line."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, TextIO

from gradegen.findings import Severity
from gradegen.write.screen.findings import Line, finding_lines, tally
from gradegen.write.screen.terminal import show_lines, show_text, width_of

if TYPE_CHECKING:
    from gradegen.design.checked import Checked
    from gradegen.pipeline import Outcome

CLEAN, ERRORS, UNREADABLE, INTERNAL = 0, 1, 2, 3


def exit_code(outcome: Outcome) -> int:
    """3 for a fault of ours, 2 for a file that could not be read, 1 for errors, else 0."""
    severities = {finding.severity for finding in outcome.findings}
    if Severity.INTERNAL in severities:
        return INTERNAL
    if outcome.checked is None:
        return UNREADABLE
    return ERRORS if Severity.ERROR in severities else CLEAN


def closing_lines(outcome: Outcome) -> list[Line]:
    """How many row-size pairs were proved, wrong and not checked, which rows were not and why, and the tally."""
    if outcome.checked is None:
        return [((f"{outcome.file} could not be read: {tally(outcome.findings)}.", "bold"),)]
    proved = outcome.proved
    pairs = proved.proved + proved.wrong + proved.not_checked
    counted = (
        f"{proved.proved} of {pairs} row-size pairs proved, {proved.wrong} wrong, {proved.not_checked} not checked"
    )
    return [*_not_checked(outcome.checked), ((f"{counted}; {tally(outcome.findings)}.", "bold"),)]


def _not_checked(checked: Checked) -> list[Line]:
    rows = [row for worked in checked.worked.values() for row in worked if row.applies and row.status == "not-checked"]
    prose = sorted({row.row.place.line for row in rows if row.why_not == "prose" and not row.label})
    whys = sorted({(row.row.place.line, row.label, row.why_not) for row in rows if row.row.place.line not in prose})
    lines: list[Line] = []
    for line, label, why in whys[:8]:
        lines.append(((f"not checked  line {line}  {label or 'a line'}{': ' if why else ''}{why}", "dim"),))
    if len(whys) > 8:
        lines.append(((f"not checked  and {len(whys) - 8} more rows", "dim"),))
    if prose:
        lines.append(((f"not checked  in words only, line {', '.join(map(str, prose))}", "dim"),))
    return lines


def show_findings(outcome: Outcome, stream: TextIO | None = None) -> None:
    """Shows all findings of a run, folded over sizes."""
    out = stream or sys.stdout
    sizes = [size.name for size in outcome.checked.sizes] if outcome.checked else []
    show_lines(finding_lines(outcome.findings, sizes, width_of(out)), out)


def refuse(message: str) -> int:
    """Says why a command can't run; the exit code for wrong arguments."""
    show_text(f"gradegen: {message}", sys.stderr)
    return UNREADABLE
