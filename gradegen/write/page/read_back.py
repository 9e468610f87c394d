"""What a written PDF says, read back from its own bytes in the order its tags give: as a screen reader would."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

_TOKEN = re.compile(
    rb"<<\s*/MCID\s+(?P<piece>\d+)\s*>>\s*BDC|(?P<end>\bEMC\b)|/(?P<font>\S+)\s+[\d.]+\s+Tf|\[(?P<shown>[^\]]*)\]\s*TJ"
    rb"|(?P<one><[0-9A-Fa-f]+>)\s*Tj"
)
_HEX = re.compile(rb"<([0-9A-Fa-f]+)>")
_MAPPED = re.compile(rb"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>")
_BLOCKS = frozenset({"/P", "/LI", "/LBody", "/H1", "/H2", "/H3", "/TR", "/Caption", "/Table", "/Figure"})

Row = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ReadBack:
    """The document's text with a line for every block, and every row of every table as the texts of its cells."""

    text: str
    rows: tuple[Row, ...]


@dataclass(slots=True)
class _Reading:
    pieces: Mapping[tuple[int, int], str]
    pages: Mapping[int, int]
    words: list[str] = field(default_factory=list)
    rows: list[Row] = field(default_factory=list)


def read_back(data: bytes) -> ReadBack:
    """The text of the tagged parts of a PDF; running heads and feet are no part of it."""
    from pypdf import PdfReader

    reader = PdfReader(io.BytesIO(data))
    pieces: dict[tuple[int, int], str] = {}
    pages: dict[int, int] = {}
    for at, page in enumerate(reader.pages):
        pages[page.indirect_reference.idnum if page.indirect_reference else -1] = at
        pieces.update(((at, piece), text) for piece, text in _page_pieces(page))
    reading = _Reading(pieces, pages)
    root: Any = reader.trailer["/Root"].get_object()
    if "/StructTreeRoot" in root:
        _walk(root["/StructTreeRoot"]["/K"], -1, reading)
    return ReadBack("".join(reading.words), tuple(reading.rows))


def load_reader() -> None:
    """Loads what reads PDF files ahead of the first one."""
    import pypdf  # noqa: F401


def read_slowly(data: bytes) -> str:
    """The text of every page as pypdf itself puts it together, running heads and feet included."""
    from pypdf import PdfReader

    return "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(data)).pages)


def _page_pieces(page: Any) -> Iterator[tuple[int, str]]:
    """Every marked piece of a page by its number, with its text."""
    resources = page["/Resources"].get_object()
    fonts = resources.get("/Font", {}).get_object() if "/Font" in resources else {}
    alphabets = {str(name): _alphabet(font.get_object()) for name, font in fonts.items()}
    contents = page.get_contents()
    piece, alphabet, words = -1, {}, []  # type: tuple[int, Mapping[str, str], list[str]]
    for token in _TOKEN.finditer(contents.get_data() if contents is not None else b""):
        if token["piece"] is not None:
            piece, words = int(token["piece"]), []
        elif token["font"] is not None:
            alphabet = alphabets.get("/" + token["font"].decode(), {})
        elif token["end"] is not None:
            if piece >= 0:
                yield piece, "".join(words)
            piece = -1
        elif piece >= 0:
            words += _shown(token["shown"] or token["one"], alphabet)


def _shown(shown: bytes, alphabet: Mapping[str, str]) -> Iterator[str]:
    for run in _HEX.findall(shown):
        signs = run.decode().lower()
        yield from (alphabet.get(signs[at : at + 4], "") for at in range(0, len(signs), 4))


def _alphabet(font: Any) -> dict[str, str]:
    """Which sign each code of a font stands for, as the font itself says."""
    table = font["/ToUnicode"].get_object().get_data() if "/ToUnicode" in font else b""
    body = table.partition(b"endcodespacerange")[2]
    return {code.decode().lower(): _sign(sign) for code, sign in _MAPPED.findall(body)}


def _sign(sign: bytes) -> str:
    return bytes.fromhex(sign.decode()).decode("utf-16-be", errors="replace")


def _walk(kids: Any, page: int, reading: _Reading) -> None:
    """The text of some elements of the tree, in order, added to the reading."""
    kids = kids.get_object() if hasattr(kids, "get_object") else kids
    for kid in kids if isinstance(kids, list) else [kids]:
        kid = kid.get_object() if hasattr(kid, "get_object") else kid
        if isinstance(kid, int):
            reading.words.append(reading.pieces.get((page, int(kid)), ""))
        elif isinstance(kid, dict) and "/K" in kid:
            _element(kid, page, reading)


def _element(element: Any, page: int, reading: _Reading) -> None:
    own = element.raw_get("/Pg").idnum if "/Pg" in element else None
    page = reading.pages.get(own, page) if own is not None else page
    kind = str(element.get("/S"))
    if kind == "/TR":
        reading.rows.append(tuple(_cells(element["/K"], page, reading)))
        return
    _walk(element["/K"], page, reading)
    if kind in _BLOCKS:
        reading.words.append("\n")


def _cells(kids: Any, page: int, reading: _Reading) -> Iterator[str]:
    for kid in kids.get_object() if hasattr(kids, "get_object") else kids:
        inner = _Reading(reading.pieces, reading.pages)
        _walk(kid, page, inner)
        yield "".join(inner.words).strip()
