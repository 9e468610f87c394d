"""Plain rows, counted or measured: `work even in sc for 6 rows`, `work even until piece measures 9 in`."""

from __future__ import annotations

import re
from typing import Literal

from gradegen.design.formula import Formula
from gradegen.design.passages import EvenRows, Until
from gradegen.design.rows import Number
from gradegen.read.notation.passages.rates import read_side
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import ROWS, phrases
from gradegen.read.sums.formula import read_formula

_EVEN = phrases(
    "work even|working even|work plain|work straight|work in pattern as set|work in pattern as established|"
    "work in pattern|work in pat|work as set|work as established|continue in pattern|continue in pat|"
    "continue in established pattern|continue even|continue straight|continue as set|continue|cont in pattern|"
    "cont in pat|cont even|cont straight|cont|work|even"
)
_PLAIN = phrases("even|plain|straight|without shaping|in pattern|in pat|as set|as established|in established pattern")
_UNIT = re.compile(r"(?:in(?:ch(?:es)?)?|cm|mm)\b|[\"”]", re.IGNORECASE)
_MEASURES = ("measures", "measure", "is", "reaches", "are")
_LONGEST = 60  # characters of a length for all sizes


def read_even_rows(r: Reading) -> EvenRows | None:
    """Plain rows with their number or length; None, and nothing read, when neither is said."""
    mark = r.at
    said_even = _begun(r)
    if said_even is None:
        return None
    plain, stitch = said_even
    over_all = r.phrase(_ALL)
    rows, until = None, None
    if plain and r.accept("for"):
        rows = _rows(r)
    elif plain or r.tokens[mark].low.startswith("cont"):
        until = read_until(r)
    elif r.at == mark + 1 and r.tokens[mark].low == "work":
        rows, stitch = _counted(r)
    if rows is None and until is None:
        r.at = mark
        return None
    if rows is not None and r.low() in ("in", "even"):
        stitch = _stitch(r) or stitch
    _ending(r)
    return EvenRows(stitch, rows, until, over_all, place=r.place(mark))


def _begun(r: Reading) -> tuple[bool, str | None] | None:
    """Whether the opening words say even, and the stitch they name."""
    if r.here.kind == "stitch" and r.low(1) in ("even", "plain") and r.here.value != "ch":
        r.at += 2
        return True, str(r.tokens[r.at - 2].value)
    start = r.at
    if r.low() == "even" or not r.phrase(_EVEN):
        return None
    plain = r.at > start + 1 or bool(r.phrase(_PLAIN))
    stitch = _stitch(r)
    plain = bool(r.phrase(_PLAIN)) or plain or stitch is not None
    return plain, stitch


_ALL = phrases("across all sts|across all stitches|over all sts|over all stitches|on all sts")


def _stitch(r: Reading) -> str | None:
    """`in sc`, `even in sc`; None, and nothing read, otherwise."""
    mark = r.at
    r.accept("even")
    if r.accept("in", "with") and r.here.kind == "stitch" and r.here.value != "ch":
        r.at += 1
        token = r.tokens[r.at - 1]
        r.phrase(_PLAIN)
        return str(token.value)
    r.at = mark
    return None


def _rows(r: Reading) -> Number | None:
    """`6 rows`, `6 (7, 8) more rows`."""
    mark = r.at
    number = r.number()
    r.accept("more", "further")
    if number is None or not r.accept(*ROWS):
        r.at = mark
        return None
    return number


def _counted(r: Reading) -> tuple[Number | None, str | None]:
    """`5 rows even`, `2 rnds in sc`, `3 rows in pattern`."""
    mark = r.at
    rows = _rows(r)
    if rows is not None:
        if r.phrase(_PLAIN):
            return rows, _stitch(r)
        stitch = _stitch(r)
        if stitch is not None:
            return rows, stitch
    r.at = mark
    return None, None


# ---- lengths ------------------------------------------------------------------------------------------------------


def read_until(r: Reading) -> Until | None:
    """`until piece measures 9 in from beg, ending with a WS row`; None, and nothing read, when no length is named."""
    mark = r.at
    if not r.accept("until", "till"):
        return None
    found = read_length(r, mark)
    if found is None:
        r.at = mark
    return found


def read_measured(r: Reading, mark: int) -> Until | None:
    """The length in words that were just read from `mark` on; nothing moves."""
    after = r.at
    r.at = mark
    r.accept(",", ";")
    found = read_until(r)
    r.at = after
    return found


def read_length(r: Reading, mark: int) -> Until | None:
    """`piece measures 9 in from beg`, read up to the end of its words."""
    begin = r.at
    while r.low() not in _MEASURES and r.here.kind in ("word", "stitch"):
        r.at += 1
    of = r.text(begin) if r.at > begin else ""
    if not r.accept(*_MEASURES):
        return None
    r.phrase(phrases("about|approximately|approx"))
    measure = _length(r)
    if measure is None:
        return None
    since = _since(r)
    side = _ending(r)
    return Until(measure, _bare(of), since, side, place=r.place(mark))


def _bare(of: str) -> str:
    return re.sub(r"^(?:the|entire|whole)\s+", "", of.strip().lower())


def _length(r: Reading) -> Formula | None:
    """A length for all sizes or one per size, or the name of a finished measure in braces."""
    token = r.here
    if token.kind == "count":
        number = r.number()
        if number is not None and number.formula is not None:
            _second_unit(r)
            return number.formula
        r.at -= 1
    unit = _UNIT.search(r.written.text, token.end, token.start + _LONGEST)
    if token.kind not in ("count", "number", "measure") or unit is None:
        return None
    formula, _ = read_formula(r.written, token.start, unit.end())
    while r.here.start < unit.end() and r.here.kind != "end":
        r.at += 1
    _second_unit(r)
    return formula


def _second_unit(r: Reading) -> None:
    """Passes the same length in the other unit: `(23 cm)`, `/ 23 cm`."""
    mark = r.at
    opened = r.here.kind == "open"
    if not (opened or r.here.kind in ("/", "[")):
        return
    r.at += 1
    if r.here.kind in ("count", "number", "measure"):
        r.at += 1
        if r.accept("cm", "in", "inches", "mm", "inch") and (not opened or r.here.kind == "close"):
            r.at += opened
            return
    r.at = mark


def _since(r: Reading) -> str:
    """`from beg`, `from underarm`, in words; "" when nothing is said or it is the beginning."""
    mark = r.at
    r.phrase(phrases("in length|long|in all|in total"))
    if not r.accept("from", "above", "below", "past"):
        return ""
    r.accept("the")
    begin = r.at
    while r.here.kind in ("word", "stitch") and r.low() not in ("ending", "and", "then"):
        r.at += 1
    words_ = r.text(begin).lower() if r.at > begin else ""
    if not words_:
        r.at = mark
    return (
        "" if words_.split(" ")[0] in ("beg", "beginning", "start", "foundation", "bottom", "lower", "edge") else words_
    )


def _ending(r: Reading) -> Literal["RS", "WS"] | None:
    """The side of `, ending with a WS row`."""
    mark = r.at
    r.accept(",")
    if r.phrase(phrases("ending with|ending after|ending on|end with|end after|ending")):
        r.accept("a", "an")
        side = read_side(r)
        if side is not None and r.accept(*ROWS):
            return side
    r.at = mark
    return None
