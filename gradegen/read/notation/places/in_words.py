"""How far, in words that only the piece itself can answer: `to loop before corner`, `until all picots are joined`."""

from __future__ import annotations

from gradegen.design.rows import Bound, Elsewhere, Thing
from gradegen.read.notation.places.things import read_thing
from gradegen.read.notation.words.reading import Reading, unless_one
from gradegen.read.notation.words.word_lists import phrases, words

_ENDS = frozenset({",", ";", ".", "end", "close", "star"})
_PLACES = words(
    "corner corners side end marker loop loops mesh shell group groups row insert edge last joining sp picots petals "
    "sps opposite"
)
_LONGEST = 10  # words
_WORKING = phrases(
    "working along|work along|working on|working in back of|working behind|working across|working up|working down|"
    "working over|working all around"
)
_KNOWN_SIDES = words("other opposite both back front underside free unused made")


def bound_in_words(r: Reading) -> Bound | None:
    """A limit that no count gives; None when no words of a limit stand here."""
    mark = r.at
    if r.low() not in ("to", "until", "till"):
        return None
    said: list[str] = []
    while r.here.kind not in _ENDS and len(said) <= _LONGEST:
        close = r.partner(r.at) if r.here.kind == "open" else None
        r.at = r.at + 1 if close is None else close + 1
        said.append(r.tokens[r.at - 1].low)
    if r.here.kind == "open" and (close := r.partner(r.at)) is not None:
        r.at = close + 1
    names_place = bool(set(said) & _PLACES)
    if len(said) > _LONGEST or (r.tokens[mark].low == "to" and not names_place):
        r.at = mark
        return None
    return Bound("words", words=r.text(mark))


def bound_from_end(r: Reading) -> Bound | None:
    """`across, ending in 2nd loop from end`: one loop is left; None when that does not stand here."""
    mark = r.at
    r.accept(",")
    if r.accept("ending") and r.accept("in"):
        r.accept("the")
        nth = r.ordinal() or r.number()
        thing = read_thing(r) if nth is not None else None
        if thing is not None and nth is not None and r.phrase(phrases("from end|from the end")):
            left = tuple(None if value is None else value - 1 for value in nth.values)
            if left == (0,):
                return Bound("end")
            number = unless_one(type(nth)(left, place=nth.place, places=nth.places))
            return Bound("last", number, Thing(thing.name, thing.length, thing.of, thing.said))
    r.at = mark
    return None


def read_elsewhere(r: Reading) -> Elsewhere | None:
    """`working along side of edging,`: the work leaves the edge; None for the other side of the foundation."""
    mark = r.at
    if not r.phrase(_WORKING):
        return None
    said: list[str] = []
    while r.here.kind not in _ENDS and not _begins_work(r) and len(said) <= _LONGEST:
        said.append(r.low())
        r.at += 1
    if r.here.kind not in (",", ";") or set(said) & _KNOWN_SIDES or not said:
        r.at = mark
        return None
    return Elsewhere(r.text(mark), place=r.place(mark))


def _begins_work(r: Reading) -> bool:
    """`working along side 30 sc`, and not `working along one long edge`."""
    return r.here.kind in ("number", "count") and r.here.low != "one"
