"""Stitches nobody has explained: a word that stands where only a stitch can stand."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Into, Make, Step, Thing, Work
from gradegen.read.places_named import read_place
from gradegen.read.reading import Reading, unless_one
from gradegen.read.things import STITCHES

_NO_STITCH = frozenset(
    "work make insert hook attach fasten join sew place yarn thread draw pull catch weave loop loops crochet begin continue "
    "repeat mark turn leave hold holding working keeping starting row rnd round fold run put stuff add cut tie press block "
    "starch knit purl use using sl slip pass bring drop pick take carry edge edging end ending finish close complete next last "
    "first same each every other one two in into on over with and or the a an to from at for of st sts sp sps this that these "
    "those it them then there here now ch back front right left rs ws side sides line both all any pin measure chart gauge mc cc "
    "follow form follows size sizes motif motifs decrease increase decreasing increasing evenly even beg beginning rep times more "
    "skip sk miss cast bind off up down out through between under around across along not do count counts if when until after before "
    "by as so but is are was be been being have has had having make makes making made color colour white black red green blue "
    "yellow pink piece pieces seam tape needle center centre corner corners point points top bottom base tail tails try".split()
)


def read_unknown_stitch(r: Reading) -> list[Step] | None:
    """`zig-st in next st` as a stitch of that unknown name; None, and nothing read, when the words may be prose."""
    mark = r.at
    number = r.number()
    word = r.here
    if word.kind != "word" or word.low in _NO_STITCH or len(word.low) < 2:
        r.at = mark
        return None
    r.at += 1
    name = word.low
    if r.low() in STITCHES:
        name = f"{name} st"
        r.at += 1
    strict = r.low() in ("in", "into", "around")
    into = read_place(r) if strict else None
    if into is None or into.loosely or not r.at_break() or not _is_sure(into):
        r.at = mark
        return None
    start = word.start
    r.unknown.append((name, start, start + len(word.low)))
    make = Make(name, unless_one(number), place=r.written.place(start, start + len(name)))
    return [Work((make,), replace(into), place=r.place(mark))]


def _is_sure(into: Into) -> bool:
    """Only a place that prose does not name."""
    return into.which in ("next", "each", "first", "last", "same") and bool(into.things) and into.things[0] != Thing("row end")
