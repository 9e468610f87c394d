"""Increases over a whole row by their distance: `Inc in every 4th sc`, `working in sc increase in every 5th sc`."""

from __future__ import annotations

from gradegen.design.rows import Aside, Bound, Into, Make, Number, Repeat, Step, Thing, Times, Work
from gradegen.findings import Place
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import phrases

_COLOUR = 3  # words of a colour's name
_GROWING = " increase"  # `sc increase` is a stitch's name too


def read_every_so_many(r: Reading) -> list[Step] | None:
    """The row's stitches, the last of every so many doubled and what is left worked plain; None behind other work."""
    mark = r.at
    opening = _named(r)
    said = r.accept("inc", "increase") or (bool(opening) and r.tokens[r.at - 1].low.endswith(_GROWING))
    if not said or not r.accept_all("in", "every") or not _is_first(r, mark):
        r.at = mark
        return None
    at = r.here
    every = r.ordinal() if not r.accept("other") else r.whole(2, at.start, at.end)
    stitch = str(r.here.value) if r.here.kind == "stitch" else ""
    if every is None or every.values[0] is None or every.values[0] < 2 or stitch in ("", "ch"):
        r.at = mark
        return None
    r.at += 1
    r.phrase(phrases("around|across|all around|all across"))
    place = r.place(mark)
    return [*opening, *_spelled(r, every.values[0], stitch, place)]


def _named(r: Reading) -> list[Step]:
    """`working in sc`, `with Red working in sc` before it."""
    mark = r.at
    if r.accept("with"):
        while r.here.kind == "word" and r.low() != "working" and r.at - mark <= _COLOUR:
            r.at += 1
    if r.accept_all("working", "in") and r.here.kind == "stitch":
        r.at += 1
        opening = r.text(mark)
        r.accept(",")
        return [Aside(opening[: -len(_GROWING)] if opening.endswith(_GROWING) else opening, place=r.place(mark))]
    r.at = mark
    return []


def _is_first(r: Reading, mark: int) -> bool:
    """True when nothing is worked before: else the increases belong to that."""
    return not any(token.kind in ("stitch", "chain", "star") for token in r.tokens[:mark])


def _spelled(r: Reading, every: int, stitch: str, place: Place) -> list[Step]:
    def into(which: str, number: int | None = None) -> Into:
        how_many = None if number is None else Number((number,), place=place, places=(place,))
        return Into("each" if which == "each" else "next", (Thing(stitch),), how_many, place=place)

    one, two = Make(stitch, place=place), Make(stitch, Number((2,), place=place, places=(place,)), place=place)
    plain = Work((one,), into("each", every - 1) if every > 2 else into("next"), place=place)
    repeat = Repeat(
        (plain, Work((two,), into("next"), place=place)), Times("bound", bound=Bound("end")), "*", place=place
    )
    return [repeat, Work((one,), into("each"), place=place)]
