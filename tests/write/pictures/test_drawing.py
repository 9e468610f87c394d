from xml.etree import ElementTree

import pytest

from gradegen.write.pictures.drawing import clean_drawing

SVG = "{http://www.w3.org/2000/svg}"
DRAWN = b"""<?xml version="1.0"?>
<!-- by hand, at home -->
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:e="urn:editor" width="2in"
  height="1in" viewBox="0 0 20 10" e:version="9" onload="alert(1)">
 <metadata><who>Lanternworks</who></metadata><e:grid e:step="1"/><script>alert(2)</script>
 <title>A rope</title>
 <style>text { font-family: Papyrus; fill: #123456 }</style>
 <defs><path id="p" d="M0 0h9"/></defs>
 <a xlink:href="https://example.org"><use xlink:href="#p"/></a>
 <text font-family="Papyrus" style="font-family:'Comic'; fill: red" onclick="x()">rope</text>
 <foreignObject><p>x</p></foreignObject>
</svg>"""


def test_what_is_drawn_is_kept_and_nothing_else() -> None:
    clean = clean_drawing(DRAWN)
    root = ElementTree.fromstring(clean)
    assert root.get("viewBox") == "0 0 20 10"
    assert {each.tag.removeprefix(SVG) for each in root.iter()} == {
        "svg", "title", "style", "defs", "path", "g", "use", "text"
    }  # fmt: skip
    assert root.find(f".//{SVG}use").get("{http://www.w3.org/1999/xlink}href") == "#p"  # type: ignore[union-attr]
    for gone in (b"Lanternworks", b"editor", b"alert", b"onclick", b"at home", b"Papyrus", b"Comic", b"example.org"):
        assert gone not in clean
    assert b"fill: #123456" in clean
    assert b"fill: red" in clean


def test_cleaning_twice_changes_nothing() -> None:
    assert clean_drawing(clean_drawing(DRAWN)) == clean_drawing(DRAWN)


@pytest.mark.parametrize("words", [b'width="40px" height="30"', b'viewBox="all" width="40" height="30"'])
def test_a_drawing_without_a_box_gets_one(words: bytes) -> None:
    clean = clean_drawing(b'<svg xmlns="http://www.w3.org/2000/svg" ' + words + b'><path d="M0 0h40"/></svg>')
    assert ElementTree.fromstring(clean).get("viewBox") == "0 0 40 30"


def test_the_box_of_a_drawing_in_inches_holds_its_own_units() -> None:
    # CSS Values 4 (W3C): 1 in is 96 px, and what is drawn without units is in px
    clean = clean_drawing(
        b'<svg xmlns="http://www.w3.org/2000/svg" width="1in" height="36pt"><path d="M0 0h96"/></svg>'
    )
    assert ElementTree.fromstring(clean).get("viewBox") == "0 0 96 48"
