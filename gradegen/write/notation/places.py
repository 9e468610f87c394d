"""Where a step goes, in words: `in next 3 sts`, `in each sc and ch-1 sp around`, `in 2nd ch from hook`."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Bound, Into, Thing
from gradegen.write.notation.numbers import ordinal_text
from gradegen.write.notation.style import Notation, is_one, listing


def thing_words(thing: Thing, number: str, says: Notation) -> str:
    """The name of a kind of place, plural when the number asks for it."""
    things = says.style.things
    at = 0 if is_one(number) else 1
    if thing.name == "sp" and thing.length is not None:
        return str(things["ch sp"][at]).format(n=says.figures.text(thing.length))
    if thing.name == "group" and thing.of is not None:
        return str(things["group of"][at]).format(of=says.stitch(thing.of))
    if thing.name == "sp" and thing.of is not None:
        return f"{thing.of} {things[thing.name][at]}"
    if thing.name in things:
        return str(things[thing.name][at])
    return says.stitch(thing.name, number)


def all_things(into: Into, number: str, says: Notation) -> str:
    """The places a step names, joined by "and"; "st" where none is named."""
    things = into.things or (Thing("st"),)
    return str(says.style.things["join"]).join(thing_words(thing, number, says) for thing in things)


def bound_words(bound: Bound, says: Notation) -> str:
    """How far a run goes: `around`, `to last 2 sts`, `to next ch-2 sp`."""
    forms, number = says.style.bounds, says.figures.text(bound.number)
    if bound.to == "words":
        return bound.words
    if bound.to == "end":
        return forms[says.kind]
    if bound.to == "thing" and number:
        return forms["before thing"].format(n=number, thing=thing_words(bound.thing or Thing("st"), "1", says))
    if bound.to == "thing":
        return forms["thing"].format(thing=thing_words(bound.thing or Thing("st"), "1", says))
    thing = thing_words(bound.thing or Thing("st"), number, says)
    if bound.to == "made":
        return forms["made"].format(n=number, thing=thing)
    if bound.to == "before centre":
        return forms["before centre"].format(n=number, thing=thing) if number else forms["centre"]
    if bound.to == "before marker":
        return forms["before marker"].format(n=number, thing=thing) if number else forms["marker"]
    return forms["last several" if number else "last"].format(n=number, thing=thing)


def place_words(into: Into, says: Notation, *, word: str = "in", shared: bool = False) -> str:
    """Where a step goes. `word`: in, around (a post), over (several as one). `shared`: several stitches into each."""
    words = _place(into, says, shared=shared)
    if into.loop is not None:
        loop = says.place(f"{into.loop} loop")
        words = words.replace("in ", f"{loop} ", 1) if words.startswith("in ") else f"{loop} {words}"
    return f"{says.place(word)} {words.removeprefix('in ')}" if word != "in" and words.startswith("in ") else words


def _place(into: Into, says: Notation, *, shared: bool) -> str:
    number = says.figures.text(into.number)
    if number == "1" and (into.which != "each" or says.figures.wanted is not None):
        which = "next" if into.which == "each" else into.which
        return _place(replace(into, number=None, which=which), says, shared=shared)
    thing = all_things(into, number, says)
    part = says.place("part of").format(whole=_whole(into.of, says)) if into.of else ""
    if into.things and into.things[0].name == "gap":
        return _between(into, part, says)
    match into.which:
        case "next" | "first" | "last" | "same" | "marked":
            form = says.place(_form_of(into, number, shared=shared))
            return form.format(n=number, thing=thing) + part
        case "each":
            return _each(into, number, thing, part, says)
        case "from hook":
            return _from_hook(into, says)
        case "of":
            nth = says.figures.ordinal(into.nth) if into.nth else ""
            if not into.things:
                return says.place("centre of").format(whole=_whole(into.of, says))
            return says.place("numbered" if nth else "centre").format(nth=nth, thing=all_things(into, "", says)) + part
        case "evenly":
            return into.bound.words if into.bound is not None else "evenly"
        case "ring":
            return says.place("magic ring" if says.magic else "ring")
        case "tch":
            nth = says.figures.ordinal(into.nth) if into.nth else ""
            return says.place("tch numbered" if nth else "tch").format(nth=nth)


def _whole(of: Into | None, says: Notation) -> str:
    """The larger thing a place is part of, without its preposition."""
    return place_words(of, says).removeprefix("in ") if of else ""


def _form_of(into: Into, number: str, *, shared: bool) -> str:
    if into.which == "same" and not into.things:
        return "same place"
    if into.which == "next" and shared and number:
        return "next each"
    return f"{into.which} several" if number and into.which in ("next", "first", "last", "same") else into.which


def _each(into: Into, number: str, thing: str, part: str, says: Notation) -> str:
    if number:
        words = says.place("each several").format(n=number, thing=thing) + part
    else:
        words = says.place("each").format(thing=all_things(into, "", says)) + part
    return words if into.bound is None else f"{words} {bound_words(into.bound, says)}"


def _from_hook(into: Into, says: Notation) -> str:
    """`in 2nd ch from hook`, `over 3rd and 4th ch from hook`."""
    figures = says.figures
    first, span = figures.values(into.nth) if into.nth else None, figures.values(into.number) if into.number else None
    if first and span and first[0] and span[0]:
        nths = [ordinal_text(first[0] + step) for step in range(span[0])]
        return says.place("from hook several").format(nths=listing(nths, says.place("from hook and")))
    return says.place("from hook").format(nth=figures.ordinal(into.nth) if into.nth else "")


def _between(into: Into, part: str, says: Notation) -> str:
    """`between next 2 sts`, `between 2nd and 3rd st of next shell`."""
    values = says.figures.values(into.nth) if into.nth else None
    of = Thing(into.things[0].of or "st")
    if values and values[0]:
        nth, after = ordinal_text(values[0]), ordinal_text(values[0] + 1)
        return says.place("gap numbered").format(nth=nth, after=after, thing=thing_words(of, "1", says)) + part
    return says.place("gap").format(which=into.which, thing=thing_words(of, "2", says)) + part
