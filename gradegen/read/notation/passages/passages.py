"""Shaping over rows: `dec 1 st at each end of next row, then every 4th row 6 (7, 8) times`."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from gradegen.design.passages import Shaping
from gradegen.design.rows import Change, Number, Step
from gradegen.read.notation.passages.even_rows import read_even_rows
from gradegen.read.notation.passages.rates import how_often, read_rates
from gradegen.read.notation.passages.row_references import row_labels
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import ROWS, phrases, words

Where = Literal["evenly", "each end", "one end"]
_UP = words("inc increase increasing inc'g")
_DOWN = words("dec decrease decreasing dec'g")
_EACH_END = phrases(
    "at beg and end|at beginning and end|at the beg and end|at the beginning and end|at both edges|at each end|"
    "each end|at both ends|both ends|at each side|each side|on each side|at each edge|each edge|at both sides|"
    "1 st in from each edge"
)
_ONE_END = phrases(
    "at neck edge|at the neck edge|neck edge|at arm edge|at armhole edge|at the armhole edge|armhole edge|"
    "at front edge|at side edge|at center edge|at centre edge|at beg|at beginning|at the beg|at the beginning|at end|"
    "at the end|at one end|at one edge|at same edge|at this edge|at opposite end"
)
_EVENLY = phrases(
    "evenly spaced across|evenly spaced around|evenly spaced|spaced evenly|evenly across|evenly around|evenly"
)
_SAME_TIME = phrases("at the same time|at same time")
_MOST = 8  # shapings in one passage


def read_passage(r: Reading) -> list[Step] | None:
    """Even rows or shapings over rows; None, and nothing read, when no rows are counted here."""
    even = read_even_rows(r)
    if even is not None:
        return [even]
    mark = r.at
    r.phrase(phrases("cont to|continue to|cont|continue"))
    first = _shaping(r, None)
    if first is None:
        r.at = mark
        return None
    found = [first]
    while len(found) < _MOST and (more := _further(r, found[-1])) is not None:
        found.append(more)
    while len(found[-1].together) < _MOST and (other := _at_same_time(r)) is not None:
        found[-1] = replace(found[-1], together=(*found[-1].together, other))
    return [*found]


def _shaping(r: Reading, known: Change | None) -> Shaping | None:
    """One change (or row named) with its rates; `known`: the change of the passage so far, which may be said anew."""
    mark = r.at
    lead = () if known else read_rates(r, several=False)  # `every RS row, dec 1 st at each end 5 times`
    if lead:
        r.accept(",")
    labels, repeats = ((), False) if known or lead else _row_named(r)
    leaves = r.low() in ("leave", "leaving")
    change, edge = (None, "") if labels else _change(r, known)
    if change is None and not labels:
        r.at = mark
        return None
    rates = read_rates(r)
    if lead and not rates:
        rates = (how_often(r, lead[0]),)
    if not rates:
        r.at = mark
        return None
    if change is not None and change.where == "one end" and not edge:
        edge = _where(r)[1]  # `every row at neck edge`
    return Shaping(change, rates, labels, repeats, edge=edge, leaves=leaves, place=r.place(mark))


def _row_named(r: Reading) -> tuple[tuple[str, ...], bool]:
    """`rep Dec Row`, `work Dec Row`, `rep last 2 rows`: the rows that are the event, and whether they are repeated."""
    mark = r.at
    repeats = r.low() in ("rep", "repeat", "repeating")
    if not (r.accept("rep", "repeat", "repeating", "work", "working")):
        return (), False
    r.accept("the", "this")
    labels = row_labels(r) or _named_row(r)
    if not labels:
        r.at = mark
    return labels, repeats


def _named_row(r: Reading) -> tuple[str, ...]:
    """`Dec Row`, `Increase Round`, `Armhole Dec Row`."""
    mark = r.at
    while r.here.kind in ("word", "stitch") and r.low() not in ROWS and r.at - mark < 3:
        r.at += 1
    if r.at > mark and r.low() in ROWS:
        name = r.text(mark)
        r.at += 1
        return (name,)
    r.at = mark
    return ()


def _change(r: Reading, known: Change | None) -> tuple[Change | None, str]:
    """The change said here and its edge; with `known`, the same change at an edge that may be named anew."""
    mark = r.at
    if known is not None:
        number = _how_many(r)
        where, edge = _where(r)
        said = number is not None or where is not None
        changed = replace(known, number=number or known.number, where=where or known.where, place=r.place(mark))
        return (changed if said else None), edge
    sign = _sign(r)
    number = _how_many(r) if sign else None
    if sign is None or number is None:
        r.at = mark
        return None, ""
    r.accept(",")
    where, edge = _where(r)
    spread: Where = "evenly" if number.values != (1,) or number.formula else "one end"
    change = Change(sign, number, where or spread, place=r.place(mark))
    return change, edge


def _sign(r: Reading) -> Literal[1, -1] | None:
    if r.here.low in _UP or r.here.low in _DOWN:
        up = r.here.low in _UP
        r.at += 1
        return 1 if up else -1
    if r.phrase(phrases("bind off|cast off|leave|leaving")):
        return -1
    return None


def _how_many(r: Reading) -> Number | None:
    """`1 st`, `one sc`, `6 (7, 8) sts`, `a stitch`."""
    number = r.number()
    if number is None and r.accept("a", "an"):
        token = r.tokens[r.at - 1]
        number = r.whole(1, token.start, token.end)
    if number is not None and (r.low() in STITCHES or r.here.kind == "stitch"):
        r.at += 1
    r.accept("unworked")
    return number


def _where(r: Reading) -> tuple[Where | None, str]:
    """At which ends, and the words for one end."""
    mark = r.at
    if r.phrase(_EACH_END):
        r.accept("of") if r.low(1) in ("row", "rnd", "round") and r.low(2) in ("on", "every") else None
        r.accept("row") if r.low(1) in ("on", "every") else None
        return "each end", ""
    if r.phrase(_ONE_END):
        edge = r.text(mark)
        r.accept("only")
        return "one end", edge
    if r.phrase(_EVENLY):
        return "evenly", ""
    return None, ""


def _further(r: Reading, before: Shaping) -> Shaping | None:
    """`..., then at neck edge every other row 3 times`, `..., then 3 sts at beg of next 4 rows`."""
    mark = r.at
    r.accept(",", ";")
    r.accept("and")
    r.accept("then")
    if r.at == mark or before.change is None:
        r.at = mark
        return None
    more = _shaping(r, before.change)
    more = replace(more, leaves=before.leaves) if more else None
    if more is None:
        r.at = mark
    return more


def _at_same_time(r: Reading) -> Shaping | None:
    """`, at the same time, beg with row 9 of these, dec 1 st at neck edge every row 4 times`."""
    mark = r.at
    r.accept(",", ";", ".")
    r.accept("and")
    if not r.phrase(_SAME_TIME):
        r.at = mark
        return None
    r.accept(",", ":", ";")
    after = _beginning(r)
    r.accept(",", ":")
    other = _shaping(r, None)
    if other is None:
        r.at = mark
        return None
    return replace(other, after=after)


def _beginning(r: Reading) -> Number | None:
    """The rows that come before: 8 for `beg on 9th row`, `beg with row 9 of these` and `after 8 rows`."""
    mark = r.at
    if r.accept("after", "when"):
        number = r.number()
        r.accept("more")
        if number is not None and r.low() in ROWS:
            r.at += 1
            r.phrase(phrases("have been worked|are worked|are done|are complete|of these|of shaping"))
            return number
        r.at = mark
        return None
    if not r.accept("beg", "beginning", "starting", "begin", "start", "on"):
        return None
    r.accept("on", "with", "at", "in")
    r.accept("the")
    number = r.number() if r.low() not in ROWS and r.here.kind != "ordinal" else None
    if number is None and r.low() in ROWS:
        r.at += 1
        number = r.number()
    elif number is None:
        number = r.ordinal()
        if not r.accept(*ROWS):
            number = None
    if number is None or number.formula is not None:
        r.at = mark
        return None
    r.phrase(phrases("of these|of these rows|of this shaping|of shaping|of armhole shaping|of armhole"))
    return replace(number, values=tuple(None if value is None else max(value - 1, 0) for value in number.values))
