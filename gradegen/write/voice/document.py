"""The spoken edition: the whole document as headings, sentences and lists that a voice reads well, in text and HTML."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from gradegen.trade.stitches import Terms
from gradegen.write.view.merged_shaping import ONE_SIZE
from gradegen.write.view.whole import Document, Entry, MeasureTable, PictureView, PieceView, RowView
from gradegen.write.voice.aloud import aloud, lists_aloud
from gradegen.write.voice.lists import NOT_WORKED, each_size, in_unit
from gradegen.write.words.phrases import Phrase

Kind = Literal["title", "heading", "subheading", "sentence", "item"]


@dataclass(frozen=True, slots=True)
class Said:
    """One heading, sentence or item of a list; `name` is what stands before its colon."""

    kind: Kind
    text: str
    name: str = ""


@dataclass(frozen=True, slots=True)
class Spoken:
    """A document for a voice."""

    language: str
    title: str
    author: str
    said: tuple[Said, ...]


def spoken(document: Document) -> Spoken:
    """The document written out; its view must have been made for speaking."""
    terms: Terms = "UK" if document.language.endswith("GB") else "US"
    return Spoken(document.language, document.file_title, document.author, tuple(_everything(document, terms)))


def spoken_text(document: Spoken) -> str:
    """As plain text: headings stand apart, every sentence or item on a line of its own."""
    lines: list[str] = []
    for each in document.said:
        line = f"{each.name}: {each.text}" if each.name else each.text
        if each.kind in ("title", "heading", "subheading"):
            lines += ["", line, ""] if lines else [line, ""]
        else:
            lines.append(line)
    return "\n".join(lines) + "\n"


def _everything(document: Document, terms: Terms) -> Iterator[Said]:
    yield Said("title", document.title)
    for words in (document.size_line, document.by, _aloud(document.about, terms)):
        if words:
            yield Said("sentence", _stop(words))
    if document.logo is not None:
        yield Said("item", _stop(document.logo.alt), "Logo")
    yield from _pictures(document.pictures, terms)
    for fact in document.facts:
        yield _entry(fact, terms)
    yield from (Said("sentence", aloud(each.shows, terms)) for each in document.drawings)
    if document.measures or document.sizes:
        yield Said("heading", document.measures_heading)
        yield from (Said("sentence", _aloud(line, terms)) for line in document.sizes)
        for table in document.measures:
            yield from _table(table)
    yield from _section("Materials", document.materials, terms, document.size_names)
    yield from _section(document.gauge_heading, document.gauge, terms)
    yield Said("heading", "Terms")
    yield Said("sentence", f"Written in {terms} crochet terms, with every name in full.")
    yield from _section("Special stitches", document.special_stitches, terms, is_row=True)
    yield from _list("Notes", document.notes, terms)
    yield from _pictures(document.notes_pictures, terms)
    for piece in document.pieces:
        yield from _piece(piece, terms)
    yield from _list("Finishing", document.finishing, terms)
    yield from _pictures(document.finishing_pictures, terms)
    yield from _list("Please take care", (*document.cautions, document.cautions_end), terms)
    yield from _section("About this pattern", document.colophon, terms)


def _pictures(pictures: tuple[PictureView, ...], terms: Terms) -> Iterator[Said]:
    """What each picture shows and its caption, between the other items of a list."""
    for each in pictures:
        caption = _aloud(each.caption, terms)
        said = [_stop(aloud(each.alt, terms)), _stop(caption)]
        yield Said("item", " ".join(part for part in said if part), "Picture")


def _section(
    name: str, entries: tuple[Entry, ...], terms: Terms, names: Sequence[str] = (), *, is_row: bool = False
) -> Iterator[Said]:
    if entries:
        yield Said("heading", name)
        yield from (_entry(entry, terms, names, is_row=is_row) for entry in entries)


def _entry(entry: Entry, terms: Terms, names: Sequence[str] = (), *, is_row: bool = False) -> Said:
    lines = [_stop(aloud(lists_aloud(_words(line), names), terms, is_row=is_row)) for line in entry.lines]
    return Said("item", " ".join(lines), aloud(entry.name, terms))


def _list(name: str, sentences: tuple[Phrase, ...], terms: Terms) -> Iterator[Said]:
    if sentences:
        yield Said("heading", name)
        yield from (Said("item", _aloud(sentence, terms)) for sentence in sentences)


def _table(table: MeasureTable) -> Iterator[Said]:
    """Every measure on a line: its sizes with their values, or both its units for one size."""
    if table.caption:
        yield Said("subheading", f"Measures in {table.caption.lower()}")
    for row in table.rows:
        if table.caption:
            yield Said("item", _stop(each_size(table.columns, row.cells)), row.name)
        else:
            units = [{"Inches": "in", "Centimetres": "cm"}[column] for column in table.columns]
            known = [in_unit(cell, unit) for cell, unit in zip(row.cells, units, strict=True) if cell != "–"]
            yield Said("item", _stop(", or ".join(known) or NOT_WORKED), row.name)


def _piece(piece: PieceView, terms: Terms) -> Iterator[Said]:
    yield Said("heading", aloud(piece.name, terms))
    yield Said("sentence", piece.how)
    yield from (Said("sentence", _aloud(note, terms)) for note in piece.notes)
    yield from _pictures(piece.pictures, terms)
    for row in piece.rows:
        yield _row(row, terms)
        for table in row.tables:
            yield from _merged(table, terms)
        yield from _pictures(row.pictures, terms)
    if piece.chart is not None:
        yield Said("subheading", aloud(piece.chart.title, terms))
        yield from (Said("sentence", _aloud(line, terms)) for line in piece.chart.reads)


def _merged(table: MeasureTable, terms: Terms) -> Iterator[Said]:
    """Shapings at the same time, a row an item: each size with its stitches and what happens, or the one size's own."""
    yield Said("sentence", _stop(aloud(table.caption, terms)))
    for row in table.rows:
        alone = f"{row.cells[1]}, {row.cells[0]} stitches after it"
        cells = alone if table.columns == ONE_SIZE else each_size(table.columns, row.cells)
        yield Said("item", _stop(aloud(cells, terms)), f"{table.corner} {row.name}")


def _row(row: RowView, terms: Terms) -> Said:
    text = _stop(_aloud(row.text, terms, is_row=True))
    if row.only:
        text = f"For {aloud(row.only, terms)}: {text}"
    count = aloud(_words(row.count).strip("()[]—–- ."), terms)
    said = [text, f"Count: {_stop(count)}" if count else "", row.aside]
    label = _aloud(row.label, terms, is_row=True)
    return Said("item", " ".join(part for part in said if part), _capital(label))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _aloud(sentence: Phrase, terms: Terms, *, is_row: bool = False) -> str:
    return aloud(_words(sentence), terms, is_row=is_row)


def _words(sentence: Phrase) -> str:
    return "".join(part.text for part in sentence)


def _stop(text: str) -> str:
    return text if text.endswith((".", "!", "?", ":")) or not text else text + "."
