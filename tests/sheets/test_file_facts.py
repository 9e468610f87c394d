"""Facts inside the PDF, the source that goes along, and the code that leads to corrections, each read back."""

from __future__ import annotations

import io
import re
import shutil
from pathlib import Path
from xml.etree import ElementTree

import pytest
from pypdf import PdfReader

from gradegen import pipeline
from gradegen.cli import main
from gradegen.design.checked import Checked
from gradegen.write.editions.edition import Edition
from gradegen.write.page.file_facts import code_svg
from gradegen.write.pattern import write_pattern

DEMO = Path(__file__).resolve().parents[2] / "shared" / "patterns" / "skerrywick-wrap.yaml"
ADDRESS = "https://example.org/fix"


@pytest.fixture
def wrap(tmp_path: Path) -> Checked:
    text = DEMO.read_text("utf-8").replace("year: 2026}", f'year: 2026, errata: "{ADDRESS}"}}')
    for picture in DEMO.parent.glob("*.svg"):
        shutil.copy(picture, tmp_path)
    path = tmp_path / "wrap.yaml"
    path.write_text(text, encoding="utf-8")
    found = pipeline.check_file(path).checked
    assert found is not None
    return found


def printed(checked: Checked, edition: Edition) -> bytes:
    paths, findings = write_pattern(checked, edition)
    assert findings == ()
    return paths[0].read_bytes()


def test_the_file_says_what_it_is(wrap: Checked, tmp_path: Path) -> None:
    """Info entries, and the same as XMP with one RDF in it, as ISO 16684-1 asks."""
    reader = PdfReader(io.BytesIO(printed(wrap, Edition(tmp_path, "M"))))
    assert reader.metadata is not None
    assert reader.metadata.title == "Skerrywick Wrap, size M"
    assert reader.metadata.author == "Demo House"
    assert reader.metadata["/version"] == "1.0"
    assert reader.metadata["/rights"].startswith("© 2026 Demo House")
    assert reader.xmp_metadata is not None
    assert reader.xmp_metadata.dc_rights["x-default"].startswith("© 2026 Demo House")
    packet = reader.trailer["/Root"]["/Metadata"].get_object().get_data()
    assert packet.count(b"<rdf:RDF") == 1
    assert b"<xmpMM:VersionID>1.0</xmpMM:VersionID>" in packet
    assert reader.attachments == {}


def test_the_source_goes_along_where_it_is_wanted(wrap: Checked, tmp_path: Path) -> None:
    data = printed(wrap, Edition(tmp_path, with_source=True))
    reader = PdfReader(io.BytesIO(data))
    assert reader.attachments["wrap.yaml"][0].decode() == (tmp_path / "wrap.yaml").read_text("utf-8")
    assert data == printed(wrap, Edition(tmp_path, with_source=True))


def test_the_command_puts_it_in(tmp_path: Path) -> None:
    assert main(["print", str(DEMO), "--size", "M", "--with-source", "--out", str(tmp_path)]) == 0
    (path,) = tmp_path.glob("*.pdf")
    assert list(PdfReader(path).attachments) == ["skerrywick-wrap.yaml"]


def test_the_code_is_on_the_page_with_its_address(wrap: Checked, tmp_path: Path) -> None:
    reader = PdfReader(io.BytesIO(printed(wrap, Edition(tmp_path, "M"))))
    assert ADDRESS in reader.pages[-1].extract_text().replace("\n", "")
    links = [note.get_object() for page in reader.pages for note in page.get("/Annots", [])]
    assert ADDRESS in {link["/A"]["/URI"] for link in links if "/A" in link}


def squares(svg: str) -> list[list[bool]]:
    """The code's dark squares, without its margin, from the strokes of the drawing."""
    root = ElementTree.fromstring(svg)
    size = int(root.get("viewBox", "").split()[2])
    grid = [[False] * size for _ in range(size)]
    (path,) = (one.get("d", "") for one in root.iter() if one.get("stroke") == "#000000")
    for x, y, wide in re.findall(r"M(\d+) ([\d.]+)h(\d+)", path):
        for at in range(int(wide)):
            grid[int(float(y))][int(x) + at] = True
    return [row[4:-4] for row in grid[4:-4]]


def text_in(grid: list[list[bool]]) -> str:
    """A small reader of QR codes of versions 2 and 3, level M, bytes (ISO/IEC 18004): unmask, walk, decode."""
    size = len(grid)
    number = "".join(str(int(grid[8][at])) for at in (0, 1, 2, 3, 4, 5, 7, 8)) + "".join(
        str(int(grid[at][8])) for at in (7, 5, 4, 3, 2, 1, 0)
    )
    mask = ((int(number, 2) ^ 0b101010000010010) >> 10) & 7
    flips = [
        lambda r, c: (r + c) % 2 == 0, lambda r, c: r % 2 == 0, lambda r, c: c % 3 == 0, lambda r, c: (r + c) % 3 == 0,
        lambda r, c: (r // 2 + c // 3) % 2 == 0, lambda r, c: r * c % 2 + r * c % 3 == 0,
        lambda r, c: (r * c % 2 + r * c % 3) % 2 == 0, lambda r, c: ((r + c) % 2 + r * c % 3) % 2 == 0,
    ]  # fmt: skip

    def is_fixed(r: int, c: int) -> bool:
        corner = (r < 9 and c < 9) or (r < 9 and c >= size - 8) or (r >= size - 8 and c < 9)
        return corner or r == 6 or c == 6 or (abs(r - size + 7) < 3 and abs(c - size + 7) < 3)

    bits, upwards, column = [], True, size - 1
    while column > 0:
        column -= column == 6
        for r in range(size - 1, -1, -1) if upwards else range(size):
            bits += [int(grid[r][c] ^ flips[mask](r, c)) for c in (column, column - 1) if not is_fixed(r, c)]
        upwards, column = not upwards, column - 2
    stream = "".join(map(str, bits))
    assert stream[:4] == "0100"
    length = int(stream[4:12], 2)
    return bytes(int(stream[12 + 8 * at : 20 + 8 * at], 2) for at in range(length)).decode()


@pytest.mark.parametrize("address", [ADDRESS, "https://example.org/wrap/corrections", "mailto:help@example.org"])
def test_the_code_reads_as_its_address(address: str) -> None:
    assert text_in(squares(code_svg(address))) == address
