"""The any-size sheet: every count on it, put back into the pattern, checks clean; the counts between do not."""

from __future__ import annotations

import re
import shutil
from fractions import Fraction
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.findings import Severity
from gradegen.pipeline import check_file
from gradegen.reckon.any_size import AnySizeSheet, any_size_sheet, usual_span

DEMOS = Path(__file__).parents[2] / "shared" / "patterns"
OF_M = {"f": "for: [M]", '"': "12.5 in"}
WRAP = DEMOS / "skerrywick-wrap.yaml"
A_COUNT = re.compile(r"  band: \{across: around.*\n")


@pytest.fixture(scope="module")
def wrap() -> Checked:
    found = check_file(WRAP).checked
    assert found is not None
    return found


@pytest.fixture(scope="module")
def sheet(wrap: Checked) -> AnySizeSheet:
    found, findings = any_size_sheet(wrap, Fraction(20), Fraction(80))
    assert found is not None
    assert findings == ()
    return found


def put_back(count: int, tmp_path: Path, *, one_size: bool = False) -> set[str]:
    """The rules of errors in a copy of the wrap whose every size has this count; `one_size`: a copy for M alone."""
    text = WRAP.read_text("utf-8")
    assert A_COUNT.search(text)
    if one_size:
        text, times = re.subn(r"for: all|\"\[[\d., ]+\] in\"", lambda found: OF_M[found[0][0]], text)
        assert times == 2
    for picture in DEMOS.glob("*.svg"):
        if not (tmp_path / picture.name).exists():
            shutil.copy(picture, tmp_path)
    path = tmp_path / "wrap.yaml"
    path.write_text(A_COUNT.sub(f"  band: {{sum: {count}}}\n", text), encoding="utf-8")
    outcome = check_file(path)
    errors = {one.rule for one in outcome.findings if one.severity in (Severity.ERROR, Severity.INTERNAL)}
    unproved = outcome.proved.wrong + outcome.proved.not_checked
    return errors | ({"not proved"} if unproved else set())


def test_every_count_put_back_checks_clean(sheet: AnySizeSheet, tmp_path: Path) -> None:
    assert [size.count for size in sheet.sizes] == list(range(75, 280, 6))
    for size in sheet.sizes:
        assert put_back(size.count, tmp_path) == set(), size.count


def test_the_counts_between_do_not(sheet: AnySizeSheet, tmp_path: Path) -> None:
    """All of them, each put back into a copy for M; one whose own count is put back the same way is clean."""
    listed = {size.count for size in sheet.sizes}
    assert put_back(159, tmp_path, one_size=True) == set()
    between = [count for count in range(min(listed), max(listed)) if count not in listed]
    assert len(between) == 5 * (len(listed) - 1)
    for count in between:
        found = put_back(count, tmp_path, one_size=True)
        assert found, count
        assert "internal-fault" not in found


def test_sizes_of_the_pattern_are_marked_and_agree(sheet: AnySizeSheet, wrap: Checked) -> None:
    named = {name: size for size in sheet.sizes for name in size.named}
    assert list(named) == [size.name for size in wrap.sizes]
    for size in wrap.sizes:
        one = named[size.name]
        assert one.count == size.counts["band"].n
        assert one.rows == size.counts["rounds"].n
        assert one.width == size.measures["around"].printed
        assert one.first_made == 2 * one.count


def test_yarn_of_named_sizes_is_the_pattern_s_own(sheet: AnySizeSheet, wrap: Checked) -> None:
    from gradegen.reckon import yarn_per_size

    (need,), _ = yarn_per_size(wrap)
    for one in sheet.sizes:
        for name in one.named:
            size = need.of(name)
            assert size is not None
            assert one.yarn["A"].used == size.used
            assert one.yarn["A"].skeins == size.skeins


def test_wider_takes_more(sheet: AnySizeSheet) -> None:
    yards = [size.yarn["A"].used.inches for size in sheet.sizes]
    skeins = [size.yarn["A"].skeins for size in sheet.sizes]
    assert yards == sorted(yards)  # type: ignore[type-var]
    assert skeins == sorted(skeins)  # type: ignore[type-var]


def test_widths_lie_between_the_two_asked_for(sheet: AnySizeSheet) -> None:
    assert all(20 <= size.width <= 80 for size in sheet.sizes)
    assert sheet.sizes[0].width - sheet.leading.inches * 6 < 20
    assert sheet.step == 6


def test_rows_that_name_their_sizes_allow_no_others() -> None:
    """The hat's crown names the sizes that work each round: 102 stitches are on the multiple and still don't work."""
    hat = check_file(DEMOS / "bollard-hat.yaml").checked
    assert hat is not None
    found, _ = any_size_sheet(hat, Fraction(10), Fraction(26))
    assert found is not None
    assert [size.count for size in found.sizes] == [48, 54, 60, 66, 72, 78, 84, 90, 96]
    assert set(found.left_out) == {102}


def test_the_usual_span_is_that_of_the_sizes(wrap: Checked) -> None:
    low, high = usual_span(wrap)
    assert (low, high) == (Fraction(135 * 4, 14), Fraction(231 * 4, 14))


def test_no_count_between(wrap: Checked) -> None:
    found, findings = any_size_sheet(wrap, Fraction(39), Fraction("39.5"))
    assert found is None
    assert [one.rule for one in findings] == ["no-size-between"]


def test_a_pattern_without_a_count_for_its_width(tmp_path: Path) -> None:
    path = tmp_path / "plain.yaml"
    path.write_text(
        "title: Plain\nterms: US\nsizes: {table: women, for: [M]}\n"
        "gauge:\n  plain: {stitches: 4, rows: 4, over: 4 in}\n"
        "pieces:\n  - name: Square\n    shape: flat\n    rows: |\n"
        "      Row 1: Ch 12. Sc in 2nd ch from hook, sc in each ch across. (11 sc)\n",
        encoding="utf-8",
    )
    found = check_file(path).checked
    assert found is not None
    sheet, findings = any_size_sheet(found, Fraction(1), Fraction(9))
    assert sheet is None
    assert [one.rule for one in findings] == ["no-leading-count"]


def test_rows_that_can_t_be_followed_prove_nothing(tmp_path: Path) -> None:
    text = WRAP.read_text("utf-8").replace("hdc in each ch around, then", "hdc wherever it pleases you, then")
    path = tmp_path / "wrap.yaml"
    path.write_text(text, encoding="utf-8")
    found = check_file(path).checked
    assert found is not None
    sheet, findings = any_size_sheet(found, Fraction(20), Fraction(80))
    assert sheet is None
    assert [one.rule for one in findings] == ["rows-not-followed"]
