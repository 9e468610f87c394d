"""A checked pattern turned into the plain strings of one document."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from gradegen.design.checked import Checked
from gradegen.design.pattern import Pattern
from gradegen.trade.terms import word_in
from gradegen.write.chart.view import with_charts
from gradegen.write.drawing.schematic import find_schematics, piece_drawings
from gradegen.write.drawing.styles import drawings_for
from gradegen.write.editions.edition import Edition
from gradegen.write.editions.editioned import Editioned, editioned
from gradegen.write.notation.style import listing
from gradegen.write.page.contents import contents
from gradegen.write.page.file_facts import errata_view, file_metadata
from gradegen.write.page.look import with_look
from gradegen.write.pictures.ready import ready_pictures
from gradegen.write.pictures.view import captions, with_pictures
from gradegen.write.view.cautions import caution_sentences, cautions_close
from gradegen.write.view.findings import draft_view
from gradegen.write.view.materials import gauge_entries, hook_sizes, material_entries
from gradegen.write.view.measures import measure_tables, size_key, size_sentences
from gradegen.write.view.rows import piece_views
from gradegen.write.view.whole import Document, Entry, PieceView
from gradegen.write.view.words import special_stitches, terms_sentences, used_abbreviations
from gradegen.write.words.phrases import Part, Phrase, Printing, phrase, plain

_LONGEST_HALF = 1800  # signs in half the width of the text: about half a page
_MAIL = re.compile(r"[\w.+-]+@[\w-]+(?:\.[\w-]+)+")
_WEB = re.compile(r"https?://[^\s<>\"]+")
_PAPERS = {"a4": "A4", "letter": "letter"}


def document_view(checked: Checked, edition: Edition) -> Document:
    """Everything the templates lay out; the edition's size must be one of the pattern's."""
    said = editioned(checked, edition)
    checked, printing = said.checked, said.printing
    pattern = checked.pattern
    pieces = with_charts(piece_views(checked, printing, said.kept), said, edition.style)
    notes = tuple(phrase(note, printing) for note in pattern.notes)
    finishing = tuple(phrase(step, printing) for step in pattern.finishing)
    gauge = gauge_entries(checked, printing)
    special = special_stitches(pattern)
    texts = list(_texts(pieces, notes, finishing, captions(pattern, printing), gauge, special))
    used = used_abbreviations(texts, pattern)
    schematics = find_schematics(checked, printing)
    drawings = piece_drawings(schematics, printing)
    materials = material_entries(checked, printing)
    cautions = caution_sentences(pattern, printing, [*texts, *_materials(pattern)])
    colophon = _colophon(checked, printing)
    heading = f"{'Size' if printing.is_one_size else 'Sizes'} and finished measures"
    document = Document(
        language="en-GB" if pattern.terms == "UK" else "en-US",
        paper=_PAPERS[edition.paper],
        file_title=_file_title(pattern, printing),
        title=pattern.title.text,
        overline="Crochet pattern",
        size_line=_size_line(printing),
        running=f"Size {printing.sizes[0].name}" if printing.is_one_size else f"Sizes {size_key(printing)}",
        by=f"Designed by {pattern.designer.name.text}" if pattern.designer else "",
        author=pattern.designer.name.text if pattern.designer else "",
        about=phrase(pattern.about, printing) if pattern.about else (),
        facts=_facts(pattern, printing),
        drawings=drawings_for(edition.style, drawings),
        measures_heading=heading,
        sizes=size_sentences(checked, printing),
        measures=measure_tables(checked, printing, schematics),
        materials=materials,
        gauge=gauge,
        materials_stand=_stand(_length(materials), _length(gauge)),
        style=edition.style,
        contents=contents(pattern, edition, bool(special), notes, texts, len(drawings), heading),
        size_names=tuple(size.name for size in printing.sizes),
        gauge_heading=word_in("Gauge", pattern.terms),
        terms=(*terms_sentences(pattern, used), *_kept(pieces, said)),
        abbreviations=used,
        special_stitches=special,
        notes=notes,
        size_key="" if printing.is_one_size else size_key(printing),
        pieces=pieces,
        finishing=finishing,
        cautions=cautions,
        cautions_end=cautions_close(),
        colophon=colophon,
        close_stands=_stand(sum(len(_words(each)) + 40 for each in cautions), _length(colophon)),
        foot=_foot(pattern),
        draft=draft_view(checked, printing, edition),
        metadata=file_metadata(pattern, _size_line(printing)),
        errata=errata_view(pattern),
    )
    pictured = with_pictures(document, pattern, printing, ready_pictures(pattern), edition.style)
    return with_look(pictured, pattern.look, edition.style)


def _kept(pieces: Iterable[PieceView], said: Editioned) -> tuple[Phrase, ...]:
    """A warning where rows had to keep the designer's own terms."""
    many = sum(1 for piece in pieces for row in piece.rows if row.aside)
    if not many:
        return ()
    rows = "One row keeps its" if many == 1 else f"{many} rows keep their"
    terms = said.written.pattern.terms
    return (plain(f"{rows} {terms} terms, because not every word could be read; that is said beside it."),)


def _file_title(pattern: Pattern, printing: Printing) -> str:
    return f"{pattern.title.text}, size {printing.sizes[0].name}" if printing.is_one_size else pattern.title.text


def _size_line(printing: Printing) -> str:
    names = [size.name for size in printing.sizes]
    if printing.is_some_sizes:
        return f"Sizes {listing(names, ' and ')}"
    return f"Size {names[0]}" if printing.is_one_size else f"{len(names)} sizes, {names[0]} to {names[-1]}"


def _facts(pattern: Pattern, printing: Printing) -> tuple[Entry, ...]:
    weights = dict.fromkeys(yarn.weight.text.capitalize() for yarn in pattern.yarns if yarn.weight)
    said = [
        ("Size" if printing.is_one_size else "Sizes", _size_names(printing)),
        ("Level", pattern.level.text.capitalize() if pattern.level else ""),
        ("Yarn", f"{', '.join(weights)} weight" if weights else ""),
        ("Hook", ", ".join(hook_sizes(pattern.gauges.values()))),
        ("Terms", pattern.terms),
    ]
    return tuple(Entry(name, (plain(text),)) for name, text in said if text)


def _size_names(printing: Printing) -> str:
    names = [size.name for size in printing.sizes]
    if printing.is_some_sizes:
        return ", ".join(names)
    return names[0] if len(names) == 1 else f"{names[0]} to {names[-1]}"


def _stand(left: int, right: int) -> str:
    """Two sections beside each other while both are short: side by side they cannot break over a page."""
    return "beside-each-other" if left and right and max(left, right) <= _LONGEST_HALF else "stacked"


def _length(entries: Iterable[Entry]) -> int:
    """About how many signs of room some entries take in half the width of the text."""
    return sum(40 + len(_words(line)) for entry in entries for line in entry.lines)


def _texts(pieces: Iterable[PieceView], *groups: Iterable[Phrase] | Iterable[Entry]) -> Iterator[str]:
    """Every sentence of the document in which an abbreviation or a word of caution can stand."""
    for piece in pieces:
        yield from (_words(note) for note in piece.notes)
        for row in piece.rows:
            yield _words(row.label)
            yield _words((*row.text, *row.count))
    for group in groups:
        for each in group:
            yield from (_words(line) for line in each.lines) if isinstance(each, Entry) else (_words(each),)


def _words(sentence: Phrase) -> str:
    return "".join(part.text for part in sentence).replace("\N{NO-BREAK SPACE}", " ")


def _materials(pattern: Pattern) -> Iterator[str]:
    yield from (notion.what.text for notion in pattern.notions)
    for yarn in pattern.yarns:
        yield from (text.text for text in (yarn.fibre, yarn.weight) if text)


def _colophon(checked: Checked, printing: Printing) -> tuple[Entry, ...]:
    pattern, designer = checked.pattern, checked.pattern.designer
    said = [
        ("Version", plain(pattern.version.text) if pattern.version else ()),
        ("Checked", plain(_proof(checked, printing))),
        ("Help", _help(designer.help.text) if designer and designer.help else ()),
        ("Copyright", plain(_copyright(pattern))),
        ("Licence", phrase(pattern.licence, printing) if pattern.licence else ()),
    ]
    return tuple(Entry(name, (line,)) for name, line in said if _words(line))


def _help(address: str) -> Phrase:
    """Where to ask, as a link where it is a mail or web address."""
    target = f"mailto:{address}" if _MAIL.fullmatch(address) else address if _WEB.fullmatch(address) else ""
    return (*plain("Questions and corrections: "), Part(address, link=target))


def _copyright(pattern: Pattern) -> str:
    if pattern.designer is None:
        return ""
    year = f"{pattern.designer.year} " if pattern.designer.year else ""
    return f"© {year}{pattern.designer.name.text}"


def _proof(checked: Checked, printing: Printing) -> str:
    """How many rows were worked and found right before printing, in the printed sizes."""
    names = [size.name for size in printing.sizes]
    statuses = [row.status for name in names for row in checked.worked.get(name, ()) if row.applies]
    if not statuses:
        return ""
    proved, everywhere = statuses.count("proved"), "" if printing.is_one_size else " in every size"
    if proved == len(statuses):
        return f"Every row was worked{everywhere} before printing, and its count proved."
    return f"Rows were worked{everywhere} before printing: {proved} of {len(statuses)} counts proved."


def _foot(pattern: Pattern) -> str:
    said = [_copyright(pattern), f"Version {pattern.version.text}" if pattern.version else ""]
    return " · ".join(part for part in said if part)
