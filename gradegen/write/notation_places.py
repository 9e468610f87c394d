"""Where a step goes, in words: `in next 3 sts`, `in each sc and ch-1 sp around`, `in 2nd ch from hook`."""

from __future__ import annotations

from gradegen.design.rows import Bound, Into, Thing
from gradegen.write.notation_style import Notation, is_one


def thing_words(thing: Thing, number: str, says: Notation) -> str:
    """The name of a kind of place, plural when the number asks for it."""
    things = says.style.things
    at = 0 if is_one(number) else 1
    if thing.name == "sp" and thing.length is not None:
        return str(things["ch sp"][at]).format(n=says.figures.text(thing.length))
    if thing.name == "group" and thing.of is not None:
        return str(things["group of"][at]).format(of=says.stitch(thing.of))
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
    if bound.to == "end":
        return forms[says.kind]
    if bound.to == "thing":
        return forms["thing"].format(thing=thing_words(bound.thing or Thing("st"), "1", says))
    thing = thing_words(bound.thing or Thing("st"), number, says)
    if bound.to == "before marker":
        return forms["before marker"].format(n=number, thing=thing) if number else forms["marker"]
    return forms["last several" if number else "last"].format(n=number, thing=thing)


def place_words(into: Into, says: Notation, *, post: bool = False, shared: bool = False) -> str:
    """Where a step goes. `post`: around the post. `shared`: several stitches into each of several places."""
    words = _place(into, says, shared=shared)
    if into.loop is not None:
        loop = says.style.places[f"{into.loop} loop"]
        words = words.replace("in ", f"{loop} ", 1) if words.startswith("in ") else f"{loop} {words}"
    if post and words.startswith("in "):
        return f"{says.style.places['around']} {words.removeprefix('in ')}"
    return words


def _place(into: Into, says: Notation, *, shared: bool) -> str:
    number = says.figures.text(into.number)
    forms, thing = says.style.places, all_things(into, number, says)
    match into.which:
        case "next" | "first" | "last" | "same" | "marked":
            form = forms[_form_of(into.which, number, shared=shared)]
            return form.format(n=number, thing=thing)
        case "each":
            return _each(into, number, thing, says)
        case "from hook":
            nth = says.figures.ordinal(into.nth) if into.nth else ""
            return forms["from hook several" if number else "from hook"].format(nth=nth, n=number)
        case "of":
            whole = place_words(into.of, says).removeprefix("in ") if into.of else ""
            nth = says.figures.ordinal(into.nth) if into.nth else ""
            return forms["numbered" if nth else "centre"].format(nth=nth, thing=thing, whole=whole)
        case "ring":
            return forms["ring"]
        case "tch":
            return forms["tch numbered"].format(nth=says.figures.ordinal(into.nth)) if into.nth else forms["tch"]


def _form_of(which: str, number: str, *, shared: bool) -> str:
    if which == "next" and shared and number:
        return "next each"
    return f"{which} several" if number and which in ("next", "first", "last") else which


def _each(into: Into, number: str, thing: str, says: Notation) -> str:
    forms = says.style.places
    if number:
        return forms["each several"].format(n=number, thing=thing)
    singular = all_things(into, "", says)
    if into.bound is None:
        return forms["each unbound"].format(thing=singular)
    return forms["each"].format(thing=singular, bound=bound_words(into.bound, says))
