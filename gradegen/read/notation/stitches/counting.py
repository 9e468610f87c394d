"""What a chain is said to count as: `(counts as dc)`, `(counts as dc and ch 1, here and throughout)`, `(not a st)`."""

from __future__ import annotations

from gradegen.design.rows import Counts
from gradegen.read.notation.places.things import SPACES, STITCHES
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.read.notation.words.word_lists import phrases

_FROM_HERE = phrases(
    "here and throughout|here and below|here and after|here and hereafter|"
    "now and throughout|here and elsewhere|from here on|from now on|throughout|always|"
    "now and for the rest of the pattern|here and throughout the pattern|here and in all rows|here and in all rnds"
)
_ONLY_HERE = phrases("here|in this row|in this rnd|in this round|for this row|for this rnd|this time|only here")
_AS_NOTHING = phrases("counts as 0|count as 0|counts as zero|count as zero|counts as no|= 0|= no|equals 0|is 0")
_NOT = phrases(
    "does not count as|do not count as|doesn't count as|don't count as|never counts as|never count as|"
    "not counted as|is not counted as|does not count|do not count|doesn't count|don't count|"
    "is not counted|are not counted|never count|never counts|not counted|is not|isn't|aren't|are not|is never|"
    "are never|not"
)


def read_counts(r: Reading) -> Counts | None:
    """The remark in brackets behind a chain; None when there is none."""
    mark = r.at
    r.accept(",")
    opened = r.here.kind == "open"
    close = r.partner(r.at) if opened else None
    if opened:
        r.at += 1
    elif r.low() not in ("counts", "counting", "does", "doesn't"):
        r.at = mark
        return None
    found = read_count_words(r, listed=opened)
    if found is None or (opened and (close is None or r.at > close)):
        r.at = mark
        return None
    if opened and r.low() in ("in", "on", "over", "for", "of"):
        r.at = close or r.at  # `(counts as hdc in last sl st)`
    if opened and r.at != close:
        r.at = mark
        return None
    if opened:
        r.at += 1
    as_, from_here = found
    return Counts(as_, from_here, place=r.place(mark))


def read_count_words(r: Reading, *, listed: bool = True) -> tuple[tuple[str, ...], bool] | None:
    """`counts as dc and ch 1, here and throughout`, without brackets; else None."""
    mark = r.at
    r.accept("this", "which", "it", "the")
    if r.here.kind == "chain" or r.here.value == "ch":
        r.at += 1
        if r.here.kind == "number":
            r.at += 1
    if r.phrase(_NOT) or r.phrase(_AS_NOTHING):
        return _not_counted(r, mark)
    if not (
        r.phrase(phrases("counts as|count as|counting as|counted as|to count as|is always|is|are"))
        or r.phrase(phrases("always counts as|equals|stands for|stand for|stands in for|takes the place of|as|="))
        or r.phrase(phrases("is used for|are used for|is used as|are used as|replaces|replace|is counted as"))
    ):
        r.at = mark
        return None
    counted = read_counted(r, listed=listed)
    if counted is None:
        r.at = mark
    return counted


def read_counted(r: Reading, *, listed: bool = True) -> tuple[tuple[str, ...], bool] | None:
    """`dc and ch 1, here and throughout`; None when nothing is named. `listed`: a comma may stand between."""
    as_: list[str] = []
    while (one := _counted(r)) is not None:
        as_.append(one)
        step = r.at
        while (listed and r.here.kind == ",") or r.here.kind == "+" or r.low() in ("and", "plus"):
            r.at += 1
        named = r.here.kind in ("stitch", "chain", "number") or r.low() in ("a", "an")
        if not named or _begins_another(r):
            r.at = step
            break
    return (tuple(as_), _from_here(r)) if as_ else None


def _begins_another(r: Reading) -> bool:
    """`..., ch 4 as 1 dc and ch 1` behind what was said of another chain."""
    at = 1 if r.here.kind == "chain" else 2 if r.here.value == "ch" and r.peek().kind == "number" else 0
    return bool(at) and r.low(at) in ("as", "for", "counts", "to", "at")


def _not_counted(r: Reading, mark: int) -> tuple[tuple[str, ...], bool] | None:
    r.accept("a", "an", "the", "1")
    r.accept("first", "1st")
    if r.here.kind == "stitch" or r.low() in STITCHES:
        r.at += 1
    return (), _from_here(r)


def _from_here(r: Reading) -> bool:
    mark = r.at
    r.accept(",", ";")
    if r.phrase(_FROM_HERE):
        r.phrase(phrases("throughout|pattern"))
        return True
    r.at = mark
    r.phrase(phrases("in st count|in stitch count")) or r.phrase(_ONLY_HERE)
    return False


def _counted(r: Reading) -> str | None:
    """`a dc`, `first dc`, `1 st`, `ch 1`, `2 ch`, `ch-2 sp`: the stitch's id, "st", or "ch-2 sp"."""
    mark = r.at
    r.accept("the", "your", "a", "an")
    before = r.number() if r.here.kind == "number" else None
    r.accept("first", "1st", "beginning", "beg")
    if r.here.kind == "ordinal":
        r.at += 1
    token = r.here
    if token.kind == "chain":
        r.at += 1
        if r.low() in SPACES:
            r.at += 1
        return f"ch-{plain(r.chain_length(token)) or 1} sp"
    if token.kind == "stitch":
        r.at += 1
        if token.value == "ch":
            number = r.number() or before
            if r.low() in SPACES:
                r.at += 1
            return f"ch-{number.values[0] if number and number.values else 1} sp"
        if r.low() in STITCHES:
            r.at += 1
        return str(token.value)
    if token.low in STITCHES:
        r.at += 1
        return "st"
    if token.low in SPACES:
        r.at += 1
        return "sp"
    if r.tokens[r.at - 1].low in ("1", "one") and r.at > mark:
        return "st"
    r.at = mark
    return None
