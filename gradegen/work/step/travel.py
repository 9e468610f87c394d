"""Moving along the edge without a stitch that counts: skips, slip stitches, travelling to a place."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Aside, Into, Skip, Slip, Work
from gradegen.work.along import closing, petals
from gradegen.work.along.doing import works
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import stitches as count_stitches
from gradegen.work.edge.kinds import ANY_SPACE, ANY_STITCH, foundation_kind, holds
from gradegen.work.edge.stops import Unclear
from gradegen.work.step import aside, gaps, groups, picots
from gradegen.work.step.first_space import begin_here
from gradegen.work.step.reach import how_many, to_last


@works(Skip)
def do_skip(walk: Walk, step: Skip) -> None:
    """Pass over what the step names."""
    into = step.into
    closing.pass_by(walk, into)
    groups.pass_rest(walk, into)
    number = walk.site.number(into.number)
    if into.of is not None and into.of.which == "tch" and not walk.site.blind:
        walk.take(ANY_SPACE, min(1, walk.remaining(ANY_SPACE)), into.place)  # `skip 3 ch of turning chain`
        return
    if groups.skips_group(walk, into, number):
        return
    kind = walk.kind(into.things)
    if [thing.name for thing in into.things] == ["sl st"] and not holds(walk.before, lambda one: one.name == "sl st"):
        return  # slip stitches of a join leave no place on the edge
    aside.begin_gap(walk)
    if into.which == "first" and walk.begun:
        number -= count_stitches(walk.before) - walk.remaining(ANY_STITCH)
    elif into.which == "last":
        to_last(walk, kind, number, into)
        return
    elif into.which == "each":
        number = how_many(walk, kind, into.bound, Work((), into, place=step.place))
    if into.which != "first" and kind.key != "sp" and not (kind.key.startswith("sp") and kind.key[2:].isdigit()):
        walk.owe(kind)  # a space that is skipped owes nothing: `sk ch-1 sp, dc in next dc`
    if number > 1 and chains_of_loop(walk, into, number):
        kind, number = ANY_SPACE, 1
    walk.take(kind, number, into.place)
    walk.skipped_to_end = True
    aside.keep_aside(walk, number, step.held)


def chains_of_loop(walk: Walk, into: Into, number: int) -> bool:
    """`skip 2 ch` where the edge has loops and no chain of its own: the next loop, if it is so long."""
    if walk.site.blind or not any(thing.name == "ch" for thing in into.things):
        return False
    if holds(walk.before, lambda one: one.kind == "ch") or not holds(walk.before, ANY_SPACE.fits):
        return False
    spot = walk.cursor.save()
    while (one := walk.cursor.peek()) is not None and one.kind != "sp":
        walk.cursor.step()
    walk.cursor.load(spot)
    return one is not None and one.length in (number, 0)


@works(Slip)
def do_slip(walk: Walk, step: Slip) -> None:
    """Travel to a place, or bind stitches off."""
    into = step.into
    if into.which not in ("first", "same", "from hook"):
        closing.pass_by(walk, into)
    if into.which in ("first", "same") and not walk.begun and not step.to and walk.site.shape != "flat":
        return  # the join of the round before, said again
    if into.of is not None and into.which == "next" and _goes_on_to_space(walk, step):
        return  # `sl st across 3 dc of first block to ch-3 sp`: the space is where it goes
    if petals.passes_petal(walk, into):
        walk.spend("sl st", 1)
        return
    if gaps.begin_between(walk, into) or (_back_to_chain(walk, into) and picots.close_picot(walk, into)):
        return
    before = walk.remaining(ANY_STITCH)
    if into.which in ("next", "first") and _is_along_loop(walk, into):
        _travel(walk, replace(into, number=None))  # `sl st in next 2 ch`: into the loop they are part of
    elif step.to or _is_space(walk, into) or into.which == "of":
        _travel(walk, into)
    elif into.which == "each":
        kind = walk.kind(into.things)
        walk.take(kind, how_many(walk, kind, into.bound, Work((), into, place=step.place)), into.place)
    elif into.which == "last":
        to_last(walk, walk.kind(into.things), walk.site.number(into.number), into)
    elif _closes_round(walk, step):
        pass
    elif into.which not in ("from hook", "same", "ring", "tch"):
        walk.take(walk.kind(into.things), walk.site.number(into.number), into.place)
    elif into.which == "from hook":
        if not picots.close_picot(walk, into):
            _along_foundation(walk, into)
        return
    walk.spend("sl st", max(1, before - walk.remaining(ANY_STITCH) if not walk.here else 1))


def _back_to_chain(walk: Walk, into: Into) -> bool:
    """`ch 3, sl st in first ch` within a row: into the first of the chains just made."""
    first = into.which == "first" and into.number is None and [thing.name for thing in into.things] == ["ch"]
    return first and walk.begun and (walk.inside > 0 or walk.site.shape == "flat")


def _closes_round(walk: Walk, step: Slip) -> bool:
    """`hdc in each st, sl st in next st`: into the beginning of the same round, where nothing else is left."""
    after = picots.steps_after(walk.ahead, step)
    last = walk.ahead and (walk.ahead[-1] is step or bool(after)) and all(isinstance(one, Aside) for one in after)
    if not last or walk.site.shape == "flat" or walk.site.blind or not walk.begun:
        return False
    return step.into.which == "next" and not walk.remaining(walk.kind(step.into.things))


def _along_foundation(walk: Walk, into: Into) -> None:
    """`Ch 14, sl st in 2nd ch from hook`: back along the chain just made."""
    if walk.out or not walk.fresh_chain:
        raise Unclear("what this slip stitch is worked into can't be told", into.place)
    walk.skipped = walk.site.number(into.nth) - 1
    walk.take(foundation_kind("ch"), walk.skipped + 1, into.place)
    walk.spend("sl st", 1)


def _goes_on_to_space(walk: Walk, step: Slip) -> bool:
    after = picots.steps_after(walk.ahead, step)
    return bool(after) and isinstance(after[0], Slip) and after[0].to


def _is_along_loop(walk: Walk, into: Into) -> bool:
    return any(thing.name == "ch" for thing in into.things) and walk.kind(into.things) is ANY_SPACE


def _is_space(walk: Walk, into: Into) -> bool:
    return bool(into.things) and into.things[0].name in ("sp", "corner") and into.which in ("next", "first")


def _travel(walk: Walk, into: Into) -> None:
    """Move to just before the place; in a round, what is passed comes last and is optional."""
    if walk.site.blind:
        walk.begun = walk.here = True
        return
    if into.loosely and into.things and into.things[0].said == "ch" and not walk.remaining(walk.kind(into.things)):
        raise Unclear("the chain this goes to is not on the edge of the row before", into.place)
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
    if walk.placing is not None:
        walk.placing.reach_next(walk.cursor)
    walk.here = True
    if walk.site.shape == "flat":
        walk.begun = True
    else:
        begin_here(walk, before)
