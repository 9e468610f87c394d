"""A document as plain text: the same words and numbers as its pages, for mail, for archives and for any reader."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from textwrap import wrap

from gradegen.write.view.whole import Document, Entry, MeasureTable, PictureView, PieceView, RowView
from gradegen.write.words.marks import MARKS
from gradegen.write.words.phrases import Phrase

WIDTH = 88
_NBSP = "\N{NO-BREAK SPACE}"


def document_text(document: Document) -> str:
    """The whole document; lines end before 88 signs, what belongs to a line above is set in."""
    parts = [
        _head(document),
        *_pictures(document.pictures),
        *_section("Materials", _entries(document.materials)),
        *_section(document.gauge_heading, _entries(document.gauge)),
        *_section(document.measures_heading, _measures(document)),
        *_section("Terms and abbreviations", _terms(document)),
        *_section("Special stitches", _entries(document.special_stitches)),
        *_section("Notes", _items(document.notes)),
        *_pictures(document.notes_pictures),
        *(part for piece in document.pieces for part in _piece(piece, document)),
        *_section("Finishing", _steps(document.finishing)),
        *_pictures(document.finishing_pictures),
        *_section("Please take care", _items((*document.cautions, document.cautions_end))),
        *_section("About this pattern", _entries(document.colophon)),
    ]
    return "\n\n".join(part for part in parts if part).replace(_NBSP, " ") + "\n"


def _pictures(pictures: Iterable[PictureView]) -> Iterator[str]:
    """What each picture shows, and its caption."""
    for each in pictures:
        yield _set(f"[Picture: {each.alt}] {words(each.caption)}".rstrip(), 2)


def words(sentence: Phrase) -> str:
    """A sentence without its looks, and without the marks that stand beside sizes on a page."""
    return unmarked("".join(part.text for part in sentence))


def unmarked(text: str) -> str:
    """The text without the marks of sizes."""
    return re.sub(f"[{MARKS}][ {_NBSP}]?", "", text)


def _head(document: Document) -> str:
    lines = [document.title, "=" * len(document.title), document.size_line, document.by, words(document.about)]
    if document.draft:
        lines.append(f"{document.draft.mark}: {document.draft.says}")
    return "\n".join(_set(line) for line in lines if line)


def _section(heading: str, lines: Iterable[str]) -> Iterator[str]:
    said = [line for line in lines if line]
    if said:
        yield "\n".join([heading, "-" * len(heading), *said])


def _set(text: str, hang: int = 0, first: str = "") -> str:
    """A paragraph broken into lines; those after the first are set in."""
    lines = wrap(text.replace(_NBSP, "\x00"), WIDTH, initial_indent=first, subsequent_indent=" " * hang,
                 break_long_words=False, break_on_hyphens=False)  # fmt: skip
    return "\n".join(lines).replace("\x00", " ")


def _entries(entries: Iterable[Entry]) -> Iterator[str]:
    for entry in entries:
        for at, line in enumerate(entry.lines):
            name = f"{entry.name}: " if at == 0 else ""
            yield _set(f"{name}{words(line)}", 2, "" if at == 0 else "  ")


def _items(sentences: Iterable[Phrase]) -> Iterator[str]:
    yield from (_set(f"- {words(sentence)}", 2) for sentence in sentences if sentence)


def _steps(sentences: Iterable[Phrase]) -> Iterator[str]:
    yield from (_set(f"{at}. {words(sentence)}", 3) for at, sentence in enumerate(sentences, 1))


def _terms(document: Document) -> Iterator[str]:
    yield from (_set(words(line)) for line in document.terms)
    yield from (_set(f"{form.short}: {form.means}", 2) for form in document.abbreviations)


def _measures(document: Document) -> Iterator[str]:
    yield from (_set(words(line)) for line in document.sizes)
    for table in document.measures:
        yield ""
        yield from _table(table)


def _table(table: MeasureTable) -> Iterator[str]:
    """The table in columns, as wide as what stands in them; of many sizes as many as fit, the rest below."""
    names = [table.corner, *(row.name for row in table.rows)]
    first = max(len(name) for name in names) + 2
    wide = max(len(cell) for row in table.rows for cell in (*row.cells, *table.columns)) + 2 if table.rows else 2
    fit = max(1, (WIDTH - first) // wide)
    if table.caption:
        yield table.caption
    for start in range(0, len(table.columns), fit):
        yield _table_line(table.corner, table.columns[start : start + fit], first, wide)
        for row in table.rows:
            yield _table_line(row.name, row.cells[start : start + fit], first, wide)


def _table_line(name: str, cells: Sequence[str], first: int, wide: int) -> str:
    return (name.ljust(first) + "".join(cell.rjust(wide) for cell in cells)).rstrip()


def _piece(piece: PieceView, document: Document) -> Iterator[str]:
    lines = [piece.how, f"Sizes: {unmarked(document.size_key)}" if document.size_key else ""]
    lines += [*_items(piece.notes), *_pictures(piece.pictures)]
    for row in piece.rows:
        lines += [_row(row), *(line for table in row.tables for line in _table(table)), *_pictures(row.pictures)]
    yield from _section(piece.name, lines)
    if piece.chart is not None:
        spoken = [_set(words(line)) for line in piece.chart.reads[1:]]
        spoken += [_set(f"- {words(row)}", 2) for row in piece.chart.spoken]
        yield from _section(f"{piece.chart.title}, in words", spoken)


def _row(row: RowView) -> str:
    label = words(row.label)
    said = [f"{label}:" if label else "", f"({row.only})" if row.only else "", words(row.text), words(row.count),
            row.aside]  # fmt: skip
    return _set(" ".join(part.strip() for part in said if part.strip()), 4)
