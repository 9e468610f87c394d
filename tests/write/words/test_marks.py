from typing import Any

from fontTools.ttLib import TTFont

from gradegen.design.checked import Checked
from gradegen.write.page.assets import fonts
from gradegen.write.words.marks import MARKS, marks_of, without_marks


def test_the_text_font_has_every_mark() -> None:
    signs = TTFont(fonts()["fonts/body.ttf"]).getBestCmap()
    assert {mark for mark in MARKS if ord(mark) not in signs} == set()
    assert len(set(MARKS)) == len(MARKS)


def test_a_size_keeps_its_mark_among_a_chosen_few(wrap: Checked) -> None:
    marks = marks_of(wrap.sizes, wrap.sizes)
    assert len(set(marks)) == len(wrap.sizes)
    assert marks_of(wrap.sizes, wrap.sizes[3:8]) == marks[3:8]


def test_four_sizes_need_none(wrap: Checked, samples: Any) -> None:
    assert marks_of(wrap.sizes, wrap.sizes[:4]) == ()


def test_more_sizes_than_marks(wrap: Checked) -> None:
    assert marks_of(wrap.sizes * 2, wrap.sizes) == ()


def test_without_them_the_text_is_the_same() -> None:
    assert without_marks("Ch ●104 (△116).") == "Ch 104 (116)."
