"""The conductor: order, timings, sorting, and a fault of ours that becomes one finding."""

from pathlib import Path

import pytest

from gradegen import pipeline
from gradegen.cli import main
from gradegen.findings import Finding, Place, Severity
from gradegen.pipeline import check_file, grade_file, sorted_findings


def test_stages_run_in_order_and_are_timed(hat: Path) -> None:
    timings = check_file(hat).timings
    assert list(timings) == ["read", "grade", "work", "check"]
    assert all(seconds >= 0 for seconds in timings.values())
    assert list(grade_file(hat).timings) == ["read", "grade"]


@pytest.mark.parametrize(
    ("stage", "function"),
    [
        ("gradegen.read.pattern.file", "read_pattern_and_table"),
        ("gradegen.grade", "grade_sizes"),
        ("gradegen.work.rows", "work_rows"),
        ("gradegen.check.run", "check_pattern"),
    ],
)
def test_a_stage_that_fails_is_one_internal_finding_and_exit_code_three(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], hat: Path, stage: str, function: str
) -> None:
    def fails(*_: object) -> None:
        raise RecursionError("a fault of ours")

    monkeypatch.setattr(f"{stage}.{function}", fails)
    internal = [finding for finding in check_file(hat).findings if finding.severity == Severity.INTERNAL]
    assert len(internal) == 1
    assert internal[0].place.file == str(hat)
    assert main(["check", str(hat)]) == 3
    shown = capsys.readouterr()
    assert "RecursionError in test_pipeline.py" in shown.out
    assert "Traceback" not in shown.out + shown.err


def test_a_fault_outside_the_stages_is_three_without_a_traceback(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], hat: Path
) -> None:
    def fails(*_: object) -> None:
        raise KeyError("a fault of ours")

    monkeypatch.setattr(pipeline, "check_file", fails)
    assert main(["check", str(hat)]) == 3
    shown = capsys.readouterr().err
    assert "KeyError in test_pipeline.py" in shown
    assert "Traceback" not in shown


def test_findings_are_sorted_by_place_rule_and_size_and_said_once() -> None:
    def one(line: int, rule: str, size: str | None, message: str = "m") -> Finding:
        return Finding(rule, Severity.ERROR, Place("f", line, 1, line, 2), message, size)

    found = sorted_findings(
        [one(9, "a", None), one(2, "b", "L"), one(2, "b", "S"), one(2, "a", "M"), one(2, "b", "S")], ("S", "M", "L")
    )
    assert [(f.place.line, f.rule, f.size) for f in found] == [
        (2, "a", "M"),
        (2, "b", "S"),
        (2, "b", "L"),
        (9, "a", None),
    ]


def test_the_later_words_about_one_fault_stay() -> None:
    place = Place("f", 1, 1, 1, 2)
    early, late = (Finding("a", Severity.ERROR, place, words, "S") for words in ("early", "late"))
    assert sorted_findings([early, late], ("S",)) == (late,)


def test_a_fault_found_with_and_without_sizes_is_told_for_the_sizes() -> None:
    place = Place("f", 1, 1, 1, 2)
    reader = Finding("a", Severity.ERROR, place, "m", hint="explain it")
    worker = [Finding("a", Severity.ERROR, place, "m", size, "Row 2") for size in ("S", "M")]
    found = sorted_findings([reader, *worker], ("S", "M"))
    assert [(one.size, one.row, one.hint) for one in found] == [
        ("S", "Row 2", "explain it"),
        ("M", "Row 2", "explain it"),
    ]
