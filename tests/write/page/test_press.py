import os
import signal
import sys
import tempfile
from pathlib import Path

import pytest

from gradegen.findings import Place
from gradegen.write.page import pdf, press
from gradegen.write.page.assets import BASE, PageFiles
from gradegen.write.page.pdf import pdf_bytes
from gradegen.write.page.press import start_press, typeset_here

HERE = Place("x.yaml", 1, 1, 1, 1)
PAGE = '<!DOCTYPE html><html lang="en"><head><title>A page</title></head><body><p>x</p></body></html>'

needs_linux = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="processes are split off on Linux only")


@needs_linux
def test_the_same_bytes_as_here(tmp_path: Path) -> None:
    files = PageFiles(tmp_path)
    with start_press() or pytest.fail("no press") as other:
        waiting = other.typeset(PAGE, files, HERE)
        here = typeset_here(PAGE, files, HERE)()
        assert waiting() == here == pdf_bytes(PAGE, files, HERE)


@needs_linux
def test_findings_come_back(tmp_path: Path) -> None:
    page = PAGE.replace("x</p>", f'<img alt="a" src="{BASE}../a.png"></p>')
    with start_press() or pytest.fail("no press") as other:
        data, findings = other.typeset(page, PageFiles(tmp_path), HERE)()
    assert data is not None
    assert [finding.rule for finding in findings] == ["file-refused"]


@needs_linux
def test_the_process_ends_with_its_block() -> None:
    with start_press() or pytest.fail("no press") as other:
        os.kill(other.process, 0)
    with pytest.raises(ProcessLookupError):
        os.kill(other.process, 0)


@needs_linux
def test_a_process_that_was_stopped(tmp_path: Path) -> None:
    with start_press() or pytest.fail("no press") as other:
        os.kill(other.process, signal.SIGKILL)
        data, findings = other.typeset(PAGE * 1000, PageFiles(tmp_path), HERE)()
    assert data is None
    assert [(finding.rule, finding.place) for finding in findings] == [("page-not-typeset", HERE)]


@needs_linux
def test_a_page_that_never_ends_is_stopped(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(press, "_SECONDS", 2)
    uses = "".join(f'<g id="a{i}">' + f'<use href="#a{i - 1}"/>' * 10 + "</g>" for i in range(1, 9))
    bomb = f'<svg width="9" height="9" xmlns="http://www.w3.org/2000/svg"><title>x</title><defs><g id="a0"><rect width="1" height="1"/></g>{uses}</defs><use href="#a8"/></svg>'  # noqa: E501
    with start_press() or pytest.fail("no press") as other:
        data, findings = other.typeset(PAGE.replace("x</p>", bomb + "</p>"), PageFiles(tmp_path), HERE)()
    assert data is None
    assert [finding.rule for finding in findings] == ["page-not-typeset"]


@needs_linux
def test_a_fault_of_ours_is_raised_here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object) -> None:
        raise KeyError("nothing")

    monkeypatch.setattr(pdf, "pdf_bytes", broken)
    with start_press() or pytest.fail("no press") as other, pytest.raises(RuntimeError, match="KeyError"):
        other.typeset(PAGE, PageFiles(tmp_path), HERE)()


def test_elsewhere_there_is_none(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "darwin")
    assert start_press() is None


@needs_linux
def test_nothing_is_left_among_temporary_files(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    with start_press() or pytest.fail("no press") as other:
        data, _ = other.typeset(pdf.FIRST, PageFiles(tmp_path), HERE)()
    assert data is not None
    assert pdf_bytes(pdf.FIRST, PageFiles(tmp_path), HERE)[0] is not None
    assert not [*tmp_path.iterdir()]
