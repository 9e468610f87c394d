"""`import gradegen` gives the public names, and they do the main job without the command line."""

from pathlib import Path

import pytest

import gradegen as door
from gradegen.design.checked import Checked
from gradegen.read.pattern.file import read_pattern_and_table

PUBLIC = [
    "Finding",
    "check_pattern",
    "check_row",
    "grade_sizes",
    "read_pattern",
    "shape_rows",
    "work_rows",
    "write_pattern",
]


def test_the_public_names() -> None:
    assert sorted(door.__all__) == PUBLIC
    assert all(getattr(door, name) is not None for name in PUBLIC)
    with pytest.raises(AttributeError):
        door.no_such_name  # noqa: B018


def test_the_stages_by_hand(hat: Path) -> None:
    pattern, findings = door.read_pattern(hat)
    both, _ = read_pattern_and_table(hat)
    assert pattern is not None
    assert both is not None
    sizes, more = door.grade_sizes(pattern, both[1])
    worked, rows = door.work_rows(pattern, sizes)
    found = door.check_pattern(Checked(pattern, both[1], sizes, worked, (*findings, *more, *rows), 1, 0, 0))
    assert len(sizes) == 9
    assert all(row.status == "proved" for size in sizes for row in worked[size.name] if row.applies)
    assert [finding for finding in found if finding.severity != "note"] == []


def test_one_row_alone() -> None:
    result = door.check_row(
        "*Sc in next st, inc in next st; rep from * around. (18 sc)", prior=12, worked="spiral", sizes=["one"]
    )
    assert result.status == "proved"
    wrong = door.check_row(
        "*Sc in next st, inc in next st; rep from * around. (19 sc)", prior=12, worked="spiral", sizes=["one"]
    )
    assert wrong.status == "wrong"
    assert [finding.rule for finding in wrong.findings] == ["stated-count-wrong"]
