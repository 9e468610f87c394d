"""Work told for one side or end and meant for both: `2 sc in each of the 3 sts at each end, ... on each side`."""

from __future__ import annotations

from gradegen.design.rows import Repeat, Step, Times, Work
from gradegen.read.notation.stitches.works import read_work
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases

_BOTH = phrases("at each end|on each side|at both ends|on both sides|on each long side|on each short side")


def read_each_side(r: Reading) -> list[Step] | None:
    """Works with a number of their own, done twice in turn; None when no end or side is named."""
    mark = r.at
    body: list[Step] = []
    while (work := _one(r)) is not None:
        body.append(work)
        after = r.at
        r.accept(",")
        if not r.accept("and"):
            r.at = after
            break
    if not body:
        r.at = mark
        return None
    twice = r.whole(2, r.tokens[mark].start, r.tokens[mark].end)
    return [Repeat(tuple(body), Times("in all", twice), place=r.place(mark))]


def _one(r: Reading) -> Work | None:
    start = r.at
    found = read_work(r)
    if found is None or len(found) != 1 or not isinstance(work := found[0], Work):
        r.at = start
        return None
    if work.into.number is None or not r.phrase(_BOTH):
        r.at = start
        return None
    return work
