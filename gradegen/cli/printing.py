"""`gradegen print`: one PDF, or one per size in parallel processes with a bar that moves."""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from pathlib import Path
from typing import TYPE_CHECKING

from gradegen import pipeline
from gradegen.cli.answers import CLEAN, ERRORS, INTERNAL, exit_code, refuse, show_findings
from gradegen.cli.print_options import editions_asked, wanted_sizes
from gradegen.findings import Severity
from gradegen.write.screen.findings import finding_lines, tally
from gradegen.write.screen.terminal import console, is_for_a_person, show_lines, show_text, width_of

if TYPE_CHECKING:
    from gradegen.design.checked import Checked
    from gradegen.pipeline import Outcome, Printed
    from gradegen.write.page.press import Press


def print_pattern(options: argparse.Namespace) -> int:
    """Writes the PDF files and names them; a pattern with errors is refused unless a draft is wanted."""
    from gradegen.write.page.press import start_press

    if options.all_sizes or options.editions or options.form or options.style == "spoken":
        return _print(options, None)
    with start_press() or nullcontext() as press, _nothing_collected():
        return _print(options, press)


@contextmanager
def _nothing_collected() -> Iterator[None]:
    """No search for unused memory in the one short run of a document: it costs a tenth of the time."""
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


def _print(options: argparse.Namespace, press: Press | None) -> int:
    outcome = pipeline.check_file(options.file)
    checked = outcome.checked
    if checked is None:
        show_findings(outcome, sys.stderr)
        return exit_code(outcome)
    known = [size.name for size in checked.sizes]
    for name in wanted_sizes(options):
        if name not in known:
            return refuse(f"there is no size {name} in {options.file}; its sizes are {', '.join(known)}.")
    if not options.draft and exit_code(outcome) != CLEAN:
        return _refused(outcome)
    editions = editions_asked(options, checked.pattern, known)
    jobs = options.jobs or os.cpu_count() or 1
    printed = _with_bar(pipeline.print_editions(checked, editions, jobs, press), len(editions))
    index = _index(checked, printed) if options.editions else ()
    if options.also:
        printed.append(pipeline.print_also(checked, editions[0], options.also))
    return _report(printed, known, index)


def _index(checked: Checked, printed: list[Printed]) -> tuple[Path, ...]:
    from gradegen.write.editions.index import write_index

    return write_index(checked, [(one.edition, one.paths) for one in printed])


def _refused(outcome: Outcome) -> int:
    show_findings(outcome, sys.stderr)
    errors = tally(finding for finding in outcome.findings if finding.severity != Severity.NOTE)
    show_text(f"Not printed: {errors}. Put them right, or print a draft with --draft.", sys.stderr)
    return exit_code(outcome) or ERRORS


def _with_bar(printed: Iterator[Printed], total: int) -> list[Printed]:
    if total == 1 or not is_for_a_person(sys.stderr):
        return list(printed)
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeElapsedColumn

    columns = (TextColumn("printing"), BarColumn(), MofNCompleteColumn(), TextColumn("documents"), TimeElapsedColumn())
    with Progress(*columns, console=console(sys.stderr), transient=True) as bar:
        return list(bar.track(printed, total=total))


def _report(printed: list[Printed], sizes: list[str], index: tuple[Path, ...]) -> int:
    findings = [finding for one in printed for finding in one.findings]
    show_lines(finding_lines(pipeline.sorted_findings(findings, sizes), sizes, width_of(sys.stderr)), sys.stderr)
    for one in printed:
        for path in one.paths:
            show_text(str(path))
    for path in index:
        show_text(str(path))
    severities = {finding.severity for finding in findings}
    if Severity.INTERNAL in severities:
        return INTERNAL
    return ERRORS if Severity.ERROR in severities else CLEAN
