"""HTML, text and shop text: the same words and numbers as the pages, and nothing from outside."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from pathlib import Path

import pytest

from gradegen import pipeline
from gradegen.cli import main
from gradegen.design.checked import Checked
from gradegen.write.editions.edition import Edition
from gradegen.write.editions.plain_document import WIDTH, document_text, words
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.document import document_view
from gradegen.write.page.page_html import page_html
from gradegen.write.sheets.shop_text import shop_text
from gradegen.write.words.marks import MARKS

DEMOS = Path(__file__).resolve().parents[2] / "shared" / "patterns"


@pytest.fixture(scope="module")
def wrap() -> Checked:
    found = pipeline.check_file(DEMOS / "skerrywick-wrap.yaml").checked
    assert found is not None
    return found


def flat(text: str) -> str:
    return re.sub(r"\s+", " ", text)


@pytest.mark.parametrize("size", [None, "M"])
def test_the_text_holds_every_row_with_its_count(wrap: Checked, size: str | None, tmp_path: Path) -> None:
    document = document_view(wrap, Edition(tmp_path, size))
    text = document_text(document)
    rows = [row for piece in document.pieces for row in piece.rows]
    for row in rows:
        assert flat(words(row.text)).strip() in flat(text)
        assert flat(words(row.count)).strip() in flat(text)
    assert not set(text) & set(MARKS)
    assert max(len(line) for line in text.splitlines()) <= WIDTH
    assert ("342" in text) == (size is None)  # Rnd 1 of L: twice a chain of 171


def test_one_size_s_text_has_no_lists(wrap: Checked, tmp_path: Path) -> None:
    text = document_text(document_view(wrap, Edition(tmp_path, "M")))
    assert not re.search(r"\d \(\d+, \d", text)


class Outside(HTMLParser):
    """Everything a page would fetch."""

    def __init__(self) -> None:
        super().__init__()
        self.asked: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        for name, value in attrs:
            inside = not value or value.startswith(("#", "data:"))
            if (name in ("src", "srcset", "data") or (name == "href" and tag != "a")) and not inside:
                self.asked.append(f"{tag} {name}={value}")


@pytest.mark.parametrize("style", ["print", "large-print"])
def test_a_page_for_the_browser_asks_for_nothing_outside(wrap: Checked, style: str, tmp_path: Path) -> None:
    html = page_html(wrap, Edition(tmp_path, style=style), PageFiles(tmp_path))  # type: ignore[arg-type]
    page = Outside()
    page.feed(html)
    assert page.asked == []
    assert not re.search(r"url\(|@import|file:|@font-face", html)
    assert 'name="viewport"' in html
    assert not re.search(r'font-family="(Body|Large)"|[\s,](Body|Large)[\s,;]', html.split("</style>")[0])


def test_pictures_are_put_inside_and_others_left_out(
    wrap: Checked, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "small.png").write_bytes(b"\x89PNG\r\n\x1a\n")
    asked = '<html><head></head><img alt="a" src="small.png"><img alt="b" src="../secret.png"></html>'
    monkeypatch.setattr("gradegen.write.page.page_html.pattern_html", lambda *_: asked)
    html = page_html(wrap, Edition(tmp_path), PageFiles(tmp_path))
    assert 'src="data:image/png;base64,iVBORw0KGgo="' in html
    assert "secret" not in html


def test_the_shop_text_says_what_a_buyer_asks(wrap: Checked, tmp_path: Path) -> None:
    text = shop_text(document_view(wrap, Edition(tmp_path)))
    for wanted in (
        "Skerrywick Wrap", "M: to fit bust 36–38 in (91.5–96.5 cm)", "Hook: 6 mm", "Level: Intermediate",
        "US crochet terms", "14 sts and 7 rows = 4 in (10 cm)", "double crochet 2 stitches together",
        "Stitch charts: Wrap",
    ):  # fmt: skip
        assert wanted in text
    assert "begin" not in text.split("Stitches:")[1].splitlines()[0]


def test_the_command_writes_what_is_asked_for(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    pattern = str(DEMOS / "bollard-hat.yaml")
    assert main(["print", pattern, "--size", "NB", "--also", "html,text,csv,xlsx,shop", "--out", str(tmp_path)]) == 0
    written = {path.name for path in tmp_path.iterdir()}
    stem = "bollard-hat-NB"
    assert written == {
        f"{stem}.pdf", f"{stem}.html", f"{stem}.txt", f"{stem}-grading.csv", f"{stem}-grading.xlsx", f"{stem}-shop.txt",
    }  # fmt: skip
    assert len(capsys.readouterr().out.splitlines()) == 6
    with pytest.raises(SystemExit) as stopped:
        main(["print", pattern, "--also", "pictures"])
    assert stopped.value.code == 2


def test_a_shop_hears_of_one_body_and_one_ease(tmp_path: Path) -> None:
    """The cardigan has four key measures; a shop's line says the bust alone, and the ease at the bust."""
    checked = pipeline.check_file(DEMOS / "slipway-cardigan.yaml").checked
    assert checked is not None
    line = next(
        line for line in shop_text(document_view(checked, Edition(tmp_path))).splitlines() if line.startswith("M:")
    )
    assert line.count("ease") == line.count("to fit") == 1
    assert "body" not in line
    assert all(name in line for name in ("chest", "cross width", "armhole", "arm "))
