"""What else is written of a pattern besides its pages: HTML, text, grading tables, the text for a shop."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

from gradegen.design.checked import Checked
from gradegen.findings import Finding
from gradegen.write.editions.edition import Edition
from gradegen.write.page.document import document_view
from gradegen.write.pattern import file_name, page_files, put_file
from gradegen.write.sheets import machine

Findings = tuple[Finding, ...]
Writer = Callable[[Checked, Edition], bytes]


def _html(checked: Checked, edition: Edition) -> bytes:
    from gradegen.write.page.page_html import page_html

    return page_html(checked, edition, page_files(checked, edition)[0]).encode()


def _text(checked: Checked, edition: Edition) -> bytes:
    from gradegen.write.editions.plain_document import document_text

    return document_text(document_view(checked, edition)).encode()


def _csv(checked: Checked, edition: Edition) -> bytes:
    return (machine.grading_csv(edition.sizes(checked)) + "\n").encode()


def _workbook(checked: Checked, edition: Edition) -> bytes:
    from gradegen.write.sheets.grading import grading_workbook

    return grading_workbook(checked, edition.sizes(checked))


def _shop(checked: Checked, edition: Edition) -> bytes:
    from gradegen.write.sheets.shop_text import shop_text

    return shop_text(document_view(checked, edition)).encode()


WRITERS: dict[str, tuple[Writer, str]] = {
    "html": (_html, ".html"),
    "text": (_text, ".txt"),
    "csv": (_csv, "-grading.csv"),
    "xlsx": (_workbook, "-grading.xlsx"),
    "shop": (_shop, "-shop.txt"),
}


def write_also(checked: Checked, edition: Edition, kinds: Sequence[str]) -> tuple[tuple[Path, ...], Findings]:
    """The files written, in the order asked for, and what went wrong with the others."""
    edition = replace(edition, style="print") if edition.style == "spoken" else edition
    stem = Path(file_name(checked, edition)).stem
    paths: list[Path] = []
    findings: list[Finding] = []
    for kind in kinds:
        write, ending = WRITERS[kind]
        path = edition.out / f"{stem}{ending}"
        unwritten = put_file(path, write(checked, edition), checked)
        findings += unwritten
        paths += [] if unwritten else [path]
    return tuple(paths), tuple(findings)
