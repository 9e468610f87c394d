"""A count whose measure has a slip is told at the slip; rows that need it are not checked, and never called wrong."""

from __future__ import annotations

from pathlib import Path

import pytest

from gradegen.findings import Severity
from gradegen.pipeline import check_file, read_table
from gradegen.write.starters.file import starter_text


@pytest.fixture
def hat(tmp_path: Path) -> tuple[Path, str]:
    table, _ = read_table("head")
    assert table is not None
    return tmp_path / "hat.yaml", starter_text("Some Hat", "hat", table, "head")


@pytest.mark.parametrize(
    ("right", "slip", "rule"),
    [
        ("around: head - 1 in", "around: head - 1", "units-do-not-mix"),
        ("hat: {across: around,", "hat: {across: arond,", "unknown-name"),
        ("height: 0.4 * head", 'height: "[6, 6.5] in"', "size-list-length"),
    ],
)
def test_one_slip_one_error(hat: tuple[Path, str], right: str, slip: str, rule: str) -> None:
    path, text = hat
    assert right in text
    path.write_text(text.replace(right, slip), encoding="utf-8")
    outcome = check_file(path)
    assert [one.rule for one in outcome.findings if one.severity is Severity.ERROR] == [rule]
    assert outcome.checked is not None
    assert outcome.checked.wrong == 0
    assert outcome.checked.not_checked > 0
