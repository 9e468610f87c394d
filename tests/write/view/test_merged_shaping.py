"""Shapings worked at the same time as tables, for all sizes and for one: the same numbers as schedule and rows have."""

from __future__ import annotations

from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.grade.shaping.schedules import shaping_table
from gradegen.pipeline import check_file
from gradegen.write.editions.edition import Edition
from gradegen.write.editions.plain_document import document_text
from gradegen.write.page.document import document_view
from gradegen.write.screen.shaping import merged_tables as on_screen
from gradegen.write.view.merged_shaping import ONE_SIZE
from gradegen.write.view.rows import piece_views
from gradegen.write.view.whole import MeasureTable
from gradegen.write.voice.document import spoken, spoken_text
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style

TEXT = """
title: Two Edges
terms: US
sizes: {table: women, for: [S, M, L], by: bust}
gauge: {sc: {stitches: 16, rows: 20, over: 4 in, state: blocked}}
counts:
  front: {across: "[9, 10, 11] in", gauge: sc}
  top: {sum: front - 14}
shaping:
  armhole: {from: front, to: front - 8, over: 40, each: one end, edge: armhole edge, rates: [2]}
  neck line: {from: front - 8, to: top, over: 20, each: one end, edge: neck edge, rates: [1], after: "[10, 12, 14]"}
  both: {together: [armhole, neck line]}
notes: [Ch 1 does not count as a st.]
pieces:
  - name: Front
    shape: flat
    rows: |
      Row 1: Ch {front + 1}. Sc in 2nd ch from hook, sc in each ch across. ({front} sc)
      Rows 2-41: {both}. ({top} sc)
"""


@pytest.fixture(scope="module")
def checked(tmp_path_factory: pytest.TempPathFactory) -> Checked:
    path = tmp_path_factory.mktemp("merged") / "pattern.yaml"
    path.write_text(TEXT.lstrip(), "utf-8")
    found = check_file(path).checked
    assert found is not None
    assert (found.wrong, found.not_checked) == (0, 0)
    return found


def tables(checked: Checked, *names: str) -> tuple[MeasureTable, ...]:
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    printing = Printing(checked.sizes, sizes, length_style(checked.pattern))
    (piece,) = piece_views(checked, printing)
    assert piece.rows[0].tables == ()
    return piece.rows[1].tables


def test_worked_rows_are_those_of_the_schedules(checked: Checked) -> None:
    """Two stages, one from the sums and one from the words, come to the same rows and stitches."""
    parts = [checked.pattern.scheduled[name] for name in ("armhole", "neck line")]
    for at, size in enumerate(checked.sizes):
        planned = shaping_table([one for part in parts if (one := part.sizes[at])])
        worked = checked.worked[size.name][1].merged
        assert [(one.row + 1, one.stitches) for one in planned] == [(one.row, one.stitches) for one in worked]
        assert worked[-1].stitches == size.counts["top"].n


def test_all_sizes_stand_side_by_side(checked: Checked) -> None:
    (table,) = tables(checked)
    assert table.columns == ("S", "M", "L")
    assert "a: dec 1 st at armhole edge; b: dec 1 st at neck edge" in table.caption
    by_row = {row.name: row.cells for row in table.rows}
    assert by_row["3"] == ("35 a", "39 a", "43 a")
    assert by_row["12"] == ("30 b", "–", "–")
    assert by_row["17"] == ("22 ab", "28 ab", "34 ab")


def test_one_size_alone_has_words_and_no_other_sizes_rows(checked: Checked) -> None:
    (table,) = tables(checked, "M")
    assert table.columns == ONE_SIZE
    assert [row.name for row in table.rows] == ["3", "5", "7", "9", "11", "13", "14", "15", "16", "17", "18", "19"]
    assert table.rows[7].cells == ("31", "dec 1 st at armhole edge and dec 1 st at neck edge")


def test_the_screen_shows_the_same_stitches(checked: Checked) -> None:
    (table,) = on_screen(checked.pattern)
    cells = [list(column.cells) for column in table.columns]
    at = cells[0].index("12")
    assert cells[1][at] == "armhole: 1 fewer, neck line: 1 fewer = 28"
    assert cells[2][at] == "armhole: 1 fewer = 34"
    assert len(on_screen(checked.pattern, 90)) == 3


@pytest.mark.parametrize("size", [None, "M"])
def test_text_and_voice_have_them_too(checked: Checked, tmp_path: Path, size: str | None) -> None:
    assert "At the same time" in document_text(document_view(checked, Edition(tmp_path, size)))
    said = spoken_text(spoken(document_view(checked, Edition(tmp_path, size, style="spoken"))))
    assert "decrease 1 stitch at armhole edge" in said.lower()
    assert "Row 17" in said
