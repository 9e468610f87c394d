"""A picture's name to a picture that can be printed, or one sentence why it can't."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from gradegen.design.pictures import PictureFile
from gradegen.design.text import Text
from gradegen.findings import Finding, Rule, Severity
from gradegen.read.files import open_bytes
from gradegen.read.pictures.drawing import drawing_size
from gradegen.read.pictures.faults import NO_PICTURE, TOO_LARGE, PictureFault
from gradegen.read.pictures.photo import PhotoKind, photo_size
from gradegen.read.yaml.fields import nearest

PICTURE_MISSING = Rule("picture-missing", Severity.ERROR, "file format", "A picture's file is not there.")
PICTURE_OUT_OF_REACH = Rule(
    "picture-out-of-reach", Severity.ERROR, "file format", "A picture lies outside the pattern's own folder."
)
MOST_BYTES = 40_000_000
_HEAD = 300_000  # bytes that hold what a photo says of itself before its pixels, as a rule
_ENDINGS = (".jpg", ".jpeg", ".png", ".webp", ".svg")
_SAVE_AS = "Save it as JPEG, PNG, WebP or SVG, and name that file."
_OTHERS = (
    (b"%PDF", 0, "a PDF"),
    (b"GIF8", 0, "a GIF"),
    (b"ftyphei", 4, "a HEIC photo, as telephones keep them"),
    (b"ftypmif1", 4, "a HEIC photo, as telephones keep them"),
    (b"ftypavif", 4, "an AVIF picture"),
    (b"II*\0", 0, "a TIFF or a camera's raw file"),
    (b"MM\0*", 0, "a TIFF or a camera's raw file"),
    (b"BM", 0, "a BMP"),
)


def find_picture(name: Text, folder: Path) -> tuple[PictureFile | None, tuple[Finding, ...]]:
    """The picture of this name in the folder or below it; a pattern from somebody else opens nothing of yours."""
    try:
        path = folder / name.text
        if not path.resolve().is_relative_to(folder.resolve()):
            message = "A pattern opens pictures only in its own folder or below it."
            return None, (PICTURE_OUT_OF_REACH.at(name.place, message, hint="Copy the picture beside the pattern."),)
        there = path.is_file()
    except (OSError, ValueError):
        there = False
    if not there:
        return None, (_missing(name, folder),)
    try:
        return look_at(path), ()
    except OSError:
        return None, (_missing(name, folder),)
    except PictureFault as fault:
        return None, (fault.finding(name.place, name.text),)


def look_at(path: Path) -> PictureFile:
    """The kind and the proportions of a file; raises PictureFault."""
    head = _read(path, _HEAD)
    if path.stat().st_size > MOST_BYTES:
        raise PictureFault(
            TOO_LARGE, f"is larger than {MOST_BYTES // 1_000_000} MB", "Save a smaller copy; 2000 pixels are plenty."
        )
    if head[:3] == b"\xff\xd8\xff" or head[:8] == b"\x89PNG\r\n\x1a\n" or (head[:4], head[8:12]) == (b"RIFF", b"WEBP"):
        return PictureFile(path, *_photo_size(path, head))
    if b"<svg" in head[:4096] or b":svg" in head[:4096]:
        return PictureFile(path, "SVG", *drawing_size(_read(path, MOST_BYTES)))
    what = next((words for sign, at, words in _OTHERS if head[at : at + len(sign)] == sign), "no picture")
    raise PictureFault(NO_PICTURE, f"is {what}" if head else "is empty", _SAVE_AS)


def _photo_size(path: Path, head: bytes) -> tuple[PhotoKind, Fraction, Fraction]:
    """The kind and size by the beginning of the file, which says it as a rule; else by the whole of it."""
    try:
        return photo_size(head)
    except PictureFault as fault:
        if fault.rule is TOO_LARGE or len(head) <= _HEAD:
            raise
    return photo_size(_read(path, MOST_BYTES))


def _read(path: Path, most: int) -> bytes:
    data = open_bytes(path, most)
    if data is None:
        raise PictureFault(NO_PICTURE, "can't be opened", "Check its rights.")
    return data


def _missing(name: Text, folder: Path) -> Finding:
    try:
        known = tuple(sorted(path.name for path in folder.iterdir() if path.suffix.lower() in _ENDINGS)[:200])
    except OSError:
        known = ()
    guess = nearest(Path(name.text).name, known)
    hint = f"Did you mean {guess}?" if guess else "Put the file beside the pattern, or give its path from there."
    return PICTURE_MISSING.at(name.place, f"There is no picture “{name.text[:60]}” here.", hint=hint)
