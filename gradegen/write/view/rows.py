"""The rows of every piece as printed for the wanted sizes."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence, Set
from dataclasses import replace

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.design.rows import Listed, Row
from gradegen.design.worked import WorkedRow
from gradegen.findings import Place
from gradegen.write.page.typeset import NARROW
from gradegen.write.view.merged_shaping import merged_tables
from gradegen.write.view.whole import PieceView, RowView
from gradegen.write.voice.lists import each_size
from gradegen.write.words.fold import folded
from gradegen.write.words.own_words import in_own_words, size_remark
from gradegen.write.words.phrases import Part, Phrase, Printing, phrase, sentence

LONGEST_BESIDE = 14  # signs of a label that still fit beside its row
MOST_TICKS = 120
LONGEST_WHOLE = 30  # signs of a count that must not break over a line
_COUNT = re.compile(r"[(\[](?=[^()\[\]]*[\d{])(?:[^()\[\]]|\([^()]*\))*[)\]](?=\.?\s*$)")
_DASH_COUNT = re.compile(r"(?<=[.\s])[—–-]+\s*(?=[\d{])[^.]*(?=\.?\s*$)")
_BARE_COUNT = re.compile(r"(?<=[.;]\s)[\d{][^.;:]*(?=\.?\s*$)")
_AFTER_LABEL = re.compile(r"\s*[:.–—-]?\s*")
_RUN = re.compile(r"(?P<first>\d+) ?[-–] ?(?P<last>\d+)|\b[Nn]ext (?P<many>\d+)")
_HOW = {
    "flat": "Worked flat, in rows.",
    "joined rounds": "Worked in joined rounds.",
    "spiral": "Worked in a spiral, without joining.",
    "half-twist band": "Worked in joined rounds on a band with a half twist, along both sides at once.",
}


def piece_views(checked: Checked, printing: Printing, kept: Set[Place] = frozenset()) -> tuple[PieceView, ...]:
    """Every piece with the rows that the printed sizes work; rows that stand in `kept` are not in its terms."""
    made = _made_by_row(checked)
    aside = f"This row keeps its {'UK' if checked.pattern.terms == 'US' else 'US'} terms."
    return tuple(
        PieceView(
            f"piece-{at}",
            piece.name.text,
            _HOW[piece.shape],
            tuple(phrase(note, printing) for note in piece.notes),
            tuple(
                replace(
                    row_view(row, made.get(row.place, {}), printing),
                    aside=aside if row.place in kept else "",
                    tables=merged_tables(row, made.get(row.place, {}), printing),
                )
                for row in rows_for(piece, printing.sizes)
            ),
        )
        for at, piece in enumerate(checked.pattern.pieces, 1)
    )


def rows_for(piece: Piece, sizes: Sequence[GradedSize]) -> tuple[Row, ...]:
    """The rows that any of these sizes works."""
    return tuple(row for row in piece.rows if row_sizes(row, sizes))


def row_sizes(row: Row, sizes: Sequence[GradedSize]) -> tuple[GradedSize, ...]:
    """Those of these sizes that work the row."""
    return tuple(size for size in sizes if row.sizes is None or size.name in row.sizes)


def row_view(row: Row, made: Mapping[str, WorkedRow], printing: Printing) -> RowView:
    """One row with its size lists put in, its label and its closing count set apart."""
    row = in_own_words(row, printing)
    sizes = row_sizes(row, printing.sizes)
    label, only, text = (_cut(row, *span, printing, sizes) for span in row_spans(row, printing))
    if printing.is_spoken and len(sizes) > 1:
        label = _label_by_size(row, sizes, printing)
    count = tuple(_without_mark(part) for part in text if part.look.startswith("count"))
    is_below = len(_words(count)) > LONGEST_WHOLE or (printing.columns is not None and bool(count))
    counts = [made[size.name].made for size in sizes if size.name in made]
    return RowView(
        label,
        "" if printing.is_one_size else _words(only),
        _instruction(text, is_below=is_below),
        count,
        "beside" if len(_words(label)) <= LONGEST_BESIDE else "above",
        "below" if is_below else "whole",
        folded([str(count) for count in counts if count is not None]) if None not in counts else "",
        ticks(_words(label), _times(sizes[0], made)) if printing.is_one_size and not printing.is_spoken else (),
    )


def _times(size: GradedSize, made: Mapping[str, WorkedRow]) -> int:
    """How many rows were worked under the label in this size; 1 where that is not known."""
    return made[size.name].times if size.name in made else 1


def ticks(label: str, worked: int = 1) -> tuple[str, ...]:
    """A box for every row or round worked under a label of one size, a gap after ten; () where there is no label.

    `worked`: how many they are where the label names no numbers, as in `Next rows`.
    """
    run = _RUN.search(label.replace(NARROW, " "))
    if run is None and worked < 2:
        return ("tick hanging",) if label else ()
    many = worked if run is None else int(run["many"] or int(run["last"]) - int(run["first"]) + 1)
    if not 2 <= many <= MOST_TICKS:
        return ("tick hanging",)
    return tuple("tick tenth" if at % 10 == 0 else "tick" for at in range(1, many + 1))


def _label_by_size(row: Row, sizes: Sequence[GradedSize], printing: Printing) -> Phrase:
    """`sizes S and M: Rnds 5-8; size L: Rnds 5-10`; the label alone where all sizes share it."""
    labels = []
    for size in sizes:
        alone = replace(printing, sizes=(size,))
        labels.append(_words(_cut(row, *row_spans(row, alone)[0], alone, (size,))))
    return (Part(each_size([size.name for size in sizes], labels)),) if labels[0] else ()


def _instruction(text: Phrase, *, is_below: bool) -> Phrase:
    """The instruction without its count; the blank before a count in the same line is a part of its own.

    At the end of the part before, the typesetter breaks a line that it fills exactly at its first blank.
    """
    kept = [part for part in text if not part.look.startswith("count")]
    if not kept or not kept[-1].text.endswith(" "):
        return tuple(kept)
    bare = (*kept[:-1], replace(kept[-1], text=kept[-1].text.rstrip(" ")))
    return bare if is_below else (*bare, Part(" ", "blank"))


Span = tuple[int, int]


def row_spans(row: Row, printing: Printing) -> tuple[Span, Span, Span]:
    """Where in the row's text its label stands, the remark on which sizes work it, and its instruction."""
    end, start = label_bounds(row)
    remark = size_remark(printing).match(row.text, 0) if row.sizes is not None else None
    if remark is None or remark.start("remark") > start:
        return (0, end), (0, 0), (start, len(row.text))
    only = remark.span("names")
    after = _AFTER_LABEL.match(row.text, max(start, remark.end("remark")))
    return (0, min(end, remark.start("remark"))), only, (after.end() if after else start, len(row.text))


def label_bounds(row: Row) -> tuple[int, int]:
    """Where the label ends in the row's text and where its instruction starts."""
    end = len(row.label.text) if row.text.startswith(row.label.text) else 0
    after = _AFTER_LABEL.match(row.text, end) if end else None
    return len(row.text[:end].rstrip(" :.")), after.end() if after else 0


def count_start(row: Row) -> int | None:
    """Where the row's closing count begins in its text; None when it states none there."""
    if not row.stated:
        return None
    patterns = (_COUNT, _DASH_COUNT, _BARE_COUNT)
    found = next((each for each in (pattern.search(row.text) for pattern in patterns) if each), None)
    return found.start() if found else None


def _cut(row: Row, start: int, end: int, printing: Printing, sizes: Sequence[GradedSize]) -> Phrase:
    lists = tuple(
        Listed(listed.start - start, listed.end - start, listed.values, listed.formula)
        for listed in row.lists
        if start <= listed.start and listed.end <= end
    )
    count = count_start(row)
    count_from = None if count is None or count < start else count - start
    return sentence(row.text[start:end], lists, printing, sizes, count_from)


def _without_mark(part: Part) -> Part:
    look = part.look.removeprefix("count").strip()
    return Part(part.text, "whole" if look == "whole" else "mark" if look == "mark" else "")


def _words(label: Phrase) -> str:
    return "".join(part.text for part in label)


def _made_by_row(checked: Checked) -> dict[Place, dict[str, WorkedRow]]:
    """Worked rows by the place of their written row, then by size."""
    found: dict[Place, dict[str, WorkedRow]] = {}
    for size, rows in checked.worked.items():
        for worked in rows:
            found.setdefault(worked.row.place, {})[size] = worked
    return found
