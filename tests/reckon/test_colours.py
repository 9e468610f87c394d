"""Stripes and colourwork by census: rows, repeated rows and changes within a row go to their own yarns."""

from __future__ import annotations

from pathlib import Path

import pytest

from gradegen.pipeline import check_file
from gradegen.reckon import Census, stitch_census, yarn_per_size

HEAD = """
title: Colours
terms: US
sizes: {table: women, for: [M]}
gauge:
  plain: {stitches: 4, rows: 4, over: 4 in}
measures:
  width: 24 in
counts:
  n: {across: width, gauge: plain}
yarn:
  A: {skein: 200 yd / 100 g, colour: harbor blue, unravelled: {ch: 1 in, sc: 2 in, dc: 4 in}}
  B: {skein: 200 yd / 100 g, colour: sand, unravelled: {ch: 1 in, sc: 2 in, dc: 4 in}}
"""


def census(tmp_path: Path, *rows: str, shape: str = "flat") -> Census:
    path = tmp_path / "colours.yaml"
    lines = "\n".join(f"      {row}" for row in rows)
    text = f"{HEAD.strip()}\npieces:\n  - name: P\n    shape: {shape}\n    rows: |\n{lines}\n"
    path.write_text(text, encoding="utf-8")
    found = check_file(path).checked
    assert found is not None, check_file(path).findings
    assert found.wrong == found.not_checked == 0, [row.why_not for row in found.worked["M"]]
    return stitch_census(found)


FIRST = "Row 1: With A, ch {n + 1}. Sc in 2nd ch from hook, sc in each ch across."


def test_rows_named_for_a_yarn(tmp_path: Path) -> None:
    found = census(
        tmp_path, FIRST, "Row 2: With B, ch 1, turn, sc in each st across.", "Row 3: Ch 1, turn, sc in each st across."
    )
    assert found.of("M", "A") == {"ch": 25, "sc": 24}
    assert found.of("M", "B") == {"ch": 2, "sc": 48}


def test_a_change_at_the_end_is_for_the_next_row(tmp_path: Path) -> None:
    found = census(
        tmp_path,
        FIRST.replace("across.", "across, changing to B in last st."),
        "Row 2: Ch 1, turn, sc in each st across.",
    )
    assert found.of("M", "A")["sc"] == 24
    assert found.of("M", "B") == {"ch": 1, "sc": 24}


def test_rows_worked_again_keep_their_colours(tmp_path: Path) -> None:
    found = census(
        tmp_path, FIRST,
        "Row 2: With B, ch 1, turn, sc in each st across.",
        "Row 3: With A, ch 1, turn, sc in each st across.",
        "Rows 4-9: Rep Rows 2 and 3.",
    )  # fmt: skip
    assert found.of("M", "A") == {"ch": 25 + 4, "sc": 24 * 5}
    assert found.of("M", "B") == {"ch": 4, "sc": 24 * 4}


def test_changes_within_a_row(tmp_path: Path) -> None:
    """24 sc in sixes: four of A, two of B."""
    found = census(
        tmp_path, FIRST, "Row 2: Ch 1, turn, *with A, sc in next 4 sts, with B, sc in next 2 sts; rep from * across."
    )
    assert found.of("M", "A")["sc"] == 24 + 16
    assert found.of("M", "B")["sc"] == 8


def test_blocks_of_colour_without_a_repeat(tmp_path: Path) -> None:
    found = census(tmp_path, FIRST, "Row 2: With A, ch 1, turn, sc in next 10 sts, with B, dc in each st to end.")
    assert found.of("M", "A")["sc"] == 24 + 10
    assert found.of("M", "B") == {"dc": 14}


def test_a_yarn_by_the_name_of_its_colour(tmp_path: Path) -> None:
    found = census(tmp_path, FIRST, "Row 2: With sand, ch 1, turn, sc in each st across.")
    assert found.of("M", "B")["sc"] == 24


@pytest.mark.parametrize("words", ["Fasten off A.", "Cut A.", "Drop A."])
def test_letting_a_yarn_go_takes_none_up(tmp_path: Path, words: str) -> None:
    found = census(tmp_path, f"{FIRST} {words}", "Row 2: Ch 1, turn, sc in each st across.")
    assert found.of("M", "B") == {}


def test_all_colours_together_are_the_whole(tmp_path: Path) -> None:
    found = census(
        tmp_path, FIRST, "Row 2: Ch 1, turn, *with A, sc in next 4 sts, with B, sc in next 2 sts; rep from * across."
    )
    both = found.of("M", "A") + found.of("M", "B")
    assert both == found.of("M") == {"ch": 26, "sc": 48}


def test_yarn_of_each_colour(tmp_path: Path) -> None:
    path = tmp_path / "colours.yaml"
    census(tmp_path, FIRST, "Row 2: With B, ch 1, turn, sc in each st across.")
    checked = check_file(path).checked
    assert checked is not None
    needs, _ = yarn_per_size(checked)
    assert [need.letter for need in needs] == ["A", "B"]
    assert [need.sizes[0].used.inches for need in needs] == [25 + 48, 1 + 48]
    assert {need.margin_words for need in needs} == {"usual for several colours"}
