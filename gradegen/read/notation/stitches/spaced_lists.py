"""Stitches of several kinds in one place, chains between all: `2 tr, 3 dtr, 2 tr with ch 2 between each in next sp`."""

from __future__ import annotations

from gradegen.design.rows import Work
from gradegen.read.notation.places.places_named import read_place
from gradegen.read.notation.stitches.makes import Item, makes_of, read_between, read_item, spaced_out
from gradegen.read.notation.stitches.works import read_name_remark
from gradegen.read.notation.words.reading import Reading

_MOST = 8  # items of one list


def read_spaced_list(r: Reading) -> Work | None:
    """The list as one work; None where no list of two and more stands here with its chains between."""
    mark = r.at
    if r.low() in ("a", "shell", "fan"):
        r.accept("a")
        r.accept("shell", "fan")
        r.accept("of")
    elif r.here.value == "shell" and r.low(1) == "of":
        r.at += 2
    items: list[Item] = []
    while len(items) < _MOST and (item := read_item(r)) is not None:
        items.append(item)
        if not (r.here.kind == "," or r.low() == "and"):
            break
        r.accept(",")
        r.accept("and")
    between = read_between(r) if len(items) > 1 else None
    into = read_place(r) if between is not None else None
    if between is None or into is None or any(item.make.stitch in ("ch", "sl st") for item in items):
        r.at = mark
        return None
    makes = spaced_out(makes_of(items), between)
    if makes is None:
        r.at = mark
        return None
    called = read_name_remark(r)
    return Work(makes, into, called=called, place=r.place(mark))
