"""What the typesetter leaves open in the fields of a form, put right so that any reader can fill them in.

Every field gets an appearance of its own, so that no reader has to draw it first, in a font whose letters a reader can
find by their usual numbers (WinAnsiEncoding): the typesetter's own fonts are numbered glyph by glyph, and what is typed
in such a font comes out as other letters in some readers. What a form carries with it is hidden and can't be changed.
Asked for by ISO 32000-1 (12.7.3.3, 12.7.4) and PDF/UA-1; seen with WeasyPrint 70.0 and pydyf 0.13.
"""

from __future__ import annotations

import io
import re
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from gradegen.design.testing import FIXED
from gradegen.numbers.exact import decimal_text

_FONT = "Fill"
_FIRST, _LAST = 32, 255
_HIDDEN, _READ_ONLY, _EDIT = 1 << 1, 1 << 0, 1 << 18
_NOT_SYMBOLIC = 1 << 5
_MARGIN = 2  # points between the edge of a field and its words
_DRAWN_WITH = re.compile(rb"/(?P<font>\S+) (?P<size>[\d.]+) Tf")
_SUNK = Fraction(34, 100)  # of the size: from the middle of a field down to where its letters stand
OPEN = " or other"  # ends the tooltip of a choice in which something else may be written
NOTHING = "–"  # the choice that chooses nothing: an empty one is refused by some readers
VALUE = "\N{SYMBOL FOR UNIT SEPARATOR}"  # parts a tooltip from what the field holds: else that is drawn on the page


def finish_fields(pdf: Any) -> None:
    """Changes the fields of a file in place, as the typesetter asks of a finisher; a file without fields stays."""
    form = pdf.catalog.get("AcroForm")
    if form is None:
        return
    objects = {each.number: each for each in pdf.objects}
    fields = [_at(objects, reference) for reference in form["Fields"]]
    font = _plain_font(pdf, objects, form, fields)
    for each in fields:
        _finish(pdf, each, font)
    form["DR"] = _dictionary({"Font": _dictionary({_FONT: font})})
    form["DA"] = _string(f"/{_FONT} 9 Tf 0 g".encode())
    del form["NeedAppearances"]


def _at(objects: Mapping[int, Any], reference: Any) -> Any:
    if isinstance(reference, str):
        reference = reference.encode()
    return objects[int(reference.split()[0])] if isinstance(reference, bytes) else reference


def _plain_font(pdf: Any, objects: Mapping[int, Any], form: Any, fields: list[Any]) -> bytes:
    """The font of the fields once more, its letters under their usual numbers; the file of the font is shared."""
    named = next(_DRAWN_WITH.search(each["DA"].data) for each in fields if "DA" in each)
    assert named is not None
    fonts = _at(objects, _at(objects, form["DR"])["Font"])
    inner = _at(objects, _at(objects, fonts[named["font"].decode()])["DescendantFonts"][0])
    described = _at(objects, inner["FontDescriptor"])
    descriptor = _dictionary({key: value for key, value in described.items() if key != "CIDSet"})
    descriptor |= {"Flags": _NOT_SYMBOLIC}
    pdf.add_object(descriptor)
    widths = _array(_widths(b"".join(_at(objects, described["FontFile2"]).stream)))
    font = _dictionary(
        {
            "Type": "/Font",
            "Subtype": "/TrueType",
            "BaseFont": described["FontName"],
            "FirstChar": _FIRST,
            "LastChar": _LAST,
            "Widths": widths,
            "Encoding": "/WinAnsiEncoding",
            "FontDescriptor": descriptor.reference,
        }
    )
    pdf.add_object(font)
    reference: bytes = font.reference
    return reference


def _widths(file: bytes) -> list[int]:
    """Of every letter of the encoding, in thousandths of the size."""
    from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

    with TTFont(io.BytesIO(file)) as font:
        names, advances, units = font.getBestCmap(), font["hmtx"], font["head"].unitsPerEm
        letters = [bytes([at]).decode("cp1252", "replace") for at in range(_FIRST, _LAST + 1)]
        return [advances[names.get(ord(letter), ".notdef")][0] * 1000 // units for letter in letters]


def _finish(pdf: Any, each: Any, font: bytes) -> None:
    left, top, right, bottom = each["Rect"]
    each["Rect"] = _array([min(left, right), min(top, bottom), max(left, right), max(top, bottom)])
    if each["FT"] == "/Btn":
        each["AP"]["N"]["Off"] = _drawn(pdf, each, b"", None)
        return
    name, _, value = each["TU"].string.partition(VALUE)
    each["TU"] = _string(name)
    if value:
        each["V"] = each["DV"] = _string(value)
    size = _size(each)
    each["DA"] = _string(f"/{_FONT} {size} Tf 0 g".encode())
    if each["T"].string in FIXED:
        each["F"] = _HIDDEN
        each["Ff"] = each.get("Ff", 0) | _READ_ONLY
        value = ""
    elif each["FT"] == "/Ch":
        each["Ff"] |= _EDIT if name.endswith(OPEN) else 0
        each["Opt"] = _array([option[1] if option[1].string else _string(NOTHING) for option in each["Opt"]])
    each["AP"] = _dictionary({"N": _drawn(pdf, each, _words(each, value, size), font)})


def _size(each: Any) -> str:
    found = _DRAWN_WITH.search(each["DA"].data)
    assert found is not None
    return found["size"].decode()


def _words(each: Any, said: str, size: str) -> bytes:
    """The operators that draw what stands in the field."""
    if not said:
        return b"/Tx BMC EMC"
    _, bottom, _, top = each["Rect"]
    up = decimal_text(Fraction(top - bottom) / 2 - Fraction(size) * _SUNK)
    escaped = re.sub(rb"([\\()])", rb"\\\1", said.encode("cp1252", "replace"))
    begun = f"/Tx BMC q BT /{_FONT} {size} Tf 0 g {_MARGIN} {up} Td (".encode()
    return begun + escaped + b") Tj ET Q EMC"


def _drawn(pdf: Any, each: Any, content: bytes, font: bytes | None) -> bytes:
    import pydyf

    left, bottom, right, top = each["Rect"]
    about = {"Type": "/XObject", "Subtype": "/Form", "BBox": _array([0, 0, right - left, top - bottom])}
    fonts = {} if font is None else {"Font": _dictionary({_FONT: font})}
    stream = pydyf.Stream([content], _dictionary(about | {"Resources": _dictionary(fonts)}))
    pdf.add_object(stream)
    reference: bytes = stream.reference
    return reference


def _dictionary(values: Mapping[str, Any]) -> Any:
    import pydyf

    return pydyf.Dictionary(values)


def _array(values: list[Any]) -> Any:
    import pydyf

    return pydyf.Array(values)


def _string(data: str | bytes) -> Any:
    import pydyf

    return pydyf.String(data)
