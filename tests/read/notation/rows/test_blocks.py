"""A block of rows: one row a line, indented lines go on, nothing is lost, every place is right."""

from __future__ import annotations

from gradegen.design.rows import Unread, Work
from gradegen.findings import Written
from gradegen.read.notation.rows import RowNames, read_rows

BLOCK = """Foundation: Ch 20, turn.

Row 1: Sc in 2nd ch from hook,
    sc in each ch across. (19 sc)
Here the colour may change, if liked.
Row 2: Ch 1, sc in each st
  across, turn. (19 sc)
"""


def read(text: str, sizes: tuple[str, ...] = ("one",)):  # type: ignore[no-untyped-def]
    return read_rows(Written.plain(text, "hat.yaml", 10, 7), RowNames(sizes=sizes))


def test_a_line_is_a_row_and_an_indented_line_goes_on() -> None:
    rows, findings = read(BLOCK)
    assert [row.label.text for row in rows] == ["Foundation", "Row 1", "", "Row 2"]
    assert rows[1].text == "Row 1: Sc in 2nd ch from hook,\n    sc in each ch across. (19 sc)"
    assert not findings


def test_a_line_that_says_no_step_is_kept_unread() -> None:
    rows, _ = read(BLOCK)
    assert rows[2].is_prose
    assert [step.text for step in rows[2].steps if isinstance(step, Unread)]


def test_places_are_lines_and_columns_of_the_file() -> None:
    rows, _ = read(BLOCK)
    assert (rows[0].place.file, rows[0].place.line, rows[0].place.column) == ("hat.yaml", 10, 7)
    second = rows[1].steps[1]
    assert isinstance(second, Work)
    assert (second.place.line, second.place.column) == (13, 5)
    assert (rows[1].stated[0].place.line, rows[1].stated[0].place.column) == (13, 28)
    assert (rows[3].steps[1].place.line, rows[3].steps[1].place.end_line) == (15, 16)


def test_a_wrong_list_is_found_on_its_own_line() -> None:
    _, findings = read("Row 1: Ch 20 (24, 28)\nRow 2: sc in next 3 (4) sts", ("S", "M", "L"))
    assert [(f.rule, f.place.line, f.place.column) for f in findings] == [("size-list-length", 11, 19)]


def test_a_name_given_in_passing_is_known_to_later_rows() -> None:
    rows, findings = read(
        "Rnd 1: * 2 dc, ch 2, 2 dc (crown) in next st; rep from * around\nRnd 2: * crown in next crown; rep from *"
    )
    assert not findings
    second = rows[1].steps[0].body[0]
    assert second.makes[0].stitch == "crown"
    assert rows[0].steps[0].body[0].called == "crown"


def test_rows_in_empty_text_are_none() -> None:
    assert read("\n  \n\n") == ((), ())


def test_a_very_long_row_keeps_what_is_not_read() -> None:
    rows, _ = read("sc in next st, " * 1000)
    assert isinstance(rows[0].steps[-1], Unread)
    assert rows[0].text.endswith(rows[0].steps[-1].text)
