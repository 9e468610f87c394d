"""Charts as the pages of a document show them: the drawing, its key, how to read it, and the same for a voice."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from markupsafe import Markup

from gradegen.design.look import Look
from gradegen.trade.contrast import hex_of, mixed, rgb_of
from gradegen.write.chart.draw import GREY, Inks
from gradegen.write.chart.key import KeyEntry
from gradegen.write.chart.pen import fine
from gradegen.write.chart.whole import Chart, Naming, Undrawn, page_svg, piece_chart
from gradegen.write.editions.editioned import Editioned
from gradegen.write.view.whole import ChartView, KeyView, PieceView
from gradegen.write.words.phrases import plain

_WIDEST, _HIGHEST, _LARGEST = 470.0, 560.0, 1.2  # points on a page; times the drawing's own units
_LEFT_OUT = "The chart is left out of this edition; the rows above say everything it shows."


def with_charts(pieces: Iterable[PieceView], said: Editioned, style: str) -> tuple[PieceView, ...]:
    """The pieces, those that can be drawn with their chart: drawn as written, named in the edition's words."""
    found = []
    pattern, written = said.checked.pattern, said.written.pattern
    for at, (view, piece, named) in enumerate(zip(pieces, written.pieces, pattern.pieces, strict=True), 1):
        inks = GREY if style == "low-ink" else _inks(pattern.look)
        naming = Naming(named.name.text, pattern.terms)
        chart = piece_chart(said.written, piece, said.printing, prefix=f"c{at}-", inks=inks, naming=naming)
        found.append(view if isinstance(chart, Undrawn) else replace(view, chart=chart_view(chart, style, at)))
    return tuple(found)


def _inks(look: Look | None) -> Inks:
    """The inks of a chart; the ground behind a repeat takes the designer's accent, rows keep their own two inks."""
    colour = rgb_of(look.accent.words) if look is not None and look.accent is not None else None
    return Inks() if colour is None else Inks(shade=hex_of(mixed(colour, 10)))


def chart_view(chart: Chart, style: str, at: int = 1) -> ChartView:
    """One chart for a page; left out where a drawing cannot be read: in large print and for a voice.

    What it is drawn with is no size's count, so that to say it there would mislead.
    """
    if style in ("large-print", "spoken"):
        return ChartView(f"chart-{at}", chart.title, "", (), (plain(_LEFT_OUT),), (), ())
    return ChartView(
        anchor=f"chart-{at}",
        title=chart.title,
        svg=Markup(_sized(page_svg(chart), *chart.sheet.box()[2:])),
        key=tuple(KeyView(Markup(_key_svg(entry, chart)), entry.words) for entry in chart.key),
        reads=chart.reads,
        letters=chart.legend.letters,
        spoken=tuple(plain(each) for each in chart.spoken),
    )


def _sized(svg: str, width: float, height: float) -> str:
    """The drawing as wide as it may be on a page."""
    scale = min(_LARGEST, _WIDEST / width, _HIGHEST / height)
    head, _, rest = svg.partition(">")
    named = head.replace(f'width="{fine(width)}pt"', f'width="{fine(width * scale)}pt"')
    return named.replace(f'height="{fine(height)}pt"', f'height="{fine(height * scale)}pt" role="img"') + ">" + rest


def _key_svg(entry: KeyEntry, chart: Chart) -> str:
    """One mark of the key as a little drawing in the line."""
    ink = chart.inks.lettering
    high = entry.high + 5
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="mark" viewBox="-13 {fine(-high)} 26 {fine(high + 3)}" '
        f'width="26pt" height="{fine(high + 3)}pt" font-family="Body" stroke="{ink}" fill="{ink}" stroke-width="0.95" '
        'stroke-linecap="round" stroke-linejoin="round" role="img">'
    )
    return f"{head}<title>Mark</title>{''.join(entry.fragments)}</svg>"
