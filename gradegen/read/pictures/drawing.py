"""Drawings made of lines (SVG 1.1, W3C): their proportions, and whether they hold to themselves."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from gradegen.read.pictures.faults import NO_PICTURE, REACHES_OUT, TOO_LARGE, PictureFault

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

MOST_BYTES = 3_000_000
MOST_PARTS = 60_000  # elements drawn, each copy counted
SVG = "{http://www.w3.org/2000/svg}"
XLINK = "{http://www.w3.org/1999/xlink}"
_LENGTH = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(px|pt|mm|cm|in|pc)?\s*")
_URL = re.compile(r"url\(\s*['\"]?\s*[^#'\"\s)]|@import", re.IGNORECASE)
_INSIDE = re.compile(r"#|data:image/(?:png|jpeg|webp);", re.IGNORECASE)
_PER_INCH: dict[str, Fraction | int] = {
    "px": 96,
    "pt": 72,
    "mm": Fraction(254, 10),
    "cm": Fraction(254, 100),
    "in": 1,
    "pc": 6,
}


def drawing_size(data: bytes) -> tuple[Fraction, Fraction]:
    """Width and height in the drawing's own units; raises PictureFault."""
    root = drawing_tree(data)
    wide, high = box_of(root) or (_length(root.get("width", "")), _length(root.get("height", "")))
    if not wide or not high or wide <= 0 or high <= 0:
        raise PictureFault(NO_PICTURE, "does not say how large it is", "Give its <svg> a viewBox.")
    if not Fraction(1, 50) <= wide / high <= 50:
        raise PictureFault(NO_PICTURE, "is a mere line by its viewBox", "Give its <svg> the box of what is drawn.")
    return wide, high


def box_of(root: Element) -> tuple[Fraction, Fraction] | None:
    """Width and height of the drawing's own box; None where it has none that can be read."""
    box = [_number(each) for each in re.split(r"[\s,]+", root.get("viewBox", "").strip())]
    numbers = [each for each in box if each is not None]
    return (numbers[2], numbers[3]) if len(box) == len(numbers) == 4 else None


def drawing_tree(data: bytes) -> Element:
    """The drawing as a tree that opens nothing else and comes to an end; raises PictureFault."""
    from xml.etree import ElementTree

    if len(data) > MOST_BYTES:
        raise PictureFault(TOO_LARGE, f"is larger than {MOST_BYTES // 1_000_000} MB", "Simplify it, or save a PNG.")
    if b"<!ENTITY" in data or b"\0" in data:
        raise PictureFault(REACHES_OUT, "defines words of its own (<!ENTITY>)", "Save it as plain SVG.")
    try:
        root = ElementTree.fromstring(data)
    except (ElementTree.ParseError, ValueError, RecursionError):
        raise PictureFault(NO_PICTURE, "is no well-formed SVG", "Save it anew as plain SVG.") from None
    if root.tag != f"{SVG}svg":
        raise PictureFault(NO_PICTURE, "is no SVG drawing", "Its first element must be <svg> in SVG's namespace.")
    for each in root.iter():
        if any(_leads_away(each)):
            raise PictureFault(REACHES_OUT, "asks for another file", "Put everything into the drawing itself.")
    _drawn_parts(root, root, {each.get("id", ""): each for each in root.iter()}, {})
    return root


def _leads_away(element: Element) -> Iterator[bool]:
    for name, value in element.attrib.items():
        is_link = name in ("href", f"{XLINK}href") and element.tag != f"{SVG}a"
        yield is_link and not _INSIDE.match(value.strip())
        yield bool(_URL.search(value))
    yield element.tag == f"{SVG}style" and bool(_URL.search(element.text or ""))


def _drawn_parts(element: Element, root: Element, named: dict[str, Element], known: dict[Element, int]) -> int:
    """How many elements are drawn, with every copy that `use` makes; raises PictureFault where there is no end."""
    if element in known:
        many = known[element]
        if many < 0:
            raise PictureFault(TOO_LARGE, "uses a part inside itself", "Save it as plain SVG.")
        return many
    known[element] = -1
    try:
        many = 1 + sum(_drawn_parts(kid, root, named, known) for kid in element)
        if element.tag == f"{SVG}use":
            used = named.get((element.get("href") or element.get(f"{XLINK}href") or "").strip().removeprefix("#"))
            many += _drawn_parts(used, root, named, known) if used is not None else 0
    except RecursionError:
        raise PictureFault(TOO_LARGE, "is nested too deeply", "Save it as plain SVG.") from None
    if many > MOST_PARTS:
        raise PictureFault(TOO_LARGE, f"draws more than {MOST_PARTS:,} parts", "Simplify it, or save a PNG.")
    known[element] = many
    return many


def _number(text: str) -> Fraction | None:
    return Fraction(text) if re.fullmatch(r"-?\d{1,9}(?:\.\d{1,9})?", text) else None


def _length(text: str) -> Fraction | None:
    found = _LENGTH.fullmatch(text)
    return Fraction(found[1]) * 96 / _PER_INCH[found[2] or "px"] if found and len(found[1]) < 12 else None
