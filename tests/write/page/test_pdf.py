import io
import shutil
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pdfua
import pytest
from pypdf import PdfReader

from gradegen.design.checked import Checked
from gradegen.findings import Place
from gradegen.write.editions.edition import Edition
from gradegen.write.page.assets import BASE, PageFiles
from gradegen.write.page.pdf import pdf_bytes
from gradegen.write.pattern import pattern_html

HERE = Place("x.yaml", 1, 1, 1, 1)
PAGE = '<!DOCTYPE html><html lang="en"><head><title>A page</title></head><body>{}</body></html>'

FALSE_ALARMS = {"TAG-020"}  # empty spans: the boxes to tick off on one-size pages are drawn, and hold no words to speak


def printed(html: str, folder: Path) -> bytes:
    data, findings = pdf_bytes(html, PageFiles(folder), HERE)
    assert findings == ()
    assert data is not None
    return data


@pytest.fixture(scope="module")
def wrap_pdf(wrap: Checked, tmp_path_factory: pytest.TempPathFactory) -> bytes:
    return printed(pattern_html(wrap, Edition(Path("out"))), tmp_path_factory.mktemp("wrap"))


@pytest.fixture(scope="module")
def hat_pdf(hat: Checked, tmp_path_factory: pytest.TempPathFactory) -> bytes:
    return printed(pattern_html(hat, Edition(Path("out"), "M", "letter")), tmp_path_factory.mktemp("hat"))


@pytest.fixture(scope="module", params=["wrap, all sizes, A4", "hat, one size, letter"])
def pdf(request: pytest.FixtureRequest, wrap_pdf: bytes, hat_pdf: bytes) -> bytes:
    return wrap_pdf if "wrap" in request.param else hat_pdf


def test_title_language_bookmarks(wrap_pdf: bytes) -> None:
    reader = PdfReader(io.BytesIO(wrap_pdf))
    assert reader.metadata is not None
    assert reader.metadata.title == "Tidewrack Wrap"
    assert reader.metadata.author == "Demo House"
    assert reader.metadata.creation_date is None
    assert reader.root_object["/Lang"] == "en-US"
    (top,) = (mark for mark in reader.outline if not isinstance(mark, list))
    assert top["/Title"] == "Tidewrack Wrap"


def test_paper(wrap_pdf: bytes, hat_pdf: bytes) -> None:
    # A4 is 210 x 297 mm (ISO 216); letter is 8.5 x 11 in (ANSI/ASME Y14.1); a point is 1/72 in
    for data, size in ((wrap_pdf, (210 / 25.4 * 72, 297 / 25.4 * 72)), (hat_pdf, (612, 792))):
        for page in PdfReader(io.BytesIO(data)).pages:
            assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(size, abs=0.01)


def fonts_in(data: bytes) -> set[str]:
    fonts: set[str] = set()
    for page in PdfReader(io.BytesIO(data)).pages:
        resources: Any = page["/Resources"]
        for font in resources.get("/Font", {}).values():
            for inner in font.get_object()["/DescendantFonts"]:
                descriptor = inner.get_object()["/FontDescriptor"]
                assert "/FontFile2" in descriptor
                fonts.add(str(descriptor["/FontName"]).partition("+")[2])
    return fonts


def test_only_our_own_fonts_are_in_the_file(pdf: bytes) -> None:
    assert fonts_in(pdf) == {"Body", "Body-Light", "Body-Semi-Bold"}


def test_tagged_and_nothing_wrong_with_the_tags(pdf: bytes, tmp_path: Path) -> None:
    # PDF/UA-1 is ISO 14289-1; the checker covers a part of it
    (tmp_path / "x.pdf").write_bytes(pdf)
    report = pdfua.validate(str(tmp_path / "x.pdf"))
    assert [finding for finding in report.findings] == []


def test_a_screen_reader_finds_its_way(pdf: bytes, tmp_path: Path) -> None:
    import outloud

    (tmp_path / "x.pdf").write_bytes(pdf)
    found = [(one.rule, one.message) for one in outloud.check(str(tmp_path / "x.pdf")).findings]
    assert [one for one in found if one[0] not in FALSE_ALARMS] == []


@pytest.mark.skipif(shutil.which("qpdf") is None, reason="qpdf is not installed")
def test_qpdf_finds_the_file_sound(pdf: bytes, tmp_path: Path) -> None:
    (tmp_path / "x.pdf").write_bytes(pdf)
    checked = subprocess.run(["qpdf", "--check", str(tmp_path / "x.pdf")], capture_output=True, text=True, check=False)
    assert checked.returncode == 0, checked.stdout + checked.stderr


def test_same_page_same_bytes_in_two_folders(wrap: Checked, tmp_path: Path) -> None:
    html = pattern_html(wrap, Edition(Path("out"), "M"))
    folders = [tmp_path / "one", tmp_path / "another place"]
    for folder in folders:
        folder.mkdir()
    first = printed(html, folders[0])
    time.sleep(1.1)  # no clock with seconds may leave a trace
    second = printed(html, folders[1])
    assert first == second
    assert str(tmp_path).encode() not in first


def test_a_page_that_reaches_out_gets_nothing(tmp_path: Path, typesetter_is_silent: list[str]) -> None:
    (tmp_path / "secret.svg").write_text('<svg xmlns="http://www.w3.org/2000/svg"/>')
    (tmp_path / "in").mkdir()
    html = PAGE.format(f'<p>x<img alt="a" src="{BASE}../secret.svg"><img alt="b" src="http://127.0.0.1:9/b.png"></p>')
    data, findings = pdf_bytes(html, PageFiles(tmp_path / "in"), HERE)
    typesetter_is_silent.clear()
    assert data is not None
    assert {finding.rule for finding in findings} == {"file-refused"}
    assert len(findings) == 2


def test_attachments_from_outside_are_refused(tmp_path: Path, typesetter_is_silent: list[str]) -> None:
    html = PAGE.format("<p>x</p>").replace("<title>", '<link rel="attachment" href="file:///etc/hostname"><title>')
    data, findings = pdf_bytes(html, PageFiles(tmp_path), HERE)
    typesetter_is_silent.clear()
    assert [finding.rule for finding in findings] == ["file-refused"]
    assert data is not None
    assert not PdfReader(io.BytesIO(data)).attachments


def test_nested_without_end(tmp_path: Path) -> None:
    data, findings = pdf_bytes(PAGE.format("<div>" * 3000), PageFiles(tmp_path), HERE)
    assert data is None
    assert [finding.rule for finding in findings] == ["page-not-typeset"]


def test_missing_libraries_are_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    class Missing:
        def find_spec(self, name: str, *_: object) -> None:
            if name == "weasyprint":
                raise OSError("cannot load library 'libgobject-2.0-0'")

    monkeypatch.delitem(sys.modules, "weasyprint", raising=False)
    monkeypatch.setattr(sys, "meta_path", [Missing(), *sys.meta_path])
    data, (finding,) = pdf_bytes(PAGE.format("x"), PageFiles(tmp_path), HERE)
    assert data is None
    assert finding.rule == "print-library-missing"
    assert finding.place == HERE
    assert finding.hint is not None
    for line in ("apt-get install libpango-1.0-0", "brew install pango", "Windows"):
        assert line in finding.hint


def test_a_nearly_empty_last_page_is_saved(tmp_path: Path) -> None:
    style = "<style>@page{size:A6;margin:5mm}main{display:block;font-size:10pt;line-height:1.4}p{margin:0}</style>"
    html = PAGE.format('<main id="all" class="">' + "<p>x</p>" * 29 + "</main>").replace("<title>", style + "<title>")
    closer = html.replace("line-height:1.4", "line-height:1.2")
    alone, _ = pdf_bytes(html, PageFiles(tmp_path), HERE)
    saved, _ = pdf_bytes(html, PageFiles(tmp_path), HERE, closer)
    assert alone is not None
    assert saved is not None
    assert len(PdfReader(io.BytesIO(alone)).pages) == 2
    assert len(PdfReader(io.BytesIO(saved)).pages) == 1
