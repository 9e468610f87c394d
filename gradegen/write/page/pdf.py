"""HTML typeset as a tagged PDF; the only module that imports WeasyPrint."""

from __future__ import annotations

import datetime
import logging
import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any

from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.write.page.assets import BASE, OURS, PageFiles, Refused
from gradegen.write.page.fields import finish_fields
from gradegen.write.page.file_facts import describe_file
from gradegen.write.page.tags import finish_tags

if TYPE_CHECKING:
    from types import ModuleType

LIBRARY_MISSING = Rule(
    "print-library-missing", Severity.ERROR, "house", "the typesetter's own libraries are not installed on this machine"
)
FILE_REFUSED = Rule("file-refused", Severity.ERROR, "house", "a page asked for a file it may not open")
NOT_TYPESET = Rule("page-not-typeset", Severity.ERROR, "house", "the typesetter could not lay the page out")
EVERYTHING = "all"  # what templates call the whole text
_VARIANT = "pdf/ua-1"
_NEARLY_EMPTY = 0.30  # of the height; a fuller last page was never saved, and trying takes as long as the page
_ONLY_SLOWER = "Using fontTools instead of HarfBuzz"
INSTALL = (
    "Debian and Ubuntu: sudo apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0. "
    "macOS: brew install pango. Windows: pacman -S mingw-w64-ucrt-x86_64-pango in an MSYS2 shell."
)


def pdf_bytes(
    html: str, files: PageFiles, place: Place, closer: str | None = None
) -> tuple[bytes | None, tuple[Finding, ...]]:
    """The page as PDF/UA-1 tagged bytes, the same for the same page; None with a finding where that is impossible.

    `closer`: the same page set a little closer, taken where it saves a last page that would be nearly empty.
    """
    typesetter, missing = _typesetter(place)
    if typesetter is None:
        return None, missing
    with _what_is_logged() as said, _no_clock(), _nothing_left_behind():
        try:
            document = _laid_out(typesetter, html, files, closer)
            data: bytes = document.write_pdf(
                pdf_variant=_VARIANT,
                finisher=_finish,
                custom_metadata=True,
                attachments=_attachments(typesetter, files),
            )
        except RecursionError:
            return None, (NOT_TYPESET.at(place, "The page is nested too deeply to be laid out."),)
    refused = [FILE_REFUSED.at(place, f"A file was not opened: {why}.") for why in files.refused]
    heard = [] if refused else [line for line in said if not line.startswith(_ONLY_SLOWER)]
    others = [NOT_TYPESET.at(place, line, severity=Severity.WARNING) for line in heard]
    return data, (*refused, *others)


def _finish(document: Any, pdf: Any) -> None:
    """The last changes to the file before it is written."""
    finish_tags(document, pdf)
    finish_fields(pdf)
    describe_file(pdf, document.metadata.custom)


def _attachments(typesetter: ModuleType, files: PageFiles) -> list[Any]:
    """The pattern's own source where it is to go along, with a fixed date, so that the bytes stay the same."""
    if files.source is None:
        return []
    name, data = files.source
    fixed = datetime.datetime(2000, 1, 1, tzinfo=datetime.UTC)
    words = "The pattern file this document was made from"
    return [
        typesetter.Attachment(
            string=data, name=name, description=words, created=fixed, modified=fixed, relationship="Source"
        )
    ]


def _laid_out(typesetter: ModuleType, html: str, files: PageFiles, closer: str | None) -> Any:
    document = _render(typesetter, html, files)
    if closer is None or not _ends_nearly_empty(document.pages):
        return document
    other = _render(typesetter, closer, files)
    return other if len(other.pages) < len(document.pages) else document


def _render(typesetter: ModuleType, html: str, files: PageFiles) -> Any:
    page = typesetter.HTML(string=html, base_url=BASE, url_fetcher=_fetcher(files))
    return page.render(pdf_variant=_VARIANT)


def _ends_nearly_empty(pages: Any) -> bool:
    """True when the text ends in the upper part of a page that is not the first."""
    last = pages[-1]
    box = last.anchors.get(EVERYTHING, ())  # left, top, right, bottom; older versions give a corner only
    return len(pages) > 1 and len(box) == 4 and bool(box[3] < _NEARLY_EMPTY * last.height)


def load_typesetter() -> None:
    """Loads the typesetter ahead of its first page; where that is impossible, the first page says so."""
    with suppress(OSError):
        import weasyprint  # noqa: F401


FIRST = (
    '<html lang="en"><head><title>-</title><style>@font-face { font-family: Body; '
    f'src: url("{OURS}fonts/body.ttf") }} body {{ font: 9pt Body }}</style></head><body><h1>-</h1><ul><li>-</li></ul>'
    '<table><tr><th>-</th><td>-</td></tr></table><svg width="9" height="9"><title>-</title><path d="M0 0 L9 9"/></svg>'
    "</body></html>"
)


def warm_up() -> None:
    """Loads the typesetter and sets a page of nothing, so that what it only loads for a page is there as well.

    Whatever goes wrong here goes wrong with the first real page again, and is told then.
    """
    with suppress(Exception):
        pdf_bytes(FIRST, PageFiles(Path()), Place("-", 1, 1, 1, 1))


def _typesetter(place: Place) -> tuple[ModuleType | None, tuple[Finding, ...]]:
    try:
        import weasyprint
    except OSError as fault:
        message = f"Printing needs the Pango library, which is not installed ({str(fault).splitlines()[0][:120]})."
        return None, (LIBRARY_MISSING.at(place, message, hint=INSTALL),)
    return weasyprint, ()


def _fetcher(files: PageFiles) -> Any:
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    class Fetcher(URLFetcher):  # type: ignore[misc]
        """Serves what the page may have, and nothing else; it has no way to the net or to other files."""

        def fetch(self, url: str, headers: object = None) -> object:
            if url.startswith("data:") and len(url) < 2_000_000:
                return super().fetch(url)
            body, kind = files.open(url)
            return URLFetcherResponse(url, body, {"Content-Type": kind})

    return Fetcher(allowed_protocols={"data"}, allow_redirects=False)


@contextmanager
def _no_clock() -> Iterator[None]:
    """Fonts made for one file carry the time they were made; here it is always the same, unless one is given."""
    if "SOURCE_DATE_EPOCH" in os.environ:
        yield
        return
    os.environ["SOURCE_DATE_EPOCH"] = "0"
    try:
        yield
    finally:
        del os.environ["SOURCE_DATE_EPOCH"]


@contextmanager
def _nothing_left_behind() -> Iterator[None]:
    """The typesetter lays fonts in a folder that it clears away late or never; here that goes with the page."""
    usual = tempfile.tempdir
    with tempfile.TemporaryDirectory(prefix="gradegen-", ignore_cleanup_errors=True) as own:
        tempfile.tempdir = own
        try:
            yield
        finally:
            tempfile.tempdir = usual


@contextmanager
def _what_is_logged() -> Iterator[list[str]]:
    """Warnings of the typesetter, as lines of text."""
    lines: list[str] = []

    class Keep(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            lines.append(record.getMessage())

    logger, handler = logging.getLogger("weasyprint"), Keep(logging.WARNING)
    logger.addHandler(handler)
    try:
        yield lines
    finally:
        logger.removeHandler(handler)


__all__ = ["INSTALL", "LIBRARY_MISSING", "Refused", "pdf_bytes"]
