"""`gradegen yarn`, `any-size`, `companion`, and `fit --at --left`: what the work takes."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Literal, TextIO

from gradegen import pipeline
from gradegen.cli.answers import ERRORS, UNREADABLE, exit_code, refuse, show_findings
from gradegen.design.checked import Checked
from gradegen.design.formula import Amount
from gradegen.findings import Finding, Severity, Written
from gradegen.numbers.units import inches_of, kind_of
from gradegen.pipeline import Outcome
from gradegen.read.sums.formula import read_amount
from gradegen.read.time_stamps import Stamp, read_stamps
from gradegen.read.yaml.kinds import read_measure
from gradegen.write.screen.findings import finding_lines
from gradegen.write.screen.terminal import show_lines, show_prose, show_text, width_of


def yarn(options: argparse.Namespace) -> int:
    """Shows yarn, skeins, cost and time per size, with what they rest on; or the stitches of every size."""
    outcome = pipeline.check_file(options.file)
    checked = outcome.checked
    if checked is None or not checked.sizes:
        return _stopped(outcome)
    from gradegen.write.sheets.yarn_view_text import census_text, yarn_json, yarn_text

    checked = _in_units(checked, options.units)
    if options.stitches:
        show_text(census_text(checked))
        return exit_code(outcome)
    text, findings = (yarn_json if options.json else yarn_text)(checked)
    (show_text if options.json else show_prose)(text)
    _show(findings, checked, sys.stderr if options.json else sys.stdout)
    return exit_code(outcome)


def any_size(options: argparse.Namespace) -> int:
    """Shows every count that works between two widths, as text or lines for a spreadsheet, and as a page if wanted."""
    low, high, unreadable = _widths(options)
    if unreadable:
        return _unreadable(unreadable)
    outcome = pipeline.check_file(options.file)
    checked = outcome.checked
    if checked is None or not checked.sizes:
        return _stopped(outcome)
    from gradegen.reckon.any_size import any_size_sheet, usual_span
    from gradegen.write.sheets.any_size import any_size_csv, any_size_text, write_any_size

    usual = usual_span(checked)
    low, high = low or usual[0], high or usual[1]
    if low > high:
        return refuse("the narrowest width is wider than the widest.")
    checked = _in_units(checked, options.units)
    sheet, findings = any_size_sheet(checked, low, high)
    if sheet is None:
        _show(findings, checked, sys.stderr)
        return _code(findings, outcome)
    if options.csv:
        show_text(any_size_csv(sheet, checked))
    else:
        show_prose(any_size_text(sheet, checked))
    if options.out is not None:
        paths, found = write_any_size(sheet, checked, Path(options.out), options.paper)
        findings += found
        _name(paths, sys.stderr if options.csv else sys.stdout)
    _show(findings, checked, sys.stderr)
    return _code(findings, outcome)


def companion(options: argparse.Namespace) -> int:
    """Writes cue sheet, description and practice version, and names the files."""
    stamps, unreadable = _stamps(options.stamps)
    if unreadable:
        return _unreadable(unreadable)
    outcome = pipeline.check_file(options.file)
    checked = outcome.checked
    if checked is None or not checked.sizes:
        return _stopped(outcome)
    from gradegen.reckon.any_size import any_size_sheet, usual_span
    from gradegen.reckon.practice import practice_piece
    from gradegen.write.sheets.companion import write_companion

    sheet, findings = any_size_sheet(checked, *usual_span(checked))
    practice = practice_piece(checked)
    if practice is not None and sheet is None:
        findings = ()  # the description then names the sizes of the pattern and no others
    if practice is None:
        _show(findings, checked, sys.stderr)
        return _code(findings, outcome) or refuse("no small version of this pattern can be worked out.")
    paths, found = write_companion(checked, practice, sheet, Path(options.out), stamps, options.paper)
    _name(paths, sys.stdout)
    _show((*findings, *found), checked, sys.stderr)
    return _code((*findings, *found), outcome)


def yarn_left(options: argparse.Namespace) -> int:
    """Shows how far the yarn at hand goes after a row, and how often the repeat can still be worked."""
    if options.at is None or options.left is None or options.size is None:
        return refuse('to see how far your yarn goes, give --at "Rnd 14", --left "38 g" and --size M.')
    left, unreadable = _yarn_amount(options.left)
    if left is None:
        return _unreadable(unreadable)
    outcome = pipeline.check_file(options.file)
    checked = outcome.checked
    if checked is None or not checked.sizes:
        return _stopped(outcome)
    known = [size.name for size in checked.sizes]
    if options.size not in known:
        return refuse(f"there is no size {options.size} in {options.file}; its sizes are {', '.join(known)}.")
    from gradegen.reckon.yarn.left import yarn_left as reckon_left
    from gradegen.write.sheets.yarn_view_left import left_json, left_text

    found, findings = reckon_left(checked, options.size, options.at, left, options.yarn)
    if found is None:
        _show(findings, checked, sys.stderr)
        return UNREADABLE
    metric = left.unit in ("m", "cm") or checked.pattern.units == "centimetres first"
    show_text(left_json(found) if options.json else left_text(found, metric))
    _show(findings, checked, sys.stderr)
    return exit_code(outcome)


def _in_units(checked: Checked, first: str | None) -> Checked:
    """With inches or centimetres first, as asked for."""
    if first is None:
        return checked
    units: Literal["inches first", "centimetres first"] = "inches first" if first == "in" else "centimetres first"
    return replace(checked, pattern=replace(checked.pattern, units=units))


def _widths(options: argparse.Namespace) -> tuple[Fraction | None, Fraction | None, tuple[Finding, ...]]:
    found: list[Fraction | None] = []
    findings: tuple[Finding, ...] = ()
    for name, text in (("--from", options.low), ("--to", options.high)):
        amount, more = read_measure(Written.plain(text, name), "length", "20 in") if text is not None else (None, ())
        findings += more
        found.append(inches_of(amount) if amount is not None else None)
    return found[0], found[1], findings


def _yarn_amount(text: str) -> tuple[Amount | None, tuple[Finding, ...]]:
    written = Written.plain(text, "--left")
    amount, _ = read_amount(written)
    kind = "length" if amount is not None and kind_of(amount.unit) == "length" else "mass"
    return read_measure(written, kind, "38 g")


def _stamps(path: str | None) -> tuple[tuple[Stamp, ...], tuple[Finding, ...]]:
    if path is None:
        return (), ()
    from gradegen.read.files import open_text

    written, findings = open_text(Path(path))
    return ((), findings) if written is None else read_stamps(written)


def _show(findings: Iterable[Finding], checked: Checked, stream: TextIO) -> None:
    sizes = [size.name for size in checked.sizes]
    lines = finding_lines(pipeline.sorted_findings(findings, sizes), sizes, width_of(stream))
    show_lines(lines, stream)


def _name(paths: Iterable[Path], stream: TextIO) -> None:
    for path in paths:
        show_text(str(path), stream)


def _stopped(outcome: Outcome) -> int:
    show_findings(outcome, sys.stderr)
    return exit_code(outcome) or UNREADABLE


def _code(findings: Iterable[Finding], outcome: Outcome) -> int:
    errors = any(finding.severity is Severity.ERROR for finding in findings)
    return exit_code(outcome) or (ERRORS if errors else 0)


def _unreadable(findings: Iterable[Finding]) -> int:
    show_lines(finding_lines(tuple(findings), (), width_of(sys.stderr)), sys.stderr)
    return UNREADABLE
