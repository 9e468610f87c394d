"""`check_row`: the public way to check one written row alone."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.notes import NoteFacts
from gradegen.design.pattern import Shape, Terms
from gradegen.design.rows import Chain, Definition, Number, Row
from gradegen.design.worked import RowResult, Status, WorkedRow
from gradegen.findings import Finding, Place, Severity, Written
from gradegen.read.notation.notes.definitions import read_definition
from gradegen.read.notation.notes.notes import read_notes
from gradegen.read.notation.rows import read_row
from gradegen.read.notation.words.row_names import RowNames
from gradegen.trade.stitches import find_stitch, stitches
from gradegen.work.along.judge import clusters_called
from gradegen.work.edge.edges import plain, read_runs
from gradegen.work.edge.shapes import with_groups_named
from gradegen.work.order.sequence import RowsInOrder
from gradegen.work.piece.piece import PieceWork
from gradegen.work.piece.standing import Standing

Prior = Sequence[int | str | None] | int | str | None


def check_row(
    text: str,
    *,
    prior: Prior,
    worked: Shape,
    sizes: Sequence[str],
    label: str = "",
    terms: Terms = "US",
    notes: Sequence[str] = (),
    definitions: Mapping[str, str] | None = None,
    earlier: Mapping[str, str] | None = None,
    turning_chain: str | None = None,
    applies_to: Sequence[str] | None = None,
    leaves: bool = False,
) -> RowResult:
    """One written row, worked in every size on the edge it is given.

    `prior`: the edge in the order this row meets it, per size (one value: the same for all): a number of plain
    stitches, or runs such as "8 x (dc, ch-1 sp), sc", "42 ch", "60 row ends", in the pattern's own terms; None when
    the row makes its own beginning. In the result's `units` a plain stitch counts its kinds too (sc2tog is an sc).
    `earlier`: label -> text of rows it may refer to. `turning_chain`: "ch 3", made at the end of the row before.
    `applies_to`: the sizes that work it. `leaves`: the row may stop before the edge ends. Never raises on what
    is written.
    """
    own, facts = _explained(definitions or {}, notes, terms, tuple(sizes))
    names = RowNames(terms=terms, sizes=tuple(sizes), definitions=own)
    row, findings = read_row(Written.plain(text), names, label)
    row = _applying(row, applies_to)
    order = RowsInOrder(_piece(worked, tuple(sizes), own, facts, prior, turning_chain, label, leaves, terms))
    for standing in order.piece.standings:
        standing.edge = with_groups_named(standing.edge or (), row, own)
    _remember(order, earlier or {}, names)
    worked_rows = order.work(row)
    return _result(worked_rows, (*findings, *order.findings), tuple(sizes), terms, order.piece.definitions)


def _explained(
    definitions: Mapping[str, str], notes: Sequence[str], terms: Terms, sizes: tuple[str, ...]
) -> tuple[dict[str, Definition], NoteFacts]:
    """The pattern's own stitches, from its definitions and its notes, and what the notes settle besides."""
    known: dict[str, Definition] = {}
    for name, words in definitions.items():
        names = RowNames(terms=terms, sizes=sizes, definitions=known)
        known[name] = read_definition(name, Written.plain(words), names)[0]
    names = RowNames(terms=terms, sizes=sizes, definitions=known)
    facts = read_notes([Written.plain(note) for note in notes], names)
    return {**facts.definitions, **known}, facts


def _applying(row: Row, applies_to: Sequence[str] | None) -> Row:
    return row if applies_to is None else replace(row, sizes=tuple(applies_to))


def _piece(
    worked: Shape,
    sizes: tuple[str, ...],
    own: Mapping[str, Definition],
    facts: NoteFacts,
    prior: Prior,
    turning_chain: str | None,
    label: str,
    leaves: bool,
    terms: Terms = "US",
) -> PieceWork:
    edges = _edges(prior, len(sizes), partial(_id, terms=terms, own=own))
    chain = _chain(turning_chain)
    standings = [Standing(edge, _underside(edge), chain) for edge in edges]
    booklet = bool(label[:1].isdigit() and not label.rstrip().endswith(")"))
    return PieceWork(worked, sizes, own, facts, [{} for _ in sizes], booklet, standings, leaves=leaves, edge_given=True)


def _underside(edge: Edge) -> Edge:
    """A prior of bare chains can also be worked along its other side."""
    if len(edge) == 1 and isinstance(edge[0], Run):
        one = edge[0].items[0]
        return edge if isinstance(one, Target) and one.kind == "ch" else ()
    return ()


def _edges(prior: Prior, number: int, spelled: Callable[[str], str]) -> list[Edge]:
    values = [prior] * number if prior is None or isinstance(prior, (int, str)) else list(prior)
    if len(values) == 1:
        values *= number
    return [_edge(value, spelled) for value in (values + [None] * number)[:number]]


def _edge(value: int | str | None, spelled: Callable[[str], str]) -> Edge:
    if value is None:
        return ()
    if isinstance(value, int):
        return plain(value)
    return read_runs(value, spelled)


def _id(name: str, terms: Terms, own: Mapping[str, Definition]) -> str:
    """The stitch id of a name in the pattern's terms; the name itself for the pattern's own stitches."""
    known = None if name in own else find_stitch(name, terms)
    return known.id if known else name


def _chain(words: str | None) -> Chain | None:
    digits = "".join(sign for sign in words or "" if sign.isdigit())
    if not digits:
        return None
    place = Place("<turning chain>", 1, 1, 1, 1)
    return Chain(Number((int(digits),), place=place), place=place)


def _remember(order: RowsInOrder, earlier: Mapping[str, str], names: RowNames) -> None:
    for label, text in earlier.items():
        row, _ = read_row(Written.plain(text), names, label)
        order.remember(row)


def _result(
    rows: Sequence[WorkedRow],
    findings: Sequence[Finding],
    sizes: tuple[str, ...],
    terms: Terms,
    own: Mapping[str, Definition],
) -> RowResult:
    found = [*findings, *(finding for row in rows for finding in row.findings)]
    found = _without_twins(found)
    errors = {finding.size for finding in found if finding.severity is Severity.ERROR}
    by_size: dict[str, Status] = {
        row.size: "wrong" if row.applies and (row.size in errors or None in errors) else row.status for row in rows
    }
    applying = [by_size[row.size] for row in rows if row.applies]
    status: Status = (
        "wrong" if "wrong" in applying else "proved" if applying and set(applying) == {"proved"} else "not-checked"
    )
    made = tuple(row.made if row.applies else None for row in rows)
    return RowResult(
        status,
        by_size,
        made,
        _under_all_names(_units(rows, terms), own, rows),
        tuple(row.taken if row.applies else None for row in rows),
        next((row.reading for row in rows if row.reading), ()),
        tuple(found),
        tuple(row.times for row in rows),
        tuple(row.after for row in rows),
    )


def _without_twins(findings: Sequence[Finding]) -> list[Finding]:
    """A fault that concerns all sizes, said once: not again for each of them at the same spot."""
    whole = {(finding.rule, finding.place) for finding in findings if finding.size is None}
    return [f for f in findings if f.size is None or (f.rule, f.place) not in whole]


def _units(rows: Sequence[WorkedRow], terms: Terms) -> dict[str, tuple[int | None, ...]]:
    names = dict.fromkeys(name for row in rows for name in row.units)
    found = {
        name: tuple(row.units.get(name, 0) if row.applies and row.made is not None else None for row in rows)
        for name in names
    }
    if terms == "UK":
        found = {_printed(name, terms): numbers for name, numbers in found.items()}
    if "sp" in found:
        found["loop"] = found["sp"]
    return found


def _under_all_names(
    found: dict[str, tuple[int | None, ...]], own: Mapping[str, Definition], rows: Sequence[WorkedRow]
) -> dict[str, tuple[int | None, ...]]:
    """Also under the other names of the pattern's own stitches: `popcorn (pc st)`, `p` for a picot."""
    for name, definition in own.items():
        makes = definition.makes
        if name not in found and any(clusters_called(name, definition, row.units) for row in rows):
            found[name] = tuple(clusters_called(name, definition, row.units) for row in rows)
        if name not in found and len(makes) == 1 and makes[0].times is None and makes[0].stitch in found:
            found[name] = found[makes[0].stitch]
        for spelling in _SPELLINGS.split(name):
            if name in found and spelling.strip():
                found.setdefault(spelling.strip(), found[name])
    return found


_SPELLINGS = re.compile(r"[()\[\]]")


def _printed(name: str, terms: Terms) -> str:
    known = stitches().get(name)
    return known.abbreviation(terms) if known else name
