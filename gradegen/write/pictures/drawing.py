"""A drawing made ready for print: nothing but what is drawn, in fonts that pages bring with them."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from gradegen.read.pictures.drawing import SVG, XLINK, box_of, drawing_size, drawing_tree
from gradegen.write.chart.pen import fine

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

_DROPPED = tuple(SVG + name for name in ("script", "metadata", "foreignObject"))
_FAMILY = re.compile(r"font-family\s*:[^;}]*")
FONT = "Body, Inter, Arial, sans-serif"  # Body is the pages' own; another machine's would give other bytes


def clean_drawing(data: bytes) -> bytes:
    """The drawing without scripts, links, editors' notes and fonts of its own; raises PictureFault."""
    from xml.etree import ElementTree

    root = drawing_tree(data)
    _clean(root)
    if box_of(root) is None:
        wide, high = (fine(side.numerator / side.denominator) for side in drawing_size(data))
        root.set("viewBox", f"0 0 {wide} {high}")
    root.set("font-family", FONT)
    root.attrib.pop("width", None)
    root.attrib.pop("height", None)
    ElementTree.register_namespace("", SVG[1:-1])
    ElementTree.register_namespace("xlink", XLINK[1:-1])
    clean: bytes = ElementTree.tostring(root, encoding="utf-8", xml_declaration=False)
    return clean


def _clean(element: Element) -> None:
    for name in list(element.attrib):
        is_foreign = name.startswith("{") and not name.startswith(XLINK)
        if is_foreign or name.lower().startswith("on") or name == "font-family":
            del element.attrib[name]
    if "style" in element.attrib:
        element.set("style", _FAMILY.sub(f"font-family:{FONT}", element.attrib["style"]))
    if element.tag == f"{SVG}style":
        element.text = _FAMILY.sub(f"font-family:{FONT}", element.text or "")
    for kid in list(element):
        if kid.tag == f"{SVG}a":
            kid.tag = f"{SVG}g"
            kid.attrib.pop("href", None)
            kid.attrib.pop(f"{XLINK}href", None)
        if kid.tag in _DROPPED or not kid.tag.startswith(SVG):
            element.remove(kid)
        else:
            _clean(kid)
