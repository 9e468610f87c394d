"""Foundations: back along a chain just made, rings, and the other side of the chain."""

from __future__ import annotations

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.rows import Chain, Into, Join, OtherSide, Work
from gradegen.findings import Place
from gradegen.work.along.doing import works
from gradegen.work.along.walk import RING, Walk
from gradegen.work.edge.doubts import SKIPPED_UNSURE, skipped_is_doubtful
from gradegen.work.edge.edges import ENDLESS, plain, tally
from gradegen.work.edge.kinds import foundation_kind
from gradegen.work.edge.makes import takes_of
from gradegen.work.edge.stops import Unclear
from gradegen.work.step.picots import picot_from_hook
from gradegen.work.step.standings import Standing, height, plain_name, put_on_edge, spelled

_SPARE = 3  # chains that turn at the beginning of a foundation without a word


def work_from_hook(walk: Walk, step: Work) -> None:
    """Back along a chain just made, the first stitch some chains from the hook."""
    nth = walk.site.number(step.into.nth)
    last = walk.out[-1] if walk.out else None
    if picot_from_hook(walk, step):
        return
    if isinstance(last, Target) and last.kind == "sp" and not walk.fresh_chain:
        walk.out.pop()
        if walk.placing is not None:
            walk.placing.take_back()
        walk.spend("ch", last.length)
        walk.onto((*plain(last.length, "ch", "ch"), *walk.cursor.rest()))
    elif not walk.fresh_chain:
        _chain_before_edge(walk, step)
    kind = foundation_kind("ch")
    walk.owe(kind)
    walk.take(kind, nth - 1, step.into.place)
    walk.skipped = nth - 1
    _stand_for_skipped(walk, step, nth - 1)
    number = walk.site.number(step.into.number)
    each = takes_of(step.makes, walk.site.definitions)
    walk.take(kind, each if number == each else number * each, step.into.place)
    walk.place_start = len(walk.out)
    walk.make(step.makes, 1 if number == each else number)


def begin_along_chain(walk: Walk, into: Into, number: int) -> None:
    """`Ch 40, 39 sc on ch`: the chain that turns goes without saying."""
    spare = walk.fresh_chain - number
    if walk.begun or walk.out or not walk.fresh_chain or walk.ringed or not 0 < spare <= _SPARE:
        return
    if any(thing.name == "ch" for thing in into.things):
        walk.take(foundation_kind("ch"), spare, into.place)
        walk.skipped = spare


def _chain_before_edge(walk: Walk, step: Work) -> None:
    """`Ch 6, dc in 4th ch from hook` at the start of a later row: new stitches beside the old edge."""
    ahead = walk.ahead
    for i, one in enumerate(ahead):
        if one is step and i and isinstance(ahead[i - 1], Chain):
            before = ahead[i - 1]
            assert isinstance(before, Chain)
            walk.onto((*plain(walk.site.number(before.number), "ch", "ch"), *walk.cursor.rest()))
            return
    if walk.site.turning_chain is not None or _is_bare_chain(walk.before):
        return
    if walk.site.blind and not walk.out and not walk.begun:  # the chain is not written; what it holds is enough
        walk.onto(plain(ENDLESS, "ch", "ch"))
        return
    raise Unclear("there is no fresh chain here to work into", step.place)


def _is_bare_chain(edge: Edge) -> bool:
    """True for the foundation chain that a row of its own has made."""
    return bool(edge) and all(
        _is_bare_chain(item.items) if isinstance(item, Run) else item.kind == "ch" for item in edge
    )


def _stand_for_skipped(walk: Walk, step: Work, skipped: int) -> None:
    """What chains skipped at the start count as, in the reading being tried."""
    name = plain_name(step.makes[0].stitch, walk, 0) or "dc"
    ways = _skipped_ways(walk, step, skipped, name)
    said = [
        f"the {skipped} skipped ch count as {' and '.join(way)}" if way else f"the {skipped} skipped ch do not count"
        for way in ways
    ]
    chosen = walk.site.choose("skipped", "the skipped chains", said, step.place, silent=True)
    if len(ways) > 1 and skipped_is_doubtful(walk.ahead, walk.site, skipped, name):
        walk.unsure = SKIPPED_UNSURE
    put_on_edge(walk, ways[chosen])


def _skipped_ways(walk: Walk, step: Work, skipped: int, name: str) -> list[Standing]:
    if step.skipped is not None:
        return [spelled(step.skipped.as_, skipped, name)]
    high = height(name)
    if skipped == 0 or high <= 1 >= skipped:
        return [()]
    for note in walk.site.notes.chains:
        if note.length == skipped and skipped > 1:
            return list(dict.fromkeys([spelled(note.as_, skipped, name), (), (name,)]))
    ways: list[Standing] = [(name,), ()] if skipped == high > 2 else [(), (name,)]
    if skipped > high:
        gap, odd = divmod(skipped - high, 2)
        ways = [(name, f"ch-{gap} sp"), *ways] if gap and not odd else ways
        ways.append((name, f"ch-{skipped - high} sp"))
    return list(dict.fromkeys(ways))


@works(Join)
def join(walk: Walk, step: Join) -> None:
    """A fresh chain joined is a ring whose chains can be worked one by one; any other join changes nothing."""
    walk.spend("sl st", 1)
    if walk.placing is not None:
        walk.placing.join()
    if walk.fresh_chain and not walk.begun and not walk.out:
        walk.half_twist = step.half_twist
        walk.onto((RING, *plain(walk.fresh_chain, "ch", "ch")), again=True)
        walk.ringed = True


@works(OtherSide)
def other_side(walk: Walk, step: OtherSide) -> None:
    """Go on along the free loops of the foundation."""
    onto_other_side(walk, step.place)


def onto_other_side(walk: Walk, place: Place) -> None:
    """Append the foundation's free loops to what is left of the edge."""
    if walk.turned_over:
        return
    if walk.underside and not (walk.site.edge_given and not walk.begun):
        loops = walk.underside
        if walk.skipped:  # the chain of the line above, worked from its hook as if it were made in this row
            loops = plain(_free_loops(walk, sum(tally(loops).values()), place), "ch", "ch")
    elif walk.site.edge_given and not walk.fresh_chain:
        return  # the edge handed in is that side
    elif walk.fresh_chain:
        loops = plain(_free_loops(walk, walk.fresh_chain, place), "ch", "ch")
    else:
        raise Unclear("the other side of the foundation chain is not at hand", place)
    walk.turned_over = True
    walk.onto((*walk.cursor.rest(), *loops))


def _free_loops(walk: Walk, chain: int, place: Place) -> int:
    """How many loops the underside of a chain offers: a toe works all but the end chains, a ring all of them."""
    if not walk.skipped:
        return chain
    all_ = max(0, chain - walk.skipped)
    ways = (
        f"{all_ - 1} loops on the other side",
        f"{all_} loops on the other side",
        f"{all_ - 2} loops on the other side",
    )
    return all_ - (1, 0, 2)[walk.site.choose("underside", "the other side of the chain", ways, place, silent=True)]
