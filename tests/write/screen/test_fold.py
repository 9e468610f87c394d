"""Findings of one fault in several sizes become one for the eye."""

from gradegen.findings import Finding, Place, Severity
from gradegen.write.screen.fold import fold, grouped, sizes_in_words

SIZES = ("S", "M", "L")


def finding(
    size: str | None, *, line: int = 4, column: int = 3, row: str = "Row 2", message: str = "m", found: str = "1"
):
    place = Place("f", line, column, line, column + 2)
    return Finding("a-rule", Severity.ERROR, place, message, size, row, expected="2", found=found)


def test_sizes_of_one_row_fold_even_when_each_points_at_its_own_number() -> None:
    folded = fold([finding("S", column=3), finding("M", column=7), finding("L", column=11)])
    assert len(folded) == 1
    assert folded[0].sizes == SIZES
    assert [place.column for place in folded[0].places] == [3, 7, 11]


def test_other_rows_lines_and_words_stay_apart() -> None:
    findings = [finding("S"), finding("M", line=5), finding("M", row="Row 3"), finding("M", message="other")]
    assert len(fold(findings)) == 4


def test_the_same_size_twice_is_two_faults() -> None:
    folded = fold([finding("S", column=3), finding("S", column=20), finding("M", column=3), finding("M", column=20)])
    assert [one.sizes for one in folded] == [("S", "M"), ("S", "M")]


def test_findings_about_the_whole_pattern_never_fold() -> None:
    assert len(fold([finding(None), finding(None)])) == 2


def test_order_is_kept() -> None:
    assert [one.first.place.line for one in fold([finding("S", line=9), finding("S", line=2)])] == [9, 2]


def test_sizes_in_words() -> None:
    one, two, three = ([finding(size) for size in SIZES[:many]] for many in (1, 2, 3))
    assert sizes_in_words(fold(one)[0], SIZES) == "size S"
    assert sizes_in_words(fold(two)[0], SIZES) == "sizes S M"
    assert sizes_in_words(fold(three)[0], SIZES) == "all sizes"
    assert sizes_in_words(fold([finding(None)])[0], SIZES) == ""


def test_names_with_blanks_are_parted_by_commas() -> None:
    folded = fold([finding("tween"), finding("adult woman")])[0]
    assert sizes_in_words(folded, ("child", "tween", "adult woman")) == "sizes tween, adult woman"


def test_sizes_that_the_text_names_nowhere() -> None:
    sizes = ("size 1", "size 2", "size 3")
    assert sizes_in_words(fold([finding("size 3")])[0], sizes) == "size 3"
    assert sizes_in_words(fold([finding("size 1"), finding("size 3")])[0], sizes) == "size 1, size 3"


def test_equal_texts_are_said_once_with_their_sizes() -> None:
    folded = fold([finding("S", found="1"), finding("M", found="5"), finding("L", found="1")])[0]
    assert grouped(folded, lambda one: one.found) == (("1", ("S", "L")), ("5", ("M",)))
