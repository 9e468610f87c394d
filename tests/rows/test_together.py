"""Sizes worked as one come to what each of them comes to alone: over all rows with answers, and over whole patterns."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from rows_answers import FILE, Row, all_rows
from test_other_hand import FILE as OTHER_FILE
from test_own_rows import checked

from gradegen.pipeline import check_file
from gradegen.work.edge.each_size import EachSize
from gradegen.work.edge.lines import Line
from gradegen.work.piece.piece import PieceWork

PATTERNS = Path(__file__).parents[2] / "shared/patterns"
ROWS = [(file, row) for file in (FILE, OTHER_FILE) for row in all_rows(file) if len(row["sizes"]) > 1]


@pytest.fixture
def alone(monkeypatch: pytest.MonkeyPatch) -> Iterator[pytest.MonkeyPatch]:
    """Every size worked by itself, while the patch is on."""
    with monkeypatch.context() as patch:
        patch.setattr(PieceWork, "_together", lambda *_: None)
        yield patch


def as_said(value: Any) -> str:
    """All that is known of a worked row, for comparing; no count in it stands for several sizes."""
    said = repr(value)
    assert EachSize.__name__ + "(" not in said
    assert Line.__name__ + "(" not in said
    return said


@pytest.mark.parametrize(("file", "row"), ROWS, ids=lambda one: one["row_id"] if isinstance(one, dict) else "")
def test_a_row_in_all_its_sizes(file: Path, row: Row, alone: pytest.MonkeyPatch) -> None:
    one_by_one = checked(row, file)
    alone.undo()
    assert as_said(checked(row, file)) == as_said(one_by_one)


@pytest.mark.parametrize(
    "demo", ["skerrywick-wrap", "bollard-hat", "gunwale-pullover", "limpet-pullover", "slipway-cardigan"]
)
def test_the_demo_patterns(demo: str, alone: pytest.MonkeyPatch) -> None:
    one_by_one = worked_rows(PATTERNS / f"{demo}.yaml")
    alone.undo()
    assert worked_rows(PATTERNS / f"{demo}.yaml") == one_by_one


def worked_rows(file: Path) -> list[str]:
    """Every worked row of a pattern, as said."""
    outcome = check_file(file)
    assert outcome.checked is not None
    return [as_said(row) for piece in outcome.checked.worked.values() for row in piece]
