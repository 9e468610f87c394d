"""Popcorns told by what the hook does: `drop loop from hook, insert hook in first dc, draw loop through`."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Chain, Counts, Make, Step, Work
from gradegen.read.notation.stitches.works import read_name_remark
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases

_DROP = phrases(
    "drop loop from hook|drop loop off hook|drop loop|drop st from hook|drop st off hook|drop last loop from hook|"
    "remove hook from loop|remove hook|slip loop off hook|slip loop from hook|take hook out of loop"
)
_FASTEN = phrases("ch 1 to fasten|ch 1 to close|ch 1 tightly|and fasten|and tighten|tightly")
_FURTHEST = 30  # words from the dropped loop to where it is drawn through


def with_dropped_loop(r: Reading, steps: list[Step]) -> list[Step] | None:
    """The stitches just worked into one place as one popcorn; a chain drawn together with them is a part of it."""
    mark = r.at
    last = steps[-1] if steps else None
    if not isinstance(last, Work) or len(last.makes) != 1 or last.into.number is not None or not r.phrase(_DROP):
        return None
    over_chain = _drawn_through(r)
    if over_chain is None:
        r.at = mark
        return None
    fastened = r.at
    r.accept(",")
    r.accept("and")
    if not r.phrase(_FASTEN):
        r.at = fastened
    called = read_name_remark(r)
    steps.pop()
    if over_chain and steps and isinstance(steps[-1], Chain):
        steps[-1] = replace(steps[-1], counts=Counts((), place=steps[-1].place))
    popcorn = Make("popcorn", place=last.makes[0].place)
    return [replace(last, makes=(popcorn,), called="" if called == popcorn.stitch else called)]


def _drawn_through(r: Reading) -> bool | None:
    """Passes up to `draw loop through`: whether the hook went into a chain; None where nothing is drawn through."""
    said: list[str] = []
    chained = False
    while len(said) < _FURTHEST and r.here.kind not in (".", "star", "end", "open", "close"):
        said.append(r.here.low)
        chained = chained or r.here.kind == "chain" or r.here.value == "ch"
        r.at += 1
        if said[-1] == "through" and "insert" in said and {"draw", "pull"} & set(said):
            r.accept("it", "loop", "st")
            return chained
    return None
