"""A chart as one SVG file: marks once, then the rows, with a title and a text that say what it shows."""

from __future__ import annotations

from collections.abc import Sequence
from xml.sax.saxutils import escape

from gradegen.trade.chart_glyphs import marks
from gradegen.write.chart.pen import fine

STROKE = "0.95"


def svg_page(
    fragments: Sequence[str],
    box: Sequence[float],
    title: str,
    shows: str,
    *,
    prefix: str,
    font: str,
) -> str:
    """The whole drawing; real colours, and its font named on the drawing itself, so that it looks the same anywhere."""
    left, top, width, height = (fine(each) for each in box)
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{left} {top} {width} {height}" width="{width}pt" '
        f'height="{height}pt" font-family="{escape(font)}" stroke-width="{STROKE}" stroke-linecap="round" '
        'stroke-linejoin="round">'
    )
    words = f"<title>{escape(title)}</title>" + (f"<desc>{escape(shows)}</desc>" if shows else "")
    return "\n".join([head, words, definitions(prefix, "".join(fragments)), *fragments, "</svg>"])


def definitions(prefix: str, fragments: str) -> str:
    """The outlines of the marks that these fragments use."""
    parts = []
    for name, mark in marks().items():
        known = f"{prefix}{name.replace(' ', '-')}"
        if f'"#{known}"' in fragments:
            fill = "" if mark.is_filled else ' fill="none"'
            parts.append(f'<path id="{known}" d="{mark.outline}"{fill}/>')
    return "<defs>" + "".join(parts) + "</defs>"
