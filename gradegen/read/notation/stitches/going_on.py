"""Work that goes on behind a remark or a comma: `(skipped ch count as dc) and in each ch`, `making 3 sc in each sp`."""

from __future__ import annotations

import re
from dataclasses import replace

from gradegen.design.rows import (
    Aside,
    Bound,
    Chain,
    Definition,
    Either,
    Into,
    Make,
    Mixed,
    Repeat,
    Slip,
    Step,
    Thing,
    Times,
    Work,
)
from gradegen.read.notation.places.bounds import count_is_behind_end
from gradegen.read.notation.places.places_named import read_place, read_target
from gradegen.read.notation.places.things import is_space, read_thing
from gradegen.read.notation.stitches.makes import Item, makes_of, read_group, read_item
from gradegen.read.notation.words.reading import Reading
from gradegen.trade.stitches import stitches

_ENDS = (None, "end")


def going_on(r: Reading, steps: list[Step]) -> list[Step] | None:
    """`and in each ch across` behind a remark: the same stitch there too; None where no stitch stands before."""
    mark = r.at
    before = r.tokens[mark - 1] if mark else None
    last = next((step for step in reversed(steps) if not isinstance(step, Aside)), None)
    if before is None or not (before.kind == "close" or before.low == "and") or not isinstance(last, Work):
        return None
    into = read_place(r) or (read_target(r) if r.low() in ("each", "next", "every") else None)
    if into is None or not (r.at_break() or count_is_behind_end(r)):
        r.at = mark
        return None
    return [Work(last.makes, into, place=r.place(mark))]


def with_exception(r: Reading, steps: list[Step]) -> list[Step] | None:
    """`..., making 3 sc in each corner sp` behind `sc in each st around`: one way through the row with both.

    Likewise `..., working 2 dc in last st`: the run before stops in front of it.
    """
    mark = r.at
    last = steps[-1] if steps else None
    if r.low() not in ("making", "working", "work", "with", "placing") or not _goes_around(last):
        return None
    r.at += 1
    items = _items(r)
    into = (_in_corners(r) or read_place(r)) if items else None
    if items and into is not None and into.which == "last" and into.of is None and r.at_break():
        assert last is not None
        steps[-1] = _stopping(last, Bound("last", into.number, into.things[0]))
        return [Work(makes_of(items), into, place=r.place(mark))]
    if not items or into is None or not into.things or into.which != "each" or not is_space(into.things[0]):
        r.at = mark
        return None
    if not (r.at_break() or r.low() == "and"):
        r.at = mark
        return None
    assert last is not None
    steps.pop()
    return [_joined(last, Work(makes_of(items), into, place=r.place(mark)))]


def _stopping(step: Step, bound: Bound) -> Step:
    """Stitches in each place up to another limit: `dc in each st across, working 2 dc in last st`."""
    if isinstance(step, Mixed):
        return replace(step, bound=bound)
    assert isinstance(step, Work)
    return replace(step, into=replace(step.into, bound=bound))


def with_chains_between(r: Reading, steps: list[Step]) -> list[Step] | None:
    """`..., ch 3 between clusters` behind `cluster in each sp around`: a chain behind each of them."""
    mark = r.at
    last = steps[-1] if steps else None
    r.accept("with", "working", "making")
    token = r.here
    if token.value != "ch" and token.kind != "chain":
        r.at = mark
        return None
    r.at += 1
    number = r.chain_length(token) if token.kind == "chain" else r.number()
    if number is None or not r.accept("between"):
        r.at = mark
        return None
    r.accept("each", "the", "all", "every", "them", "these", "two", "2")
    while not r.at_break() and r.here.kind in ("stitch", "word") and r.at - mark < _LONGEST_BETWEEN:
        r.at += 1
    if not r.at_break() or not isinstance(last, Work) or not _is_each(last):
        r.at = mark
        return None
    steps.pop()
    one = replace(last, into=replace(last.into, which="next", bound=None), place=last.place)
    bound = last.into.bound or Bound("end")
    return [Repeat((one, Chain(number, place=r.place(mark))), Times("bound", bound=bound), place=last.place)]


_LONGEST_BETWEEN = 8


def _items(r: Reading) -> list[Item]:
    """`3 sc`, `dc, ch 1 and dc` or `(2 dc, ch 2, 2 dc)`; [] where none stands here."""
    close = r.partner(r.at) if r.here.kind == "open" else None
    if close is None:
        item = read_item(r)
        return _listed(r, item) if item is not None else []
    r.at += 1
    items = read_group(r, close) or []
    r.at = close + 1
    return items


def _listed(r: Reading, first: Item) -> list[Item]:
    """`dc, ch 1 and dc` up to its place; the first alone where something else follows."""
    mark, items = r.at, [first]
    while (separated := r.accept(",")) or r.low() == "and":
        r.accept("and")
        item = read_item(r)
        if item is None:
            break
        items.append(item)
        if not separated:
            break
    if r.low() in ("in", "into", "at"):
        return items
    r.at = mark
    return [first]


def _in_corners(r: Reading) -> Into | None:
    """`in each corner sp`, `at corners`, `in all 4 corners`: every corner; else None."""
    mark = r.at
    if r.accept("in", "into", "at"):
        r.accept("each", "every", "all", "the")
        r.accept("of")
        r.accept("the")
        r.number()
        thing = read_thing(r)
        if thing is not None and thing.name == "corner" and (r.at_break() or r.low() == "and"):
            return Into("each", (thing,), place=r.place(mark))
    r.at = mark
    return None


def _goes_around(step: Step | None) -> bool:
    """True for stitches in each place to the end, `sc around` too."""
    if isinstance(step, Work) and step.bare and step.into.bound is not None:
        step = replace(step, bare=False)
    return step is not None and _is_each(step)


def joined_on(r: Reading, steps: list[Step]) -> list[Step]:
    """The steps with those joined that are one thing said in several clauses, within repeats too."""
    steps = [
        replace(step, body=tuple(joined_on(r, list(step.body))))
        if isinstance(step, Repeat) and step.times.stop_at is None and len(step.body) > 1
        else step
        for step in steps
    ]
    return with_last_elsewhere(with_tiles(r, with_each_kind(steps)))


def with_each_kind(steps: list[Step]) -> list[Step]:
    """`sc in each dc, 2 sc in each ch-2 sp around` as one way through the row: the first alone would use it up."""
    out: list[Step] = []
    for step in steps:
        last = out[-1] if out else None
        if isinstance(step, Work) and _goes_around(last) and _is_a_corner(step):
            step = replace(step, into=replace(step.into, which="each", loosely=False))
        elif not (isinstance(step, Work) and last is not None and _is_each(last) and _is_each(step)):
            out.append(step)
            continue
        if last is not None and _differ(last, step):
            out[-1] = _joined(last, step)
        else:
            out.append(step)
    return out


def _is_a_corner(step: Work) -> bool:
    """`3 sc in corner`, `3 sc in each corner st`: behind stitches all around, every corner is meant."""
    into = step.into
    return into.things == (Thing("corner"),) and into.number is None and into.which in ("next", "each")


def with_tiles(r: Reading, steps: list[Step]) -> list[Step]:
    """`sl st in ch-3 sp, ch 3, 3 dc in same sp` as one thing in that space, where the pattern explains such a tile."""
    if not any(_opens_with_chain(definition) for definition in r.names.definitions.values()):
        return steps
    out: list[Step] = []
    for step in steps:
        slip, chain = out[-2:] if len(out) > 1 else (None, None)
        if (
            isinstance(step, Work)
            and step.into.which == "same"
            and isinstance(chain, Chain)
            and isinstance(slip, Slip)
            and slip.to
        ):
            made = (Make("sl st", place=slip.place), Make("ch", chain.number, place=chain.place), *step.makes)
            out[-2:] = [Work(made, slip.into, place=slip.place)]
        else:
            out.append(step)
    return out


def _opens_with_chain(definition: Definition) -> bool:
    return len(definition.makes) > 1 and definition.makes[0].stitch == "ch"


_MAKING_LAST = re.compile(
    r"(?:making|having|working|work|make|placing|place|and)\s+(?:the\s+)?last\s.*\b(?:last|top|turning|end|ch)\b",
    re.IGNORECASE,
)


def with_last_elsewhere(steps: list[Step]) -> list[Step]:
    """`rep from * across, making last sc in top of turning chain`: as it stands, or with that stitch in the last st."""
    out: list[Step] = []
    for step in steps:
        last = out[-1] if out else None
        if isinstance(step, Aside) and isinstance(last, Repeat) and _MAKING_LAST.match(step.text) and _may_part(last):
            work = last.body[-1]
            assert isinstance(work, Work)
            other = replace(last, times=replace(last.times, stop_at=len(last.body) - 1))
            end = Work(work.makes, Into("last", (Thing("st"),), place=step.place), place=step.place)
            why = ("the last run ends as the others do", "the last run ends in the last st")
            out[-1] = Either(((last, step), (other, end)), why, place=last.place)
        else:
            out.append(step)
    return out


def _may_part(repeat: Repeat) -> bool:
    """True for a repeat to the end whose runs end with stitches in one place."""
    work = repeat.body[-1]
    to_end = repeat.times.bound is not None and repeat.times.bound.to == "end" and repeat.times.stop_at is None
    return to_end and len(repeat.body) > 1 and isinstance(work, Work) and work.into.number is None


def _is_each(step: Step) -> bool:
    """True for stitches in every place of a kind up to the row's end."""
    if isinstance(step, Mixed):
        return (step.bound.to if step.bound is not None else None) in _ENDS
    if not isinstance(step, Work) or step.into.which != "each" or step.bare:
        return False
    if step.into.number is not None and step.into.things != (Thing("ch"),):  # `and in each of the 8 ch`
        return False
    return (step.into.bound.to if step.into.bound is not None else None) in _ENDS and bool(step.into.things)


def _differ(last: Step, step: Work) -> bool:
    """True when the second names spaces and the first does not name the same; or each names stitches of its own."""
    works = last.works if isinstance(last, Mixed) else (last,)
    things = {thing for work in works if isinstance(work, Work) for thing in work.into.things}
    if any(thing.name in ("free loop", "row end") for thing in (*things, *step.into.things)):
        return False
    bound = last.bound if isinstance(last, Mixed) else last.into.bound if isinstance(last, Work) else None
    if bound is None and all(_is_stitch(thing) for thing in (*things, *step.into.things)):
        return not things & set(step.into.things)  # `sc in each sc, bpdc around each fpdc across`
    return not things & set(step.into.things) and any(
        _is_loop(thing) != _is_loop(other) for thing in step.into.things for other in things
    )


def _is_stitch(thing: Thing) -> bool:
    """True for a stitch by its name."""
    return thing.name in stitches() and thing.name != "ch" and not is_space(thing)


def _is_loop(thing: Thing) -> bool:
    return is_space(thing) or thing.name == "ch"


def _joined(last: Step, more: Work) -> Mixed:
    works = last.works if isinstance(last, Mixed) else (last,)
    bounds = [last.bound if isinstance(last, Mixed) else last.into.bound if isinstance(last, Work) else None]
    bounds.append(more.into.bound)
    parts = tuple(
        replace(work, into=replace(work.into, bound=None, number=None))
        for work in (*works, more)
        if isinstance(work, Work)
    )
    return Mixed(parts, next((bound for bound in bounds if bound is not None), None), place=last.place)
