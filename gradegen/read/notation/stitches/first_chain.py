"""Where the work on a foundation chain begins, said before its stitches: `starting in 2nd ch from hook: 5 sc`."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Either, Into, Number, Step, Thing, Work
from gradegen.read.notation.stitches.works import read_work
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.read.notation.words.word_lists import phrases


def read_first_chain(r: Reading) -> list[Step] | None:
    """The stitches as `sc in 2nd ch from hook, sc in next 4 ch`; None when the words say something else."""
    mark = r.at
    begin = _begin(r)
    works = read_work(r) if begin is not None else None
    parted = _parted(works[0], begin) if works and begin is not None else None
    if parted is None or works is None:
        r.at = mark
        return None
    together = _together(works[0], begin) if begin is not None else None
    if together is not None:
        parted = [Either((tuple(parted), (together,)), _WAYS, place=r.place(mark))]
    return [*parted, *works[1:]]


def _begin(r: Reading) -> Into | None:
    """The chain it starts in, with what stands between it and the first stitch passed over."""
    if not r.accept("starting", "beginning", "start", "begin", "working", "work", "from"):
        return None
    r.accept("in", "at", "from", "with", "into")
    r.accept("the")
    mark, ordinal = r.at, r.here
    if ordinal.kind == "ordinal" and isinstance(ordinal.value, int):
        nth = ordinal.value
    else:
        nth = _SPELLED.get(ordinal.low, 0)
    r.at += 1
    if nth < 2 or r.here.value != "ch":
        return None
    r.at += 1
    if not r.phrase(phrases("from hook|from the hook|from your hook")) and r.here.kind not in (",", ":"):
        return None
    into = Into("from hook", (Thing("ch"),), nth=r.whole(nth, ordinal.start, ordinal.end), place=r.place(mark))
    r.accept(",", ":")
    r.accept("work", "make")
    return into


_SPELLED = {"second": 2, "third": 3, "fourth": 4, "fifth": 5}


def _parted(step: Step, begin: Into) -> list[Step] | None:
    """The first of these stitches in that chain, the others in the chains after it."""
    if not isinstance(step, Work) or step.into.which not in ("next", "each") or step.into.nth is not None:
        return None
    first = replace(step, into=begin, bare=False)
    if step.into.which == "each":
        return [first, step]
    if step.into.number is None:
        return [first]
    others = _one_less(step.into.number)
    if others is None:
        return None
    return [first, *([replace(step, into=replace(step.into, number=others))] if others.values != (0,) else [])]


_WAYS = ("one stitch in each chain from there on", "all of them in that chain")
_MOST_IN_ONE = 4


def _together(step: Step, begin: Into) -> Work | None:
    """`beginning in 2nd ch from hook, 2 sc, sc in next 3 ch`: all of them may go into that chain."""
    number = plain(step.into.number) if isinstance(step, Work) and step.bare else None
    if not isinstance(step, Work) or number is None or not 1 < number <= _MOST_IN_ONE or len(step.makes) > 1:
        return None
    return replace(step, makes=(replace(step.makes[0], times=step.into.number),), into=begin, bare=False)


def _one_less(number: Number) -> Number | None:
    if number.formula is not None or any(value is None or value < 1 for value in number.values):
        return None
    values = tuple((value or 0) - 1 for value in number.values)
    return replace(number, values=values) if len(values) == 1 or 0 not in values else None
