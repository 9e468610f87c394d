"""What a reader must never meet on a page: a row without its count, a heading at its foot, a number without its word.

All of it is read back from the written PDF: by its tags, and by where its lines stand.
"""

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from html import unescape
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from gradegen.design.checked import Checked
from gradegen.findings import Place
from gradegen.pipeline import check_file
from gradegen.write.editions.edition import Edition
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.pdf import pdf_bytes
from gradegen.write.page.read_back import _page_pieces
from gradegen.write.page.typeset import typeset
from gradegen.write.pattern import page_files, pattern_html

PATTERNS = Path(__file__).resolve().parents[3] / "shared" / "patterns"
HERE = Place("x", 1, 1, 1, 1)
CASES = {
    "cardigan, all sizes": ("slipway-cardigan", Edition(Path("out"))),
    "hat, large print": ("bollard-hat", Edition(Path("out"), "M", style="large-print")),
    "cardigan, one size": ("slipway-cardigan", Edition(Path("out"), "M")),
    "wrap, letter": ("skerrywick-wrap", Edition(Path("out"), paper="letter")),
    "yoke, one size": ("limpet-pullover", Edition(Path("out"), "16")),
}
NARROW = "\N{NO-BREAK SPACE}"
WORD_OF_A_NUMBER = re.compile(r"(?:sts?|sps?|chs?|sc|hdc|dc|tr|rnds?|rows?|times|more|in|cm|mm|yds?|yd|g)\b")


@dataclass(frozen=True)
class Block:
    """A block of the text by its tag: its words, and the page of each of its pieces."""

    kind: str
    pieces: tuple[tuple[int, str], ...]

    @property
    def text(self) -> str:
        return "".join(words for _, words in self.pieces)

    @property
    def pages(self) -> list[int]:
        return [page for page, words in self.pieces if words.strip()]


@dataclass(frozen=True)
class Written:
    html: str
    pages: list[str]
    blocks: list[Block]


def blocks_of(reader: PdfReader) -> Iterator[Block]:
    numbers = {page.indirect_reference.idnum: at for at, page in enumerate(reader.pages) if page.indirect_reference}
    words = {(at, piece): text for at, page in enumerate(reader.pages) for piece, text in _page_pieces(page)}

    def pieces(element: Any, page: int) -> Iterator[tuple[int, str]]:
        page = numbers[element.raw_get("/Pg").idnum] if "/Pg" in element else page
        kids: Any = element.get("/K", [])
        for kid in kids if isinstance(kids, list) else [kids]:
            kid = kid.get_object() if hasattr(kid, "get_object") else kid
            if isinstance(kid, int):
                yield page, words.get((page, int(kid)), "")
            elif isinstance(kid, dict):
                yield from pieces(kid, page)

    def walk(element: Any) -> Iterator[Block]:
        kind = str(element.get("/S", ""))
        if kind in ("/P", "/LI", "/H1", "/H2", "/H3", "/TR", "/Figure", "/Caption"):
            yield Block(kind, tuple(pieces(element, -1)))
            return
        kids: Any = element.get("/K", [])
        for kid in kids if isinstance(kids, list) else [kids]:
            kid = kid.get_object() if hasattr(kid, "get_object") else kid
            if isinstance(kid, dict):
                yield from walk(kid)

    root: Any = reader.root_object["/StructTreeRoot"]
    yield from walk(root)


def written(html: str, files: PageFiles | None = None) -> Written:
    data, findings = pdf_bytes(html, files or PageFiles(Path()), HERE)
    assert findings == ()
    assert data is not None
    reader = PdfReader(io.BytesIO(data))
    return Written(html, [page.extract_text() for page in reader.pages], list(blocks_of(reader)))


@cache
def demo(case: str) -> Written:
    name, edition = CASES[case]
    checked = check_file(PATTERNS / f"{name}.yaml").checked
    assert checked is not None
    return written(pattern_html(checked, edition), page_files(checked, edition)[0])


@pytest.fixture(params=CASES)
def pages(request: pytest.FixtureRequest) -> Written:
    return demo(request.param)


def rows(document: Written) -> list[Block]:
    return [
        block for block in document.blocks if re.match(r"(?:Rnds?|Rows?|Foundation|Next)\b[^:]{0,200}:", block.text)
    ]


def test_a_row_keeps_its_count(pages: Written) -> None:
    found = rows(pages)
    assert len(found) > 5
    for row in found:
        assert len(set(row.pages)) == 1, row.text


def test_no_heading_ends_a_page(pages: Written) -> None:
    headings = [(block, after) for block, after in pairwise(pages.blocks) if "/H" in block.kind]
    assert len(headings) > 5
    for heading, after in headings:
        assert not after.pages or heading.pages[-1] == after.pages[0], heading.text


def test_a_line_is_filled_before_it_ends(pages: Written) -> None:
    """A row that fits its line exactly is not broken behind its first words."""
    lines = [line.strip() for page in pages.pages for line in page.splitlines()]
    assert [line for line in lines if re.search(r": ?Ch.\d,$", line)] == []


def test_a_chart_does_not_leave_half_a_page_blank() -> None:
    """What says how to read a chart and its key may go over to the next page, so that the drawing fits on this one."""
    document = demo("cardigan, one size")
    charts = [block for block in document.blocks if block.text.startswith("Stitch chart: ")]
    assert len(charts) == 5
    assert len(document.pages) <= 7  # with every chart in one block, one page is two thirds blank


def test_no_word_of_a_row_is_divided(pages: Written) -> None:
    """A word divided at the end of a line would bring a hyphen that the row does not have."""
    bare = squeezed(unescape(re.sub(r"<[^>]+>", "", pages.html)))
    for row in rows(pages):
        assert squeezed(row.text) in bare, row.text
        assert "\N{SOFT HYPHEN}" not in row.text
    assert "hyphens: none" in pages.html


def squeezed(text: str) -> str:
    return re.sub(r"\s+", "", text)


KEY = re.compile(r"\s*[A-Za-z0-9 ]+: ")  # behind the last row's number of a chart


def parted(document: Written) -> list[str]:
    """Ends of lines that hold a number whose word stands on the next line; a key's `ch: chain` is no such word."""
    found = []
    for page in document.pages:
        lines = page.splitlines()
        for line, after in pairwise(lines):
            if re.search(r"\d$", line.rstrip()) and WORD_OF_A_NUMBER.match(after.lstrip()) and not KEY.match(after):
                found.append(f"{line[-20:]} / {after[:20]}")
    return found


def test_a_number_keeps_its_word(pages: Written) -> None:
    assert parted(pages) == []


def test_a_number_keeps_its_word_at_every_width() -> None:
    """The same row from 25 to 80 mm wide; with spaces that may break it would lose words of its numbers."""
    row = typeset("Ch 3, dc in next 24 sts, sk 2 sts, 5 dc in next ch-2 sp, rep from * 12 more times, 36 cm in all.")
    style = "<style>p { font: 9pt sans-serif; margin: 0 0 2mm }</style>"
    page = f'<html lang="en"><title>A row</title>{style}<body>{{}}</body></html>'
    for text, is_sound in ((row, True), (row.replace(NARROW, " "), False)):
        rows_alone = "".join(f'<p style="width: {wide}mm">{text}</p>' for wide in range(25, 80))
        assert (parted(written(page.replace("{}", rows_alone))) == []) is is_sound


@pytest.mark.parametrize("case", ["cardigan, all sizes", "wrap, letter"])
def test_running_heads_say_pattern_sizes_version_and_page(case: str) -> None:
    document = demo(case)
    title = re.search(r'data-title="([^"]+)"', document.html)
    key = re.search(r'data-key="([^"]+)"', document.html)
    assert title is not None
    assert key is not None
    many = len(document.pages)
    for at, page in enumerate(document.pages, 1):
        said = re.sub(r"\s+", " ", page)
        assert f"Page {at} of {many}" in said
        assert "Version 1.0" in said
        if at > 1:
            assert title[1] in said
            assert re.sub(r"\s+", " ", key[1]) in said


@pytest.mark.parametrize("case", ["cardigan, all sizes", "hat, large print"])
def test_contents_name_the_page_each_section_begins_on(case: str) -> None:
    document = demo(case)
    lines = [re.fullmatch(r"(.+), page (\d+)", re.sub(r"\s+", " ", block.text)) for block in document.blocks
             if block.kind == "/LI"]  # fmt: skip
    named = {line[1]: int(line[2]) for line in lines if line}
    assert len(named) > 5
    headings = {squeezed(block.text): block.pages[0] + 1 for block in document.blocks if block.kind == "/H2"}
    assert named == {name: headings[squeezed(name)] for name in named}


def test_a_short_pattern_has_no_contents() -> None:
    assert "<h2>Contents</h2>" not in demo("wrap, letter").html


def test_a_long_table_breaks_between_rows_and_repeats_its_head(wrap: Checked, samples: Any) -> None:
    size_measures = {f"measure {at}": f"measure {at}" for at in range(70)}
    measure = next(iter(wrap.pattern.measures.values()))
    some = {name: replace(measure, name=name, place=samples["somewhere"]()) for name in size_measures}
    sizes = tuple(
        replace(size, measures=size.measures | {name: replace(size.measures[measure.name], name=name) for name in some})
        for size in wrap.sizes
    )
    pattern = replace(wrap.pattern, measures=dict(wrap.pattern.measures) | some)
    document = written(pattern_html(replace(wrap, pattern=pattern, sizes=sizes), Edition(Path("out"), "M")))
    lines = [block for block in document.blocks if block.kind == "/TR"]
    by_page = {
        page: [row for row in lines if row.pages and row.pages[0] == page] for page in {row.pages[0] for row in lines}
    }
    assert len(by_page) > 1
    assert all(len(set(row.pages)) == 1 for row in lines)
    for page, there in by_page.items():
        assert squeezed(there[0].text) == "MeasureInchesCentimetres", page
