"""What a file says of itself: version, rights and subject; and the way to its corrections as a code for a telephone."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any
from xml.sax.saxutils import escape

from markupsafe import Markup

from gradegen.design.pattern import Pattern
from gradegen.write.chart.pen import fine
from gradegen.write.view.whole import ErrataView

_RIGHTS = "http://ns.adobe.com/xap/1.0/rights/"
_MEDIA = "http://ns.adobe.com/xap/1.0/mm/"
_MARGIN = 4  # squares of quiet around the code
_MODULE = 1.6  # points to one square of the code: the smallest that a telephone reads from paper without trouble


def file_metadata(pattern: Pattern, sizes: str) -> tuple[tuple[str, str], ...]:
    """Names and contents of what stands in the head of the page and in the facts of the PDF."""
    designer = pattern.designer
    rights = ""
    if designer is not None:
        rights = f"© {f'{designer.year} ' if designer.year else ''}{designer.name.text}"
        rights += f". {pattern.licence.text}" if pattern.licence else ""
    said = [
        ("description", f"Crochet pattern, {sizes}, in {pattern.terms} terms"),
        ("keywords", f"crochet pattern, {pattern.title.text}"),
        ("version", pattern.version.text if pattern.version else ""),
        ("rights", rights),
    ]
    return tuple((name, content) for name, content in said if content)


def describe_file(pdf: Any, custom: Mapping[str, str]) -> None:
    """Adds version and rights to the PDF's own description (XMP, ISO 16684-1), in place."""
    said = description(custom)
    for each in pdf.objects if said else ():
        if getattr(each, "extra", {}).get("Type") == "/Metadata":
            packet: bytes = b"".join(each.stream)
            each.stream = [packet.replace(b"</rdf:RDF>", said + b"</rdf:RDF>", 1)]


def description(custom: Mapping[str, str]) -> bytes:
    """Version and rights as that description holds them; nothing where neither is known."""
    parts = []
    if rights := custom.get("rights"):
        said = f'<rdf:Alt><rdf:li xml:lang="x-default">{escape(rights)}</rdf:li></rdf:Alt>'
        parts.append(f"<dc:rights>{said}</dc:rights><xmpRights:Marked>True</xmpRights:Marked>")
    if version := custom.get("version"):
        parts.append(f"<xmpMM:VersionID>{escape(version)}</xmpMM:VersionID>")
    if not parts:
        return b""
    spaces = f'xmlns:xmpRights="{_RIGHTS}" xmlns:xmpMM="{_MEDIA}"'
    return f'<rdf:Description rdf:about="" {spaces}>{"".join(parts)}</rdf:Description>'.encode()


def errata_view(pattern: Pattern) -> ErrataView | None:
    """The address of corrections with its code; None where the designer gives none."""
    address = pattern.designer.errata if pattern.designer is not None else None
    if address is None or not address.text.startswith(("https://", "http://", "mailto:")):
        return None
    return ErrataView(address.text, Markup(code_svg(address.text)))


def code_svg(address: str) -> str:
    """A QR code (ISO/IEC 18004) with its quiet margin, in black on white, as a drawing that says what it is."""
    import segno

    squares = [bytes(row) for row in segno.make(address, error="m", micro=False).matrix]
    runs = [
        f"M{found.start() + _MARGIN} {at + _MARGIN + 0.5:g}h{found.end() - found.start()}"
        for at, row in enumerate(squares)
        for found in re.finditer(b"\x01+", row)
    ]
    size = len(squares) + 2 * _MARGIN
    side = fine(size * _MODULE)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {size} {size}" width="{side}pt" height="{side}pt" '
        f'role="img"><title>{escape(f"QR code that leads to {address}")}</title>'
        f'<path fill="#ffffff" d="M0 0h{size}v{size}h-{size}z"/><path stroke="#000000" d="{"".join(runs)}"/></svg>'
    )
