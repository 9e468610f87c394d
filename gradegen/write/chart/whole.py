"""The stitch charts of a pattern: one per piece that can be drawn, as a drawing with its key and its words."""

from __future__ import annotations

from dataclasses import dataclass
from xml.sax.saxutils import escape

from gradegen.design.checked import Checked
from gradegen.design.pattern import Piece, Terms
from gradegen.write.chart.band import Band, repeat_band
from gradegen.write.chart.counts import SmallPiece, small_piece
from gradegen.write.chart.draw import NUMBER_SIZE, Drawing, Inks, Sheet
from gradegen.write.chart.flat import lay_flat
from gradegen.write.chart.glyphs import Pen
from gradegen.write.chart.key import KeyEntry, key_entries, key_fragments, own_letters
from gradegen.write.chart.layout import Layout
from gradegen.write.chart.oval import lay_oval
from gradegen.write.chart.round import lay_round
from gradegen.write.chart.rows import ChartRows, chart_rows
from gradegen.write.chart.svg import svg_page
from gradegen.write.chart.words import (
    Legend,
    drawn_small,
    how_to_read,
    legend_of,
    small_printing,
    spoken_rows,
    words,
)
from gradegen.write.view.rows import row_view
from gradegen.write.words.phrases import Phrase, Printing, plain

FEWEST_ROWS = 5  # of a chart that ends early: fewer show nothing that the words do not
MOST_THINGS, MOST_ROUND, MOST_ROWS = 110, 160, 40  # of a chart that can still be followed by eye
STANDALONE_FONT = "Inter, 'Liberation Sans', Arial, sans-serif"
_MARGIN, _TITLE = 6.0, 18.0
_PAGE = 420.0  # as wide as a page is for a chart in its own size


@dataclass(frozen=True, slots=True)
class Chart:
    """A chart of one piece.

    `rows` and `small`: what it is drawn from. `reads`: how to read it, in sentences. `legend`: letters beside rows and
    the rows they stand for. `shows`: what a screen reader says instead; `spoken`: of that, each row.
    """

    name: str
    title: str
    rows: ChartRows
    small: SmallPiece
    sheet: Sheet
    key: tuple[KeyEntry, ...]
    reads: tuple[Phrase, ...]
    legend: Legend
    shows: str
    prefix: str
    inks: Inks
    spoken: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Naming:
    """What an edition calls the piece, and the terms it names stitches in."""

    piece: str
    terms: Terms


@dataclass(frozen=True, slots=True)
class Undrawn:
    """A piece without a chart, and why."""

    name: str
    why: str


def piece_chart(
    checked: Checked,
    piece: Piece,
    printing: Printing,
    *,
    prefix: str = "",
    inks: Inks | None = None,
    naming: Naming | None = None,
) -> Chart | Undrawn:
    """The chart of a piece, drawn from its rows as worked in a piece as small as they allow.

    `checked` is the pattern as its designer wrote it; `naming` says in whose words the chart is explained.
    """
    naming = naming or Naming(piece.name.text, checked.pattern.terms)
    name = naming.piece
    small = small_piece(checked, piece, printing.sizes)
    if small is None or not small.placed.rows:
        return Undrawn(name, small.placed.lost if small else "its rows are not proved")
    rows = chart_rows(small.placed.rows, piece.rows)
    why = _too_large(rows) or _across(rows) or (small.placed.lost if len(rows.rows) < FEWEST_ROWS else "")
    if why:
        return Undrawn(name, why)
    return _drawn(naming, small, rows, printing, prefix, inks or Inks())


def _too_large(rows: ChartRows) -> str:
    """Why a chart could not be followed by eye; "" where it can."""
    most = max(len(row.things) for row in rows.rows)
    if most > (MOST_ROUND if rows.is_round else MOST_THINGS):
        return f"its smallest piece has {most} stitches in a row, more than a chart can show"
    if len(rows.rows) > MOST_ROWS:
        return f"its smallest piece has {len(rows.rows)} rows, more than a chart can show"
    return ""


def _across(rows: ChartRows) -> str:
    """Why the rows are not drawn in straight lines: a flat piece that goes on along the other side of its chain."""
    base = rows.rows[0]
    both = base.is_base and len({thing.again for thing in base.things}) == 2
    joined = len(rows.rows) > 1 and rows.rows[1].source is not None and rows.rows[1].source.shape == "half-twist band"
    return "its first row goes along both sides of the chain" if both and not joined and not rows.is_oval else ""


def _drawn(naming: Naming, small: SmallPiece, rows: ChartRows, printing: Printing, prefix: str, inks: Inks) -> Chart:
    terms, name = naming.terms, naming.piece
    layout, frame = lay_oval(rows) if rows.is_oval else lay_round(rows) if rows.is_round else lay_flat(rows)
    pen = Pen(prefix, own_letters(rows))
    legend = legend_of(rows, printing)
    sheet = Drawing(layout, frame, pen, inks, legend.marks, legend.again, _lettering(layout)).draw()
    repeat = _repeat_words(repeat_band(layout), rows, inks)
    reads = [how_to_read(rows, repeat), drawn_small(small, printing)]
    if small.placed.lost:
        reads.append(f"It ends where the rows can no longer be drawn: {small.placed.lost}.")
    spoken = tuple(spoken_rows(rows, legend.marks, terms))
    said = [f"Stitch chart of the {name}.", *(each for each in reads if each), *spoken]
    return Chart(
        name=name,
        title=f"Stitch chart: {name}",
        rows=rows,
        small=small,
        sheet=sheet,
        key=key_entries(rows, Pen(None, pen.letters), terms),
        reads=tuple(plain(text) for text in reads if text),
        legend=legend,
        shows=" ".join(said).replace("\N{NO-BREAK SPACE}", " "),
        prefix=prefix,
        inks=inks,
        spoken=spoken,
    )


def _lettering(layout: Layout) -> float:
    """How large numbers are drawn, so that they can be read where a wide chart is set smaller to fit a page."""
    if layout.chart.is_round:
        return NUMBER_SIZE
    places = [place for row in layout.along for place in row]
    return NUMBER_SIZE * max(1.0, (max(places) - min(places)) / _PAGE)


def _repeat_words(band: Band | None, rows: ChartRows, inks: Inks) -> str:
    """How one repeat is marked on the drawing, and whether there is more of it in a larger piece."""
    tinted = inks.shade != "none"
    if band is None or (rows.is_round and not tinted):
        return ""
    said = f"The {'tinted stretch' if tinted else 'stretch over the bracket'} is one repeat"
    return said + (": work it as often as your size needs." if band.goes_on else ".")


def page_svg(chart: Chart, font: str = "Body") -> str:
    """The drawing alone, for a page that has its key and its words beside it; its title says what it shows."""
    return svg_page(chart.sheet.fragments, chart.sheet.box(), chart.shows, "", prefix=chart.prefix, font=font)


def file_svg(chart: Chart, printing: Printing) -> str:
    """The chart as a file of its own: drawing, key and how to read it; the rows in words in its description."""
    left, top, width, height = chart.sheet.box()
    width = max(width, 320.0)
    under = top + height + _TITLE
    key, deep = key_fragments(
        chart.key, (left + _MARGIN, under - _TITLE / 2), width - 2 * _MARGIN, chart.inks.lettering
    )
    letters = "; ".join(f"{letter} {words(phrase)}" for letter, phrase in chart.legend.letters)
    lines = _wrapped([*(words(each) for each in chart.reads), *([letters + "."] if letters else [])], width)
    text = [
        f'<text class="words" x="{left + _MARGIN:.1f}" y="{under + deep + 8 + 10 * at:.1f}" font-size="7" '
        f'fill="{chart.inks.lettering}">{escape(line)}</text>'
        for at, line in enumerate(lines)
    ]
    head = (
        f'<text class="words" x="{left + _MARGIN:.1f}" y="{top - 4:.1f}" font-size="10" font-weight="600" '
        f'fill="{chart.inks.lettering}">{escape(chart.title)}</text>'
    )
    box = (left, top - _TITLE, width, height + 2 * _TITLE + deep + 10 * len(lines) + 8)
    described = f"{chart.shows} In words: {written_rows(chart, printing)}"
    parts = [head, *chart.sheet.fragments, *key, *text]
    return svg_page(parts, box, chart.title, described, prefix=chart.prefix, font=STANDALONE_FONT)


def written_rows(chart: Chart, printing: Printing) -> str:
    """The rows of the piece as it is drawn, as the pattern writes them."""
    small = small_printing(chart.small, printing)
    said = []
    for row in chart.rows.rows:
        if row.source is None:
            continue
        view = row_view(row.source.row, {}, small)
        said.append(f"{words(view.label)}: {words((*view.text, *view.count))}")
    return " ".join(dict.fromkeys(said))


def _wrapped(sentences: list[str], width: float) -> list[str]:
    from textwrap import wrap

    return [line for sentence in sentences for line in wrap(sentence, max(40, int((width - 2 * _MARGIN) / 3.7)))]
