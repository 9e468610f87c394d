"""`gradegen testers`: the forms that testers sent back, read and merged."""

from __future__ import annotations

import argparse
import sys
from typing import TYPE_CHECKING

from gradegen import pipeline
from gradegen.cli.answers import CLEAN, ERRORS, INTERNAL, UNREADABLE, exit_code, refuse, show_findings
from gradegen.findings import Finding, Severity
from gradegen.write.screen.findings import finding_lines, tally
from gradegen.write.screen.terminal import show_lines, show_rich, show_text, width_of

if TYPE_CHECKING:
    from gradegen.reckon.testers.tested import Tested


def testers(options: argparse.Namespace) -> int:
    """Shows what the forms of a folder say together, or the same for a program."""
    if options.evidence and options.pattern is None:
        return refuse("to give weights for the pattern file, name it: --pattern FILE.")
    outcome = pipeline.check_file(options.pattern) if options.pattern is not None else None
    if outcome is not None and (outcome.checked is None or not outcome.checked.sizes):
        show_findings(outcome, sys.stderr)
        return exit_code(outcome) or UNREADABLE
    checked = outcome.checked if outcome else None
    tested, findings = pipeline.merge_forms_in(options.folder, checked)
    sizes = [size.name for size in checked.sizes] if checked else []
    if options.json or options.csv or options.evidence:
        _for_a_program(options, tested, findings)
        if not options.json:
            show_lines(finding_lines(findings, sizes, width_of(sys.stderr)), sys.stderr)
        return _code(findings, bool(tested))
    inches_first = checked is None or checked.pattern.units == "inches first"
    for one in tested:
        _show(one, inches_first)
    show_lines(finding_lines(findings, sizes, width_of(sys.stdout)))
    merged = sum(len(one.forms) for one in tested)
    show_lines([((f"{merged} form{'' if merged == 1 else 's'} merged; {tally(findings)}.", "bold"),)])
    return _code(findings, bool(tested))


def _show(tested: Tested, inches_first: bool) -> None:
    from gradegen.write.screen.testers import head_line, tester_tables, told_lines

    show_lines([((head_line(tested), "bold"),), ()])
    for table in tester_tables(tested, inches_first=inches_first):
        show_rich(table)
    show_lines([*told_lines(tested), ()])


def _for_a_program(options: argparse.Namespace, tested: tuple[Tested, ...], findings: tuple[Finding, ...]) -> None:
    if options.evidence:
        from gradegen.write.screen.testers import evidence_text

        show_text("\n".join(filter(None, map(evidence_text, tested))) or "# no new weights in these forms")
        return
    from gradegen.write.sheets.machine_testers import testers_csv, testers_json

    show_text(testers_json(tested, findings) if options.json else testers_csv(tested))


def _code(findings: tuple[Finding, ...], has_forms: bool) -> int:
    severities = {finding.severity for finding in findings}
    if Severity.INTERNAL in severities:
        return INTERNAL
    if not has_forms:
        return UNREADABLE
    return ERRORS if Severity.ERROR in severities else CLEAN
