"""Printed counts in all shapes: `[18]`, `(16 dc, 4 ch-2 sps)`, `= 18 sc`, `- 12 dc`, `You now have 8 dc`."""

from __future__ import annotations

from gradegen.design.rows import Number, Stated, Thing
from gradegen.read.notation.places.things import STITCHES, read_thing
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.read.notation.words.word_lists import phrases, words

_REMARKS = words(
    "increased decreased inc dec increase decrease incs decs added lost left skipped unworked free apart "
    "long wide high cm mm inch inches in per each rows rnds rounds row rnd round times more rem "
    "remaining tog together"
)
_ROWS = words("row rnd round")
_COUNTING = words("counting including incl")
_TAIL = phrases(
    "at end of last row|at end of last rnd|at end of last round|at end of row|at end of rnd|"
    "at end of round|at end|on needle|on this side|in this rnd|in this row|in rnd|in row|in round|in all|"
    "in total|total|altogether|made|around|across|completed|now|remaining|remain|rem|after last row|"
    "after last rnd|after last round|after row|after rnd|after round|after the last row|after the last rnd|"
    "at end of the last row|at end of the last rnd|at the end of row|at the end of rnd|at the end of round|"
    "at the end|each row|each rnd|each round|per row|per rnd|per round|on each row|on each rnd|"
    "for each row|for each rnd|on this row|on this rnd"
)


def read_bracketed_count(r: Reading) -> list[Stated] | None:
    """The counts in a bracket here; None when the bracket holds something else."""
    mark = r.at
    close = r.partner(mark)
    if close is None:
        return None
    r.at += 1
    found = read_counts_here(r, close)
    if found is None:
        r.at = mark
        return None
    r.at = close + 1
    return found


def read_counts_here(r: Reading, stop: int) -> list[Stated] | None:
    """The counts between here and the token at `stop`; a remark behind a `;` or `,` is passed over."""
    r.phrase(phrases("there are|total of|a total of|total :|total|makes|you have"))
    found: list[Stated] = []
    while r.at < stop:
        one = _count(r)
        if one is None:
            break
        found.append(one)
        _tail(r)
        if r.at >= stop:
            break
        if r.here.kind in (",", "-", ";", "+") or r.low() in ("and", "plus", "with"):
            while r.at < stop and (r.here.kind in (",", "-", ";", "+") or r.low() in ("and", "plus", "with")):
                r.at += 1
            if r.at < stop and not _begins_count(r):
                return _remarked(r, found, stop)
            continue
        return None
    if not found or r.at != stop:
        return _remarked(r, found, stop) if found and r.tokens[r.at - 1].kind in (",", ";") else None
    return _added_up(found, r)


def _begins_count(r: Reading) -> bool:
    return r.here.kind in ("number", "count") or (r.low() in ("a", "an") and r.low(1) == "half")


def _remarked(r: Reading, found: list[Stated], stop: int) -> list[Stated] | None:
    """The counts before a remark: `(19 (23, 27); 1 st left at end)`, `(60 dc, counting the 3 skipped ch as 1)`."""
    sign = r.tokens[r.at - 1].kind
    said = r.tokens[r.at : stop]
    if sign != ";" and not (r.here.kind == "word" and r.low() not in STITCHES):
        return None
    if any(token.kind == "star" or token.value == "ch" for token in said) and r.low() not in _COUNTING:
        return None
    if r.low() in _COUNTING:
        r.counting = r.at
    r.at = stop
    return _added_up(found, r) if found else None


def _tail(r: Reading) -> None:
    mark = r.at
    if r.phrase(phrases("at end of|at the end of|after|in")):
        r.accept("the")
        if r.ordinal() is not None and r.accept("row", "rnd", "round"):
            return
    r.at = mark
    if r.phrase(_TAIL) and r.tokens[r.at - 1].low in ("row", "rnd", "round"):
        r.number()


def _count(r: Reading) -> Stated | None:
    mark = r.at
    if r.low() in ("a", "an") and r.low(1) == "half":
        token = r.here
        number: Number | None = r.whole(1, token.start, token.end)
        r.at += 1
    else:
        number = r.number()
    if number is None:
        r.at = mark
        return None
    if r.here.kind == "x" and r.peek().kind in ("number", "chain", "stitch"):
        r.at += 1  # `4 x ch-2 sp`
    unit = _unit(r)
    if unit is None:
        r.at = mark
        return None
    return Stated(number, unit, place=r.place(mark))


def _unit(r: Reading) -> Thing | None:
    """The unit behind a count; "st" when none is written; None when what follows is a remark, not a count."""
    if r.here.kind in ("close", ",", ";", ".", "end", "-", "+") or r.low() in ("and", "plus", "at", "total", "in"):
        if r.low() == "in" and r.low(1) not in ("all", "total", "this", "rnd", "row", "round"):
            return None
        return Thing("st")
    mark = r.at
    r.accept("total", "full", "whole", "complete")
    part = r.peek().kind == "stitch" and r.accept("half", "partial")
    thing = read_thing(r)
    if thing is not None and part:
        return Thing(f"half {thing.name}")  # `2 half shells`: a unit of its own
    if thing is not None and (grouped := _of_stitches(r)) is not None:
        return grouped
    if thing is not None and r.low() in ("each", "per", "every") and r.low(1) in _ROWS:
        return thing  # `42 sts each row`
    if thing is None:
        thing = _word_unit(r)
    elif r.low() in _REMARKS and r.low() not in ("rem", "remaining", "in"):
        thing = None
    if thing is None or (r.low() == "in" and r.low(1) == "each"):
        r.at = mark
        return None
    if r.accept_all("on", "each") or r.accept_all("per") or r.accept_all("each"):
        r.at = mark
        return None
    return thing


def _of_stitches(r: Reading) -> Thing | None:
    """Behind `12 clusters`: `of 3 dc`, which are groups then, whatever they are called; else None."""
    mark = r.at
    if r.accept("of") and r.number() is not None and r.here.kind == "stitch":
        r.at += 1
        return Thing("group", of=str(r.tokens[r.at - 1].value))
    r.at = mark
    return None


def _word_unit(r: Reading) -> Thing | None:
    """A unit we have no word for: `12 scallops`, `6 large petals`."""
    words: list[str] = []
    while (
        r.here.kind == "word" and len(words) < 3 and r.low() not in ("and", "at", "plus", "in", "on", "made", "total")
    ):
        if r.low() in _REMARKS:
            return None
        words.append(r.low())
        r.at += 1
    if not words or not (r.here.kind in ("close", ",", ";", ".", "end", "-") or r.here.kind == "word"):
        return None
    last = words[-1]
    words[-1] = last[:-1] if last.endswith("s") and not last.endswith("ss") else last
    return Thing(" ".join(words))


def _added_up(found: list[Stated], r: Reading) -> list[Stated]:
    """Counts of one unit as one: `(4 sps, 13 bls, 4 sps)` are 8 sps."""
    out: list[Stated] = []
    grouped = {one.unit.of for one in found if one.unit.name == "group" and one.unit.of}
    for one in found:
        if one.unit.name in grouped:
            continue  # `14 groups of 3 dc and 2 dc`: those beside the groups
        same = next((i for i, other in enumerate(out) if other.unit == one.unit), None)
        if same is None:
            out.append(one)
            continue
        first, second = plain(out[same].number), plain(one.number)
        if first is None or second is None:
            out.append(one)
            continue
        number = Number((first + second,), place=out[same].number.place, places=(out[same].number.place,))
        out[same] = Stated(number, one.unit, place=out[same].place)
    return out


_TOTALS = phrases("total :|total of|total|in total|count :|stitch count :|st count :|sts :|makes|for a total of")


def read_open_count(r: Reading, *, at_sentence: bool) -> list[Stated] | None:
    """`= 18 sc`, `- 30 (34, 38) sts`, `: 60 sc`, `You now have 57 dc`, or a bare `12 sps` as a sentence of its own.

    None when no count stands here. `at_sentence`: a full stop or the like stands before.
    """
    mark = r.at
    signed = r.here.kind in ("=", "-", ":") and r.peek().kind in ("number", "count")
    if signed:
        r.at += 1
    elif r.phrase(_TOTALS):
        if r.here.kind not in ("number", "count"):
            r.at = mark
            return None
    elif r.phrase(phrases("you now have|you should have|you should now have|you have|there are|making|leaving")):
        if r.tokens[mark].low in ("making", "leaving") and not at_sentence and r.here.kind not in ("number", "count"):
            r.at = mark
            return None
    elif not at_sentence:
        return None
    if r.here.kind not in ("number", "count"):
        r.at = mark
        return None
    found = _sentence(r)
    if found is not None and r.tokens[mark].kind == "-" and r.here.kind == "-" and r.peek().kind in ("end", "."):
        r.at += 1  # `-43 dc-`
    bare = r.tokens[mark].kind in ("number", "count")
    if found is None or not _ends(r) or (bare and all(one.unit.name == "ch" for one in found)):
        r.at = mark  # `2ch, htr in each ch` begins a row, in the UK manner
        return None
    return found


def _sentence(r: Reading) -> list[Stated] | None:
    found: list[Stated] = []
    while True:
        one = _count(r)
        if one is None:
            return None if not found else _added_up(found, r)
        found.append(one)
        _tail(r)
        mark = r.at
        if not (r.accept(",", "+", "plus") or r.low() == "and"):
            return _added_up(found, r)
        if r.low() in ("counting", "including", "not"):
            r.at = r.next_break(r.at)  # `18 dc, counting ch-3 as 1 dc`
            return _added_up(found, r)
        r.accept("and")
        if r.here.kind not in ("number", "count"):
            r.at = mark
            return _added_up(found, r)


def _ends(r: Reading) -> bool:
    return r.here.kind in (".", "end", ";", "open", ",", "close") or r.low() == "turn"
