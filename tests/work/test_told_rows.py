"""A passage told row by row: which row is shaped, at which end, and that it leads where the passage does."""

from __future__ import annotations

from pathlib import Path

import pytest

from gradegen import pipeline
from gradegen.work.placed_rows import PlacedPiece, place_rows, readings_of_piece

HEAD = """\
title: Told
version: "1.0"
designer: {name: Demo House, help: help@example.org, year: 2026}
terms: US
level: easy
wearer: adult
units: inches first
rounding: 1/4 in
sizes: {table: women, for: [S], by: bust, take: middle}
yarn:
  A: {weight: medium, fibre: wool, colour: slate, skein: 200 yd / 100 g}
gauge:
  main: {stitches: 14, rows: 8, over: 4 in, hook: 5 mm, state: blocked}
notes:
  - Ch 1 at the start of a row does not count as a stitch.
pieces:
"""
PLAIN = """\
      Row 1: Ch 21. Sc in 2nd ch from hook, sc in each ch across. (20 sc)
      Row 2: Ch 1, turn, sc in each st across. (20 sc)
"""


def placed(folder: Path, rows: str, *, others: str = "", plain: str = PLAIN) -> PlacedPiece:
    path = folder / "told.yaml"
    body = "".join(f"      {line}\n" for line in rows.splitlines())
    path.write_text(HEAD + others + "  - name: Told\n    shape: flat\n    rows: |\n" + plain + body, "utf-8")
    checked = pipeline.check_file(path).checked
    assert checked is not None
    assert checked.wrong == checked.not_checked == 0
    piece = checked.pattern.pieces[-1]
    readings = readings_of_piece(checked.pattern, piece, checked.sizes, (0,))
    return place_rows(checked.pattern, piece, checked.sizes, 0, checked.sizes[0].numbers(), readings)


def made(found: PlacedPiece, first: int = 2) -> list[tuple[int, int]]:
    """(stitches, those worked together or more than one in a stitch) of every row from the third on."""
    rows = [[one.name for one in row.placed.laid if one.what == "st"] for row in found.rows[first:]]
    return [(len(row), sum(name.endswith("2tog") for name in row)) for row in rows]


def test_decreases_at_both_ends_of_every_third_row(tmp_path: Path) -> None:
    """By hand: rows 3 and 6 of 7 lose two stitches each."""
    found = placed(tmp_path, "Next 7 rows: Dec 1 st at each end of every 3rd row twice, then work even. (16 sc)")
    assert not found.lost
    assert made(found) == [(20, 0), (20, 0), (18, 2), (18, 0), (18, 0), (16, 2), (16, 0)]


def test_stitches_left_at_both_ends_are_slipped_over_and_left(tmp_path: Path) -> None:
    found = placed(tmp_path, "Next 3 rows: Leave 3 sts unworked at each end of next row, then work even. (14 sc)")
    assert made(found) == [(14, 0), (14, 0), (14, 0)]
    slips = [one for one in found.rows[2].placed.laid if one.what == "slip"]
    assert [spot.at for one in slips for spot in one.into] == [0, 1, 2]
    first = next(one for one in found.rows[2].placed.laid if one.what == "st")
    assert [spot.at for spot in first.into] == [3]


def test_one_edge_changes_its_end_from_row_to_row(tmp_path: Path) -> None:
    found = placed(tmp_path, "Next 4 rows: Dec 1 st at neck edge of every row 4 times. (16 sc)")
    where = [[one.name for one in row.placed.laid if one.what == "st"].index("sc2tog") == 0 for row in found.rows[2:]]
    assert where == [True, False, True, False]


def test_increases_are_two_stitches_in_one(tmp_path: Path) -> None:
    found = placed(tmp_path, "Next 2 rows: Inc 1 st at each end of every row twice. (24 sc)")
    assert made(found) == [(22, 0), (24, 0)]
    first, second = (one for one in found.rows[2].placed.laid if one.what == "st" and one.into[0].at == 0)
    assert first.into == second.into


def test_how_a_plain_row_begins_is_taken_from_another_piece(tmp_path: Path) -> None:
    others = f"  - name: Other\n    shape: flat\n    rows: |\n{PLAIN}"
    begin = PLAIN.splitlines(keepends=True)[0]
    rows = "Next 3 rows: Dec 1 st at each end of every 2nd row once, then work even. (18 sc)"
    assert made(placed(tmp_path, rows, others=others, plain=begin), 1) == [(20, 0), (18, 2), (18, 0)]
    assert placed(tmp_path, rows, plain=begin).lost == (
        "Next 3 rows says how often rows are worked, not what each of them is"
    )


@pytest.mark.parametrize("words", ["Dec 2 sts evenly across every 3rd row twice, then work even. (16 sc)"])
def test_where_the_places_are_not_said_the_rows_are_not_told(tmp_path: Path, words: str) -> None:
    found = placed(tmp_path, f"Next 7 rows: {words}")
    assert found.lost
    assert len(found.rows) == 2
