"""`gradegen fit`: the maker between the sizes."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable

from gradegen import pipeline
from gradegen.cli.answers import ERRORS, UNREADABLE, exit_code, refuse, show_findings
from gradegen.findings import Finding
from gradegen.read.makers_own import read_body, read_own_gauge
from gradegen.write.screen.findings import finding_lines
from gradegen.write.screen.terminal import show_lines, show_rich, show_text, width_of
from gradegen.write.sheets import machine


def fit(options: argparse.Namespace) -> int:
    """Shows her own counts and finished measures, and the nearest printed size with the reason."""
    if options.at is not None or options.left is not None:
        from gradegen.cli.reckon import yarn_left

        return yarn_left(options)
    if options.body is None:
        return refuse('give a body, --body "bust=41 in"; or --at, --left and --size to see how far your yarn goes.')
    body, findings = read_body(options.body)
    gauge, more = read_own_gauge(options.gauge) if options.gauge is not None else (None, ())
    if findings or more:
        return _unreadable((*findings, *more))
    fitted, outcome = pipeline.fit_file(options.file, body, gauge)
    if fitted is None or outcome.checked is None:
        show_findings(outcome, sys.stderr)
        code = exit_code(outcome)
        return UNREADABLE if code == ERRORS and outcome.checked and outcome.checked.sizes else code
    if options.json:
        show_text(machine.fit_json(fitted.own, fitted.taken, fitted.nearest))
        show_findings(outcome, sys.stderr)
        return exit_code(outcome)
    from gradegen.write.screen.tables import fit_table

    nearest = fitted.nearest
    printed = next((size for size in outcome.checked.sizes if nearest and size.name == nearest.size), None)
    show_rich(fit_table(fitted.own, printed, inches_first=outcome.checked.pattern.units == "inches first"))
    if nearest is not None:
        show_text(f"nearest printed size: {nearest.size} ({nearest.why})")
    show_findings(outcome)
    return exit_code(outcome)


def _unreadable(findings: Iterable[Finding]) -> int:
    show_lines(finding_lines(findings, (), width_of(sys.stderr)), sys.stderr)
    return UNREADABLE
