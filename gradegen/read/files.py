"""The only door input comes in by: a file's text with its places, or one sentence why it can't be read."""

from __future__ import annotations

from pathlib import Path

from gradegen.findings import Finding, Place, Rule, Severity, Written

MOST_BYTES = 5_000_000
MOST_LINES = 20_000

FILE_MISSING = Rule("file-missing", Severity.ERROR, "file format", "There is no file of this name.")
FILE_NOT_READABLE = Rule("file-not-readable", Severity.ERROR, "file format", "The file is there but can't be opened.")
FILE_TOO_LARGE = Rule("file-too-large", Severity.ERROR, "file format", "The file is larger than any pattern.")
FILE_NOT_UTF8 = Rule("file-not-utf8", Severity.ERROR, "file format", "The file is not saved as UTF-8 text.")
FILE_EMPTY = Rule("file-empty", Severity.ERROR, "file format", "The file holds nothing to read.")

_UTF16_MARKS = (b"\xff\xfe", b"\xfe\xff")
_SAVE_AS = "In your editor choose Save as (or Save with encoding), pick UTF-8, and save again."


def open_text(path: Path, shown_as: str | None = None) -> tuple[Written | None, tuple[Finding, ...]]:
    """The text of a file without byte order mark and with plain line ends; `shown_as` names it in places."""
    file = shown_as or str(path)
    start = Place(file, 1, 1, 1, 1)
    raw, finding = _bytes_of(path, start)
    if raw is None:
        return None, (finding,) if finding else ()
    text, finding = _decode(raw, file)
    if text is None:
        return None, (finding,) if finding else ()
    if not text.strip():
        return None, (FILE_EMPTY.at(start, "This file is empty.", hint="Start one with: gradegen new"),)
    if text.count("\n") > MOST_LINES:
        return None, (_too_large(start, f"has more than {MOST_LINES:,} lines"),)
    return written_lines(text, file), ()


def open_bytes(path: Path, most: int) -> bytes | None:
    """Up to `most` bytes of a file, and one more where it is longer; None where it can't be opened."""
    try:
        with path.open("rb") as stream:
            return stream.read(most + 1)
    except (OSError, ValueError):
        return None


def written_lines(text: str, file: str) -> Written:
    """A whole text that stands in its file as it is."""
    anchors = [(0, 1, 1)]
    spot = text.find("\n")
    while spot >= 0:
        anchors.append((spot + 1, len(anchors) + 1, 1))
        spot = text.find("\n", spot + 1)
    return Written(text, file, tuple(anchors))


def _bytes_of(path: Path, start: Place) -> tuple[bytes | None, Finding | None]:
    try:
        if not path.exists():
            return None, FILE_MISSING.at(start, "There is no such file.", hint="Check the name and the folder.")
        if not path.is_file():
            what = "a folder" if path.is_dir() else "no ordinary file"
            return None, FILE_NOT_READABLE.at(start, f"This is {what}.", hint="Give the name of a text file.")
        if path.stat().st_size > MOST_BYTES:
            return None, _too_large(start)
        with path.open("rb") as stream:
            raw = stream.read(MOST_BYTES + 1)
    except (OSError, ValueError) as problem:
        why = getattr(problem, "strerror", None) or str(problem)
        return None, FILE_NOT_READABLE.at(
            start, f"This file can't be opened: {why}.", hint="Check its name and rights."
        )
    return (raw, None) if len(raw) <= MOST_BYTES else (None, _too_large(start))


def _too_large(start: Place, how: str = f"is larger than {MOST_BYTES // 1_000_000} MB") -> Finding:
    hint = "Is it the right file? A long pattern has some 100 KB; pictures belong in files of their own."
    return FILE_TOO_LARGE.at(start, f"This file {how} and was not read.", hint=hint)


def _decode(raw: bytes, file: str) -> tuple[str | None, Finding | None]:
    if raw.startswith(_UTF16_MARKS):
        place = Place(file, 1, 1, 1, 1)
        return None, FILE_NOT_UTF8.at(place, "This file is saved as UTF-16, not as UTF-8.", hint=_SAVE_AS)
    raw = raw.removeprefix(b"\xef\xbb\xbf")
    try:
        text = raw.decode("utf-8")
    except UnicodeDecodeError as problem:
        return None, _not_utf8(raw, problem.start, file)
    return _plain_line_ends(text), None


def _not_utf8(raw: bytes, spot: int, file: str) -> Finding:
    before = _plain_line_ends(raw[:spot].decode("utf-8"))
    line = before.count("\n") + 1
    column = len(before) - (before.rfind("\n") + 1) + 1
    byte = raw[spot : spot + 1]
    western = byte.decode("cp1252", "replace")
    meant = f"; an older Windows file means “{western}” by it" if western.isprintable() and western != "\ufffd" else ""
    message = f"The byte 0x{byte.hex().upper()} here is not UTF-8{meant}."
    return FILE_NOT_UTF8.at(Place(file, line, column, line, column + 1), message, hint=_SAVE_AS)


def _plain_line_ends(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text
