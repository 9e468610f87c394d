"""A checked pattern written as a document: view values, then HTML, then PDF, then proof."""

from __future__ import annotations

import re
from pathlib import Path

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.write.editions.edition import Edition
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.document import document_view
from gradegen.write.page.html import document_html, laid_out
from gradegen.write.page.press import Typeset, typeset_here
from gradegen.write.page.proof import compare_print, expect_print
from gradegen.write.page.read_back import load_reader
from gradegen.write.pictures.ready import Ready, ready_pictures
from gradegen.write.pictures.view import SHOWING
from gradegen.write.voice.document import spoken, spoken_text
from gradegen.write.voice.proof import prove_spoken, text_of

PRINT_REFUSED = Rule(
    "print-refused", Severity.ERROR, "house", "a pattern that contradicts itself is not printed, but as a draft"
)
SIZE_UNKNOWN = Rule("print-size-unknown", Severity.ERROR, "house", "a size asked for is none of the pattern's")
NOT_WRITTEN = Rule("print-not-written", Severity.ERROR, "house", "a document could not be put into its folder")

Findings = tuple[Finding, ...]


def write_pattern(
    checked: Checked, edition: Edition, typeset: Typeset = typeset_here
) -> tuple[tuple[Path, ...], Findings]:
    """The document's path, once what it says has been read back and agrees with what was graded and worked.

    Nothing is written where the pattern has errors (but as a draft), or where the print differs. `typeset`: what makes
    a PDF of a page, here or in a process of its own.
    """
    refused = _refusal(checked, edition)
    if refused:
        return (), refused
    if edition.is_form:
        return _write_form(checked, edition, typeset)
    if edition.style == "spoken":
        return _write_spoken(checked, edition)
    place = checked.pattern.place
    files, unready = page_files(checked, edition)
    if unready and not edition.draft:
        return (), unready
    html = pattern_html(checked, edition)
    waiting = typeset(html, files, place, None if edition.style == "large-print" else closer(html))
    load_reader()
    expected = expect_print(checked, edition)
    data, findings = waiting()
    if data is None:
        return (), findings
    differences = compare_print(data, expected)
    if differences:
        return (), (*findings, *differences)
    path = edition.out / file_name(checked, edition)
    unwritten = put_file(path, data, checked)
    return ((), (*findings, *unwritten)) if unwritten else ((path,), findings)


def page_files(checked: Checked, edition: Edition) -> tuple[PageFiles, Findings]:
    """What the edition's page may open, and which of its pictures could not be made ready."""
    shows = edition.style in SHOWING
    ready = ready_pictures(checked.pattern) if shows else Ready({}, ())
    source = _source(checked) if edition.with_source else None
    return PageFiles(Path(checked.pattern.file).parent, source=source, pictures=ready.files), ready.findings


def _write_spoken(checked: Checked, edition: Edition) -> tuple[tuple[Path, ...], Findings]:
    """The spoken edition as plain text and as HTML, once its numbers have been read back from both."""
    document = spoken(document_view(checked, edition))
    text, html = spoken_text(document), laid_out("spoken.html", document=document)
    differences = prove_spoken(text, checked, edition) + prove_spoken(text_of(html), checked, edition)
    if differences:
        return (), differences
    paths = tuple(edition.out / Path(file_name(checked, edition)).with_suffix(ending) for ending in (".txt", ".html"))
    unwritten = [
        finding
        for path, body in zip(paths, (text, html), strict=True)
        for finding in put_file(path, body.encode(), checked)
    ]
    return ((), tuple(unwritten)) if unwritten else (paths, ())


def _write_form(checked: Checked, edition: Edition, typeset: Typeset) -> tuple[tuple[Path, ...], Findings]:
    """The tester's form of the edition's size, once it has been read back."""
    from gradegen.write.forms.form import form_bytes

    data, findings = form_bytes(checked, edition, typeset)
    if data is None:
        return (), findings
    path = edition.out / file_name(checked, edition)
    unwritten = put_file(path, data, checked)
    return ((), (*findings, *unwritten)) if unwritten else ((path,), findings)


def _source(checked: Checked) -> tuple[str, bytes] | None:
    """The pattern file as it was read, by its name alone."""
    written = checked.pattern.sources.get(checked.pattern.file)
    return None if written is None else (Path(checked.pattern.file).name, written.text.encode())


def pattern_html(checked: Checked, edition: Edition) -> str:
    """The document as one HTML page; it asks for fonts under our own address."""
    return document_html(document_view(checked, edition))


def closer(html: str) -> str:
    """The same page set a little closer."""
    return html.replace('<body class="', '<body class="closer ', 1)


def file_name(checked: Checked, edition: Edition) -> str:
    """`estuary-wrap.pdf`, `estuary-wrap-M-letter.pdf`, `estuary-wrap-UK-cm-large-print.pdf`."""
    sizes = [edition.size] if edition.size else edition.chosen
    parts = (
        Path(checked.pattern.file).stem,
        *(re.sub(r"[^\w.]+", "-", size).strip("-") for size in sizes),
        edition.terms or "",
        edition.units or "",
        "" if edition.style == "print" else edition.style,
        "letter" if edition.paper == "letter" else "",
        "draft" if edition.draft else "",
        "form" if edition.is_form else "",
    )
    return "-".join(part for part in parts if part) + (".txt" if edition.style == "spoken" else ".pdf")


def _refusal(checked: Checked, edition: Edition) -> Findings:
    place = checked.pattern.place
    errors = [each for each in checked.findings if each.severity in (Severity.ERROR, Severity.INTERNAL)]
    if not edition.sizes(checked):
        named = ", ".join(size.name for size in checked.sizes)
        message = f"Size {', '.join(edition.unknown_sizes(checked))} is none of this pattern's sizes."
        return (SIZE_UNKNOWN.at(place, message, hint=f"Write one of {named}." if named else None),)
    if errors and not edition.draft:
        message = f"Not printed: the pattern has {len(errors)} {'error' if len(errors) == 1 else 'errors'}."
        return (PRINT_REFUSED.at(place, message, hint="Put them right, or print a draft.", follows=errors[0].rule),)
    return ()


def put_file(path: Path, data: bytes, checked: Checked) -> Findings:
    """Writes a file into its folder, which is made where it is missing; a finding where that is impossible."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    except OSError as fault:
        message = f"{path} could not be written: {fault.strerror or fault}."
        return (
            NOT_WRITTEN.at(
                checked.pattern.place, message, hint="Choose another folder, or close the program that shows the file."
            ),
        )
    return ()
