"""`3 sc, inc x 6` without brackets: the times may bind the last stitch or the whole row."""

from __future__ import annotations

from gradegen.design.rows import Aside, Chain, Either, Join, Repeat, Step, Work
from gradegen.read.notation.reading import Reading


def with_whole_row(r: Reading, steps: list[Step]) -> list[Step]:
    """The steps; where the last one's times may bind all before it, both readings."""
    begin = 0
    while begin < len(steps) and isinstance(steps[begin], (Aside, Chain)):
        begin += 1
    end = len(steps)
    while end > begin and isinstance(steps[end - 1], (Aside, Join)):
        end -= 1
    part = steps[begin:end]
    if len(part) < 2 or not all(isinstance(step, Work) and step.bare for step in part[:-1]):
        return steps
    last = part[-1]
    if not isinstance(last, Repeat) or not _has_no_bracket(r, last):
        return steps
    whole = Repeat((*part[:-1], *last.body), last.times, "(", place=part[0].place)
    why = ("the times belong to the last stitch only", "the times belong to the whole row")
    either = Either((tuple(part), (whole,)), why, place=part[0].place)
    return [*steps[:begin], either, *steps[end:]]


def _has_no_bracket(r: Reading, repeat: Repeat) -> bool:
    """True for `inc x 6`, `inc 6 times`; not for `(inc) x 6`, `inc twice`, `dec 6`."""
    if len(repeat.body) != 1 or repeat.times.how != "in all" or repeat.times.number is None:
        return False
    if repeat.place.column != repeat.body[0].place.column or repeat.place.line != repeat.body[0].place.line:
        return False
    place = repeat.times.number.place
    for i, token in enumerate(r.tokens):
        if token.kind == "end":
            break
        if token.kind in ("number", "count") and r.written.place(token.start, token.end) == place:
            return r.tokens[i - 1].kind == "x" or r.tokens[i + 1].kind == "x" or r.tokens[i + 1].low == "times"
    return False
