"""Pictures as the pages of an edition show them, read back from what is written."""

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from pypdf import PdfReader
from pypdf.generic import ContentStream

from gradegen.design.checked import Checked
from gradegen.design.look import Logo, Look
from gradegen.design.pictures import Picture
from gradegen.findings import Finding
from gradegen.read.pictures.file import look_at
from gradegen.write.editions.edition import Edition
from gradegen.write.editions.plain_document import document_text
from gradegen.write.page.document import document_view
from gradegen.write.page.page_html import page_html
from gradegen.write.page.read_back import read_back
from gradegen.write.pattern import page_files, pattern_html, write_pattern
from gradegen.write.pictures.ready import ready_pictures
from gradegen.write.voice.document import spoken, spoken_text

LETTERED = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 40"><rect width="60" height="40" fill="#ddd"/>'
    '<text x="5" y="25" font-family="Papyrus">Deck</text></svg>'
)


@dataclass(frozen=True)
class Shown:
    """One image of a PDF: its page, its box on it in points, and its pixels."""

    page: int
    wide: float
    high: float
    paper: float
    pixels: tuple[int, int]


def boxes(data: bytes) -> Iterator[Shown]:
    """Every raster image of a PDF with the box it is drawn into, by the matrices before it (PDF 32000-1, 8.3.4)."""
    reader = PdfReader(io.BytesIO(data))
    for at, page in enumerate(reader.pages):
        images = {str(name): each.get_object() for name, each in page["/Resources"].get("/XObject", {}).items()}
        scale, stack = (1.0, 1.0), []
        for operands, operator in ContentStream(page.get_contents(), reader).operations:
            if operator == b"q":
                stack.append(scale)
            elif operator == b"Q":
                scale = stack.pop()
            elif operator == b"cm":
                scale = (scale[0] * float(operands[0]), scale[1] * float(operands[3]))
            elif operator == b"Do" and images[str(operands[0])]["/Subtype"] == "/Image":
                image = images[str(operands[0])]
                pixels = (int(image["/Width"]), int(image["/Height"]))
                yield Shown(at, abs(scale[0]), abs(scale[1]), float(page.mediabox.height), pixels)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    inside = tmp_path / "designs"
    inside.mkdir()
    for name, size in (("wide", (1600, 1200)), ("tall", (1200, 1600)), ("strip", (1500, 300)), ("pole", (300, 1500))):
        Image.linear_gradient("L").resize(size).convert("RGB").save(inside / f"{name}.jpg")
    (inside / "deck.svg").write_text(LETTERED)
    (inside / "broken.jpg").write_bytes((inside / "wide.jpg").read_bytes()[:9000])
    return inside


def with_pictures(checked: Checked, folder: Path, samples: Any, *wanted: dict[str, Any]) -> Checked:
    """The pattern as if it lay in the folder, with these pictures."""
    pictures = []
    for each in wanted:
        name = each.pop("file")
        said = {"stands": "cover", "size": "half page", "caption": None} | each
        alt = samples["text"](said.pop("alt", f"What {name} shows"))
        caption = samples["text"](said.pop("caption")) if said["caption"] else said.pop("caption")
        file = look_at(folder / name)
        pictures.append(Picture(samples["text"](name), alt, caption, file=file, place=samples["somewhere"](), **said))
    pattern = replace(checked.pattern, file=str(folder / "hat.yaml"), pictures=tuple(pictures))
    return replace(checked, pattern=pattern)


def written(checked: Checked, edition: Edition) -> tuple[bytes, tuple[Finding, ...]]:
    paths, findings = write_pattern(checked, edition)
    return (paths[0].read_bytes() if paths else b""), findings


@pytest.mark.parametrize(("paper", "style"), [("a4", "print"), ("letter", "large-print")])
def test_never_over_half_a_page_unless_asked(
    hat: Checked, folder: Path, samples: Any, tmp_path: Path, paper: Any, style: Any
) -> None:
    names = ("wide.jpg", "tall.jpg", "strip.jpg", "pole.jpg")
    halves = [{"file": name, "caption": "Half a page: 5 sc."} for name in names]
    whole = {"file": "tall.jpg", "size": "whole page"}
    quarter = {"file": "tall.jpg", "size": "quarter page", "stands": "finishing"}
    checked = with_pictures(hat, folder, samples, *halves, whole, quarter)
    data, findings = written(checked, Edition(tmp_path, "M", paper, style=style))
    assert findings == ()
    shown = list(boxes(data))
    assert len(shown) == 6
    for each, name in zip(shown, names, strict=False):
        file = look_at(folder / name)
        assert each.high <= each.paper / 2
        assert each.wide / each.high == pytest.approx(file.across / file.up, rel=0.01)
        assert 140 <= each.pixels[0] / (each.wide / 72) <= 250  # dots to the inch
    assert shown[4].high > shown[4].paper / 2
    assert shown[5].high <= shown[1].high


def test_where_each_stands(hat: Checked, folder: Path, samples: Any, tmp_path: Path) -> None:
    rows = hat.pattern.pieces[0].rows
    at = [
        {"file": "deck.svg", "alt": "Alt of the cover", "caption": "Caption of the cover"},
        {"file": "deck.svg", "alt": "Alt of the notes", "stands": "notes"},
        {"file": "deck.svg", "alt": "Alt of the piece", "stands": "piece", "piece": 0},
        {"file": "deck.svg", "alt": "Alt of a row", "stands": "row", "piece": 0, "line": rows[2].place.line,
         "caption": "Caption of a row"},
        {"file": "deck.svg", "alt": "Alt of the end", "stands": "finishing"},
    ]  # fmt: skip
    checked = with_pictures(hat, folder, samples, *at)
    html = pattern_html(checked, Edition(tmp_path, "M"))
    marks = [
        "</header>", "Alt of the cover", "<h2>Notes</h2>", "Alt of the notes", "<h2>Hat</h2>", "Alt of the piece",
        'class="row', "Rnd\xa03:", "Alt of a row", "Rnd\xa04:", "<h2>Finishing</h2>", "Alt of the end",
    ]  # fmt: skip
    places = [html.index(mark) for mark in marks]
    assert places == sorted(places)
    text = document_text(document_view(checked, Edition(tmp_path, "M")))
    assert text.index("Rnd 3:") < text.index("[Picture: Alt of a row] Caption of a row") < text.index("Rnd 4:")
    data, findings = written(checked, Edition(tmp_path, "M"))
    assert findings == ()
    read = read_back(data).text
    assert read.index("Caption of the cover") < read.index("Caption of a row")
    figures = [str(each.get("/Alt", "")) for each in tagged(data, "/Figure")]
    assert [each for each in figures if each.startswith("Alt of")] == [each["alt"] for each in at_words()]


def at_words() -> list[dict[str, str]]:
    return [{"alt": f"Alt of {where}"} for where in ("the cover", "the notes", "the piece", "a row", "the end")]


def tagged(data: bytes, kind: str) -> list[Any]:
    """The elements of this kind in the order of the tags."""
    found: list[Any] = []

    def walk(kids: Any) -> None:
        kids = kids.get_object() if hasattr(kids, "get_object") else kids
        for kid in kids if isinstance(kids, list) else [kids]:
            element = kid.get_object() if hasattr(kid, "get_object") else kid
            if isinstance(element, dict):
                if element.get("/S") == kind:
                    found.append(element)
                if "/K" in element:
                    walk(element["/K"])

    walk(PdfReader(io.BytesIO(data)).root_object["/StructTreeRoot"]["/K"])  # type: ignore[index]
    return found


def test_low_ink_keeps_the_words_alone(hat: Checked, folder: Path, samples: Any, tmp_path: Path) -> None:
    checked = with_pictures(hat, folder, samples, {"file": "wide.jpg", "alt": "A deck", "caption": "At noon, 4 sc."})
    data, findings = written(checked, Edition(tmp_path, "M", style="low-ink"))
    assert findings == ()
    assert list(boxes(data)) == []
    assert "Picture A deck At noon, 4 sc." in read_back(data).text.replace("\xa0", " ")


def test_a_voice_says_what_it_shows(hat: Checked, folder: Path, samples: Any, tmp_path: Path) -> None:
    checked = with_pictures(hat, folder, samples, {"file": "wide.jpg", "alt": "A deck in sc", "caption": "Noon: 4 sc."})
    said = spoken_text(spoken(document_view(checked, Edition(tmp_path, "M", style="spoken"))))
    assert "Picture: A deck in single crochet. Noon: 4 single crochet." in said


def test_other_terms_reach_the_captions(hat: Checked, folder: Path, samples: Any, tmp_path: Path) -> None:
    checked = with_pictures(hat, folder, samples, {"file": "deck.svg", "alt": "Rows of sc", "caption": "4 sc."})
    view = document_view(checked, Edition(tmp_path, terms="UK"))
    assert view.pictures[0].alt == "Rows of dc"
    assert "".join(part.text for part in view.pictures[0].caption).replace("\xa0", " ") == "4 dc."


def test_html_holds_its_pictures(hat: Checked, folder: Path, samples: Any, tmp_path: Path) -> None:
    checked = with_pictures(hat, folder, samples, {"file": "wide.jpg"}, {"file": "deck.svg"})
    html = page_html(checked, Edition(tmp_path), page_files(checked, Edition(tmp_path))[0])
    sources = re.findall(r'<img src="([^"]{30})', html)
    assert [source.split(";")[0] for source in sources] == ["data:image/jpeg", "data:image/svg+xml"]
    assert "file:///" not in html
    assert str(tmp_path) not in html


def test_the_row_of_a_size_that_has_none_shows_no_picture(
    hat: Checked, folder: Path, samples: Any, tmp_path: Path
) -> None:
    rows = hat.pattern.pieces[0].rows
    row = next(each for each in rows if each.sizes is not None)
    there, without = row.sizes[0], next(size.name for size in hat.sizes if size.name not in row.sizes)  # type: ignore[index]
    at = {"file": "deck.svg", "alt": "Alt of a row", "stands": "row", "piece": 0, "line": row.place.line}
    checked = with_pictures(hat, folder, samples, at)
    assert "Alt of a row" in pattern_html(checked, Edition(tmp_path, there))
    assert "Alt of a row" not in pattern_html(checked, Edition(tmp_path, without))


def test_same_bytes_in_two_folders_and_no_path_in_them(
    hat: Checked, folder: Path, samples: Any, tmp_path: Path
) -> None:
    other = tmp_path / "moved"
    folder.rename(tmp_path / "first")
    (tmp_path / "first").rename(folder)
    other.mkdir()
    for file in folder.iterdir():
        (other / file.name).write_bytes(file.read_bytes())
    files = ({"file": "wide.jpg"}, {"file": "deck.svg"})
    both = [
        written(with_pictures(hat, place, samples, *map(dict, files)), Edition(tmp_path / "out", "M"))[0]
        for place in (folder, other)
    ]
    assert both[0] == both[1]
    for word in (str(tmp_path), "designs", "moved", "wide.jpg", "deck.svg", "Papyrus"):
        assert word.encode() not in both[0]


def test_a_damaged_photo_is_told_of_and_nothing_written(
    hat: Checked, folder: Path, samples: Any, tmp_path: Path
) -> None:
    checked = with_pictures(hat, folder, samples, {"file": "broken.jpg", "alt": "A deck"})
    data, (finding,) = written(checked, Edition(tmp_path, "M"))
    assert data == b""
    assert (finding.rule, finding.place) == ("picture-not-readable", checked.pattern.pictures[0].name.place)
    draft, findings = written(checked, Edition(tmp_path, "M", draft=True))
    assert findings == ()
    assert "Picture A deck" in read_back(draft).text.replace("\xa0", " ")


def test_each_file_is_sized_once(hat: Checked, folder: Path, samples: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    from gradegen.write.pictures import ready

    sized = []
    own = ready.sized_photo
    monkeypatch.setattr(ready, "sized_photo", lambda *asked: sized.append(asked) or own(*asked))
    checked = with_pictures(hat, folder, samples, {"file": "wide.jpg"}, {"file": "tall.jpg"})
    for _ in range(3):
        assert ready_pictures(checked.pattern).findings == ()
    assert len(sized) == 2
    (folder / "wide.jpg").write_bytes((folder / "strip.jpg").read_bytes())
    ready_pictures(checked.pattern)
    assert len(sized) == 3  # it is another photo now


def test_the_logo_stands_above_the_title(hat: Checked, folder: Path, samples: Any, tmp_path: Path) -> None:
    logo = Logo(samples["text"]("A plank"), look_at(folder / "strip.jpg"))
    look = Look(logo=logo, place=samples["somewhere"]())
    pattern = replace(hat.pattern, file=str(folder / "hat.yaml"), look=look)
    checked = replace(hat, pattern=pattern)
    data, findings = written(checked, Edition(tmp_path, "M"))
    assert findings == ()
    (shown,) = boxes(data)
    assert shown.page == 0
    assert shown.high <= 15.1 / 25.4 * 72
    html = pattern_html(checked, Edition(tmp_path, "M"))
    assert html.index('alt="A plank"') < html.index("<h1>")
    assert "<img" not in pattern_html(checked, Edition(tmp_path, "M", style="low-ink"))
    assert "A plank" in pattern_html(checked, Edition(tmp_path, "M", style="low-ink"))
    assert "Logo: A plank." in spoken_text(spoken(document_view(checked, Edition(tmp_path, "M", style="spoken"))))
