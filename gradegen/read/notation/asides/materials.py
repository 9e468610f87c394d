"""Sentences about lengths of yarn: `Cut yarn as follows: six 2 yard lengths of Red`, `Tie all lengths together`."""

from __future__ import annotations

from gradegen.design.rows import Aside
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import words

_DONE = words("cut tie wind knot")
_LENGTHS = words("length lengths yard yards")
_WORK = words("row rows rnd rnds round rounds turn join attach work loop loops sp sps")


def read_material(r: Reading) -> Aside | None:
    """The whole sentence, stars and all, where it names no stitch and no row; else None."""
    mark = r.at
    if r.low() not in _DONE and r.low() != "when":
        return None
    if mark and r.tokens[mark - 1].kind != ".":
        return None
    end = mark
    while r.tokens[end].kind not in (".", "end"):
        end += 1
    said = {token.low for token in r.tokens[mark:end]}
    has_work = any(token.kind in ("stitch", "chain") for token in r.tokens[mark:end]) or bool(said & _WORK)
    if has_work or not said & _DONE or not said & _LENGTHS:
        return None
    r.at = end
    return Aside(r.text(mark), place=r.place(mark))
