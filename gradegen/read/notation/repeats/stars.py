"""Star repeats: open and closed stars, double stars, `repeat from * ...`, `repeat from beginning`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from gradegen.design.rows import Aside, Bound, Chain, Join, Repeat, Skip, Slip, Step, Times, Turn, Unread, Work
from gradegen.read.notation.repeats.repeats import (
    From,
    Star,
    closed,
    read_after_bracket,
    read_from,
    read_times,
    stop_of,
)
from gradegen.read.notation.words.reading import SEPARATORS, Reading
from gradegen.read.notation.words.word_lists import words

_COUNTING = 3  # the longest chain that may stand before an sc and be no loop
_OPENERS = SEPARATORS | {"open", "end", "star"}


def read_star(r: Reading, steps: list[Step], stars: list[Star]) -> None:
    """A star here: opens a body, closes one, or marks where the last repeat stops."""
    token = r.here
    sign = token.low
    before = r.tokens[r.at - 1] if r.at else None
    spoken = before is None or before.kind in _OPENERS or before.low in ("and", "then", "make", "work")
    outer = next((star for star in reversed(stars) if star.mark == sign), None)
    if sign == "**" and any(star.mark == "*" for star in stars) and _is_stop_mark(r):
        star = next(star for star in reversed(stars) if star.mark == "*")
        star.stop_at = len(steps) - star.begins
        r.at += 1
        return
    if outer is not None and outer.begins < len(steps) and (not spoken or _closes(r)):
        r.at += 1
        _close_pair(r, steps, stars, outer)
        return
    stars.append(Star(sign, len(steps), r.at))
    r.at += 1


def _is_stop_mark(r: Reading) -> bool:
    """True when `**` is named as where to stop, and never as where to begin."""
    sign = r.here.low
    at = False
    for i in range(r.at + 1, len(r.tokens)):
        if r.tokens[i].kind == "star" and r.tokens[i].low == sign:
            said = r.tokens[i - 1].low
            if said == "from":
                return False
            at = at or said in ("at", "to", "with", "before")
    return at


def _closes(r: Reading) -> bool:
    """True when what follows a star is how often, and not a step."""
    following = r.peek()
    if following.kind in SEPARATORS:
        following = r.peek(2)
    return following.kind in ("x", "end", "close") or following.low in ("rep", "repeat", "around", "across", "to")


def _close_pair(r: Reading, steps: list[Step], stars: list[Star], star: Star) -> None:
    """The body between two stars, and how often: `*2 sc, dec* x 6`, `*...*; rep from * to * around`."""
    body = steps[star.begins :]
    start = r.at
    times = read_after_bracket(r)
    if times is None:
        while r.here.kind in (",", ";", "."):
            r.at += 1
        repeated = read_from(r)
        times = read_after_bracket(r) if repeated is None and r.low() in ("rep", "repeat") else None
        if times is not None:
            pass
        elif repeated is not None:
            times = read_times(r) or Times("bound", bound=Bound("end"))
        else:
            r.at = start
            times = Times("bound", bound=Bound("end"))
    times = stop_of(r, body, star, times)
    del steps[star.begins :]
    del stars[stars.index(star) :]
    r.bodies[star.mark] = tuple(body)
    steps.append(closed(body, times, star.mark, r, star.token))


def _again(r: Reading, steps: list[Step], repeated: From, mark: int) -> bool:
    """`rep from * to * to last st`, said a second time: what stood between the stars once more."""
    body = r.bodies.get(repeated.mark)
    if body is None or not repeated.to_star:
        r.at = mark
        return False
    times = _said_times(r)
    if times.number is not None:
        times = replace(times, how="in all")
    steps.append(closed(body, times, repeated.mark, r, mark))
    return True


def read_star_repeat(r: Reading, steps: list[Step], stars: list[Star]) -> bool:
    """`repeat from * ...`; False when no open star or beginning is meant."""
    mark = r.at
    repeated = read_from(r)
    if repeated is None:
        return False
    if repeated.mark == "beginning" or (repeated.mark == "nearest" and not stars):
        return _from_beginning(r, steps, stars, mark)
    star = _meant(repeated, stars)
    if star is None or star.begins >= len(steps):
        return _again(r, steps, repeated, mark)
    body = steps[star.begins :]
    r.bodies[star.mark] = tuple(body)
    times = _said_times(r)
    times = stop_of(r, body, star, times)
    del steps[star.begins :]
    if repeated.nth == 1 or not _named_again(r, star.mark):
        del stars[stars.index(star) :]
    else:
        del stars[stars.index(star) + 1 :]
    steps.append(closed(body, times, star.mark, r, star.token))
    return True


def _meant(repeated: From, stars: list[Star]) -> Star | None:
    alike = [star for star in stars if repeated.mark in (star.mark, "nearest")]
    if not alike:
        return None
    return alike[0] if repeated.nth == 1 else alike[-1]


def _named_again(r: Reading, sign: str) -> bool:
    """True when the row later says `repeat from 1st *`."""
    for i in range(r.at, len(r.tokens) - 2):
        if r.tokens[i].low == sign and r.tokens[i].kind == "star" and r.tokens[i - 1].low in ("1st", "first"):
            return True
    return False


def _said_times(r: Reading) -> Times:
    """How often; nothing said: to the end when the row ends or turns here, once more when it goes on."""
    comma = r.at
    times = read_times(r)
    if times is None and r.here.kind == ",":
        r.at += 1
        times = read_times(r)
        if times is None:
            r.at = comma
    if times is not None:
        return times
    if r.low() in _WHERE:
        return _in_words(r)
    following = r.peek() if r.here.kind in SEPARATORS else r.here
    if following.kind == "end" or following.low in (
        "join",
        "turn",
        "ending",
        "working",
        "end",
        "fasten",
        "ch",
        "sl st",
        "cut",
        "break",
    ):
        return Times("bound", bound=Bound("end"))
    if following.kind in ("open", "close") or r.here.kind == ".":
        return Times("bound", bound=Bound("end"))
    return Times("more", r.whole(1, r.here.start, r.here.start))


_WHERE = words("along down up over on between through for in all at")


def _in_words(r: Reading) -> Times:
    """`rep from * along each side`: how far, in words that no count answers."""
    start = r.at
    r.at = r.next_break(start)
    return Times("bound", bound=Bound("words", words=r.text(start)))


def _from_beginning(r: Reading, steps: list[Step], stars: list[Star], mark: int) -> bool:
    """`repeat from beginning around`: everything behind the opening chain, slip stitch and thread."""
    begins = 0
    while begins < len(steps) and isinstance(steps[begins], (Aside, Join, Turn)):
        begins += 1
    if begins < len(steps) and isinstance(steps[begins], Slip):
        begins += 1
        begins += begins + 1 < len(steps) and isinstance(steps[begins], Chain)
    elif begins + 1 < len(steps) and isinstance(steps[begins], Chain) and not _chain_in_body(steps, begins):
        begins += 1
    body = steps[begins:]
    if not body:
        r.at = mark
        return False
    times = stop_of(r, body, None, _said_times(r))
    del steps[begins:]
    stars.clear()
    steps.append(closed(body, times, "*", r, mark))
    return True


def _chain_in_body(steps: list[Step], begins: int) -> bool:
    """True when the opening chain is the repeat's own: `Ch 7, sc in next loop, repeat from beginning`."""
    if not isinstance(steps[-1], Chain) and sum(isinstance(step, Chain) for step in steps[begins:]) == 1:
        return True
    after = steps[begins + 1]
    if isinstance(after, Slip):  # `ch 7, sl st in 5th ch from hook for picot`
        return after.into.which == "from hook"
    if _take_turns(steps[begins + 1 :]):
        return True
    chain, work = steps[begins], next((step for step in steps[begins:] if isinstance(step, Work)), None)
    is_loop = isinstance(chain, Chain) and any((value or 0) > _COUNTING for value in chain.number.values)
    return is_loop and work is not None and work.makes[0].stitch == "sc"


def _take_turns(steps: Sequence[Step]) -> bool:
    """True where every stitch but the first stands behind a chain, and a stitch ends it: the first one's chain too."""
    leaves = [step for step in _leaves(steps) if not isinstance(step, Skip)]
    pairs = list(pairwise(leaves))
    return (
        len(pairs) > 1
        and all(isinstance(one, Chain) != isinstance(other, Chain) for one, other in pairs)
        and (isinstance(leaves[0], Work) and isinstance(leaves[-1], Work))
    )


def _leaves(steps: Sequence[Step]) -> Iterator[Step]:
    for step in steps:
        if isinstance(step, Repeat):
            yield from _leaves(step.body)
        else:
            yield step


def close_open_star(r: Reading, steps: list[Step], stars: list[Star]) -> bool:
    """`*Sc 3, sc2tog; around`; False when no limit stands here."""
    star = stars[-1]
    if star.begins >= len(steps):
        return False
    mark = r.at
    times = read_times(r)
    if times is None or times.how != "bound" or not r.at_break():
        r.at = mark
        return False
    body = steps[star.begins :]
    del steps[star.begins :]
    stars.pop()
    steps.append(closed(body, times, star.mark, r, star.token))
    return True


def close_at_end(r: Reading, steps: list[Step], stars: list[Star]) -> None:
    """A star that nothing refers to is kept as unread, so that the row is not worked without its repeat."""
    for star in reversed(stars):
        token = r.tokens[star.token]
        place = r.written.place(token.start, token.end)
        steps.insert(star.begins, Unread(token.low, place=place))
    stars.clear()
