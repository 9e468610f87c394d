"""Stitches nobody has explained: a word that stands where only a stitch can stand."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Into, Make, Number, Step, Thing, Work
from gradegen.findings import Place
from gradegen.read.notation.places.places_named import read_place
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading, UnknownStitch, unless_one
from gradegen.read.notation.words.tokens import Token
from gradegen.read.notation.words.word_lists import words

_NO_STITCH = words(
    "work make insert hook attach fasten join sew place yarn thread draw pull catch weave loop loops "
    "crochet begin continue repeat mark turn leave hold holding working keeping starting row rnd round "
    "fold run put stuff add cut tie press block starch knit purl use using sl slip pass bring drop pick "
    "take carry edge edging end ending finish close complete next last first same each every other one "
    "two in into on over with and or the a an to from at for of st sts sp sps this that these those it "
    "them then there here now ch back front right left rs ws side sides line both all any pin measure "
    "chart gauge mc cc follow form follows size sizes motif motifs decrease increase decreasing "
    "increasing evenly even beg beginning rep times more skip sk miss cast bind off up down out through "
    "between under around across along not do count counts if when until after before by as so but is "
    "are was be been being have has had having make makes making made color colour white black red green "
    "blue yellow pink piece pieces seam tape whip mattress blanket running garter stockinette satin sewing "
    "needle center centre corner corners point points top bottom "
    "base tail tails try tss tks tps tfs trs tdc tsc thdc"
)


def read_unknown_stitch(r: Reading) -> list[Step] | None:
    """`zig-st in next st` as a stitch of that unknown name; None when the words may be prose."""
    mark = r.at
    number = r.number()
    word = r.here
    named_st = r.low(1) in STITCHES and word.low in _STS
    if word.kind != "word" or (word.low in _NO_STITCH and not named_st) or len(word.low) < 2:
        r.at = mark
        return None
    r.at += 1
    name = word.low
    if r.low() in STITCHES:
        name = f"{name} st"
        r.at += 1
        if r.at_break() and (r.here.kind != "end" or mark > 0):
            return [_bare(r, mark, name, number)]
    strict = r.low() in ("in", "into", "around")
    into = read_place(r) if strict else None
    if into is None or into.loosely or not r.at_break() or not _is_sure(into):
        r.at = mark
        return None
    make = Make(name, unless_one(number), place=_noted(r, mark, name))
    return [Work((make,), replace(into), place=r.place(mark))]


def _noted(r: Reading, mark: int, name: str, *, bare: bool = False) -> Place:
    """Notes the stitch as unknown; the place of its first word."""
    word = r.tokens[mark] if r.tokens[mark].kind == "word" else r.tokens[mark + 1]
    r.unknown.append(UnknownStitch(name, word.start, word.end, bare))
    return r.written.place(word.start, word.end)


def _bare(r: Reading, mark: int, name: str, number: Number | None) -> Work:
    """`2 rice sts` without a place."""
    make = Make(name, place=_noted(r, mark, name, bare=True))
    into = Into("next", (Thing("st"),), unless_one(number), place=r.place(mark))
    return Work((make,), into, bare=True, place=r.place(mark))


_STS = frozenset({"loop", "long", "cross", "knot", "point", "pink", "block"})
_FILET = words("sp sps space spaces mesh meshes bl bls block blocks open solid")


def is_filet(tokens: list[Token]) -> bool:
    """True for `3 sp` and the like: spaces and blocks that no note explains."""
    parts = [token for token in tokens if token.kind not in (",", ".", ";")]
    if not parts or not any(token.low in _FILET for token in parts):
        return False
    counted = all(token.kind in ("number", "count") or token.low in _FILET or token.kind == "stitch" for token in parts)
    over = {token.low for token in parts} <= _FILET | {"over", "next", "make", "work", "in", "total"} | {
        t.low for t in parts if t.kind == "number"
    }
    return (counted or over) and any(token.kind in ("number", "count") for token in parts)


def _is_sure(into: Into) -> bool:
    """Only a place that prose does not name."""
    return (
        (into.which in ("next", "each", "first", "last", "same", "from hook") or into.of is not None)
        and bool(into.things)
        and into.things[0] != Thing("row end")
    )
