"""The one conductor: runs the stages in order, gathers their findings, times each, and survives a fault of our own."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from gradegen.findings import Finding, Place
from gradegen.findings.internal import fault_finding

if TYPE_CHECKING:
    from gradegen.design.checked import Checked
    from gradegen.design.graded import GradedSize
    from gradegen.design.pattern import Gauge, Pattern, Terms
    from gradegen.design.sizes import SizeTable
    from gradegen.design.testing import FilledForm
    from gradegen.design.worked import WorkedRow
    from gradegen.grade import Fitted
    from gradegen.grade.ask.sensitivity import Sensitivity
    from gradegen.reckon.testers.tested import Tested
    from gradegen.write.editions.edition import Edition
    from gradegen.write.page.press import Press

Result = TypeVar("Result")
Findings = tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Proved:
    """How many row-size pairs were proved, wrong, and not checked."""

    proved: int
    wrong: int
    not_checked: int


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a run over one file gave; `checked` is None when the file could not be read.

    `findings` are sorted by place, rule and size; `timings` are seconds per stage, in order.
    """

    file: str
    checked: Checked | None
    findings: Findings
    timings: Mapping[str, float] = field(default_factory=dict)

    @property
    def proved(self) -> Proved:
        """The row-size pairs by what became of them; all 0 when the file could not be read."""
        checked = self.checked
        return Proved(checked.proved, checked.wrong, checked.not_checked) if checked else Proved(0, 0, 0)


@dataclass(frozen=True, slots=True)
class Printed:
    """What one document came to: the files written (none when it failed) and what the printer found."""

    edition: Edition
    paths: tuple[Path, ...]
    findings: Findings
    timings: Mapping[str, float] = field(default_factory=dict)


@dataclass(slots=True)
class _Run:
    """Findings and timings while the stages follow each other."""

    file: str
    findings: list[Finding] = field(default_factory=list)
    timings: dict[str, float] = field(default_factory=dict)

    def stage(self, name: str, call: Callable[[], tuple[Result, Iterable[Finding]]], otherwise: Result) -> Result:
        """What one stage gives; `otherwise`, with one internal finding, when the stage fails."""
        start = time.perf_counter()
        try:
            result, findings = call()
            self.findings.extend(findings)
        except Exception as fault:
            result = otherwise
            self.findings.append(fault_finding(_PARTS[name], fault, first_place(self.file)))
        self.timings[name] = time.perf_counter() - start
        return result


def check_text(
    path: str | os.PathLike[str],
    sizes: Sequence[str] | None = None,
    terms: Terms | None = None,
    tracing: int | None = None,
) -> Outcome:
    """An ordinary text pattern read and worked; `sizes` and `terms` are what the text does not say."""
    from gradegen.grade.ungraded import plain_sizes, plain_table
    from gradegen.read.plain_text.file import read_text_pattern

    run = _Run(os.fspath(path))
    read = run.stage("read", lambda: read_text_pattern(run.file, sizes, terms), None)
    if read is None:
        return Outcome(run.file, None, sorted_findings(run.findings, ()), run.timings)
    pattern, names = read
    graded = plain_sizes(names)
    worked = _work(run, pattern, graded, tracing)
    checked = _gathered(pattern, plain_table(pattern, names), graded, worked, run.findings)
    run.stage("check", lambda: (None, _check_rows_and_yarns(checked)), None)
    return _outcome(run, checked)


def check_file(path: str | os.PathLike[str], tracing: int | None = None) -> Outcome:
    """A pattern file read, graded, worked and checked; a `.txt` file as an ordinary text pattern.

    `tracing`: a line of the file; the row that stands there keeps what each of its steps took and made.
    """
    if os.fspath(path).lower().endswith(".txt"):
        return check_text(path, tracing=tracing)
    run = _Run(os.fspath(path))
    read = _read(run)
    if read is None:
        return Outcome(run.file, None, sorted_findings(run.findings, ()), run.timings)
    pattern, table = read
    sizes = _grade(run, pattern, table)
    pattern = _shape(run, pattern, sizes)
    worked = _work(run, pattern, sizes, tracing)
    checked = _gathered(pattern, table, sizes, worked, run.findings)
    run.stage("check", lambda: (None, _check(checked)), None)
    run.findings = list(_held_back(pattern, run.findings))
    return _outcome(run, checked)


def grade_file(path: str | os.PathLike[str]) -> Outcome:
    """A pattern file read and graded; its rows are not worked."""
    run = _Run(os.fspath(path))
    read = _read(run)
    if read is None:
        return Outcome(run.file, None, sorted_findings(run.findings, ()), run.timings)
    pattern, table = read
    sizes = _grade(run, pattern, table)
    pattern = _shape(run, pattern, sizes)
    return _outcome(run, _gathered(pattern, table, sizes, {}, run.findings))


def fit_file(
    path: str | os.PathLike[str], body: Mapping[str, Fraction], gauge: Gauge | None
) -> tuple[Fitted | None, Outcome]:
    """One maker's own counts from a pattern file; what was found on the way stands in the outcome."""
    graded = grade_file(path)
    checked = graded.checked
    if checked is None or not checked.sizes:
        return None, graded
    from gradegen.grade import fit_body

    run = _Run(graded.file, list(graded.findings), dict(graded.timings))
    fitted = run.stage("fit", lambda: fit_body(checked.pattern, checked.table, checked.sizes, body, gauge), None)
    return fitted, _outcome(run, checked)


def sensitivity_file(path: str | os.PathLike[str]) -> tuple[Sensitivity | None, Outcome]:
    """What gauge and repeats do to the measures of a pattern file; what was found on the way stands in the outcome."""
    graded = grade_file(path)
    checked = graded.checked
    if checked is None or not checked.sizes:
        return None, graded
    from gradegen.grade.ask.sensitivity import sensitivity

    run = _Run(graded.file, list(graded.findings), dict(graded.timings))
    found = run.stage("sense", lambda: sensitivity(checked.pattern, checked.table, checked.sizes), None)
    return found, _outcome(run, checked)


def read_table(name_or_path: str) -> tuple[SizeTable | None, Findings]:
    """A body size table by its name, or by its path from here."""
    from gradegen.read.size_tables.table import read_size_table

    run = _Run(name_or_path)
    table = run.stage("read", lambda: read_size_table(name_or_path, Path()), None)
    if table is not None:
        from gradegen.read.size_tables.checks import check_size_table

        run.stage("check", lambda: (None, check_size_table(table)), None)
    return table, sorted_findings(run.findings, () if table is None else table.sizes)


def print_editions(
    checked: Checked, editions: Sequence[Edition], jobs: int = 1, press: Press | None = None
) -> Iterator[Printed]:
    """The documents wanted, each as soon as it is written, in the order asked; up to `jobs` at the same time.

    `press`: a typesetting process that was started ahead, for one document.
    """
    if len(editions) == 1 or jobs == 1:
        yield from (print_edition(checked, edition, press) for edition in editions)
        return
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import get_context

    import gradegen.write.pattern  # noqa: F401  loaded once here, as the typesetter is: forked processes share it
    from gradegen.write.page.pdf import load_typesetter
    from gradegen.write.pictures.ready import ready_pictures

    load_typesetter()
    ready_pictures(checked.pattern)  # sized once, before the work is shared out

    context = get_context("fork" if sys.platform.startswith("linux") else "spawn")
    with ProcessPoolExecutor(min(jobs, len(editions)), context, _take_pattern, (checked,)) as processes:
        yield from processes.map(_print_taken, editions)


def print_edition(checked: Checked, edition: Edition, press: Press | None = None) -> Printed:
    """One document written; a fault of ours gives no file and one internal finding."""
    from gradegen.write.page.press import typeset_here
    from gradegen.write.pattern import write_pattern

    typeset = press.typeset if press else typeset_here
    run = _Run(checked.pattern.file)
    none: tuple[Path, ...] = ()
    paths = run.stage("write", lambda: write_pattern(checked, edition, typeset), none)
    return Printed(edition, paths, tuple(run.findings), run.timings)


def print_also(checked: Checked, edition: Edition, kinds: Sequence[str]) -> Printed:
    """HTML, text, grading tables and the text for a shop, as far as they are asked for."""
    from gradegen.write.editions.also import write_also

    run = _Run(checked.pattern.file)
    none: tuple[Path, ...] = ()
    paths = run.stage("write", lambda: write_also(checked, edition, kinds), none)
    return Printed(edition, paths, tuple(run.findings), run.timings)


def merge_forms_in(folder: str, checked: Checked | None = None) -> tuple[tuple[Tested, ...], Findings]:
    """The filled testers' forms of a folder, merged by pattern; with `checked`, those of that pattern alone."""
    from gradegen.read.forms.filled import read_forms
    from gradegen.reckon.testers.merge import by_pattern, merge_forms

    run = _Run(folder)
    none: tuple[FilledForm, ...] = ()
    forms = run.stage("forms", lambda: read_forms(folder), none)
    merged: list[Tested] = []
    for some in by_pattern(forms) if checked is None else (forms,):
        tested = run.stage("merge", lambda some=some: merge_forms(some, checked), None)  # type: ignore[misc]
        merged += [tested] if tested is not None else []
    sizes = [size.name for size in checked.sizes] if checked else []
    return tuple(merged), sorted_findings(run.findings, sizes)


_TAKEN: list[Checked] = []  # the pattern a printing process works on


def _take_pattern(checked: Checked) -> None:
    _TAKEN[:] = [checked]


def _print_taken(edition: Edition) -> Printed:
    return print_edition(_TAKEN[0], edition)


def sorted_findings(findings: Iterable[Finding], sizes: Sequence[str]) -> Findings:
    """Findings in reading order: by place, then rule, then size as the pattern orders them; each fault said once.

    Where two stages found the same fault at the same place in the same size, the later one's words stay: it knew more.
    Where one found it in some sizes and the other in none by name, those of the sizes stay, with the other's hint.
    """
    order = {name: index for index, name in enumerate(sizes)}
    last = {(finding.place, finding.rule, finding.size, finding.row): finding for finding in dict.fromkeys(findings)}
    unsized = {(finding.place, finding.rule): finding for finding in last.values() if finding.size is None}
    sized = {(finding.place, finding.rule) for finding in last.values() if finding.size is not None}
    kept = [one for one in last.values() if one.size is not None or (one.place, one.rule) not in sized]
    hinted = (_with_hint(one, unsized.get((one.place, one.rule))) for one in kept)
    return tuple(sorted(hinted, key=lambda one: (one.place, one.rule, order.get(one.size or "", -1))))


def _with_hint(finding: Finding, other: Finding | None) -> Finding:
    return finding if finding.hint or other is None or not other.hint else replace(finding, hint=other.hint)


_PARTS = {
    "read": "The reader of patterns",
    "grade": "The grading of sizes",
    "shape": "The shaping of rows",
    "fit": "The fitting of one body",
    "sense": "The trying of other gauges and multiples",
    "work": "The working of rows",
    "check": "The checking of patterns",
    "write": "The printing of patterns",
    "forms": "The reading of testers' forms",
    "merge": "The merging of testers' forms",
}


def first_place(file: str) -> Place:
    """The beginning of a file, for what concerns the whole of it."""
    return Place(file, 1, 1, 1, 1)


def _read(run: _Run) -> tuple[Pattern, SizeTable] | None:
    from gradegen.read.pattern.file import read_pattern_and_table

    return run.stage("read", lambda: read_pattern_and_table(run.file), None)


def _grade(run: _Run, pattern: Pattern, table: SizeTable) -> tuple[GradedSize, ...]:
    from gradegen.grade import grade_sizes

    return run.stage("grade", lambda: grade_sizes(pattern, table), ())


def _shape(run: _Run, pattern: Pattern, sizes: tuple[GradedSize, ...]) -> Pattern:
    """The pattern with its shaping schedules worked out and their sentences in its rows."""
    if not pattern.shaping:
        return pattern
    from gradegen.grade.shaping.schedules import shape_rows

    return run.stage("shape", lambda: shape_rows(pattern, sizes), pattern)


def _work(
    run: _Run, pattern: Pattern, sizes: tuple[GradedSize, ...], tracing: int | None
) -> Mapping[str, tuple[WorkedRow, ...]]:
    from gradegen.work.rows import work_rows

    return run.stage("work", lambda: work_rows(pattern, sizes, tracing), {})


def _check(checked: Checked) -> Iterable[Finding]:
    from gradegen.check.run import check_pattern

    return check_pattern(checked)


def _check_rows_and_yarns(checked: Checked) -> Iterable[Finding]:
    from gradegen.check.run import check_rows_and_yarns

    return check_rows_and_yarns(checked)


def _held_back(pattern: Pattern, findings: Iterable[Finding]) -> Findings:
    from gradegen.check.followers import hold_back

    return hold_back(pattern, findings)


def _gathered(
    pattern: Pattern,
    table: SizeTable,
    sizes: tuple[GradedSize, ...],
    worked: Mapping[str, tuple[WorkedRow, ...]],
    findings: Iterable[Finding],
) -> Checked:
    from gradegen.design.checked import Checked

    statuses = [row.status for rows in worked.values() for row in rows if row.applies]
    proved, wrong = statuses.count("proved"), statuses.count("wrong")
    return Checked(pattern, table, sizes, worked, tuple(findings), proved, wrong, len(statuses) - proved - wrong)


def _outcome(run: _Run, checked: Checked) -> Outcome:
    findings = sorted_findings(run.findings, [size.name for size in checked.sizes])
    return Outcome(run.file, replace(checked, findings=findings), findings, run.timings)
