"""A pattern said in the other vocabulary, US for UK or UK for US, in a single pass over every word.

A row that was read whole is written anew from its tree; what the reader reads from that must be the same tree, else the
designer's own words are changed word by word and read again. A row that stands neither test keeps its wording.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from gradegen.design.checked import Checked
from gradegen.design.pattern import Pattern, Piece, Terms, Text
from gradegen.design.rows import Definition, Listed, Row, Unread
from gradegen.findings import Place, Written
from gradegen.read.notation.rows import read_row
from gradegen.read.notation.words.row_names import RowNames
from gradegen.trade.terms import text_in
from gradegen.write.notation.row import write_row


def in_terms(checked: Checked, terms: Terms) -> tuple[Checked, frozenset[Place]]:
    """The pattern in these terms, and the places of the rows that had to keep their wording."""
    pattern = checked.pattern
    if pattern.terms == terms:
        return checked, frozenset()
    names = _names(checked, terms)
    pieces: list[Piece] = []
    kept: set[Place] = set()
    for piece in pattern.pieces:
        rows = [(row, _row_in(row, pattern.terms, terms, names)) for row in piece.rows]
        kept.update(row.place for row, other in rows if other is None)
        pieces.append(_piece_in(piece, tuple(other or row for row, other in rows), pattern.terms, terms))
    return replace(checked, pattern=_pattern_in(pattern, tuple(pieces), terms)), frozenset(kept)


def _names(checked: Checked, terms: Terms) -> RowNames:
    pattern = checked.pattern
    counts = [name for count in pattern.counts for name in (count, f"{count} chain")]
    return RowNames(
        terms,
        tuple(size.name for size in checked.sizes),
        {definition.name: definition for definition in pattern.definitions},
        frozenset(counts),
        frozenset(pattern.measures),
    )


def _row_in(row: Row, written: Terms, terms: Terms, names: RowNames) -> Row | None:
    """The row in the other terms; None where it cannot be said to mean the same."""
    if any(isinstance(step, Unread) for step in row.steps):
        return None
    if text_in(row.text, written, terms) == row.text:
        return row  # no word of it differs
    for text in _ways(row, written, terms, names.sizes):
        place = row.place
        other, _ = read_row(Written.plain(text, place.file, place.line, place.column), names)
        if other == replace(row, sentences=other.sentences, defines=other.defines):
            return _with_sentences(replace(other, place=place), row, written, terms)
    return None


def _ways(row: Row, written: Terms, terms: Terms, sizes: Sequence[str]) -> Iterator[str]:
    if not row.sentences:  # a schedule's sentence has words of its own for each size
        yield _opened_as(row.text, write_row(row, sizes=sizes, terms=terms))
    yield text_in(" ".join(row.text.split()), written, terms)


_OPENING = re.compile(r"(?P<head>[^:]*:\s*[*(\[]*\s*)(?P<first>[A-Za-z])")


def _opened_as(written: str, other: str) -> str:
    """The other row with a capital at its start, behind a sign that opens a repeat too, where the designer has one."""
    own, here = _OPENING.match(written), _OPENING.match(other)
    if own is None or here is None or own["first"].islower():
        return other
    return here["head"] + here["first"].upper() + other[here.end() :]


def _with_sentences(other: Row, row: Row, written: Terms, terms: Terms) -> Row:
    """The row with what a shaping schedule says in each size, in the other terms."""
    sentences, at = [], 0
    for sentence in row.sentences:
        words = text_in(" ".join(row.text[sentence.start : sentence.end].split()), written, terms)
        start = other.text.find(words, at)
        if start >= 0:
            at = start + len(words)
            each = tuple(text_in(one, written, terms) for one in sentence.each)
            sentences.append(replace(sentence, start=start, end=at, each=each))
    return replace(other, sentences=tuple(sentences))


def _piece_in(piece: Piece, rows: tuple[Row, ...], written: Terms, terms: Terms) -> Piece:
    notes = tuple(_text_in(note, written, terms) for note in piece.notes)
    return replace(piece, name=_text_in(piece.name, written, terms), notes=notes, rows=rows)


def _pattern_in(pattern: Pattern, pieces: tuple[Piece, ...], terms: Terms) -> Pattern:
    written = pattern.terms

    def said(texts: Sequence[Text]) -> tuple[Text, ...]:
        return tuple(_text_in(text, written, terms) for text in texts)

    return replace(
        pattern,
        terms=terms,
        about=_text_in(pattern.about, written, terms) if pattern.about else None,
        gauges={
            name: replace(gauge, name=text_in(gauge.name, written, terms), note=_maybe(gauge.note, written, terms))
            for name, gauge in pattern.gauges.items()
        },
        definitions=tuple(_definition_in(definition, written, terms) for definition in pattern.definitions),
        notions=tuple(replace(each, what=_text_in(each.what, written, terms)) for each in pattern.notions),
        notes=said(pattern.notes),
        finishing=said(pattern.finishing),
        cautions=said(pattern.cautions),
        pieces=pieces,
        licence=_maybe(pattern.licence, written, terms),
        pictures=tuple(
            replace(each, alt=_text_in(each.alt, written, terms), caption=_maybe(each.caption, written, terms))
            for each in pattern.pictures
        ),
    )


def _maybe(text: Text | None, written: Terms, terms: Terms) -> Text | None:
    return _text_in(text, written, terms) if text is not None else None


def _definition_in(definition: Definition, written: Terms, terms: Terms) -> Definition:
    """An own stitch explained in the other terms; its name is the designer's and stays."""
    return replace(definition, text=text_in(definition.text, written, terms))


def _text_in(text: Text, written: Terms, terms: Terms) -> Text:
    """Prose in the other terms; its size lists stay as they are and move with it."""
    words: list[str] = []
    lists: list[Listed] = []
    at = length = 0
    for listed in sorted(text.lists, key=lambda each: each.start):
        between = text_in(text.text[at : listed.start], written, terms)
        numbers = text.text[listed.start : listed.end]
        start = length + len(between)
        lists.append(replace(listed, start=start, end=start + len(numbers)))
        words += [between, numbers]
        at, length = listed.end, start + len(numbers)
    words.append(text_in(text.text[at:], written, terms))
    return replace(text, text="".join(words), lists=tuple(lists))
