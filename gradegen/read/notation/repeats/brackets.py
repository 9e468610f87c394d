"""What stands in a bracket: a count, a remark, a group for one place, or steps to repeat."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from typing import Any

from gradegen.design.rows import Aside, Chain, Counts, Repeat, Stated, Step, Times, Unread, Work
from gradegen.read.notation.asides.asides import read_trailing
from gradegen.read.notation.asides.size_passages import read_bracketed_sizes
from gradegen.read.notation.asides.stated import read_bracketed_count
from gradegen.read.notation.places.places_named import read_place
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.repeats.repeats import closed, read_after_bracket, stop_of
from gradegen.read.notation.stitches.counting import read_count_words, read_counted
from gradegen.read.notation.stitches.makes import MOST_SPELLED_OUT, makes_of, read_group
from gradegen.read.notation.stitches.works import read_name_remark
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.read.notation.words.times import read_multiplier
from gradegen.read.notation.words.word_lists import ROWS, words

ReadSteps = Callable[..., Any]


def read_bracket(r: Reading, steps: list[Step], stated: list[Stated], stop: int, read_steps: ReadSteps) -> None:
    """Reads the bracket here and what follows it, and adds to the steps or the counts."""
    mark = r.at
    close = r.partner(mark)
    if close is None or close >= stop:
        r.at += 1  # a bracket without its partner: read on as if it were not there
        return
    sized = read_bracketed_sizes(r, close, stop, read_steps)
    if sized is not None:
        steps.append(sized[0])
        stated += sized[1]
        return
    if _count(r, steps, stated, close) or _remark(r, steps, mark, close):
        return
    if _one_place(r, steps, mark, close):
        return
    if _repeated(r, steps, mark, close, read_steps):
        return
    r.at = close + 1
    steps.append(_kept(r, mark, close))


def read_times_before(r: Reading, steps: list[Step], stop: int, read_steps: ReadSteps) -> bool:
    """`6 x (sc, inc)`: how often stands before the bracket; False, and nothing read, for anything else."""
    mark = r.at
    number = r.number()
    opened = r.at + 1
    close = r.partner(opened) if number is not None and r.here.kind == "x" and r.peek().kind == "open" else None
    if number is None or close is None or close >= stop:
        r.at = mark
        return False
    r.at = opened + 1
    body = read_steps(r, close)
    r.at = close + 1
    if not body.steps or not r.at_break():
        r.at = mark
        return False
    steps.append(closed(tuple(body.steps), Times("in all", number), r.tokens[opened].low, r, mark))
    return True


def _count(r: Reading, steps: list[Step], stated: list[Stated], close: int) -> bool:
    mark = r.at
    found = read_bracketed_count(r)
    if found is None:
        return False
    if read_place(r) is not None or r.here.kind in ("x",):  # `(3 dc) in next sp`, `(2 sc) x 6`
        r.at = mark
        return False
    after = r.here
    if after.kind in ("number", "count") or after.low in ("times", "twice", "once", "around", "across", "to"):
        r.at = mark
        return False
    often = r.peek().kind in ("number", "count") and r.peek(2).low == "times"
    if after.kind == "," and (often or r.peek().low in ("twice", "once")):  # `(3 sp, 4 dc), 4 times`
        r.at = mark
        return False
    begins_row = all(isinstance(step, Aside) for step in steps) and all(one.unit.name != "st" for one in found)
    if begins_row and after.kind not in (".", "end"):
        r.at = mark
        return False
    stated += found
    if r.counting is not None:
        _counting_skipped(r, steps, r.counting, close)
        r.counting = None
    return True


def _counting_skipped(r: Reading, steps: list[Step], at: int, close: int) -> None:
    """`counting the 3 skipped ch as 1` inside a count."""
    said = {token.low for token in r.tokens[at:close]}
    end = r.at
    r.at = next((i for i in range(at, close) if r.tokens[i].low == "as"), close)
    if "skipped" in said and r.accept("as"):
        found = read_counted(r)
        for i, step in enumerate(steps):
            if found is not None and isinstance(step, Work) and step.into.which == "from hook":
                steps[i] = replace(step, skipped=Counts(found[0], place=r.place(at, close)))
                break
    r.at = end


def _remark(r: Reading, steps: list[Step], mark: int, close: int) -> bool:
    """`(counts as dc)`, `(skipped ch count as a dc)`, `(shell)`, `(RS)`, `(2 sts increased)`."""
    name = read_name_remark(r) if steps else ""
    if name:
        _called(steps, name)
        return True
    if _counted_with_chain(r, steps, mark, close):
        return True
    if _skipped_count(r, steps, mark, close) or _late_count(r, steps, mark, close):
        return True
    if not (_is_colour(r, mark, close) or _is_talk(r, mark, close) or _is_explained(r, mark, close)):
        return False
    r.at = close + 1
    steps.append(Aside(r.text(mark), place=r.place(mark)))
    return True


def _is_explained(r: Reading, mark: int, close: int) -> bool:
    """`picot (ch 3, sl st in first ch)`: how a stitch is made that counts as itself in any case."""
    before, after = r.tokens[mark - 1], r.tokens[close + 1]
    named = mark > 0 and before.kind == "stitch" and before.value in ("picot", "popcorn", "bobble", "puff")
    return named and (after.kind in (",", ";", ".", "end", "close") or after.low in ("in", "into"))


_COLOURS = words("a b c d e f g h mc cc ca cb cc1 cc2 cc3 c1 c2 c3 c4")


def _is_colour(r: Reading, mark: int, close: int) -> bool:
    """`(A) 3 sc, (B) 2 sc`: the colour that is worked from here on."""
    return close == mark + 2 and r.tokens[mark + 1].low in _COLOURS and r.tokens[close + 1].low not in _OFTEN


_OFTEN = words("times time x twice once")


def _called(steps: list[Step], name: str) -> None:
    for i in range(len(steps) - 1, -1, -1):
        step = steps[i]
        if isinstance(step, Work):
            if not step.called:
                steps[i] = replace(step, called=name)
            return
        if not isinstance(step, (Aside, Chain)):
            return


def _counted_with_chain(r: Reading, steps: list[Step], mark: int, close: int) -> bool:
    """`dc in 4th ch from hook (counts as 2 dc)`: the chains passed by and the stitch itself."""
    last = steps[-1] if steps else None
    r.at = mark + 1
    if not (
        isinstance(last, Work) and last.into.which == "from hook" and r.accept("counts", "count") and r.accept("as")
    ):
        r.at = mark
        return False
    r.accept("first", "the")
    two = r.accept("2", "two")
    r.accept("first")
    if not two or r.here.kind != "stitch" or r.at + 1 != close:
        r.at = mark
        return False
    steps[-1] = replace(last, skipped=Counts((str(r.here.value),), place=r.place(mark)))
    r.at = close + 1
    return True


def _skipped_count(r: Reading, steps: list[Step], mark: int, close: int) -> bool:
    """`(skipped ch-3 counts as dc)`, `(first 3 ch count as dc)` belongs to the stitch worked from the hook."""
    r.at = mark + 1
    said = {token.low for token in r.tokens[mark + 1 : close]}
    if not said & {"skipped", "first", "missed", "unused", "beginning", "beg"}:
        r.at = mark
        return False
    while r.at < close and r.low() not in (
        "count",
        "counts",
        "counting",
        "counted",
        "does",
        "do",
        "is",
        "are",
        "equal",
    ):
        if r.here.kind == "=":
            break
        r.at += 1
    found = read_count_words(r)
    work = next(((i, s) for i, s in enumerate(steps) if isinstance(s, Work) and s.into.which == "from hook"), None)
    if found is None or r.at != close or work is None:
        r.at = mark
        return False
    r.at = close + 1
    steps[work[0]] = replace(work[1], skipped=Counts(found[0], found[1], place=r.place(mark)))
    return True


def _late_count(r: Reading, steps: list[Step], mark: int, close: int) -> bool:
    """`(counts as dc)` that stands one step behind its chain."""
    r.at = mark + 1
    found = read_count_words(r)
    chain = next(((i, s) for i, s in enumerate(steps) if isinstance(s, Chain)), None)
    if found is None or r.at != close or chain is None or len(steps) > chain[0] + 2 or chain[1].counts is not None:
        r.at = mark
        return False
    r.at = close + 1
    steps[chain[0]] = replace(chain[1], counts=Counts(found[0], found[1], place=r.place(mark)))
    return True


_TALKS_FIRST = words("counting count this there these always first do when note see")
_TALK = words(
    "this brings thread increased decreased increase decrease inc dec made rs ws right wrong side note "
    "see photo counting count counts first last position mark marker center armhole neck edge always "
    "complete when colors colours do don't"
)


def _is_talk(r: Reading, mark: int, close: int) -> bool:
    """True for a remark that holds no work: no stitch in it, or words that only talk about stitches."""
    inside = r.tokens[mark + 1 : close]
    if not inside:
        return True
    stitched = [token for token in inside if token.kind in ("stitch", "chain")]
    lows = [token.low for token in inside]
    if inside[0].low in _TALKS_FIRST:
        return True
    if any(token.low in ("increased", "decreased") for token in inside):
        return True
    if ("made", "over") in pairwise(lows):
        return True  # (sp made over bl)
    first = inside[1 if inside[0].low == "the" and len(inside) > 1 else 0]
    if first.low in ("chain", "ch") and {"counts", "count", "counted"} & {token.low for token in inside}:
        return True  # (ch 4 at beg of each round counts as dc and ch 1)
    if inside[0].kind == "number" and ("in", "each") in pairwise(lows) and "section" in lows:
        return True  # (9 dc in each section)
    if inside[0].kind in ("number", "count") and lows[-2:] in (["each", "side"], ["each", "edge"], ["each", "end"]):
        return True  # (36 dc on each side)
    named = inside[0].kind == "stitch" or (len(inside) > 1 and inside[1].low in STITCHES)
    if named and any(token.kind == ":" for token in inside[1:3]):
        return True  # (cluster: ...) explains a stitch
    if inside[-1].value in ("inc", "dec") and not any(token.kind == "," for token in inside):
        return r.tokens[close + 1].kind in (",", ".", ";", "end", "close")  # (1 pattern dec)
    rows = any(token.low in ROWS for token in inside)
    if rows and all(token.value in ("inc", "dec") for token in stitched):
        return True
    if stitched or any(token.kind == "star" for token in inside):
        return False
    after = r.tokens[close + 1]
    return not (
        after.kind in ("number", "count", "x")
        or after.low in ("times", "twice", "once", "in", "around", "across", "rep")
    )


def _one_place(r: Reading, steps: list[Step], mark: int, close: int) -> bool:
    """`(2 dc, ch 2, 2 dc) in next sp`."""
    r.at = mark + 1
    items = read_group(r, close)
    if items is None:
        r.at = mark
        return False
    r.at = close + 1
    called = read_name_remark(r)
    times = plain(read_multiplier(r))
    r.accept("all")
    into = read_place(r)
    if into is None or (times is not None and not 1 <= times <= MOST_SPELLED_OUT):
        r.at = mark
        return False
    items = items * (times or 1)
    if r.loop and into.loop is None:
        into = replace(into, loop=r.loop)
    called = called or read_name_remark(r)
    work = Work(makes_of(items), into, called=called, place=r.place(mark))
    if r.at_break() or read_trailing(r) is not None:
        steps.append(work)
        return True
    often = read_after_bracket(r)
    if often is None or not r.at_break():
        r.at = mark
        return False
    steps.append(Repeat((work,), often, place=r.place(mark)))
    return True


def _repeated(r: Reading, steps: list[Step], mark: int, close: int, read_steps: ReadSteps) -> bool:
    """`(sc, inc) x 6`, `[dc, 2 dc in next st] around`."""
    r.at = mark + 1
    unknown = len(r.unknown)
    body = read_steps(r, close)
    if r.at != close or not body.steps:
        r.at = mark
        return False
    r.at = close + 1
    inner = tuple(body.steps)
    start = r.at
    times = read_after_bracket(r)
    if times is None and r.here.kind == ",":
        r.at += 1
        often = r.here.kind in ("number", "count") and r.peek().low == "times"
        said = often or r.low() in ("around", "across", "to", "repeat", "rep", "twice")
        times = read_after_bracket(r) if said else None
        if times is None:
            r.at = start
    if times is None:
        r.at = mark
        del r.unknown[unknown:]
        return False
    times = stop_of(r, inner, None, times)
    if not r.at_break() and read_trailing(r) is None:
        r.at = mark
        del r.unknown[unknown:]
        return False
    steps.append(closed(inner, times, r.tokens[mark].low, r, mark))
    return True


def _kept(r: Reading, mark: int, close: int) -> Step:
    """A bracket that fits no form: words that may hide stitches."""
    return Unread(r.text(mark, close + 1), place=r.place(mark, close + 1))
