"""The only files a page may open: those of the pattern's own folder, and ours, under addresses that name no real path.

A page is written for `file:///pattern/` and asks for our fonts under `file:///gradegen/`. Neither folder exists: what
stands under them is served from here, so nothing else of the machine can be reached, and the same pattern gives the
same bytes wherever it lies.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from urllib.parse import unquote, urlsplit

BASE = "file:///pattern/"
OURS = "file:///gradegen/"
MOST_BYTES = 20_000_000
KINDS = {
    ".png": "image/png",
    ".jpg": "image/jpeg",
    ".jpeg": "image/jpeg",
    ".webp": "image/webp",
    ".svg": "image/svg+xml",
    ".css": "text/css",
    ".ttf": "font/ttf",
    ".otf": "font/otf",
    ".woff": "font/woff",
    ".woff2": "font/woff2",
}


class Refused(Exception):  # noqa: N818
    """A page asked for something it must not have; the message says why."""


@cache
def fonts() -> Mapping[str, Path]:
    """Our fonts by the names that pages use."""
    import fontpkg

    inter, italic = fontpkg.path("Inter", weight=400), fontpkg.path("Inter", weight=400, style="italic")
    serif = fontpkg.path("Source Serif 4", weight=400)
    serif_italic = fontpkg.path("Source Serif 4", weight=400, style="italic")
    large, bold = (fontpkg.path("Atkinson Hyperlegible", weight=weight) for weight in (400, 700))
    return {
        "fonts/body.ttf": Path(inter),
        "fonts/body-italic.ttf": Path(italic),
        "fonts/serif.ttf": Path(serif),
        "fonts/serif-italic.ttf": Path(serif_italic),
        "fonts/large.ttf": Path(large),
        "fonts/large-bold.ttf": Path(bold),
    }


@dataclass(frozen=True, slots=True)
class PageFiles:
    """What one page may open. `refused` gathers what it asked for in vain.

    `source`: name and content of a file that goes along inside the PDF. `pictures`: content and kind of pictures made
    ready for print, by the names pages use.
    """

    folder: Path
    refused: list[str] = field(default_factory=list)
    source: tuple[str, bytes] | None = None
    pictures: Mapping[str, tuple[bytes, str]] = field(default_factory=dict)

    def open(self, address: str) -> tuple[bytes, str]:
        """The bytes behind an address and their kind; raises Refused for everything that is not served."""
        if (made := self.pictures.get(address.removeprefix(BASE))) is not None:
            return made
        try:
            path = self._path(address)
            kind = KINDS.get(path.suffix.lower())
            if kind is None:
                raise Refused("files of this kind are not opened")
            if path.stat().st_size > MOST_BYTES:
                raise Refused(f"the file is larger than {MOST_BYTES // 1_000_000} MB")
            return path.read_bytes(), kind
        except (Refused, OSError, ValueError) as problem:
            self.refused.append(f"{address[:80]}: {_why(problem)}")
            raise Refused(_why(problem)) from None

    def _path(self, address: str) -> Path:
        inside = unquote(urlsplit(address).path)
        if address.startswith(OURS):
            name = inside.removeprefix("/gradegen/")
            if name not in fonts():
                raise Refused("no such part of gradegen")
            return fonts()[name]
        if not address.startswith(BASE):
            raise Refused("only files beside the pattern are opened, and nothing from the net")
        root = self.folder.resolve()
        path = (root / inside.removeprefix("/pattern/")).resolve()
        if not path.is_relative_to(root):
            raise Refused("it lies outside the pattern's folder")
        return path


def _why(problem: Exception) -> str:
    if isinstance(problem, Refused):
        return str(problem)
    return "it cannot be opened" if isinstance(problem, OSError) else "it is no address"
