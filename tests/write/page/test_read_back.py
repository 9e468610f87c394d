import re
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.findings import Place
from gradegen.write.editions.edition import Edition
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.pdf import pdf_bytes
from gradegen.write.page.read_back import read_back, read_slowly
from gradegen.write.page.typeset import plain_again
from gradegen.write.pattern import pattern_html


@pytest.fixture(scope="module")
def pdf(hat: Checked) -> bytes:
    data, _ = pdf_bytes(pattern_html(hat, Edition(Path("out"))), PageFiles(Path()), Place("x", 1, 1, 1, 1))
    assert data is not None
    return data


def test_rows_stand_in_order(pdf: bytes) -> None:
    text = read_back(pdf).text.replace("\N{NO-BREAK SPACE}", " ")
    starts = [text.index(f"Rnd {n}:") for n in range(1, 14)]
    assert starts == sorted(starts)
    assert re.search(r"Rnd 2: Inc in each st\. ?\(12 sc\)\n", text)  # the blank before a count is a part of its own


def test_running_heads_are_no_part_of_the_text(pdf: bytes) -> None:
    assert "Page 1 of" not in read_back(pdf).text
    assert "Page 1 of" in read_slowly(pdf)


def test_tables_by_cell(pdf: bytes, hat: Checked) -> None:
    rows = read_back(pdf).rows
    assert [cell.split("\xa0")[-1] for cell in rows[0]] == ["Size (in)", *(size.name for size in hat.sizes)]
    assert [row[0] for row in rows].count("To fit bust") == 2
    assert {len(row) for row in rows} == {8}


def test_pypdf_reads_the_same_signs(pdf: bytes) -> None:
    """Our reading by tags and pypdf's own reading by place hold the same signs, running heads and feet apart."""
    mine, other = plain_again(read_back(pdf).text), plain_again(read_slowly(pdf))
    heads = "".join(line for line in read_slowly(pdf).splitlines() if "Page" in line or "Sizes NB (B" in line)
    assert set(mine) <= set(other)
    assert len(mine) <= len(other) <= len(mine) + len(heads) + 400  # the lettering of the drawing


def test_a_file_that_is_not_tagged(tmp_path: Path) -> None:
    from pypdf import PdfWriter

    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    writer.write(tmp_path / "x.pdf")
    assert read_back((tmp_path / "x.pdf").read_bytes()).text == ""
