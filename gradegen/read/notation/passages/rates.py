"""How often a passage shapes: `next row`, `every 4th row 6 (7, 8) times`, `next and every foll alt row`."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from gradegen.design.passages import Rate
from gradegen.design.rows import Listed, Number
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.times import Often, read_often
from gradegen.read.notation.words.word_lists import ROWS, phrases, words

_OTHER = words("other alt alternate alternating second")
_FOLLOWING = words("foll following")
_LEFT = phrases(
    "rem in all|rem|remain in all|remain|remains|remaining|are left|left|are on row|on row|have been made|in all|"
    "are complete|are worked"
)
_MOST = 12


def read_rates(r: Reading, *, several: bool = True) -> tuple[Rate, ...]:
    """The rates named here, parted by commas, `and` and `then`; (), and nothing read, when there is none."""
    found: list[Rate] = []
    while len(found) < _MOST:
        mark = r.at
        if found:
            r.accept(",", ";")
            r.accept("and")
            r.accept("then")
        rate = _rate(r) if r.at > mark or not found else None
        if rate is None:
            r.at = mark
            break
        found.append(rate)
        if not several:
            break
    return tuple(found)


def _rate(r: Reading) -> Rate | None:
    mark = r.at
    r.phrase(phrases("of row on|of row|of rnd"))
    r.accept("on", "in", "of", "at", "over", "to")
    r.accept("the")
    rate = _next(r) or _every(r) or _following(r) or _alternately(r) or _alternate(r)
    if rate is None:
        r.at = mark
        return None
    r.phrase(phrases("thereafter|after that|to follow"))
    rate = replace(_often(r, rate), place=r.place(mark))
    _all_sizes(r)
    return rate


def _next(r: Reading) -> Rate | None:
    """`next row`, `next 2 rows`, `next RS row`, `next 4 alt rows`, `next and every foll 4th row`."""
    mark = r.at
    if r.low() == "this" and r.low(1) in ROWS and r.low(2) == "and":
        pass
    elif r.low() != "next":
        return None
    r.at += 1
    start = r.at
    if r.accept(*ROWS) and not (r.low() == "and" and r.low(1) in (*_FOLLOWING, "every")):
        return _once(r, mark)
    r.at = start
    r.accept(*ROWS)
    if r.accept("and"):
        rest = _every(r) or _following(r)
        if rest is not None:
            return replace(rest, with_next=True)
        r.at = mark
        return None
    rest = _counted_rows(r)
    if rest is None:
        r.at = mark
    return rest


def _once(r: Reading, mark: int) -> Rate:
    one = r.whole(1, r.tokens[mark].start, r.tokens[mark].end)
    return Rate(one, one, place=r.place(mark))


def _following(r: Reading) -> Rate | None:
    """`foll 4 alt rows`, `foll 4th row`, `following 3 rows`."""
    mark = r.at
    if not r.accept(*_FOLLOWING):
        return None
    rest = _counted_rows(r)
    if rest is None:
        r.at = mark
    return rest


def _counted_rows(r: Reading) -> Rate | None:
    """`2 rows`, `4 alt rows`, `3 RS rows`, `RS row`, `4th row` behind next or following."""
    mark = r.at
    times = r.number()
    side = read_side(r)
    every: Number | None = None
    if r.low() in _OTHER:
        every = _two(r)
    elif side is None:
        every = _ordinals(r)
    if not r.accept(*ROWS):
        r.at = mark
        return None
    token = r.tokens[mark]
    one = r.whole(1, token.start, token.end)
    apart = every or (r.whole(2, token.start, token.end) if side else one)
    return Rate(apart, times or one, side=side, place=r.place(mark))


def _every(r: Reading) -> Rate | None:
    """`every row`, `every other row`, `every foll 4th row`, `every 4 (4, 6) rows`, `every RS row`."""
    mark = r.at
    if not r.accept("every", "each"):
        return None
    r.accept(*_FOLLOWING)
    side: Literal["RS", "WS"] | None = None
    token = r.here
    every: Number | None
    if token.low in _OTHER:
        every = _two(r)
        side = read_side(r)
    elif (every := _ordinals(r)) is None:
        every = r.number()
    if every is None:
        side = read_side(r)
        every = r.whole(2 if side else 1, token.start, token.end)
    alternate = _and_alternately(r)
    if not r.accept(*ROWS):
        r.at = mark
        return None
    return Rate(every, alternate=alternate, side=side, place=r.place(mark))


def _alternately(r: Reading) -> Rate | None:
    """`alternately every 2nd and 4th row`."""
    mark = r.at
    if not r.accept("alternately"):
        return None
    r.accept("on", "in")
    rate = _every(r)
    if rate is None or rate.alternate is None:
        r.at = mark
        return None
    return rate


def _and_alternately(r: Reading) -> Number | None:
    """The 4 of `2nd and 4th`."""
    mark = r.at
    if r.accept("and"):
        r.accept("then")
        r.accept("every")
        second = _ordinals(r)
        if second is not None and r.low() in ROWS:
            return second
    r.at = mark
    return None


def _alternate(r: Reading) -> Rate | None:
    """`alt rows 5 times`."""
    mark = r.at
    if r.low() not in ("alt", "alternate"):
        return None
    every = _two(r)
    if not r.accept(*ROWS):
        r.at = mark
        return None
    return Rate(every, place=r.place(mark))


def _two(r: Reading) -> Number:
    token = r.here
    r.at += 1
    return r.whole(2, token.start, token.end)


def read_side(r: Reading) -> Literal["RS", "WS"] | None:
    """RS or WS; None, and nothing read, when neither stands here."""
    if r.accept("rs") or r.accept_all("right", "side"):
        return "RS"
    if r.accept("ws") or r.accept_all("wrong", "side"):
        return "WS"
    return None


def _ordinals(r: Reading) -> Number | None:
    """`4th`, `fourth`, and one per size: `4th (6th, 6th)`, `4th [6th: 6th]`."""
    mark = r.at
    first = r.ordinal()
    if first is None or r.here.kind != "open":
        return first
    after = r.at
    values, places, cuts = [first.values[0]], [first.place], [_span(r, mark)]
    while r.here.kind == "open":
        r.at += 1
        while (one := r.ordinal()) is not None:
            values.append(one.values[0])
            places.append(one.place)
            cuts.append(_span(r, r.at - 1))
            r.accept(",", ":", ";")
        if r.here.kind != "close":
            r.at = after
            return first
        r.at += 1
    if len(values) != len(r.names.sizes):
        r.at = after
        return first
    text = r.written.text
    start, end = r.span(mark)
    r.lists.append(Listed(start, end, tuple(text[a:b] for a, b in cuts)))
    return Number(tuple(values), place=r.place(mark), places=tuple(places))


def _span(r: Reading, at: int) -> tuple[int, int]:
    return r.tokens[at].start, r.tokens[at].end


def how_often(r: Reading, rate: Rate) -> Rate:
    """A rate said before its change, with the number of times that stands behind the change."""
    return _often(r, rate)


def _often(r: Reading, rate: Rate) -> Rate:
    """The rate with how often it runs, or until how many stitches are there."""
    mark = r.at
    r.accept(",")
    often: Often | None = read_often(r)
    if often is not None:
        if rate.times is None:
            return replace(rate, times=often.number, how=often.how)
        if rate.times.values == (1,) and not rate.with_next:
            return replace(rate, times=often.number, how=often.how)
    r.at = mark
    until = _until(r)
    if until is not None:
        return replace(rate, times=None, until=until)
    r.at = mark
    return rate


def _until(r: Reading) -> Number | None:
    """The 40 (44, 48) of `until 40 (44, 48) sts remain`, `to 40 sts`, `until there are 60 sts`."""
    mark = r.at
    to = r.low() == "to"
    if not r.accept("until", "till", "to"):
        return None
    r.phrase(phrases("there are|you have|a total of|only"))
    number = r.number()
    if number is None or not (r.low() in STITCHES or r.here.kind == "stitch"):
        r.at = mark
        return None
    r.at += 1
    if not r.phrase(_LEFT) and to and not r.at_break():
        r.at = mark
        return None
    return number


def _all_sizes(r: Reading) -> None:
    """Passes `(all sizes)` and `(S and M: skip this part)`."""
    close = r.partner(r.at) if r.here.kind == "open" else None
    if close is None:
        return
    words_ = [token.low for token in r.tokens[r.at + 1 : close]]
    if words_[-2:] == ["all", "sizes"] or words_[-3:] in (["skip", "this", "part"], ["miss", "this", "part"]):
        r.at = close + 1
