"""`gradegen grade --sensitivity`: what half a stitch does, what limits each measure, and what would come nearer."""

from __future__ import annotations

import argparse
import sys

from gradegen import pipeline
from gradegen.cli.answers import exit_code, refuse, show_findings
from gradegen.write.screen.terminal import is_for_a_person, show_rich, show_text, width_of


def show_sensitivity(options: argparse.Namespace) -> int:
    """Shows the tables, or the same for a program."""
    if options.csv:
        return refuse("--sensitivity is shown as tables or with --json.")
    if is_for_a_person(sys.stderr):
        show_text("trying other gauges and multiples ...", sys.stderr)
    found, outcome = pipeline.sensitivity_file(options.file)
    if found is None or outcome.checked is None:
        show_findings(outcome, sys.stderr)
        return exit_code(outcome)
    if options.json:
        from gradegen.write.sheets.machine_sensitivity import sensitivity_json

        show_text(sensitivity_json(found))
        show_findings(outcome, sys.stderr)
        return exit_code(outcome)
    from gradegen.write.screen.sensitivity import drift_table, sensitivity_tables, sensitivity_words

    inches_first = outcome.checked.pattern.units == "inches first"
    for table in sensitivity_tables(found, inches_first=inches_first, width=width_of(sys.stdout)):
        show_rich(table)
    show_rich(drift_table(found.limited, inches_first=inches_first))
    for words in sensitivity_words(found, inches_first=inches_first):
        show_text(words)
    show_findings(outcome)
    return exit_code(outcome)
