"""Which gauge an edge is measured by: that of the counts and shapings its sum goes back to."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gradegen.design.formula import Formula, Name
from gradegen.design.pattern import CountRule, Pattern, Piece
from gradegen.grade.body.bodies import folded
from gradegen.grade.body.sums import names_in
from gradegen.grade.measure.gauges import gauges_per_inch

_DEEPEST = 12  # counts that are sums of counts; a ring of them is told by grading


def rate_of(pattern: Pattern, edge: Formula, edges: tuple[Formula, ...], unit: str) -> Fraction | None:
    """Stitches or rows to the inch along an edge, by its own gauge, else by that of the edge it meets.

    None where several gauges come in question that differ.
    """
    usable, _ = gauges_per_inch(pattern.gauges)
    for names in (set(_gauges(pattern, edge)), {name for one in edges for name in _gauges(pattern, one)}, set(usable)):
        mine = [gauge for name, gauge in usable.items() if folded(name) in {folded(one) for one in names}]
        rates = {gauge.rows if unit == "rows" else gauge.stitches for gauge in mine} - {None}
        if rates:
            return rates.pop() if len(rates) == 1 else None
    return None


def _gauges(pattern: Pattern, formula: Formula | None, deep: int = 0) -> Iterator[str]:
    if formula is not None and deep < _DEEPEST:
        for name in names_in(formula):
            yield from _of_name(pattern, name, deep + 1)


def _of_name(pattern: Pattern, name: Name, deep: int) -> Iterator[str]:
    plain = folded(name.name)
    for count in pattern.counts.values():
        if folded(count.name) == plain:
            yield from _of_count(pattern, count, deep)
            return
    for key, scheduled in pattern.scheduled.items():
        if plain.rpartition(" ")[0] == folded(key):
            rule = scheduled.rule
            if rule.gauge is not None:
                yield rule.gauge.text
            for formula in (rule.before, rule.to, rule.over):
                yield from _gauges(pattern, formula, deep)
            return
    for piece in pattern.pieces:
        if plain.startswith(f"{folded(piece.name.text)} "):
            yield from _of_piece(pattern, piece, plain[len(folded(piece.name.text)) + 1 :], deep)


def _of_count(pattern: Pattern, count: CountRule, deep: int) -> Iterator[str]:
    if count.gauge is not None:
        yield count.gauge.text
    yield from _gauges(pattern, count.formula, deep)


def _of_piece(pattern: Pattern, piece: Piece, edge: str, deep: int) -> Iterator[str]:
    """Of a named edge, the gauges of its sum; else, and for its rows and stitches, those of its width and length."""
    named = next((formula for key, formula in piece.edges.items() if folded(key) == edge), None)
    found = set(_gauges(pattern, named, deep))
    measures = {text.text for text in (piece.width, piece.length) if text is not None}
    for count in pattern.counts.values() if not found else ():
        over = {one.name for one in (count.across, count.along) if isinstance(one, Name)}
        if over & measures:
            found |= set(_of_count(pattern, count, deep))
    yield from found
