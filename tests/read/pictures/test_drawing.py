"""Drawings after SVG 1.1 (W3C), and what a stranger's could try."""

from fractions import Fraction

import pytest

from gradegen.read.pictures.drawing import drawing_size
from gradegen.read.pictures.faults import PictureFault

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 40 30">'


def svg(body: str = "", head: str = HEAD) -> bytes:
    return f"{head}{body}</svg>".encode()


def sized(words: str) -> bytes:
    return svg(head=f'<svg xmlns="http://www.w3.org/2000/svg" {words}>')


@pytest.mark.parametrize(
    ("words", "size"),
    [
        ('viewBox="0 0 40 30"', (40, 30)),
        ('viewBox="-5,-5 12.5 10" width="3in"', (Fraction(25, 2), 10)),
        ('width="96" height="48px"', (96, 48)),
        ('width="1in" height="36pt"', (96, 48)),  # CSS Values 4 (W3C): 1 in is 96 px or 72 pt
        ('width="25.4mm" height="5.08cm"', (96, 192)),
    ],
)
def test_proportions(words: str, size: tuple[int, int]) -> None:
    assert drawing_size(sized(words)) == size


@pytest.mark.parametrize("words", ["", 'width="100%" height="100%"', 'viewBox="0 0 0 9"', 'viewBox="0 0 999 1"'])
def test_no_proportions(words: str) -> None:
    with pytest.raises(PictureFault):
        drawing_size(sized(words))


def bomb(times: int, levels: int) -> str:
    uses = (f'<g id="a{at}">' + f'<use xlink:href="#a{at - 1}"/>' * times + "</g>" for at in range(1, levels))
    return '<g id="a0"><rect width="1" height="1"/></g>' + "".join(uses)


@pytest.mark.parametrize(
    ("body", "rule"),
    [
        ('<image href="http://example.org/x.png"/>', "picture-reaches-out"),
        ('<image xlink:href="other.png"/>', "picture-reaches-out"),
        ('<use href="file:///etc/passwd#a"/>', "picture-reaches-out"),
        ('<image href="data:image/svg+xml;base64,AAAA"/>', "picture-reaches-out"),
        ('<rect fill="url(http://example.org/x)"/>', "picture-reaches-out"),
        ("<style>@import 'x.css';</style>", "picture-reaches-out"),
        ("<style>rect { fill: url('x.svg#a') }</style>", "picture-reaches-out"),
        (bomb(10, 9), "picture-too-large"),
        ('<g id="a"><use href="#a"/></g>', "picture-too-large"),
        ('<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>', "picture-too-large"),
        ("<g>" * 3000 + "</g>" * 3000, "picture-too-large"),
        ("<g>", "picture-not-readable"),
    ],
)
def test_what_is_refused(body: str, rule: str) -> None:
    with pytest.raises(PictureFault) as raised:
        drawing_size(svg(body))
    assert raised.value.rule.id == rule


def test_entities_are_refused() -> None:
    with pytest.raises(PictureFault) as raised:
        drawing_size(b'<!DOCTYPE svg [<!ENTITY a "aaaaaaaa">]>' + svg("<text>&a;</text>"))
    assert raised.value.rule.id == "picture-reaches-out"


def test_other_roots_are_refused() -> None:
    for data in (b"<html><svg/></html>", b"<svg/>", b"<x:svg xmlns:x='urn:x'/>"):
        with pytest.raises(PictureFault):
            drawing_size(data)


@pytest.mark.parametrize(
    "body",
    [
        '<a href="https://example.org"><text>Ask us</text></a>',
        "<rect fill=\"url(#g)\"/><style>rect { fill: url( '#g' ) }</style>",
        '<image href="data:image/png;base64,AAAA"/>',
        bomb(10, 4),
    ],
)
def test_what_holds_to_itself_is_taken(body: str) -> None:
    assert drawing_size(svg(body)) == (40, 30)
