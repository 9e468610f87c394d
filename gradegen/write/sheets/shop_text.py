"""The text for a shop's page: what a buyer asks for before buying, from the values that are printed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from gradegen.trade.levels import find_level
from gradegen.trade.stitches import Terms, find_stitch
from gradegen.write.editions.plain_document import words
from gradegen.write.view.whole import Document, Entry, MeasureTable

_NBSP = "\N{NO-BREAK SPACE}"


def shop_text(document: Document) -> str:
    """Plain text in short paragraphs, for all sizes."""
    parts = [
        document.title,
        words(document.about),
        "\n".join(_sizes(document)),
        "\n".join(_block("Yarn, hook and what else you need", document.materials)),
        "\n".join(_block("Gauge", document.gauge)),
        "\n".join(_skills(document)),
        "\n".join(_inside(document)),
        "\n".join(_block("", [entry for entry in document.colophon if entry.name in ("Licence", "Help")])),
    ]
    return "\n\n".join(part for part in parts if part).replace(_NBSP, " ") + "\n"


def _block(heading: str, entries: Iterable[Entry]) -> Iterator[str]:
    said = [f"{entry.name}: {_joined([words(line) for line in entry.lines])}" for entry in entries]
    if said:
        yield from ([heading] if heading else [])
        yield from said


def _joined(lines: list[str]) -> str:
    """Lines as one: sentences follow each other, short lines get a stroke between."""
    text = lines[0] if lines else ""
    for line in lines[1:]:
        text += f" {line}" if text.endswith(".") else f"; {line[:1].lower()}{line[1:]}"
    return text


def _sizes(document: Document) -> Iterator[str]:
    """Each size on a line: what it fits and what it measures, in both units."""
    if not document.measures:
        return
    yield document.measures_heading
    first = document.measures[0]
    if not first.caption:
        yield from (f"{row.name}: {_both(row.cells, first.columns)}" for row in [first.rows[at] for at in _told(first)])
        return
    for at, size in enumerate(first.columns):
        said = [_measure(document.measures, row, at) for row in _told(first)]
        yield f"{size}: {'; '.join(each for each in said if each)}"


def _told(table: MeasureTable) -> list[int]:
    """The rows a shop shows: what is finished, with the body and the ease that sizes are chosen by alone."""
    kinds = [row.kind for row in table.rows]
    return [at for at, kind in enumerate(kinds) if not kind or at == kinds.index(kind)]


def _measure(tables: tuple[MeasureTable, ...], row: int, at: int) -> str:
    """`to fit bust 32–34 in (81–86 cm)`; "" where nothing is known."""
    cells = [table.rows[row].cells[at] for table in tables]
    if all(cell in ("–", "") for cell in cells):
        return ""
    name = tables[0].rows[row].name
    return f"{name[:1].lower()}{name[1:]} {_both(cells, [table.caption for table in tables])}"


_SHORT = {"Inches": "in", "Centimetres": "cm"}


def _both(cells: Iterable[str], units: Iterable[str]) -> str:
    first, *others = [f"{cell} {_SHORT.get(unit, unit)}" for cell, unit in zip(cells, units, strict=True)]
    return first + "".join(f" ({other})" for other in others)


def _skills(document: Document) -> Iterator[str]:
    """The level with what it covers, and the stitches that are used."""
    yield "What you need to know"
    level = next((words(fact.lines[0]) for fact in document.facts if fact.name == "Level"), "")
    known = find_level(level) if level else None
    if level:
        yield f"Level: {level}" + (f" ({known.covers})" if known else "")
    terms: Terms = "UK" if document.language.endswith("GB") else "US"
    forms = [form for form in document.abbreviations if not form.short.endswith("-")]
    known_stitches = [form.means for form in forms if find_stitch(form.short, terms) is not None]
    if known_stitches:
        yield f"Stitches: {', '.join(known_stitches)}."
    special = [entry.name for entry in document.special_stitches]
    if special:
        yield f"Explained in the pattern: {', '.join(special)}."


def _inside(document: Document) -> Iterator[str]:
    """The terms it is written in, and what comes with it."""
    terms = next((words(fact.lines[0]) for fact in document.facts if fact.name == "Terms"), "")
    yield "The pattern"
    if terms:
        yield f"Written in {terms} crochet terms, with every row in words and a stitch count for every size."
    charts = [piece.name for piece in document.pieces if piece.chart is not None]
    if charts:
        yield f"Stitch charts: {', '.join(charts)}."
    if document.drawings:
        yield "Drawings with the finished measures in inches and centimetres."
    if document.foot:
        yield document.foot
