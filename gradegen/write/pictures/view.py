"""Pictures put where they stand in a document; in an edition without pictures their words stand there instead."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.pattern import Pattern
from gradegen.design.pictures import Picture
from gradegen.write.editions.edition import Style
from gradegen.write.pictures.ready import LOGO, Ready, page_name
from gradegen.write.pictures.sizes import printed_size
from gradegen.write.view.rows import rows_for
from gradegen.write.view.whole import Document, PictureView
from gradegen.write.words.phrases import Phrase, Printing, phrase

SHOWING: tuple[Style, ...] = ("print", "large-print")  # the editions with pictures


def captions(pattern: Pattern, printing: Printing) -> tuple[Phrase, ...]:
    """The words below the pictures, in which abbreviations can stand."""
    return tuple(phrase(each.caption, printing) for each in pattern.pictures if each.caption is not None)


def with_pictures(document: Document, pattern: Pattern, printing: Printing, ready: Ready, style: Style) -> Document:
    """The document with its pictures and its logo."""
    views = {at: _view(at, each, printing, ready, style) for at, each in enumerate(pattern.pictures)}

    def standing(stands: str, piece: int = -1, line: int = 0) -> tuple[PictureView, ...]:
        there = (stands, piece, line)
        found = enumerate(pattern.pictures)
        return tuple(views[at] for at, each in found if (each.stands, each.piece, each.line) == there)

    pieces = []
    for at, (view, piece) in enumerate(zip(document.pieces, pattern.pieces, strict=True)):
        lines = [row.place.line for row in rows_for(piece, printing.sizes)]
        rows = tuple(
            replace(row, pictures=standing("row", at, line)) for row, line in zip(view.rows, lines, strict=True)
        )
        pieces.append(replace(view, pictures=standing("piece", at), rows=rows))
    return replace(
        document,
        logo=_logo(pattern, ready, style),
        pictures=standing("cover"),
        notes_pictures=standing("notes"),
        pieces=tuple(pieces),
        finishing_pictures=standing("finishing"),
    )


def _view(at: int, picture: Picture, printing: Printing, ready: Ready, style: Style) -> PictureView:
    alt = "".join(part.text for part in phrase(picture.alt, printing))
    caption = phrase(picture.caption, printing) if picture.caption is not None else ()
    name = page_name(at)
    if picture.file is None or name not in ready.files or style not in SHOWING:
        return PictureView("", alt, caption, "")
    return PictureView(name, alt, caption, printed_size(picture.file, picture.size).width)


def _logo(pattern: Pattern, ready: Ready, style: Style) -> PictureView | None:
    """The logo; its words alone where a voice reads or ink is spared."""
    logo = pattern.look.logo if pattern.look is not None else None
    if logo is None:
        return None
    if logo.file is None or LOGO not in ready.files or style not in SHOWING:
        return PictureView("", logo.alt.text, (), "")
    return PictureView(LOGO, logo.alt.text, (), printed_size(logo.file, "logo").width)
