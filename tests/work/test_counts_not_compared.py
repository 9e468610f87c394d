"""A printed count that nothing in the row can be held against is told of, never passed over in silence."""

from __future__ import annotations

from pathlib import Path

import pytest

from gradegen import check_row
from gradegen.pipeline import check_text


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Ch 3 (counts as dc), dc in next 53 dc, turn. (18 bls)", True),
        ("Ch 3 (counts as dc), dc in next 53 dc, turn. (54 dc)", False),
        ("Ch 1, *sc in next 4 dc, ch 3, sk next 2 dc; rep from * across, turn. (9 windows)", False),  # 9 chain spaces
    ],
)
def test_a_note_where_nothing_was_compared(text: str, told: bool) -> None:
    result = check_row(text, prior=[54], worked="flat", sizes=["one"])
    assert result.status == "proved"
    assert [one.rule for one in result.findings] == (["count-not-compared"] if told else [])


def test_once_for_all_rows_of_a_piece(tmp_path: Path) -> None:
    file = tmp_path / "filet.txt"
    rows = ["Row 1: Ch 57, dc in 4th ch from hook and in each ch across, turn. (18 bls)"]
    rows += [f"Row {n}: Ch 3 (counts as dc), dc in each dc across, turn. (18 bls)" for n in (2, 3)]
    file.write_text("\n".join(["Harbour panel", "", "Terms: US terms", "", "Instructions", *rows, ""]), "utf-8")
    found = [one for one in check_text(file).findings if one.rule == "count-not-compared"]
    assert [one.place.line for one in found if one.place] == [6]
