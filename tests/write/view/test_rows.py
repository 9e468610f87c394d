from dataclasses import replace
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.write.view.rows import count_start, label_bounds, piece_views, row_view, rows_for, ticks
from gradegen.write.view.whole import RowView
from gradegen.write.words.phrases import Phrase, Printing
from gradegen.write.words.print_numbers import length_style


def printing(checked: Checked, *names: str) -> Printing:
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    return Printing(checked.sizes, sizes, length_style(checked.pattern))


def words(said: Phrase) -> str:
    return "".join(part.text for part in said).replace("\N{NO-BREAK SPACE}", " ")


def rows_of(checked: Checked, *names: str) -> list[RowView]:
    return [row for piece in piece_views(checked, printing(checked, *names)) for row in piece.rows]


def test_label_text_and_count_are_apart(hat: Checked) -> None:
    third = rows_of(hat)[2]
    assert (words(third.label), words(third.text)) == (
        "Rnd 3",
        "*Sc in next 1 sts, inc in next st; rep from * around. ",
    )
    assert words(third.count) == "(18 sc)"
    assert (third.label_stands, third.count_stands) == ("beside", "whole")


def test_the_blank_before_a_count_is_a_part_of_its_own(hat: Checked) -> None:
    """At the end of the text it made the typesetter break a line that fits exactly behind its first word."""
    third, last = rows_of(hat)[2], rows_of(hat)[-1]
    assert (third.text[-1].text, third.text[-1].look) == (" ", "blank")
    assert not last.text[-1].text.endswith(" ")


def test_long_labels_and_counts_have_their_own_line(hat: Checked) -> None:
    last = rows_of(hat)[-1]
    assert (last.label_stands, last.count_stands) == ("above", "below")
    assert " to " in words(last.label)


def test_rows_of_other_sizes_are_left_out(hat: Checked) -> None:
    piece = hat.pattern.pieces[0]
    newborn, largest = hat.sizes[0], hat.sizes[-1]
    assert len(rows_for(piece, (newborn,))) < len(rows_for(piece, (largest,)))
    assert len(rows_for(piece, hat.sizes)) == len(piece.rows)


def test_which_sizes_work_a_row_is_said_only_among_many(hat: Checked) -> None:
    among_many = next(row for row in rows_of(hat) if words(row.label) == "Rnd 11")
    alone = next(row for row in rows_of(hat, "M") if words(row.label) == "Rnd 11")
    assert among_many.only == "C, S, M, L and XL only"
    assert alone.only == ""
    assert words(alone.text) == words(among_many.text) == "*Sc in next 9 sts, inc in next st; rep from * around. "


@pytest.mark.parametrize(
    "head", ["Rnd 9 (S and M only)", "Rnd 9 [sizes S, M only]", "Rnd 9 (for size M only)", "Rnd 9: Sizes S and M only"]
)
def test_remarks_on_sizes(hat: Checked, samples: Any, head: str) -> None:
    row = replace(samples["row"](f"{head}: Sc around. (18 sc)"), sizes=("S", "M"))
    row = replace(row, label=replace(row.label, text="Rnd 9"))
    view = row_view(row, {}, printing(hat, "M"))
    assert (words(view.label), view.only, words(view.text)) == ("Rnd 9", "", "Sc around. ")
    assert "only" in row_view(row, {}, printing(hat)).only


def test_worked_counts_are_at_hand(hat: Checked) -> None:
    rows = rows_of(hat, "M")
    assert rows[0].made == "6"
    full = hat.sizes[4].counts["full"].n
    assert rows[-1].made == str(7 * full // 6)


def test_a_row_without_label(wrap: Checked, samples: Any) -> None:
    row = samples["row"]("Fasten off.")
    row = replace(row, label=replace(row.label, text=""))
    assert label_bounds(row) == (0, 0)
    view = row_view(row, {}, printing(wrap))
    assert (view.label, words(view.text)) == ((), "Fasten off.")


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("Rnd 2: Sc around. (12 sc)", "(12 sc)"),
        ("Rnd 2: Sc around. [{band} sc]", "[{band} sc]"),
        ("Rnd 2: Sc around. (24 (25, 26) sc)", "(24 (25, 26) sc)"),
        ("Rnd 2: Sc around — 12 sc.", "— 12 sc."),
        ("Rnd 2: Sc around. 24 (25, 26) sc.", "24 (25, 26) sc."),
        ("Rnd 2: (Sc, ch 1) 3 times.", None),
    ],
)
def test_where_the_closing_count_begins(samples: Any, text: str, count: str | None) -> None:
    row = samples["row"](text)
    row = replace(row, stated=samples["row"]("Rnd 1: x. (12 sc)").stated)
    start = count_start(row)
    assert (None if start is None else row.text[start:]) == count


def test_without_a_stated_count_nothing_is_a_count(samples: Any) -> None:
    assert count_start(replace(samples["row"]("Rnd 2: Sc around. (12 sc)"), stated=())) is None


def test_boxes_to_tick_follow_the_label_or_the_work() -> None:
    assert ticks("Rnd 7") == ("tick hanging",)
    assert ticks("Rows 2–5", 4) == ("tick",) * 4
    assert ticks("Next 3 rnds", 3) == ("tick",) * 3
    assert ticks("Next rows", 12) == (*("tick",) * 9, "tick tenth", "tick", "tick")
    assert ticks("") == ()
