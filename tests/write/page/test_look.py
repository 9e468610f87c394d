"""A designer's look on the pages of every edition."""

import io
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from gradegen.cli.print_options import own_paper
from gradegen.design.checked import Checked
from gradegen.design.look import Accent, Look
from gradegen.findings import Place
from gradegen.trade.contrast import LINE_LEAST, TEXT_LEAST, on_paper, rgb_of
from gradegen.trade.typefaces import TYPEFACES
from gradegen.write.drawing.sketch import ACCENT
from gradegen.write.editions.edition import Edition
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.look import look_view
from gradegen.write.page.page_html import page_html
from gradegen.write.page.pdf import pdf_bytes
from gradegen.write.page.proof import prove_print
from gradegen.write.pattern import pattern_html

HERE = Place("x", 1, 1, 1, 1)
WINE = Accent("#b0487a", "#8a2b4d")
OUT = Path("out")
LICENCES = Path(__file__).resolve().parents[3] / "shared" / "licences"


def in_look(checked: Checked, **look: Any) -> Checked:
    return replace(checked, pattern=replace(checked.pattern, look=Look(**look, place=HERE)))


def body(html: str) -> str:
    return html[html.index("</style>") :]


def sheet(html: str) -> str:
    return re.sub(r"/\*.*?\*/", "", html[html.index("<style>") : html.index("</style>")], flags=re.DOTALL)


def pdf_of(checked: Checked, edition: Edition) -> bytes:
    data, findings = pdf_bytes(pattern_html(checked, edition), PageFiles(Path()), HERE)
    assert findings == ()
    assert data is not None
    return data


def fonts_in(data: bytes) -> set[str]:
    fonts: set[str] = set()
    for page in PdfReader(io.BytesIO(data)).pages:
        resources: Any = page["/Resources"]
        fonts |= {str(font.get_object()["/BaseFont"]).partition("+")[2] for font in resources.get("/Font", {}).values()}
    return fonts


def test_the_accent_stands_in_place_of_the_house_colour(wrap: Checked) -> None:
    html = pattern_html(in_look(wrap, accent=WINE), Edition(OUT))
    assert ACCENT not in html
    assert f"solid {WINE.lines}" in sheet(html)
    assert f"color: {WINE.words}" in sheet(html)
    assert f"color: {WINE.lines}" not in sheet(html).replace(f"solid {WINE.lines}", "")
    assert WINE.lines in body(html)  # in the drawing
    assert "#e6efed" not in body(html)  # the ground of a chart's repeat
    assert ACCENT in pattern_html(wrap, Edition(OUT))


def test_words_and_lines_are_dark_enough_on_everything_below_them(wrap: Checked) -> None:
    """WCAG 2.2 (W3C), 1.4.3 and 1.4.11: on paper, and words on the tints that stand behind them."""
    for accent in (WINE, Accent("#00a0a0", "#008080"), Accent("#948a00", "#7a7200")):
        html = sheet(pattern_html(in_look(wrap, accent=accent), Edition(OUT)))
        tints = [rgb_of(each) for each in re.findall(r"background: (#[0-9a-f]{6})", html)]
        assert tints
        for words in ("#20302f", "#47544f"):  # the house's text colours
            assert all(on_paper(rgb_of(words), tint) >= TEXT_LEAST for tint in tints)  # type: ignore[arg-type]
        assert on_paper(rgb_of(accent.lines)) >= LINE_LEAST  # type: ignore[arg-type]


def test_low_ink_keeps_to_greys(wrap: Checked) -> None:
    html = pattern_html(in_look(wrap, accent=WINE), Edition(OUT, style="low-ink"))
    assert WINE.words not in html
    assert WINE.lines not in html


def test_large_print_keeps_its_own_type_and_black(wrap: Checked) -> None:
    looked = in_look(wrap, accent=WINE, text="Source Serif 4", headings="Source Serif 4")
    assert pattern_html(looked, Edition(OUT, style="large-print")) == pattern_html(
        wrap, Edition(OUT, style="large-print")
    )


@pytest.mark.parametrize(
    ("headings", "text", "fonts"),
    [
        ("Source Serif 4", None, {"Serif-Light", "Serif-Semi-Bold", "Body", "Body-Semi-Bold"}),
        (None, "Atkinson Hyperlegible", {"Large", "Large-Bold", "Body", "Body-Semi-Bold"}),
        ("Inter", "Source Serif 4", {"Serif", "Serif-Semi-Bold", "Body", "Body-Light", "Body-Semi-Bold"}),
    ],
)
def test_a_pair_of_typefaces(hat: Checked, headings: str | None, text: str | None, fonts: set[str]) -> None:
    """Only fonts of the package are in the file; the text's typeface has the house's behind it for signs it lacks."""
    checked, edition = in_look(hat, headings=headings, text=text), Edition(OUT)
    data = pdf_of(checked, edition)
    assert fonts_in(data) <= fonts
    assert fonts_in(data) >= {each for each in fonts if not each.startswith("Body")}
    assert prove_print(data, checked, edition) == ()


@pytest.mark.parametrize("name", TYPEFACES)
def test_every_typeface_has_its_fonts_and_its_licence(name: str) -> None:
    view = look_view(Look(text=name, headings=name, place=HERE), has_colour=True)
    for face in view.faces:
        assert PageFiles(Path()).open(face.address)[1] == "font/ttf"
        assert face.family in view.text
    assert view.text.split(", ")[-1] == "Body"
    assert (LICENCES / f"{name.replace(' ', '-')}-OFL.txt").is_file()


def test_a_browser_gets_names_of_typefaces_and_no_font_of_ours(wrap: Checked) -> None:
    html = page_html(in_look(wrap, text="Source Serif 4", accent=WINE), Edition(OUT), PageFiles(Path()))
    assert "'Source Serif 4', Georgia" in html
    assert "file:///" not in html
    assert WINE.words in html


@pytest.mark.parametrize(("named", "paper"), [("Letter", "letter"), ("A4", "a4"), (None, "a4")])
def test_the_paper_a_look_names_is_the_one_without_an_option(wrap: Checked, named: Any, paper: str) -> None:
    assert own_paper(in_look(wrap, paper=named).pattern) == paper
    assert own_paper(wrap.pattern) == "a4"
