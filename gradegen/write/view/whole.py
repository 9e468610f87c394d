"""What a page shows, as plain strings: after this module nothing is worked out any more, only laid out."""

from __future__ import annotations

from dataclasses import dataclass

from gradegen.write.words.phrases import Phrase


@dataclass(frozen=True, slots=True)
class Entry:
    """A name on the left, or above where it is long, and what is said about it, one sentence a line."""

    name: str
    lines: tuple[Phrase, ...]
    name_stands: str = "beside"  # or "above"


@dataclass(frozen=True, slots=True)
class MeasureRow:
    """One line of a table of measures: its letter on the drawing ("" for none), its name, a cell per column.

    `kind`: "body" and "ease" stand above and below the finished measure ("") that they go with.
    """

    letter: str
    name: str
    cells: tuple[str, ...]
    kind: str = ""


@dataclass(frozen=True, slots=True)
class MeasureTable:
    """A table of measures; `caption` says in which unit, `corner` what the first column holds."""

    caption: str
    corner: str
    columns: tuple[str, ...]
    rows: tuple[MeasureRow, ...]
    density: str  # "open", "close" or "tight", by the number of columns
    marks: tuple[str, ...] = ()  # of the sizes, one per column


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line or outline of a drawing; `path` in SVG's own notation. `of`: the size, measure or scale it draws."""

    path: str
    colour: str
    width: str
    fill: str = "none"
    dashes: str = "none"
    of: str = ""


@dataclass(frozen=True, slots=True)
class Lettering:
    """One word or letter on a drawing. `of`: the letter of the measure that it says."""

    text: str
    x: str
    y: str
    size: str
    anchor: str = "middle"
    weight: str = "400"
    turn: str = ""
    of: str = ""


@dataclass(frozen=True, slots=True)
class Drawing:
    """A schematic: strokes and lettering on a sheet (its box in SVG's notation), what it shows in words, a caption.

    `tight`: the part of the sheet that is drawn on; `wide`: how wide that is, in points.
    """

    box: str
    shows: str
    caption: str
    strokes: tuple[Stroke, ...]
    letterings: tuple[Lettering, ...]
    tight: str = ""
    wide: str = ""


@dataclass(frozen=True, slots=True)
class PictureView:
    """A photo or drawing: its address ("": only its words stand here), what it shows, its caption, its width."""

    source: str
    alt: str
    caption: Phrase
    width: str


@dataclass(frozen=True, slots=True)
class Face:
    """One font file of a typeface, as style sheets name it."""

    family: str
    address: str
    weight: str
    style: str


@dataclass(frozen=True, slots=True)
class LookView:
    """What a designer's look changes: colours ("" where the house's stay) and families of type, with their fonts."""

    words: str
    lines: str
    tint: str
    rule: str
    text: str
    headings: str
    title_weight: str
    faces: tuple[Face, ...]


@dataclass(frozen=True, slots=True)
class Abbreviation:
    """A short form used on these pages and what it stands for."""

    short: str
    means: str


@dataclass(frozen=True, slots=True)
class RowView:
    """One row: its label beside the text, or above it where it is long; `made` holds the worked count per size.

    `count`: the count that closes it, in one piece ("whole") or on a line of its own ("below"). `only`: the sizes that
    work it, in the designer's words; "" where all do, and on one size's pages.
    """

    label: Phrase
    only: str
    text: Phrase
    count: Phrase
    label_stands: str  # "beside" or "above"
    count_stands: str
    made: str
    ticks: tuple[str, ...] = ()  # boxes to tick off on one size's pages, by their looks: one for every row or round
    aside: str = ""  # what the reader must know of this row: that it keeps the designer's own terms
    pictures: tuple[PictureView, ...] = ()
    tables: tuple[MeasureTable, ...] = ()  # shapings worked at the same time, row by row


@dataclass(frozen=True, slots=True)
class KeyView:
    """One mark of a chart's key: a little drawing, and what it stands for."""

    svg: str
    words: str


@dataclass(frozen=True, slots=True)
class ChartView:
    """A stitch chart: the drawing ("" where an edition has none), its key, how to read it, letters beside its rows.

    `spoken`: what each row is drawn with, in words.
    """

    anchor: str
    title: str
    svg: str
    key: tuple[KeyView, ...]
    reads: tuple[Phrase, ...]
    letters: tuple[tuple[str, Phrase], ...]
    spoken: tuple[Phrase, ...]


@dataclass(frozen=True, slots=True)
class PieceView:
    """One piece of the work with its rows, and its stitch chart where it can be drawn."""

    anchor: str
    name: str
    how: str
    notes: tuple[Phrase, ...]
    rows: tuple[RowView, ...]
    chart: ChartView | None = None
    pictures: tuple[PictureView, ...] = ()


@dataclass(frozen=True, slots=True)
class ErrataView:
    """Where corrections stand: the address, and a code for a telephone that leads there."""

    address: str
    svg: str


@dataclass(frozen=True, slots=True)
class FindingView:
    """One finding as the appendix of a draft shows it."""

    severity: str
    rule: str
    where: str
    message: str
    details: tuple[Entry, ...]


@dataclass(frozen=True, slots=True)
class Draft:
    """The mark on every page of a draft, and what is still open."""

    mark: str
    says: str
    findings: tuple[FindingView, ...]


@dataclass(frozen=True, slots=True)
class Content:
    """A line of the contents: where it leads, and what stands there."""

    anchor: str
    name: str


@dataclass(frozen=True, slots=True)
class Document:
    """A whole document."""

    language: str
    paper: str
    file_title: str
    title: str
    overline: str
    size_line: str
    running: str
    by: str
    author: str
    about: Phrase
    facts: tuple[Entry, ...]
    drawings: tuple[Drawing, ...]
    measures_heading: str
    sizes: tuple[Phrase, ...]
    measures: tuple[MeasureTable, ...]
    materials: tuple[Entry, ...]
    gauge: tuple[Entry, ...]
    materials_stand: str  # "beside-each-other" or "stacked", and so for the last two sections
    terms: tuple[Phrase, ...]
    abbreviations: tuple[Abbreviation, ...]
    special_stitches: tuple[Entry, ...]
    notes: tuple[Phrase, ...]
    size_key: str
    pieces: tuple[PieceView, ...]
    finishing: tuple[Phrase, ...]
    cautions: tuple[Phrase, ...]
    cautions_end: Phrase
    colophon: tuple[Entry, ...]
    close_stands: str
    foot: str
    draft: Draft | None
    style: str = "print"
    gauge_heading: str = "Gauge"
    metadata: tuple[tuple[str, str], ...] = ()
    errata: ErrataView | None = None
    size_names: tuple[str, ...] = ()
    contents: tuple[Content, ...] = ()
    logo: PictureView | None = None
    pictures: tuple[PictureView, ...] = ()
    notes_pictures: tuple[PictureView, ...] = ()
    finishing_pictures: tuple[PictureView, ...] = ()
    look: LookView | None = None
