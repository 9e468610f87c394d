"""Rows that point to other rows: `Rep Rows 3 and 4 5 times`, `As Rnd 7`, `Same as 6th round but having ch 3`."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Aside, Number, RowsAgain, Step, Unread
from gradegen.read.notation.asides.asides import read_growth
from gradegen.read.notation.passages.even_rows import read_measured
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.read.notation.words.times import Often, read_often
from gradegen.read.notation.words.tokens import Token
from gradegen.read.notation.words.word_lists import ROWS, phrases, words
from gradegen.trade.stitches import stitches

_MOST_ROWS = 200


def read_rows_again(r: Reading) -> RowsAgain | None:
    """The rows to be worked again; None when no row is named."""
    mark = r.at
    if (again := _in_this_manner(r)) is not None:
        return again
    begun = r.phrase(
        phrases(
            "alternate|alternating|continue repeating|continue to repeat|continue to rep|keep repeating|"
            "same as|sames as|same as for|repeating|repeat|rep|as for|as|like|work as for|work as|work same as|work"
        )
    )
    if not begun:
        return None
    bare_work = r.at == mark + 1 and r.tokens[mark].low == "work"
    r.accept(".") if r.tokens[mark].low == "rep" else None
    if r.low() == "from" and r.peek().kind == "ordinal" and r.low(2) in ROWS:
        r.at += 1
    these = r.accept("these", "those", "above")
    r.accept("the", "for")
    labels = _these_rows(r) if these else _labels(r)
    often = r.here.kind in ("number", "count") and r.low(1) == "times"
    if not labels or (bare_work and not often and r.low() not in ("again", "once", "another", "twice")):
        r.at = mark
        return None
    r.phrase(phrases("alternately|in order|in turn|again|in sequence"))
    again = RowsAgain(labels, sums=_sums_of(r, mark), place=r.place(mark))
    return _with_others(r, _tail(r, again, mark), mark)


def _with_others(r: Reading, again: RowsAgain, mark: int) -> RowsAgain:
    """`Row 2 twice, then Row 3 once`: rows 2, 2 and 3 in turn."""
    rows = _in_turn(again.labels, again.times)
    plainly = not (again.more or again.until or again.ending or again.except_ or again.sums)
    while rows and plainly:
        start = r.at
        r.accept(",", ";")
        r.accept("and")
        others = _labels(r) if r.accept("then") else ()
        often = read_often(r) if others else None
        more = _in_turn(others, often.number if often is not None and not often.how else None)
        if not more or not r.at_break():
            r.at = start
            break
        rows = (*rows, *more)
        again = replace(again, labels=rows, times=None, place=r.place(mark))
    return again


def _in_turn(labels: tuple[str, ...], times: Number | None) -> tuple[str, ...]:
    """These rows so many times; () where that hangs on the size."""
    number = plain(times) if times is not None else 1
    return labels * number if number is not None and number * len(labels) <= _MOST_ROWS else ()


def _in_this_manner(r: Reading) -> RowsAgain | None:
    """`Continue in this manner, working 1 more sc between increases each rnd`: the row above, growing; else None."""
    mark = r.at
    r.accept("continue", "continuing", "cont", "work", "proceed")
    r.accept("increasing", "decreasing", "inc", "dec", "shaping", "working", "on")
    if r.phrase(_SAME_WAY):
        r.accept(",", ";")
        growth = read_growth(r)
        if growth is not None:
            return RowsAgain(("last",), except_=(growth,), place=r.place(mark))
    r.at = mark
    return None


_SAME_WAY = phrases(
    "in this manner|in the same manner|in same manner|in this way|in the same way|in same way|in this fashion|"
    "as established|as set|in pattern|in established pattern|in pattern as set|in this pattern"
)


def _tail(r: Reading, again: RowsAgain, mark: int) -> RowsAgain:
    for _ in range(4):
        start = r.at
        r.accept(",", ";")
        r.accept("and")
        r.accept("another")
        often = _bracketed_often(r) or _for_rows(r) or read_often(r)
        if r.phrase(phrases("for pattern|for pat|throughout|for patt")):
            continue
        if r.phrase(_STRIPES):
            while r.here.kind not in (".", "end", "open", "close"):
                r.at += 1
            break
        if often is not None and again.times is None:
            again = replace(again, times=often.number, more=often.how == "more" or again.more)
            r.phrase(phrases("alternately|in order"))
            continue
        if r.phrase(phrases("ending with|ending after|end with|ending on")):
            r.accept("a", "an", "the")
            ended = _labels(r)
            if ended:
                again = replace(again, ending=ended[-1])
                continue
        elif r.low() in ("until", "till", "for") and again.until is None and (words := _until(r)):
            again = replace(again, until=words, measure=read_measured(r, start))
            continue
        elif r.low() in ("but", "except", "having", "omitting", "working") or (
            r.sees("with") and r.tokens[r.at - 1].kind == ","
        ):
            exception = _exception(r)
            again = replace(again, except_=(*again.except_, exception))
            continue
        r.at = start
        break
    return replace(again, place=r.place(mark))


_STRIPES = phrases(
    "in the stripe|in stripe|in stripes|in this stripe|in the following stripe|in the colour|in the color|in colour|"
    "in color|in the following colour|in the following color|following the stripe|following the colour|"
    "following the color"
)


def _sums_of(r: Reading, mark: int) -> tuple[tuple[str, Number], ...]:
    """The sums named as rows since `mark`."""
    differing = ((token.low, _differing(token)) for token in r.tokens[mark : r.at])
    return tuple((label, number) for label, number in differing if number is not None)


def _differing(token: Token) -> Number | None:
    """The number that is another from size to size, as a list or as a sum; None for any other token."""
    number = token.value if token.kind == "count" else None
    if not isinstance(number, Number) or (number.formula is None and len(number.values) == 1):
        return None
    return number


def _bracketed_often(r: Reading) -> Often | None:
    """`(4 times)`."""
    mark = r.at
    if r.here.kind == "open":
        r.at += 1
        often = read_often(r)
        if often is not None and r.here.kind == "close":
            r.at += 1
            return often
    r.at = mark
    return None


def _for_rows(r: Reading) -> Often | None:
    """`for 5 more rnds`."""
    mark = r.at
    if r.accept("for"):
        number = r.number()
        more = r.accept("more", "additional")
        if number is not None and r.accept(*ROWS):
            return Often(number, "more" if more else "")
    r.at = mark
    return None


def _until(r: Reading) -> str | None:
    """`until piece measures 9 in, ending with a WS row`: the words up to the end of the sentence."""
    start = r.at
    r.at += 1
    if r.tokens[start].low == "for" and not (
        r.here.kind in ("measure", "number", "count") or r.low() in ("length", "desired")
    ):
        r.at = start
        return None
    begin = r.at
    while r.here.kind not in (".", ";", "end", "close"):
        r.at += 1
    if r.at == begin:
        r.at = start
        return None
    return r.text(begin)


def _exception(r: Reading) -> Step:
    """What is done otherwise, in words: it cannot be worked, but for words that only say how the rows grow."""
    start = r.at
    growth = read_growth(r) or _other_stitch(r)
    if growth is not None:
        return growth
    while r.here.kind not in (".", ";", "end", "close"):
        r.at += 1
    return Unread(r.text(start), known=True, place=r.place(start))


def _other_stitch(r: Reading) -> Aside | None:
    """`working each FPdc as BPdc on WS rows`: one stitch in place of another that takes and makes as much."""
    mark = r.at
    r.accept("but")
    r.accept("working", "work")
    r.accept("each", "every", "all", "the")
    one = stitches().get(str(r.here.value)) if r.here.kind == "stitch" else None
    r.at += 1
    said_as = r.accept("as")
    other = stitches().get(str(r.here.value)) if r.here.kind == "stitch" else None
    if one is None or other is None or not said_as or (one.takes, len(one.makes)) != (other.takes, len(other.makes)):
        r.at = mark
        return None
    r.at = r.next_break(r.at)
    return Aside(r.text(mark), place=r.place(mark))


def _these_rows(r: Reading) -> tuple[str, ...]:
    """The 2 of `these 2 rows`."""
    mark = r.at
    number = r.number()
    if number is None or len(number.values) != 1 or not r.accept(*ROWS):
        r.at = mark
        return ()
    return (f"last {number.values[0]}",)


def row_labels(r: Reading) -> tuple[str, ...]:
    """Row numbers or names in the order named; (), and nothing read, when none stands here."""
    return _labels(r)


def _labels(r: Reading) -> tuple[str, ...]:
    """Row numbers or names in the order named: `2nd and 3rd rows`, `Rows 5-7`, `Neck Rows 1 and 2`, `last 2 rows`."""
    mark = r.at
    if r.low() in ("last", "previous", "preceding", "above"):
        return _last_rows(r, mark)
    name = ""
    if r.here.kind == "word" and r.low() not in ROWS and r.low(1) in ROWS:
        name = r.text(r.at, r.at + 1) + " "
        r.at += 1
    if r.tokens[r.at].low in _NAMED and r.low(1) in ROWS and not name:
        r.at += 2
        return (r.text(r.at - 2, r.at - 1),)  # `Rep dec row`
    if r.accept(*ROWS):
        r.accept(*ROWS)  # `rows R2 and R3`
        found = _numbers(r)
    else:
        counted = r.here.kind == "number"  # `repeat 2 rows` says how many, not which
        found = _numbers(r)
        if counted or not found or r.low() not in ROWS:
            r.at = mark
            return ()
        r.at += 1
    if not found:
        r.at = mark
        return (name.strip(),) if name and _just_named(r) else ()
    return tuple(name + number for number in found)


_NAMED = words("dec inc decrease increase decreasing increasing")


def _just_named(r: Reading) -> bool:
    """`Repeat Foundation row`."""
    if r.low() in ("foundation", "base", "pattern", "first", "increase", "decrease"):
        r.at += 2
        return True
    return False


def _last_rows(r: Reading, mark: int) -> tuple[str, ...]:
    r.at += 1
    number = r.number()
    if not r.accept(*ROWS):
        r.at = mark
        return ()
    if number is None or number.values == (1,):
        return ("last",)
    return (f"last {number.values[0]}",) if len(number.values) == 1 else ()


def _numbers(r: Reading) -> list[str]:
    found: list[str] = []
    while len(found) < _MOST_ROWS:
        if (sum_ := _sum(r)) is not None:
            found.append(sum_)
            mark = r.at
            if not _joins(r) or not (r.here.kind == "count" or _is_one(r)):
                r.at = mark
                break
            continue
        value = _one(r)
        if value is None:
            break
        found.append(str(value))
        mark = r.at  # behind the last number read
        if r.here.kind == "-" or r.low() in ("to", "through", "thru"):
            r.at += 1
            r.accept(*ROWS)
            last = _one(r)
            if last is not None and value < last <= value + _MOST_ROWS:
                found += [str(number) for number in range(value + 1, last + 1)]
                mark = r.at
            else:
                r.at = mark
                break
        if not _joins(r) or not (_is_one(r) or (r.here.kind == "count" and r.here.low.startswith("{"))):
            r.at = mark
            break
    return found


def _sum(r: Reading) -> str | None:
    """`{armhole + 1}`, `8 (11)` as it is written; not the number of times behind the rows."""
    token = r.here
    if _differing(token) is None:
        return None
    if r.peek().low in ("times", "time", "more", "x"):
        return None
    r.at += 1
    return token.low


def _joins(r: Reading) -> bool:
    start = r.at
    r.accept(",")
    r.accept("and", "then")
    r.accept(*ROWS)
    return r.at > start


def _is_one(r: Reading) -> bool:
    mark = r.at
    found = _one(r) is not None
    r.at = mark
    return found


def _one(r: Reading) -> int | None:
    """A row number; not the number of times behind it."""
    token = r.here
    if token.kind not in ("number", "ordinal") or not isinstance(token.value, int):
        return None
    if token.kind == "number" and r.peek().low in ("times", "time", "more", "x"):
        return None
    r.at += 1
    return token.value
