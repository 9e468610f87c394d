"""Every picture of a pattern made ready once, for as many documents as are printed of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Literal

from gradegen.design.pattern import Pattern
from gradegen.design.pictures import PictureFile, PictureSize
from gradegen.findings import Finding, Place
from gradegen.read.files import open_bytes
from gradegen.read.pictures.faults import NO_PICTURE, PictureFault
from gradegen.read.pictures.file import MOST_BYTES
from gradegen.write.pictures.drawing import clean_drawing
from gradegen.write.pictures.photo import sized_photo
from gradegen.write.pictures.sizes import Printed, printed_size

PageFile = tuple[bytes, str]  # the content and its kind
LOGO = "pictures/logo"


@dataclass(frozen=True, slots=True)
class Asked:
    """One picture that a pattern wants on its pages, by the name that pages call it."""

    name: str
    file: PictureFile
    size: PictureSize | Literal["logo"]
    place: Place
    said: str


@dataclass(frozen=True, slots=True)
class Ready:
    """What pages may show, by the names they use, and what could not be made ready."""

    files: Mapping[str, PageFile]
    findings: tuple[Finding, ...]


def ready_pictures(pattern: Pattern) -> Ready:
    """The pictures of a pattern; each file is opened and sized once, however many documents show it."""
    files: dict[str, PageFile] = {}
    findings: list[Finding] = []
    for asked in _asked(pattern):
        try:
            files[asked.name] = _made(asked)
        except PictureFault as fault:
            findings.append(fault.finding(asked.place, asked.said))
    return Ready(files, tuple(findings))


def page_name(at: int) -> str:
    """What pages call the picture that stands at this place of the pattern's list; no path of a machine is in it."""
    return f"pictures/{at + 1}"


def _asked(pattern: Pattern) -> Iterator[Asked]:
    for at, picture in enumerate(pattern.pictures):
        if picture.file is not None:
            yield Asked(page_name(at), picture.file, picture.size, picture.name.place, picture.name.text)
    logo = pattern.look.logo if pattern.look is not None else None
    if logo is not None and logo.file is not None:
        yield Asked(LOGO, logo.file, "logo", logo.alt.place, logo.file.path.name)


def _made(asked: Asked) -> PageFile:
    file = asked.file
    try:
        state = file.path.stat()
    except OSError:
        raise PictureFault(NO_PICTURE, "is no longer there", "Put it back beside the pattern.") from None
    return _file(file.path, (state.st_mtime_ns, state.st_size), printed_size(file, asked.size))


@lru_cache(maxsize=64)
def _file(path: Path, state: tuple[int, int], printed: Printed) -> PageFile:
    """The file as pages show it; `state` tells whether it is still the same."""
    data = open_bytes(path, MOST_BYTES)
    if data is None:
        raise PictureFault(NO_PICTURE, "can't be opened", "Check its rights.")
    if printed.pixels == (0, 0):
        return clean_drawing(data), "image/svg+xml"
    return sized_photo(data, printed.pixels)
