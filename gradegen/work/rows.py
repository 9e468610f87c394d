"""Every row of a pattern, worked in every size."""

from __future__ import annotations

from collections import deque
from collections.abc import Mapping, Sequence
from fractions import Fraction

from gradegen.design.formula import Name
from gradegen.design.graded import GradedSize
from gradegen.design.notes import NoteFacts
from gradegen.design.pattern import Pattern, Piece
from gradegen.design.rows import Definition
from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding, Written
from gradegen.grade.measure.gauges import gauges_per_inch
from gradegen.read.notation.notes.notes import read_notes
from gradegen.read.notation.words.row_names import RowNames
from gradegen.work.edge.doubts import told_chains
from gradegen.work.order.sequence import RowsInOrder
from gradegen.work.piece.entry import enter
from gradegen.work.piece.numbering import is_booklet_label
from gradegen.work.piece.piece import PieceWork
from gradegen.work.piece.standing import Standing
from gradegen.work.piece.turning_chains import chain_for_all, told_loops, told_skips
from gradegen.work.step.beginnings import begins_anew

Worked = Mapping[str, tuple[WorkedRow, ...]]


def work_rows(
    pattern: Pattern, sizes: Sequence[GradedSize], tracing: int | None = None
) -> tuple[Worked, tuple[Finding, ...]]:
    """The worked rows of every size, over all pieces in order, and what was found on the way.

    All sizes are worked side by side, since a reading of ambiguous words has to balance in every one of them.
    `tracing`: a line of the pattern file; the row that stands there keeps what each of its steps took and made.
    """
    names = tuple(size.name for size in sizes)
    worked: dict[str, list[WorkedRow]] = {name: [] for name in names}
    findings: list[Finding] = []
    standings: list[Standing] = []
    for piece in pattern.pieces:
        order = rows_in_order(pattern, piece, sizes, standings)
        order.piece.tracing = tracing
        for row in piece.rows:
            rows = order.work(row)
            for one in order.revised:
                _replace(worked[one.size], one)
            order.revised.clear()
            for one in rows:
                worked[one.size].append(one)
                findings.extend(one.findings)
        findings.extend(order.findings)
        standings = order.piece.standings
    return {name: tuple(rows) for name, rows in worked.items()}, tuple(findings)


def _replace(rows: list[WorkedRow], again: WorkedRow) -> None:
    """Put a row that is read in another way now in the place of the same row."""
    for i in range(len(rows) - 1, -1, -1):
        if rows[i].row is again.row:
            rows[i] = again
            return


def rows_in_order(
    pattern: Pattern,
    piece: Piece,
    sizes: Sequence[GradedSize],
    before: Sequence[Standing],
    kind: type[PieceWork] = PieceWork,
) -> RowsInOrder:
    """A piece ready to be worked in all its sizes, on what the piece `before` left where it goes on from that."""
    names = tuple(size.name for size in sizes)
    own, facts = explained(pattern, piece, names)
    first = next((row for row in piece.rows if not row.is_prose), None)
    anew = first is None or begins_anew(first)
    entry = enter(piece, anew, names, before)
    order = RowsInOrder(
        kind(
            shape=piece.shape,
            sizes=names,
            definitions=own,
            notes=facts,
            counts=[size.numbers() for size in sizes],
            standings=list(entry.standings),
            booklet=any(is_booklet_label(row.label.text) for row in piece.rows),
            name=piece.name.text,
            told_chains=told_chains(piece.rows),
            told_loops=told_loops(piece.rows),
            told_skips=told_skips(piece.rows),
            chain_for_all=chain_for_all(piece.rows),
            turns_with_chain=any(row.turning_chain is not None for row in piece.rows),
            rows_per_inch=row_gauge(pattern, piece),
            measures=[{name: one.printed for name, one in size.measures.items()} for size in sizes],
        )
    )
    order.entries, order.findings = entry.others, list(entry.findings)
    return order


def row_gauge(pattern: Pattern, piece: Piece) -> Fraction | None:
    """Rows per inch of a piece: by the gauge that counts its length, else by the pattern's only gauge with rows.

    None where neither is there, and for a half-twist band, whose rounds add their height on both sides.
    """
    if piece.shape == "half-twist band":
        return None
    usable, _ = gauges_per_inch(pattern.gauges)
    length = piece.length.text if piece.length else None
    named = [
        count.gauge.text
        for count in pattern.counts.values()
        if count.gauge is not None and isinstance(count.along, Name) and count.along.name == length
    ]
    found = {gauge.rows for name, gauge in usable.items() if gauge.rows is not None and name in (named or usable)}
    return found.pop() if len(found) == 1 else None


def explained(pattern: Pattern, piece: Piece, sizes: tuple[str, ...]) -> tuple[dict[str, Definition], NoteFacts]:
    """The pattern's own stitches and what its notes and the piece's notes settle; the piece's own words win.

    Notes take longer to read than rows to work, so the last few answers are kept.
    """
    about = (pattern.definitions, pattern.notes, piece.notes)
    for asked, terms, names, answer in _EXPLAINED:
        same = all(one is other for one, other in zip(asked, about, strict=True))
        if same and terms == pattern.terms and names == sizes:
            return answer
    answer = _explain(pattern, piece, sizes)
    _EXPLAINED.append((about, pattern.terms, sizes, answer))
    return answer


_Explained = tuple[dict[str, Definition], NoteFacts]
_EXPLAINED: deque[tuple[tuple[object, ...], str, tuple[str, ...], _Explained]] = deque(maxlen=8)


def _explain(pattern: Pattern, piece: Piece, sizes: tuple[str, ...]) -> _Explained:
    own = {definition.name: definition for definition in pattern.definitions}
    names = RowNames(terms=pattern.terms, sizes=sizes, definitions=own)
    notes = [
        Written.plain(note.text, note.place.file, note.place.line, note.place.column)
        for note in (*piece.notes, *pattern.notes)
    ]
    facts = read_notes(notes, names)
    return {**facts.definitions, **own}, facts
