"""The source line and the marks under it."""

from pathlib import Path

import pytest

from gradegen.findings import Place
from gradegen.write.screen.source import marked, source_line


def at(column: int, end: int, line: int = 1, end_line: int = 1) -> Place:
    return Place("f", line, column, end_line, end)


def test_marks_stand_under_the_place() -> None:
    assert marked("Rnd 6: inc. [44]", [at(13, 15)], 80) == ("Rnd 6: inc. [44]", "            ^^")


def test_near_places_of_a_list_join_and_far_ones_do_not() -> None:
    line = "(44, 56, 64) and 9"
    assert marked(line, [at(2, 4), at(6, 8)], 80)[1] == " ^^^^^^"
    assert marked(line, [at(2, 4), at(18, 19)], 80)[1] == " ^^" + " " * 14 + "^"


def test_an_empty_place_gets_one_mark_even_past_the_end_of_the_line() -> None:
    assert marked("ab", [at(3, 3)], 80)[1] == "  ^"
    assert marked("ab", [at(1, 1)], 80)[1] == "^"


def test_a_place_over_several_lines_is_marked_to_the_end_of_the_first() -> None:
    assert marked("ab cd  ", [at(4, 2, 1, 3)], 80)[1] == "   ^^"


@pytest.mark.parametrize("before", ["\t", "編み", "e\u0301", "\x00"])
def test_marks_stay_under_their_sign_whatever_stands_before(before: str) -> None:
    text, under = marked(f"{before}X", [at(len(before) + 1, len(before) + 2)], 80)
    columns = {"\t": 4, "編み": 4, "e\u0301": 1, "\x00": 1}[before]
    assert under == " " * columns + "^"
    assert "\x00" not in text
    assert "\t" not in text


@pytest.mark.parametrize("start", [0, 1, 40, 150, 290, 298])
def test_a_long_line_is_cut_around_the_mark(start: int) -> None:
    line = "".join(chr(ord("a") + spot % 26) for spot in range(300))
    text, under = marked(line, [at(start + 1, start + 3)], 60)
    assert len(text) <= 60
    assert len(under) <= 60
    first = under.index("^")
    assert text[first : first + under.count("^")] == line[start : start + 2]


def test_the_line_comes_from_the_file_without_mark_and_line_end(tmp_path: Path) -> None:
    file = tmp_path / "p.yaml"
    file.write_bytes("\ufefftitle: x\r\nterms: US\r\n".encode())
    assert source_line(Place(str(file), 1, 1, 1, 2)) == "title: x"
    assert source_line(Place(str(file), 2, 1, 2, 2)) == "terms: US"


def test_nothing_is_shown_for_lines_that_are_not_there(tmp_path: Path) -> None:
    assert source_line(Place(str(tmp_path / "none"), 1, 1, 1, 1)) is None
    assert source_line(Place(str(tmp_path), 1, 1, 1, 1)) is None
