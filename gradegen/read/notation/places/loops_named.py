"""Front or back loops named for every stitch behind: `FLO:`, `working in back loops only`."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Aside, Step, Work
from gradegen.read.notation.places.place_words import read_loop
from gradegen.read.notation.words.reading import Loop, Reading
from gradegen.read.notation.words.word_lists import phrases

_ANY_LOOP = phrases(
    "|".join(
        f"{working}{loop}{only}"
        for working in ("working in the ", "working in ", "working into the ", "work in the ", "in the ", "in ")
        for loop in ("third loop", "3rd loop", "third loops", "both loops", "back bump", "back bumps", "third lp")
        for only in (" only", " throughout", "")
    )
)


def read_loop_for_all(r: Reading, steps: list[Step]) -> bool:
    """`FLO:` or `working in back loops only,`: for every stitch behind it."""
    mark = r.at
    if r.phrase(_ANY_LOOP) and r.here.kind in (",", ":", ";"):
        steps.append(Aside(r.text(mark), place=r.place(mark)))
        return True
    r.at = mark
    r.phrase(phrases("working in|work in|in|working through|picking up|working into|working in both loops of"))
    both = r.at > mark and r.tokens[r.at - 1].low == "of"
    loop = None if both else read_loop(r) or _loop_behind(r)
    if r.low() in ("each", "every") and r.peek().kind == "stitch":
        r.at += 2  # `working in back loop of each s c,`
    r.phrase(phrases("each st|all sts|sts only|sts|st only|stitches only|stitches|st|each sc"))
    throughout = r.phrase(phrases("throughout|around|across|of each st|only"))
    if loop is not None and throughout and r.tokens[r.at - 1].low == "throughout":
        r.loop = loop
        return True
    if both and r.here.kind == ",":
        r.loop = None
        steps.append(Aside(r.text(mark), place=r.place(mark)))
        return True
    if loop is None or r.here.kind not in (",", ":", ";", ".", "end", "close"):
        r.at = mark
        return False
    if r.here.kind in (".", "end", "close"):  # `sc in each st, working in back loops only`
        for i, step in enumerate(steps):
            if isinstance(step, Work) and step.into.loop is None:
                steps[i] = replace(step, into=replace(step.into, loop=loop))
        return bool(steps)
    r.loop = loop
    return True


def _loop_behind(r: Reading) -> Loop | None:
    """`loop in back of each sc`."""
    mark = r.at
    r.accept("the")
    if r.accept("loop", "loops") and r.accept("in"):
        side: Loop | None = "back" if r.accept("back") else "front" if r.accept("front") else None
        if side is not None and r.accept("of"):
            r.accept("each", "every")
            if r.here.kind == "stitch":
                r.at += 1
            return side
    r.at = mark
    return None
