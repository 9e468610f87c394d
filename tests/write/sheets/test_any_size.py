"""The any-size sheet as printed: every number of it is the sheet's, text, spreadsheet and page alike."""

from __future__ import annotations

import csv
import io
import re
from fractions import Fraction
from pathlib import Path

import pytest
from pypdf import PdfReader

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file
from gradegen.reckon.any_size import AnySizeSheet, any_size_sheet
from gradegen.write.sheets.any_size import any_size_csv, any_size_html, any_size_text, write_any_size
from gradegen.write.sheets.any_size_view import any_size_view, formula_parts

DEMOS = Path(__file__).parents[3] / "shared" / "patterns"
Both = tuple[AnySizeSheet, Checked]


def sheet_of(name: str, low: int, high: int) -> Both:
    checked = check_file(DEMOS / name).checked
    assert checked is not None
    sheet, _ = any_size_sheet(checked, Fraction(low), Fraction(high))
    assert sheet is not None
    return sheet, checked


@pytest.fixture(scope="module")
def wrap() -> Both:
    return sheet_of("skerrywick-wrap.yaml", 20, 80)


@pytest.fixture(scope="module")
def hat() -> Both:
    return sheet_of("bollard-hat.yaml", 11, 25)


def test_a_line_per_size_in_the_text(wrap: Both) -> None:
    text = any_size_text(*wrap)
    lines = [line.split() for line in text.splitlines() if re.match(r" *\d+ ", line)]
    assert [int(line[0]) for line in lines] == [size.chains for size in wrap[0].sizes]
    assert "\N{NO-BREAK SPACE}" not in text


def test_every_number_of_the_spreadsheet(wrap: Both) -> None:
    rows = list(csv.DictReader(io.StringIO(any_size_csv(*wrap))))
    for row, size in zip(rows, wrap[0].sizes, strict=True):
        assert int(row["chains"]) == size.chains
        assert int(row["stitches after row 1"]) == size.first_made == 2 * size.count
        assert abs(Fraction(row["width in"]) - size.width) <= Fraction(1, 200)
        assert abs(Fraction(row["width cm"]) - size.width * Fraction(254, 100)) <= Fraction(1, 200)
        assert row["sizes"] == " ".join(size.named)
        yards = size.yarn["A"].wanted.yards
        assert yards is not None
        assert yards <= int(row["yards A"]) < yards + 1
        assert int(row["skeins A"]) == size.yarn["A"].skeins == -(-int(-(-yards // 1)) // 200)


def test_the_sum_for_a_gauge_of_ones_own_gives_the_sheet_s_counts(wrap: Both) -> None:
    """chains = step * round((W * g - b) / step) + b, put to every width of the sheet: PRACTICE for any-size films."""
    sheet, _ = wrap
    parts = formula_parts(sheet)
    assert parts == (6, 3, 0)
    step, plus, extra = parts
    for size in sheet.sizes:
        stitches = size.width / sheet.leading.inches
        repeats = ((stitches - plus) / step + Fraction(1, 2)) // 1
        assert repeats * step + plus + extra == size.chains


def test_blanks_and_an_example(wrap: Both) -> None:
    view = any_size_view(*wrap)
    assert len(view.own_gauge) == 4
    assert all("______" in "".join(part.text for part in line) for line in view.own_gauge)
    (example,) = ("".join(part.text for part in line) for line in view.example)
    chains = int(re.findall(r"= (\d+) chains", example)[0])
    assert chains % 6 == 3


def test_a_piece_without_a_chain_has_stitches_instead(hat: Both) -> None:
    view = any_size_view(*hat)
    assert view.heads[0] == "Sts"
    assert [int(line.cells[0]) for line in view.lines] == [48, 54, 60, 66, 72, 78, 84, 90, 96]
    assert any("between 8 and 16 repeats" in "".join(part.text for part in line) for line in view.own_gauge)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_one_page_that_shows_every_line(wrap: Both, tmp_path: Path, paper: str) -> None:
    paths, findings = write_any_size(*wrap, tmp_path, "letter" if paper == "letter" else "a4")
    assert findings == ()
    pages = PdfReader(paths[0]).pages
    assert len(pages) == 1
    text = pages[0].extract_text()
    for size in wrap[0].sizes:
        assert re.search(rf"\b{size.chains}\b", text)
    assert "Your own gauge" in text


def test_names_are_escaped(wrap: Both) -> None:
    from dataclasses import replace

    sheet, checked = wrap
    title = replace(checked.pattern.title, text="<b>Wrap</b> & more")
    html = any_size_html(sheet, replace(checked, pattern=replace(checked.pattern, title=title)))
    assert "<b>Wrap" not in html
    assert "&lt;b&gt;Wrap&lt;/b&gt; &amp; more" in html


def test_a_folder_that_can_t_be_written(wrap: Both, tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("in the way", encoding="utf-8")
    paths, findings = write_any_size(*wrap, blocked / "below")
    assert paths == ()
    assert [one.rule for one in findings] == ["sheet-not-written"]
