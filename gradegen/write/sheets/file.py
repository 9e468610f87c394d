"""A page of its own (an any-size sheet, a cue sheet) put into a folder as PDF."""

from __future__ import annotations

from pathlib import Path

from gradegen.design.checked import Checked
from gradegen.findings import Finding, Rule, Severity
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.press import typeset_here

SHEET_NOT_WRITTEN = Rule("sheet-not-written", Severity.ERROR, "house", "A page could not be put into its folder.")

Findings = tuple[Finding, ...]


def write_sheet(html: str, path: Path, checked: Checked) -> tuple[tuple[Path, ...], Findings]:
    """The path of the page once it is written; () with a finding where it could not be."""
    place = checked.pattern.place
    closer = html.replace('<body class="', '<body class="closer ', 1)
    data, findings = typeset_here(html, PageFiles(Path(checked.pattern.file).parent), place, closer)()
    if data is None:
        return (), findings
    return put_file(data, path, checked, findings)


def put_file(data: bytes, path: Path, checked: Checked, findings: Findings = ()) -> tuple[tuple[Path, ...], Findings]:
    """The path of a file once it is written; () with a finding where it could not be."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    except OSError as fault:
        message = f"{path} could not be written: {fault.strerror or fault}."
        hint = "Choose another folder, or close the program that shows the file."
        return (), (*findings, SHEET_NOT_WRITTEN.at(checked.pattern.place, message, hint=hint))
    return (path,), findings
