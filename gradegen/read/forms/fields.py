"""The fields of a form file with what was written in them; everything that can be wrong with the file is a finding."""

from __future__ import annotations

import logging
import re
import warnings
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from gradegen.findings import Finding, Place, Rule, Severity

FORM_DAMAGED = Rule("form-damaged", Severity.ERROR, "file format", "A form's file is damaged or is no PDF.")
FORM_ENCRYPTED = Rule("form-encrypted", Severity.ERROR, "file format", "A form is locked with a password.")
FORM_TOO_LARGE = Rule("form-too-large", Severity.ERROR, "file format", "A file is larger than any form.")
MOST_BYTES = 30_000_000
_MOST_FIELDS, _LONGEST = 3000, 200_000
CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]")


@dataclass(frozen=True, slots=True)
class Written:
    """One field: what stands in it, its tooltip, and its place: line is the page, column its number on that page."""

    text: str
    tip: str
    place: Place


def read_fields(path: Path) -> tuple[Mapping[str, Written] | None, tuple[Finding, ...]]:
    """Every field by its name, in page order; {} for a PDF without any, None where the file can't be read."""
    file = str(path)
    start = Place(file, 1, 1, 1, 1)
    try:
        size = path.stat().st_size
        data = path.read_bytes() if size <= MOST_BYTES else b""
    except OSError as problem:
        why = problem.strerror or "it can't be opened"
        hint = "Check the file and its rights."
        return None, (FORM_DAMAGED.at(start, f"This form can't be read: {why}.", hint=hint),)
    if size > MOST_BYTES:
        message = f"This file is larger than {MOST_BYTES // 1_000_000} MB and was not read."
        return None, (FORM_TOO_LARGE.at(start, message, hint="Is it a form? Photos are sent as files of their own."),)
    with _quiet():
        return _opened(data, file, start)


def _opened(data: bytes, file: str, start: Place) -> tuple[Mapping[str, Written] | None, tuple[Finding, ...]]:
    import io

    from pypdf import PdfReader

    try:
        reader = PdfReader(io.BytesIO(data))
        if reader.is_encrypted and not _unlocked(reader):
            message = "This form is locked with a password."
            return None, (FORM_ENCRYPTED.at(start, message, hint="Ask the tester to save it without a password."),)
        return dict(_fields(reader, file)), ()
    except Exception:  # a damaged file can break the reading library anywhere
        message = "This file is damaged or is no PDF, so nothing in it can be read."
        hint = "Ask the tester to save the form once more and to send it again."
        return None, (FORM_DAMAGED.at(start, message, hint=hint),)


def _unlocked(reader: Any) -> bool:
    try:
        return bool(reader.decrypt(""))
    except Exception:  # a kind of lock that needs a library we do not carry
        return False


def _fields(reader: Any, file: str) -> Iterator[tuple[str, Written]]:
    seen = 0
    for line, page in enumerate(reader.pages, 1):
        column = 0
        for reference in page.get("/Annots") or ():
            widget = reference.get_object()
            if widget.get("/Subtype") != "/Widget":
                continue
            column, seen = column + 1, seen + 1
            if seen > _MOST_FIELDS:
                return
            owner = widget if "/T" in widget else (widget.get("/Parent") or widget)
            name = _plain(owner.get_object().get("/T"))
            value = widget.get("/V", owner.get_object().get("/V"))
            if name:
                place = Place(file, line, column, line, column)
                yield name, Written(_plain(value), _plain(owner.get_object().get("/TU")), place)


def _plain(value: Any) -> str:
    """A field's text without signs that move a cursor; "on" for a ticked box, "" for an empty one."""
    if value is None:
        return ""
    value = value.get_object() if hasattr(value, "get_object") else value
    text = value.decode("latin-1") if isinstance(value, bytes) else str(value)
    if text.startswith("/"):
        return "" if text == "/Off" else text[1:]
    return CONTROL.sub("", text[:_LONGEST].replace("\r\n", "\n").replace("\r", "\n")).strip()


@contextmanager
def _quiet() -> Iterator[None]:
    """What the reading library says about a file is no finding of ours."""
    logger = logging.getLogger("pypdf")
    before = logger.level
    logger.setLevel(logging.CRITICAL + 1)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    finally:
        logger.setLevel(before)
