"""The range of sizes: what it claims, whom it leaves out, and what is wrong in the table it is taken from."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from gradegen.findings import Severity
from gradegen.pipeline import Outcome, check_file, grade_file, read_table

Check = Callable[[str], Outcome]
ALL = "sizes: {table: women, for: all, by: bust}\nmeasures: {around: bust + 3 in, depth: 10 in}\n"


def told(outcome: Outcome, rule: str) -> list[tuple[int, str]]:
    return [(one.place.line, one.severity.value) for one in outcome.findings if one.rule == rule]


@pytest.mark.parametrize("words", ["A size-inclusive wrap.", "Inclusive sizing for all.", "Size inclusive, of course."])
def test_the_claim_needs_30_to_60_in(checked_with: Check, words: str) -> None:
    """Craft Yarn Council, women: XS to 5X fit 28 to 62 in; S to 2X fit 32 to 52 in."""
    assert len(told(checked_with(f"about: {words}\n"), "size-claim-not-met")) == 1
    assert told(checked_with(f"about: {words}\n{ALL}"), "size-claim-not-met") == []


def test_other_uses_of_the_word_claim_nothing(checked_with: Check) -> None:
    assert told(checked_with("about: Work rows 5 to 8 inclusive.\n"), "size-claim-not-met") == []


def test_the_smallest_end_counts_as_well(checked_with: Check) -> None:
    large = ALL.replace("for: all", "for: [L, XL, 2X, 3X, 4X, 5X]")
    finding = next(
        one
        for one in checked_with(f"about: A size-inclusive wrap.\n{large}").findings
        if one.rule == "size-claim-not-met"
    )
    assert "40" in (finding.found or "")


def test_a_size_left_out_between_others_is_told(checked_with: Check) -> None:
    some = "sizes: {table: women, for: [S, M, XL, 3X], by: bust}\nmeasures: {around: bust + 3 in, depth: 10 in}\n"
    outcome = checked_with(some)
    gaps = [one for one in outcome.findings if one.rule == "size-band-gap"]
    assert [one.message.split(" of ")[1].split(",")[0] for one in gaps] == ["38-44 in", "46-52 in"]
    assert all(one.severity is Severity.NOTE for one in gaps)
    assert told(checked_with(ALL), "size-band-gap") == []


TABLE = """
title: Our Bodies
by: bust
wearer: adult
sizes: [S, M, L]
columns:
  bust: {in: [[32, 34], [36, 38], [40, 42]], trust: measured}
  upper arm: {in: [12, 11, 13], trust: measured}
  hip: {in: [40, 38, 44], trust: measured}
"""


@pytest.fixture
def own_table(tmp_path: Path, checked_with: Check) -> Callable[[str, str], Path]:
    def write(table: str, measures: str) -> Path:
        (tmp_path / "bodies.yaml").write_text(table.lstrip(), "utf-8")
        sizes = "sizes: {table: bodies.yaml, for: all, by: bust}\n"
        checked_with(sizes + f"measures: {{around: bust + 3 in, depth: 10 in{measures}}}\n")
        return tmp_path / "pattern.yaml"

    return write


def test_what_is_wrong_in_a_table_is_told_where_a_pattern_uses_it(own_table: Callable[[str, str], Path]) -> None:
    path = own_table(TABLE, ", arm: upper arm + 2 in")
    for outcome in (check_file(path), grade_file(path)):
        found = [one for one in outcome.findings if one.rule == "size-step-falls"]
        assert [(Path(one.place.file).name, one.place.line, one.size) for one in found] == [("bodies.yaml", 7, "M")]
    assert told(check_file(own_table(TABLE, "")), "size-step-falls") == []


def test_bands_from_high_to_low_are_an_error(own_table: Callable[[str, str], Path]) -> None:
    found = check_file(own_table(TABLE.replace("[36, 38]", "[38, 36]"), "")).findings
    assert [(one.rule, one.size, one.severity.value) for one in found if one.rule == "band-ends-swapped"] == [
        ("band-ends-swapped", "M", "error")
    ]


def test_a_gap_in_the_table_itself(own_table: Callable[[str, str], Path]) -> None:
    found = check_file(own_table(TABLE.replace("[40, 42]", "[42, 44]"), "")).findings
    assert [(one.rule, Path(one.place.file).name, one.severity.value) for one in found if "band" in one.rule] == [
        ("size-band-gap", "bodies.yaml", "warning")
    ]


def test_a_table_that_is_looked_at_alone_tells_all(tmp_path: Path) -> None:
    (tmp_path / "bodies.yaml").write_text(TABLE.lstrip(), "utf-8")
    _, findings = read_table(str(tmp_path / "bodies.yaml"))
    assert [(one.rule, one.place.line) for one in findings if one.severity is Severity.WARNING] == [
        ("size-step-falls", 7),
        ("size-step-falls", 8),
    ]


def test_yarn_is_held_against_the_body_and_not_against_a_neck(checked_with: Check) -> None:
    """Where a row cannot be followed, yards go with what goes round the body; the first piece here is a neck."""
    rows = "Row 1: Ch {band + 1}. Sc in 2nd ch from hook, sc in each ch across. ({band} sc)\n      Twiddle as you like."
    pieces = (
        "measures: {around: bust + 3 in, depth: 10 in, neck: '[16, 16, 16, 17, 17] in'}\n"
        "counts: {band: {across: neck, gauge: mesh, multiple: 2}}\n"
        f"pieces:\n  - name: Neck\n    shape: flat\n    width: neck\n    rows: |\n      {rows}\n"
    )
    yarn = "yarn: {A: {weight: medium, skein: 200 yd / 100 g, stated: {yards: [500, 550, 600, 650, 700]}}}\n"
    assert told(checked_with(pieces + yarn), "yarn-growth-unlikely") == []
    level = yarn.replace("[500, 550, 600, 650, 700]", "[500, 505, 510, 515, 520]")
    found = [one for one in checked_with(pieces + level).findings if one.rule == "yarn-growth-unlikely"]
    assert {one.size for one in found} == {"S", "2X"}
    assert all("around" in one.message for one in found)
