"""The contents of a long pattern."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gradegen.design.pattern import Pattern
from gradegen.write.editions.edition import Edition
from gradegen.write.view.whole import Content
from gradegen.write.words.phrases import Phrase

LONG = 6_000  # signs of text from which a pattern fills about six pages


def contents(
    pattern: Pattern,
    edition: Edition,
    has_special: bool,
    notes: Sequence[Phrase],
    texts: Sequence[str],
    drawings: int = 0,
    measures: str = "Sizes and finished measures",
) -> tuple[Content, ...]:
    """The sections by name; () where a pattern is short enough to leaf through."""
    if edition.style != "large-print" and sum(map(len, texts)) < LONG:
        return ()
    sections = tuple(_sections(pattern, has_special, bool(notes), drawings))
    return tuple(replace(each, name=measures) if each.anchor == "measures" else each for each in sections)


def _sections(pattern: Pattern, has_special: bool, has_notes: bool, drawings: int) -> Iterator[Content]:
    if pattern.measures:
        yield Content("measures", "Sizes and finished measures")
    if drawings > 1:
        yield Content("schematics", "Schematics")
    if pattern.yarns or pattern.notions:
        yield Content("materials", "Materials")
    yield Content("terms", "Terms and abbreviations")
    if has_special:
        yield Content("special-stitches", "Special stitches")
    if has_notes:
        yield Content("notes", "Notes")
    yield from (Content(f"piece-{at}", piece.name.text) for at, piece in enumerate(pattern.pieces, 1))
    if pattern.finishing:
        yield Content("finishing", "Finishing")
    yield Content("colophon", "About this pattern")
