"""Findings on screen: what stands in them, in which order, and when they get short."""

from pathlib import Path

import pytest

from gradegen.findings import Finding, Place, Severity
from gradegen.write.screen.findings import finding_lines, tally

SIZES = ("S", "M", "L")


def plain(findings: list[Finding], width: int = 200) -> list[str]:
    return ["".join(text for text, _ in line) for line in finding_lines(findings, SIZES, width)]


@pytest.fixture
def file(tmp_path: Path) -> str:
    path = tmp_path / "sunhat.yaml"
    path.write_text("title: x\n  Rnd 6: *2 sc, inc; rep from * around. [44 (56, 64)]\n", encoding="utf-8")
    return str(path)


def wrong_total(file: str) -> list[Finding]:
    def one(size: str, column: int, written: str, worked: str) -> Finding:
        return Finding(
            "stated-count-wrong", Severity.ERROR, Place(file, 2, column, 2, column + 2), "Another count.", size,
            row="Rnd 6", expected=worked, found=written, because="Rnd 5 leaves 39", hint="write 44 (52, 60)",
            see_also=((Place(file, 1, 1, 1, 2), "the title"),),
        )  # fmt: skip

    return [one("M", 46, "56", "52"), one("L", 50, "64", "60")]


def test_one_fault_in_two_sizes(file: str) -> None:
    lines = plain(wrong_total(file))
    assert lines[0] == f"{file}:2:46  error  stated-count-wrong   Rnd 6, sizes M L"
    assert lines[1] == "  Another count."
    assert lines[2] == "  2 |   Rnd 6: *2 sc, inc; rep from * around. [44 (56, 64)]"
    assert lines[3] == "    | " + " " * 45 + "^^^^^^"
    assert lines[4] == "       M  expected 52, found 56    L  expected 60, found 64"
    assert lines[5] == "       (S agrees)"
    assert lines[6] == "  why  Rnd 5 leaves 39"
    assert lines[7] == "  try  write 44 (52, 60)"
    assert lines[8] == f"  see  {file}:1:1  the title"
    assert lines[9] == "  more: gradegen explain stated-count-wrong"


def test_many_faults_get_one_line_each(file: str) -> None:
    many = [Finding("a-rule", Severity.ERROR, Place(file, 1, n, 1, n + 1), f"Fault {n}.") for n in range(1, 32)]
    assert len(plain(many)) == 31
    assert len(plain(many[:30])) > 90


def test_followers_are_counted_and_not_shown(file: str) -> None:
    place = Place(file, 2, 3, 2, 4)
    cause = Finding("a-rule", Severity.ERROR, place, "Cause.")
    follower = Finding("b-rule", Severity.ERROR, place, "Effect.", follows="a-rule")
    lines = plain([cause, follower])
    assert not [line for line in lines if "Effect" in line]
    assert [line for line in lines if line.startswith("1 more follow")]


def test_the_same_note_at_many_places_is_one_line(file: str) -> None:
    notes = [Finding("habit", Severity.NOTE, Place(file, n, 1, n, 2), "Ch 3 counts.") for n in range(1, 30)]
    lines = plain(notes)
    assert len(lines) == 1
    assert "also lines 2, 3" in lines[0]


def test_the_tally_counts_folded_findings_gravest_first(file: str) -> None:
    note = Finding("habit", Severity.NOTE, Place(file, 1, 1, 1, 2), "Ch 3 counts.")
    assert tally([note, note, *wrong_total(file)]) == "1 error, 2 notes"
    assert tally([]) == "no findings"
