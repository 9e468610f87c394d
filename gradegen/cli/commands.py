"""What each command does: one pipeline call, then screen or machine, then an exit code."""

from __future__ import annotations

import argparse
import json
import re
import sys
from typing import TYPE_CHECKING

from gradegen import pipeline
from gradegen.cli.answers import CLEAN, ERRORS, UNREADABLE, closing_lines, exit_code, refuse, show_findings
from gradegen.findings import Severity
from gradegen.write.screen.findings import finding_lines
from gradegen.write.screen.terminal import show_lines, show_rich, show_text, width_of
from gradegen.write.sheets import machine

if TYPE_CHECKING:
    from gradegen.design.pattern import Pattern


def check(options: argparse.Namespace) -> int:
    """Reports what contradicts what, in every size."""
    if options.sizes or options.terms:
        if not options.file.lower().endswith(".txt"):
            return refuse("--sizes and --terms are for plain text files (.txt); a pattern file says both itself.")
        outcome = pipeline.check_text(options.file, _listed(options.sizes), options.terms)
    else:
        outcome = pipeline.check_file(options.file)
    if options.json:
        proved = outcome.proved
        timings = outcome.timings if options.timings else None
        show_text(machine.findings_json(outcome.findings, proved.proved, proved.wrong, proved.not_checked, timings))
        return exit_code(outcome)
    show_findings(outcome)
    show_lines(closing_lines(outcome))
    if options.timings:
        show_lines([((f"{stage:<6} {seconds * 1000:7.1f} ms", "dim"),) for stage, seconds in outcome.timings.items()])
    return exit_code(outcome)


def _listed(sizes: str | None) -> list[str] | None:
    """Sizes as typed: parted by commas, else by blanks; brackets around the larger ones are taken off."""
    if sizes is None:
        return None
    plain = re.sub(r"[()\[\]]", ",", sizes) if "," in sizes or "(" in sizes else sizes.replace(" ", ",")
    return [size for part in plain.split(",") if (size := part.strip())]


def grade(options: argparse.Namespace) -> int:
    """Shows the graded counts and measures, or a body size table."""
    if options.table is not None:
        return _show_size_table(options)
    if options.file is None:
        return refuse("name a pattern file, or a size table with --table.")
    if options.file.lower().endswith(".txt"):
        return refuse("a plain text file holds no gauge and no measures to grade by; check works its rows.")
    if options.sensitivity:
        from gradegen.cli.sensitivity import show_sensitivity

        return show_sensitivity(options)
    outcome = pipeline.grade_file(options.file)
    checked = outcome.checked
    if checked is None or not checked.sizes:
        show_findings(outcome, sys.stderr)
        return exit_code(outcome)
    if options.json or options.csv:
        show_text(machine.grading_json(checked.sizes) if options.json else machine.grading_csv(checked.sizes))
        show_findings(outcome, sys.stderr)
        return exit_code(outcome)
    from gradegen.write.screen.tables import grading_tables

    inches_first = checked.pattern.units == "inches first"
    tables = grading_tables(checked.sizes, checked.table, inches_first=inches_first, width=width_of(sys.stdout))
    from gradegen.grade.ask.sensitivity import limited_counts
    from gradegen.write.screen.sensitivity import drift_table

    limited = limited_counts(checked.pattern, checked.sizes)
    for table in [*tables, *([drift_table(limited, inches_first=inches_first)] if limited else [])]:
        show_rich(table)
    if checked.pattern.scheduled:
        _show_shaping(checked.pattern)
    show_findings(outcome)
    return exit_code(outcome)


def _show_shaping(pattern: Pattern) -> None:
    from gradegen.write.screen.shaping import merged_tables, shaping_lines

    show_lines([(("shaping", "bold"),), *(((line, ""),) for line in shaping_lines(pattern)), (("", ""),)])
    for table in merged_tables(pattern, width_of(sys.stdout)):
        show_rich(table)


def _show_size_table(options: argparse.Namespace) -> int:
    if options.file is not None:
        return refuse("name a pattern or a size table, not both.")
    table, findings = pipeline.read_table(options.table)
    if table is None:
        show_lines(finding_lines(findings, (), width_of(sys.stderr)), sys.stderr)
        return UNREADABLE
    if options.json or options.csv:
        show_text(machine.size_table_json(table) if options.json else machine.size_table_csv(table))
        return CLEAN
    from gradegen.write.screen.tables import size_table_words, size_tables

    for part in size_tables(table, width_of(sys.stdout)):
        show_rich(part)
    for words in size_table_words(table):
        show_text(words)
    show_lines(finding_lines(findings, table.sizes, width_of(sys.stdout)))
    return ERRORS if any(finding.severity is Severity.ERROR for finding in findings) else CLEAN


def schema(options: argparse.Namespace) -> int:
    """Prints the JSON Schema of pattern or size-table files."""
    from gradegen.read.schema import json_schema

    show_text(json.dumps(json_schema("pattern" if options.what == "pattern" else "size table"), indent=2))
    return CLEAN
