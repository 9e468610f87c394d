"""Working one step: where it goes, what it takes, what it leaves."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any

from gradegen.design.edge import Run, Target
from gradegen.design.rows import (
    Aside,
    Bound,
    Chain,
    Change,
    Either,
    Even,
    Into,
    Join,
    Make,
    Mixed,
    OtherSide,
    RowsAgain,
    SizesOnly,
    Skip,
    Slip,
    Step,
    Turn,
    Unread,
    Unworked,
    Work,
)
from gradegen.trade.stitches import stitches
from gradegen.work import groups, kinds, repeats, starts
from gradegen.work.doing import run, works
from gradegen.work.edges import space
from gradegen.work.edges import stitches as count_stitches
from gradegen.work.kinds import ANY_PLACE, ANY_STITCH, Kind
from gradegen.work.makes import takes_of
from gradegen.work.stops import DOES_NOT_FIT, LEFT_OVER, Fault, Unclear
from gradegen.work.walk import Walk

# Work ---------------------------------------------------------------------------------------------------------------


@works(Work)
def do_work(walk: Walk, step: Work) -> None:
    """Stitches into the places the step names."""
    into = step.into
    names = {thing.name for thing in into.things}
    if into.bound is None and "ring" in names:
        _in_ring(walk, step)
        return
    if "free loop" in names and (walk.fresh_chain or walk.underside):
        starts.onto_other_side(walk, step.place)
    _WHERE[into.which](walk, step)


def _in_ring(walk: Walk, step: Work) -> None:
    walk.make(step.makes, walk.site.number(step.into.number))


def _next(walk: Walk, step: Work) -> None:
    into, site = step.into, walk.site
    number = site.number(into.number)
    if number == 0:
        return
    if step.bare and not walk.targets(step.makes)[1:] and _takes_nothing(walk, step.makes):
        walk.make(step.makes, number)
        return
    kind = walk.kind(into.things)
    if walk.loose and into.loosely and not kinds.holds(walk.before, kind.fits):
        walk.make(step.makes, number)  # beside the stitches an earlier row left: what lies there is not on this edge
        return
    if walk.here and into.loosely and number == 1:
        _use_here(walk, kind)
        walk.make(step.makes)
        return
    each = takes_of(step.makes, site.definitions)
    if each > 1 and number == each and not step.bare:
        number = 1
    if kind is kinds.ANY_SPACE and any(thing.name == "ch" for thing in into.things):
        walk.owe(kind)
        walk.take(kind, 1, into.place)
    else:
        walk.owe(kind)
        walk.take(kind, number * each, into.place)
    walk.make(step.makes, number)


def _takes_nothing(walk: Walk, makes: tuple[Make, ...]) -> bool:
    """A picot with no place named stands on the stitch just made."""
    made = walk.targets(makes)
    return bool(made) and all(one.kind == "gap" for one in made)


def _use_here(walk: Walk, kind: Kind) -> None:
    walk.owe(kind)
    walk.cursor.step()
    walk.begun, walk.here, walk.last_kind = True, False, kind.key


def _each(walk: Walk, step: Work) -> None:
    into = step.into
    if into.number is not None:
        _next(walk, step)
        return
    kind = walk.kind(into.things)
    walk.owe(kind)
    number = how_many(walk, kind, into.bound, step)
    each = takes_of(step.makes, walk.site.definitions)
    if number % each:
        raise does_not_fit(step, number, each, number % each)
    if number == 0 and not kinds.holds(walk.before, kind.fits) and walk.before:
        raise walk.short(kind, 1, into.place)
    walk.take(kind, number, into.place)
    if into.bound is not None and into.bound.to == "last":
        walk.kept = walk.site.number(into.bound.number)
    walk.make(step.makes, number // each)


def how_many(walk: Walk, kind: Kind, bound: Bound | None, step: Work | Mixed) -> int:
    """How many of a kind lie between here and the bound."""
    walk.must_see(step.place)
    there = walk.remaining(kind)
    if bound is None or bound.to == "end":
        return there
    if bound.to == "last":
        return _before_last(walk, kind, bound, there)
    if bound.to == "before marker":
        return repeats.before_marker(walk, kind, bound, step)
    assert bound.thing is not None
    stop = walk.kind((bound.thing,)) if bound.thing.name != "corner" else kinds.corner_kind(walk.before)
    spot = walk.cursor.save()
    if not walk.cursor.pass_over(stop.key, stop.fits, 1):
        raise walk.short(stop, 1, step.place)
    passed = there - walk.remaining(kind) - _also(kind, stop)
    walk.cursor.load(spot)
    return passed


def _also(kind: Kind, stop: Kind) -> int:
    """1 when the stopping target itself is of the counted kind."""
    return int(kind.key == stop.key or (kind.key in ("st", "place") and stop.key.startswith(("=", "corner"))))


def _before_last(walk: Walk, kind: Kind, bound: Bound, there: int) -> int:
    keep = walk.site.number(bound.number)
    last = walk.kind((bound.thing,)) if bound.thing else kind
    if last.key == kind.key:
        if there < keep:
            raise walk.short(kind, keep, walk.at)
        return there - keep
    spot = walk.cursor.save()
    others = walk.remaining(last) - keep
    if others < 0:
        raise walk.short(last, keep, walk.at)
    walk.cursor.pass_over(last.key, last.fits, others)
    # the kept ones stand last; what lies before the first of them is ours
    before_first = walk.cursor.save()
    walk.cursor.pass_over(last.key, last.fits, 1)
    passed = there - walk.remaining(kind) - int(keep > 0 and _also(kind, last))
    walk.cursor.load(before_first)
    walk.cursor.load(spot)
    return passed if keep else there


def _same(walk: Walk, step: Work) -> None:
    if walk.here:
        _use_here(walk, ANY_PLACE)
        walk.make(step.makes)
    elif not walk.begun:
        walk.owe(ANY_STITCH) if walk.before else None
        walk.take(ANY_STITCH, 1, step.into.place)
        walk.make(step.makes)
    else:
        walk.add_here(step.makes)


def _first(walk: Walk, step: Work) -> None:
    number = walk.site.number(step.into.number)
    kind = walk.kind(step.into.things)
    if not walk.begun:
        walk.take(kind, number, step.into.place)
        walk.make(step.makes, number)
    elif _closes_loop(walk, step):
        last = walk.out[-1]
        assert isinstance(last, Target)
        walk.out[-1] = space(last.length + (_height(step.makes) or 0))
    else:
        walk.add_here(step.makes) if len(walk.out) <= _FEW else walk.make(step.makes)


_FEW = 6


def _height(makes: tuple[Make, ...]) -> int | None:
    known = stitches().get(makes[0].stitch)
    return known.height if known else None


def _closes_loop(walk: Walk, step: Work) -> bool:
    """`ch 2, dc in first sc` at a round's end stands for one chain loop."""
    last = walk.out[-1] if walk.out else None
    lone = len(step.makes) == 1 and step.makes[0].times is None and (_height(step.makes) or 0) > 1
    return lone and isinstance(last, Target) and last.kind == "sp" and walk.site.shape != "flat" and len(walk.out) > 1


def _last(walk: Walk, step: Work) -> None:
    number = walk.site.number(step.into.number)
    kind = walk.kind(step.into.things)
    each = takes_of(step.makes, walk.site.definitions)
    if each > 1 and number == each and not step.bare:
        number = 1
    to_last(walk, kind, number * each, step.into)
    walk.make(step.makes, number)


def to_last(walk: Walk, kind: Kind, wanted: int, into: Into) -> None:
    """Use up the last so many of a kind; what stands before them must be used already."""
    if walk.site.blind:
        walk.take(kind, wanted, into.place)
        return
    there = walk.remaining(kind)
    if there < wanted:
        if there == 0 and wanted == 1 and walk.begun:
            raise walk.short(kind, wanted, into.place)
        raise walk.short(kind, wanted, into.place)
    if there > wanted and not walk.last_kind.startswith(("sp", "~", "@", "corner")):
        raise Fault(
            LEFT_OVER,
            into.place,
            "Stitches are left before the last ones.",
            expected=f"{wanted} left here",
            found=f"{there} left",
        )
    walk.take(kind, there, into.place)
    if there > wanted:
        walk.owe(kind)


def _turning_chain(walk: Walk, step: Work) -> None:
    to_last(walk, ANY_STITCH, 1, step.into)
    walk.make(step.makes)


def _marked(walk: Walk, step: Work) -> None:
    raise Unclear("the marked place is not known", step.into.place)


def _from_hook(walk: Walk, step: Work) -> None:
    starts.work_from_hook(walk, step)


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
}

# other steps --------------------------------------------------------------------------------------------------------


def does_not_fit(step: Step, there: int, each: int, left: int) -> Fault:
    """The fault of a repeat with a remainder."""
    fits = ", ".join(str(n) for n in (there - left, there - left + each) if n > 0)
    return Fault(
        DOES_NOT_FIT,
        step.place,
        "The repeat does not come out even.",
        expected=f"a multiple of {each}" + (f" ({fits})" if fits else ""),
        found=f"{there}, which leaves {left}",
        because=f"{there} sts in repeats of {each} leave {left}",
    )


@works(Mixed)
def do_mixed(walk: Walk, step: Mixed) -> None:
    """Each of several kinds in the order they come, each with its own makings."""
    pairs = [(walk.kind(work.into.things), work.makes) for work in step.works]
    union = pairs[0][0]
    for kind, _ in pairs[1:]:
        union = union | kind
    walk.owe(union)
    repeats.each_of(walk, pairs, how_many(walk, union, step.bound, step), step)


@works(Chain)
def do_chain(walk: Walk, step: Chain) -> None:
    """A chain between stitches becomes a space; at the row's start it is a starting chain."""
    starts.chain(walk, step)


@works(Skip)
def do_skip(walk: Walk, step: Skip) -> None:
    """Pass over what the step names."""
    into = step.into
    number = walk.site.number(into.number)
    if groups.skips_group(walk, into, number):
        return
    kind = walk.kind(into.things)
    if into.which == "first" and walk.begun:
        number -= count_stitches(walk.before) - walk.remaining(ANY_STITCH)
    elif into.which == "last":
        to_last(walk, kind, number, into)
        return
    elif into.which == "each":
        number = how_many(walk, kind, into.bound, Work((), into, place=step.place))
    if into.which != "first":
        walk.owe(kind)
    walk.take(kind, number, into.place)


@works(Slip)
def do_slip(walk: Walk, step: Slip) -> None:
    """Travel to a place, or bind stitches off."""
    into = step.into
    if into.which in ("first", "same") and not walk.begun and not step.to and walk.site.shape != "flat":
        return  # the join of the round before, said again
    if into.of is not None and into.which == "next" and _goes_on_to_space(walk, step):
        return  # `sl st across 3 dc of first block to ch-3 sp`: the space is where it goes
    before = walk.remaining(ANY_STITCH)
    if step.to or _is_space(walk, into) or into.which == "of":
        _travel(walk, into)
    elif into.which == "each":
        kind = walk.kind(into.things)
        walk.take(kind, how_many(walk, kind, into.bound, Work((), into, place=step.place)), into.place)
    elif into.which == "last":
        to_last(walk, walk.kind(into.things), walk.site.number(into.number), into)
    elif into.which not in ("from hook", "same", "ring", "tch"):
        walk.take(walk.kind(into.things), walk.site.number(into.number), into.place)
    elif into.which == "from hook":
        starts.close_picot(walk, into)
        return
    walk.spend("sl st", max(1, before - walk.remaining(ANY_STITCH) if not walk.here else 1))


def _goes_on_to_space(walk: Walk, step: Slip) -> bool:
    after = starts.steps_after(walk.ahead, step)
    return bool(after) and isinstance(after[0], Slip) and after[0].to


def _is_space(walk: Walk, into: Into) -> bool:
    return bool(into.things) and into.things[0].name in ("sp", "corner") and into.which in ("next", "first")


def _travel(walk: Walk, into: Into) -> None:
    """Move to just before the place; in a round, what is passed comes last and is optional."""
    if walk.site.blind:
        walk.begun = walk.here = True
        return
    before = walk.cursor.rest()
    if into.which == "of":
        groups.find_part(walk, into)
    else:
        kind = walk.kind(into.things)
        spot = walk.cursor.save()
        number = walk.site.number(into.number)
        if not walk.cursor.pass_over(kind.key, kind.fits, number):
            raise walk.short(kind, number, into.place)
        there = walk.remaining(kind)
        walk.cursor.load(spot)
        while (one := walk.cursor.peek()) is not None and not (kind.fits(one) and walk.remaining(kind) == there + 1):
            walk.cursor.step()
    rest = walk.cursor.rest()
    passed = starts.leading(before, count_targets(before) - count_targets(rest))
    if walk.site.shape == "flat":
        walk.begun, walk.here = True, True
        return
    walk.passed = passed
    walk.onto((*rest, *passed), again=True)
    walk.here = True


def count_targets(edge: Sequence[Target | Run]) -> int:
    """All targets, spaces and stitches alike."""
    return sum(item.times * count_targets(item.items) if isinstance(item, Run) else 1 for item in edge)


@works(Join)
def do_join(walk: Walk, step: Join) -> None:
    """Closing a round changes no count; closing a fresh chain makes a ring of it."""
    starts.join(walk, step)


@works(Change)
def do_change(walk: Walk, step: Change) -> None:
    """Increases or decreases spread loosely over the row."""
    number = walk.site.number(step.number) * (2 if step.where == "each end" else 1)
    walk.delta += step.sign * number


@works(Even)
def do_even(walk: Walk, step: Even) -> None:
    """As many as before."""
    walk.must_see(step.place)
    rest = walk.cursor.rest()
    if step.stitch:
        walk.make((Make(step.stitch, place=step.place),), count_stitches(rest))
    else:
        walk.out.extend(rest)
    walk.begun = True
    walk.cursor.to_end()


@works(Either)
def do_either(walk: Walk, step: Either) -> None:
    """The reading that is being tried."""
    key = f"either {step.place.line}:{step.place.column}"
    chosen = walk.site.choose(key, "wording", step.why, step.place)
    run(walk, step.readings[chosen])


@works(SizesOnly)
def do_sizes_only(walk: Walk, step: SizesOnly) -> None:
    """Steps of some sizes only."""
    if walk.site.sizes[walk.site.size] in step.sizes:
        run(walk, step.body)


@works(OtherSide)
def do_other_side(walk: Walk, step: OtherSide) -> None:
    """From here the free loops of the foundation come next."""
    starts.other_side(walk, step)


@works(Unworked)
def do_unworked(walk: Walk, step: Unworked) -> None:
    """What is left stays, and that is meant."""
    walk.unworked = True


@works(Unread)
def do_unread(walk: Walk, step: Unread) -> None:
    """Words nobody could read: nothing is claimed about the row."""
    raise Unclear(f"'{step.text.strip()[:60]}' could not be read", step.place)


@works(RowsAgain)
def do_rows_again(walk: Walk, step: RowsAgain) -> None:
    """Whole rows again are worked by the room's conductor, not inside a row."""
    raise Unclear("other rows are repeated inside this row", step.place)


@works(Turn, Aside)
def _nothing(walk: Walk, step: Any) -> None:
    """Turns and asides change no count."""
