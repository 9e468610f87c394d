"""Stitches into the places a step names: next, each, same, first, last, along a chain, into part of a group."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from gradegen.design.rows import Aside, Chain, Join, Make, Mixed, Repeat, Step, Turn, Work
from gradegen.work.along import closing, repeats
from gradegen.work.along.addressed import goes_back
from gradegen.work.along.doing import works
from gradegen.work.along.walk import Walk
from gradegen.work.edge import kinds
from gradegen.work.edge.cursor import Cursor
from gradegen.work.edge.doubts import PASSED_OVER
from gradegen.work.edge.edges import ENDLESS, last_target, plain, tally
from gradegen.work.edge.kinds import ANY_PLACE, ANY_STITCH, Kind
from gradegen.work.edge.makes import takes_of
from gradegen.work.edge.stops import Unclear
from gradegen.work.step import foundations, gaps, groups, meshes, picots
from gradegen.work.step.beginnings import is_foundation
from gradegen.work.step.first_space import begin_in_space
from gradegen.work.step.reach import does_not_fit, how_many, to_last


@works(Work)
def do_work(walk: Walk, step: Work) -> None:
    """Stitches into the places the step names."""
    into = step.into
    if walk.last_space is not None and _ends_chains(walk, step):
        return
    if walk.here:
        closing.pass_by(walk, into)
    groups.pass_rest(walk, into)
    mesh = meshes.mesh_of(step.makes, walk.site) if walk.site.definitions else None
    if mesh is not None:
        meshes.work_meshes(walk, step, mesh)
        return
    if step.bare and meshes.work_block(walk, step):
        return
    if gaps.is_between(into):
        gaps.work_between(walk, step)
        return
    for thing in into.things:
        if thing.name in _APART and _is_apart(walk, step, thing.name):
            return
    _WHERE[into.which](walk, step)


def _ends_chains(walk: Walk, step: Work) -> bool:
    """Closes the chains just made to a loop or a picot; True when the step is done with that."""
    if closing.closes(walk, step):
        closing.close(walk, step)
        return True
    return picots.closes_with_stitch(walk, step)


_APART = ("ring", "free loop", "row end")


def _is_apart(walk: Walk, step: Work, name: str) -> bool:
    """Goes to the ring, the other side of the chain or the row ends; True when the step is done with that."""
    if name == "ring" and step.into.bound is None:
        _in_ring(walk, step)
        return True
    if name == "free loop" and (walk.fresh_chain or walk.underside):
        foundations.onto_other_side(walk, step.place)
    if name == "row end":
        _onto_row_ends(walk)
    return False


def _onto_row_ends(walk: Walk) -> None:
    """Along the side of the piece at hand: as many ends as it has rows."""
    if walk.site.edge_given or walk.begun:
        return
    if not walk.site.rows:
        raise Unclear("how many rows this edge has is not known", walk.at)
    walk.about = "how many rows this piece has is not certain"
    walk.onto(plain(walk.site.rows, "row end", "row end"), again=True)


def _in_ring(walk: Walk, step: Work) -> None:
    walk.make(step.makes, walk.site.number(step.into.number))


def _evenly(walk: Walk, step: Work) -> None:
    """So many stitches along all of an edge; where more is worked after them, only the row's own numbers tell."""
    at = next((i for i, one in enumerate(walk.ahead) if one is step), len(walk.ahead))
    if walk.inside and not walk.site.blind:
        raise Unclear("where stitches spread evenly end is not known", step.place)
    if not walk.site.blind and any(not isinstance(one, (Chain, Join, Turn, Aside)) for one in walk.ahead[at + 1 :]):
        leave_edge(walk)
    make, *others = step.makes
    if make.times is not None and not others:
        walk.make((replace(make, times=None),), walk.site.number(make.times))
    else:
        walk.make(step.makes)
    walk.begun = True
    if not walk.site.blind:
        walk.cursor.to_end()


def leave_edge(walk: Walk) -> None:
    """From here only the row's own numbers tell what is made."""
    walk.site.blind = True
    walk.onto(plain(ENDLESS), again=True)


def goes_beside(steps: Sequence[Step]) -> bool:
    """True where a repeat of so many times works stitches along edges that only words name."""
    return any(
        isinstance(step, Repeat)
        and step.times.number is not None
        and any(isinstance(one, Work) and one.into.which == "evenly" for one in step.body)
        for step in steps
    )


def _next(walk: Walk, step: Work) -> None:
    into, site = step.into, walk.site
    number = site.number(into.number)
    if number == 0:
        return
    if step.bare and not walk.targets(step.makes)[1:] and _takes_nothing(walk, step.makes):
        walk.make(step.makes, number)
        return
    if step.bare and is_foundation(step.makes):
        walk.begun = True
        walk.make(step.makes, number)
        return
    if goes_back(into, walk.ahead):
        walk.make(step.makes, number)
        return
    if into.things and into.things[0].name == "below":
        _below(walk, step, number)
        return
    if number == 1 and groups.is_space_of_group(walk, into):
        groups.work_in_part(walk, step)
        return
    kind = _kind_named(walk, step, each=into.which == "each")
    if kind is kinds.ANY_SPACE and into.things[0].name == "ch" and number == 1 and not walk.remaining(kind):
        kind = ANY_STITCH  # `skip 2 ch, dc in next ch` of a turning chain that stands for a stitch and a loop
    if gaps.meets_group(walk, into):
        walk.begun, walk.skipped_to_end = True, False
        walk.make(step.makes, number)
        return
    if walk.loose and into.loosely and not kinds.holds(walk.before, kind.fits):
        walk.make(step.makes, number)  # beside the stitches an earlier row left: what lies there is not on this edge
        return
    if into.which == "next" and not into.loosely:
        closing.leave_start(walk)
    begin_in_space(walk, into, kind)
    if walk.here and into.loosely and number == 1:
        _use_here(walk, kind)
        walk.make(step.makes)
        return
    each = takes_of(step.makes, site.definitions)
    if each > 1 and number == each and not step.bare:
        number = 1
    foundations.begin_along_chain(walk, into, number)
    if kind is kinds.ANY_SPACE and any(thing.name == "ch" for thing in into.things):
        walk.owe(kind)
        walk.take(kind, 1, into.place)
    elif not closing.take_waiting(walk, into, kind):
        walk.owe(kind)
        walk.take(kind, number * each, into.place)
    walk.into_group = kind.key[1:] if kind.key.startswith("@") else ""
    walk.make(step.makes, number)


def _kind_named(walk: Walk, step: Work, *, each: bool) -> Kind:
    """What the step's place answers to; a space that only its stitch's definition names, as far as there is one."""
    kind = walk.kind(step.into.things, each=each)
    unsaid = step.bare and step.into.things[0].name == "sp"
    return ANY_STITCH if unsaid and not kinds.holds(walk.before, kind.fits) else kind


_BELOW = ("nothing of the row before is used", "each stands in place of the stitch behind it")


def _below(walk: Walk, step: Work, number: int) -> None:
    """Into an earlier row: the stitch behind it is skipped in words of its own, or without a word."""
    walk.begun = True
    if walk.site.choose("below", "the stitches worked into a row below", _BELOW, step.place) == 1:
        walk.owe(ANY_STITCH)
        walk.take(ANY_STITCH, number, step.into.place)
    walk.make(step.makes, number)


def _takes_nothing(walk: Walk, makes: tuple[Make, ...]) -> bool:
    """A picot with no place named stands on the stitch just made."""
    made = walk.targets(makes)
    return bool(made) and all(one.kind == "gap" for one in made)


def _use_here(walk: Walk, kind: Kind) -> None:
    walk.owe(kind)
    walk.use_next()
    walk.begun, walk.here, walk.last_kind = True, False, kind.key


def _each(walk: Walk, step: Work) -> None:
    into = step.into
    if into.number is not None:
        _next(walk, step)
        return
    if (len(into.things) > 1 and into.things[0].name == "ch") or into.things[-1].name == "ch" != into.things[0].name:
        parts = tuple(replace(step, into=replace(into, things=(thing,), bound=None)) for thing in into.things)
        do_mixed(walk, Mixed(parts, into.bound, place=step.place))
        return
    _note_evenly(walk, step)
    kind = _kind_named(walk, step, each=True)
    walk.owe(kind)
    if kind is kinds.ANY_SPACE and into.things[0].name == "ch":
        _each_chain(walk, step, kind)
        return
    number = how_many(walk, kind, into.bound, step)
    each = takes_of(step.makes, walk.site.definitions)
    if number % each:
        raise does_not_fit(step, number, each, number % each)
    if number == 0 and not kinds.holds(walk.before, kind.fits) and walk.before:
        raise walk.short(kind, 1, into.place)
    sts = walk.remaining(ANY_STITCH)
    walk.take(kind, number, into.place)
    if kind.key.startswith("=") and sts - walk.remaining(ANY_STITCH) > number:
        walk.unsure = PASSED_OVER  # `sc in each sc across`, with dc between
    if into.bound is not None and into.bound.to == "last":
        walk.kept = walk.site.number(into.bound.number)
    walk.make(step.makes, number // each)


def _note_evenly(walk: Walk, step: Work) -> None:
    """`sc evenly around`: one in each stitch, as far as nothing speaks against it."""
    if step.into.loosely:
        walk.about = "how many stitches go evenly around is not said"
        if not walk.site.edge_given:
            walk.unsure = walk.about


def _each_chain(walk: Walk, step: Work, kind: Kind) -> None:
    """`sc in each ch` along loops: one stitch for every chain of them; inside a repeat, of the next loop alone."""
    loops = 1 if walk.inside and step.into.bound is None else how_many(walk, kind, step.into.bound, step)
    lengths = _lengths(walk)
    if len(lengths) != 1 and loops != 1:
        raise Unclear("the loops ahead are not alike", step.into.place)
    length = lengths.pop() if len(lengths) == 1 else _next_length(walk)
    walk.take(kind, loops, step.into.place)
    walk.make(step.makes, loops * length)


def _lengths(walk: Walk) -> set[int]:
    return {one.length for one in tally(walk.cursor.rest()) if one.kind == "sp"}


def _next_length(walk: Walk) -> int:
    spot = walk.cursor.save()
    while (one := walk.cursor.peek()) is not None and one.kind != "sp":
        walk.cursor.step()
    walk.cursor.load(spot)
    return one.length if one is not None else 0


def _same(walk: Walk, step: Work) -> None:
    if walk.here:
        walk.cursor.step()
        walk.begun, walk.here, walk.last_kind = True, False, ANY_PLACE.key
        walk.make(step.makes)
    elif not walk.begun:
        one = walk.cursor.peek()
        named = walk.kind(step.into.things) if step.into.things else ANY_STITCH
        kind = named if one is not None and named.fits(one) else ANY_STITCH  # `in same corner`, on which a round stands
        walk.owe(kind) if walk.before else None
        walk.take(kind, 1, step.into.place)
        walk.make(step.makes)
    else:
        walk.add_here(step.makes)


def _first(walk: Walk, step: Work) -> None:
    number = walk.site.number(step.into.number)
    kind = walk.kind(step.into.things)
    begin_in_space(walk, step.into, kind)
    each = takes_of(step.makes, walk.site.definitions)
    worked = 1 if each > 1 and number == each and not step.bare else number  # `dc2tog over first 2 sts`
    if not walk.begun or walk.inside or _none_taken(walk, kind):
        walk.take(kind, number, step.into.place)
        walk.make(step.makes, worked)
    else:
        if walk.placing is not None:
            walk.placing.back_to_first()
        walk.add_here(step.makes) if len(walk.out) <= _FEW else walk.make(step.makes)


_FEW = 6


def _none_taken(walk: Walk, kind: Kind) -> bool:
    """`shell in shell, ch 3, sc in 1st dc`: the first dc beyond the shell, where none of those was used."""
    group = walk.last_group
    there = kinds.outside(kind, frozenset({group} if group else ()))
    if walk.site.blind or not (group or kind.key.startswith("sp")) or not walk.remaining(there):
        return False
    return walk.remaining(there) == Cursor(walk.before).remaining(there.key, there.fits)


def _last(walk: Walk, step: Work) -> None:
    number = walk.site.number(step.into.number)
    kind = walk.kind(step.into.things)
    each = takes_of(step.makes, walk.site.definitions)
    if each > 1 and number == each and not step.bare:
        number = 1
    to_last(walk, kind, number * each, step.into, keep=int(_chain_comes_last(walk, step, kind)))
    walk.make(step.makes, number)


def _chain_comes_last(walk: Walk, step: Work, kind: Kind) -> bool:
    """`dc in last 3 dc, dc in top of ch-3`: the turning chain stands behind those that are called the last."""
    after = next((one for one in picots.steps_after(walk.ahead, step) if not isinstance(one, Aside)), None)
    if walk.site.blind or not isinstance(after, Work) or after.into.which != "tch":
        return False
    rest = walk.cursor.rest()
    return bool(rest) and kind.fits(last_target(rest))


def _turning_chain(walk: Walk, step: Work) -> None:
    if walk.inside and picots.picot_in_chain(walk, step):
        return
    to_last(walk, ANY_STITCH, 1, step.into)
    walk.make(step.makes)


def _marked(walk: Walk, step: Work) -> None:
    raise Unclear("the marked place is not known", step.into.place)


def _from_hook(walk: Walk, step: Work) -> None:
    foundations.work_from_hook(walk, step)


def _of(walk: Walk, step: Work) -> None:
    groups.work_in_part(walk, step)


_WHERE: dict[str, Callable[[Walk, Work], None]] = {
    "next": _next,
    "each": _each,
    "same": _same,
    "first": _first,
    "last": _last,
    "tch": _turning_chain,
    "marked": _marked,
    "from hook": _from_hook,
    "of": _of,
    "ring": _in_ring,
    "evenly": _evenly,
}


def _along(walk: Walk, work: Work, kind: Kind) -> tuple[Make, ...]:
    """What one place gets: for `each ch` of loops, as much as the loop has chains."""
    if kind is not kinds.ANY_SPACE or work.into.things[0].name != "ch":
        return work.makes
    lengths = _lengths(walk)
    if len(lengths) != 1:
        raise Unclear("the loops ahead are not alike", work.into.place)
    return work.makes * min(lengths.pop(), _MOST_CHAINS)


_MOST_CHAINS = 200  # of one loop


@works(Mixed)
def do_mixed(walk: Walk, step: Mixed) -> None:
    """Each of several kinds in the order they come, each with its own makings."""
    work_mixed(walk, step, 0)


def work_mixed(walk: Walk, step: Mixed, less: int) -> None:
    """The same, but for so many places at the end."""
    for work in step.works:
        _note_evenly(walk, work)
    works = sorted(step.works, key=lambda work: work.into.things[0].name != "corner")  # a corner st is a st too
    pairs = [(kind := walk.kind(work.into.things), _along(walk, work, kind)) for work in works]
    if works[0].into.things[0].name == "corner" and pairs[0][0] is ANY_STITCH:
        raise Unclear("no corner can be told apart on the row before", step.place)
    union = pairs[0][0]
    for kind, _ in pairs[1:]:
        union = union | kind
    walk.owe(union)
    repeats.each_of(walk, pairs, max(0, how_many(walk, union, step.bound, step) - less), step)
