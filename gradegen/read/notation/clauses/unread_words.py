"""Words that no form takes, and whether they say something plain that cannot be computed."""

from __future__ import annotations

from itertools import pairwise

from gradegen.design.rows import Unread
from gradegen.read.notation.asides.unknown import is_filet
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import ROWS

_UNCOMPUTED = frozenset(
    {
        ("to", "correspond"),
        ("same", "as"),
        ("same", "manner"),
        ("like", "manner"),
        ("for", "pattern"),
        ("rows", "below"),
        ("in", "pattern"),
        ("on", "chart"),
        ("follow", "chart"),
        ("follow", "diagram"),
        ("evenly", "around"),
        ("evenly", "across"),
        ("closely", "around"),
        ("closely", "across"),
    }
)


def unread_words(r: Reading, mark: int, to: int) -> Unread:
    """The words from `mark` to `to`, kept as they stand."""
    return Unread(r.text(mark, to), is_known(r, mark, to), place=r.place(mark, to))


def is_known(r: Reading, mark: int, to: int) -> bool:
    """True for words that say something plain which cannot be computed."""
    lows = [token.low for token in r.tokens[mark:to]]
    if any(pair in _UNCOMPUTED for pair in pairwise(lows)):
        return True
    if is_filet(r.tokens[mark:to]):
        return True
    if "before" in lows and {"corner", "marker", "end"} & set(lows):
        return True
    changes = {"inc", "increase", "increasing", "dec", "decrease", "decreasing"} & set(lows)
    if lows[0] == "work" and r.tokens[mark + 1].kind in ("number", "count") and ROWS & set(lows):
        return True
    return bool(changes and "every" in lows)
