"""`gradegen explain`: a row step by step in one size, or what a rule finds and why it matters."""

from __future__ import annotations

import argparse
import re
import sys
from typing import TYPE_CHECKING

from gradegen import pipeline
from gradegen.cli.answers import CLEAN, exit_code, refuse, show_findings
from gradegen.write.screen.terminal import show_lines, show_text, width_of

if TYPE_CHECKING:
    from gradegen.design.checked import Checked
    from gradegen.design.worked import WorkedRow

A_ROW = re.compile(r"(?P<file>.+?):(?P<line>[0-9]{1,7})(?::[0-9]+)?", re.DOTALL)


def explain(options: argparse.Namespace) -> int:
    """Shows one row as worked, or one rule."""
    found = A_ROW.fullmatch(options.what)
    if found is None:
        return _explain_rule(options.what)
    return _explain_row(found["file"], int(found["line"]), options.size)


def _explain_rule(name: str) -> int:
    from gradegen.cli.rules import nearest_rules, rule_docs

    docs = rule_docs(name)
    if docs is None:
        near = ", ".join(nearest_rules(name))
        return refuse(f"there is no rule {name}; {f'near it: {near}' if near else 'for a row, give FILE:LINE'}.")
    show_text(docs)
    return CLEAN


def _explain_row(file: str, line: int, size: str | None) -> int:
    outcome = pipeline.check_file(file, tracing=line)
    checked = outcome.checked
    if checked is None or not checked.sizes:
        show_findings(outcome, sys.stderr)
        return exit_code(outcome)
    known = [graded.name for graded in checked.sizes]
    if size is not None and size not in known:
        return refuse(f"there is no size {size} in {file}; its sizes are {', '.join(known)}.")
    rows = rows_at(checked, line, size or known[0])
    if not rows:
        return refuse(f"no row stands on line {line} of {file}; {_near(checked, line)}.")
    from gradegen.write.screen.explain import explained_row
    from gradegen.write.screen.findings import finding_lines

    for row in rows:
        show_lines([*explained_row(row), ()])
        told = {(finding.rule, finding.place, finding.size) for finding in row.findings}
        here = [one for one in outcome.findings if (one.rule, one.place, one.size) in told]
        show_lines(finding_lines(here, known, width_of(sys.stdout)))
    return CLEAN


def rows_at(checked: Checked, line: int, size: str) -> list[WorkedRow]:
    """The worked rows of one size that are written on this line of the file."""
    rows = checked.worked.get(size, ())
    return [row for row in rows if row.row.place.line <= line <= row.row.place.end_line]


def _near(checked: Checked, line: int) -> str:
    lines = sorted({row.row.place.line for rows in checked.worked.values() for row in rows})
    if not lines:
        return "the pattern has no rows"
    nearest = min(lines, key=lambda other: abs(other - line))
    return f"the nearest row stands on line {nearest}"
