"""How a row begins: starting and turning chains, and chains that are spaces or a foundation."""

from __future__ import annotations

import re
from collections.abc import Sequence

from gradegen.design.rows import Aside, Chain, Counts, Join, Repeat, Skip, Work, worked
from gradegen.findings import Place
from gradegen.work.along.doing import works
from gradegen.work.along.walk import Walk
from gradegen.work.edge.doubts import START_UNSURE, start_is_doubtful
from gradegen.work.edge.edges import plain, space
from gradegen.work.edge.kinds import ANY_STITCH
from gradegen.work.step import aside
from gradegen.work.step.picots import begins_with_picot, steps_after
from gradegen.work.step.standings import BY_LENGTH, Standing, first_stitch, height, put_on_edge, say, standings

_CLUSTER = re.compile(r"(\d+)-(\w+) cluster|(\w+?)(\d+)tog")


@works(Chain)
def chain(walk: Walk, step: Chain) -> None:
    """A foundation, a starting chain, or a space between stitches."""
    number = walk.site.number(step.number)
    if number == 0:
        return
    if not walk.before and not walk.out and _opens_ring(walk, step):
        start(walk, number, step.counts, step.place)
    elif not walk.before and not walk.out:
        walk.onto(plain(number, "ch", "ch"))
        walk.fresh_chain = number
        walk.spend("ch", number)
    elif not walk.out and not walk.inside and not _own_chain(walk, step):
        _start_or_picot(walk, step, number)
    else:
        walk.out.append(space(number))
        aside.chain_across(walk, number)
        if walk.placing is not None:
            walk.placing.space(space(number))


def _opens_ring(walk: Walk, step: Chain) -> bool:
    """`magic ring, ch 3, 11 dc in ring`: what comes next goes into a ring that this chain does not make."""
    for after in steps_after(walk.ahead, step):
        if isinstance(after, Repeat) and after.body:
            after = after.body[0]
        if isinstance(after, Work):
            return after.into.which == "ring"
        if not isinstance(after, (Aside, Chain)) or isinstance(after, Join):
            return False
    return False


def _start_or_picot(walk: Walk, step: Chain, number: int) -> None:
    """A starting chain; of `ch 8, sl st in 5th ch from hook` only those before the picot can stand for a stitch."""
    picot = begins_with_picot(walk, step)
    if not picot:
        start(walk, number, step.counts, step.place)
        return
    following = first_stitch(walk.ahead, walk)
    stub = number - picot
    if stub > 1 and following is not None and height(following) == stub:
        start(walk, stub, step.counts, step.place)
        stub = 0
    _loop_of_its_own(walk, stub + picot)


def _own_chain(walk: Walk, step: Chain) -> bool:
    """True when the row goes on `in 4th ch from hook`: the chain is an edge of its own."""
    after = steps_after(walk.ahead, step)
    return bool(after) and isinstance(after[0], Work) and after[0].into.which == "from hook"


def start(walk: Walk, number: int, counts: Counts | None, place: Place) -> None:
    """Work a starting chain in the reading being tried."""
    if is_first_leg(walk, number):
        _first_leg(walk, number, place)
        return
    following = first_stitch(walk.ahead, walk)
    ways = standings(walk, number, counts, following or BY_LENGTH.get(number, "dc"))
    sure = len({sum(not name.startswith("ch-") for name in way) for way in ways}) == 1
    chosen = 0 if len(ways) == 1 else _preferred(walk, number, ways, place)
    if not sure and following is not None and start_is_doubtful(walk.ahead, walk.site, number, following, walk.before):
        walk.unsure = START_UNSURE
    stands_for = ways[chosen]
    walk.stood = (number, stands_for)
    if stands_for == (f"ch-{number} sp",):
        _loop_of_its_own(walk, number)
        return
    walk.spend("ch", number)
    if not stands_for:
        return
    if walk.here:
        walk.use_next()
        walk.here = False
    elif walk.remaining(ANY_STITCH) and not _stands_on_slipped(walk, place):
        walk.take(ANY_STITCH, 1, place)
    walk.begun = True
    walk.place_start = len(walk.out)
    put_on_edge(walk, stands_for)


def is_first_leg(walk: Walk, number: int) -> bool:
    """`ch 4, 2-tr cluster` in a round of 3-tr clusters: the chain is the first one's third leg, and no stitch."""
    if walk.site.shape == "flat":
        return False
    works = [step for step in worked(walk.ahead) if len(step.makes) == 1]
    first = next((step for step in walk.ahead if isinstance(step, (Work, Repeat, Skip))), None)
    legs = _legs(walk, first.makes[0].stitch) if isinstance(first, Work) and len(first.makes) == 1 else None
    if legs is None or height(legs[1]) != number:
        return False
    return any(_legs(walk, work.makes[0].stitch) == (legs[0] + 1, legs[1]) for work in works)


def _legs(walk: Walk, name: str) -> tuple[int, str] | None:
    """How many legs a cluster or a decrease has, and of which stitch."""
    own = walk.site.definitions.get(name)
    name = own.makes[0].stitch if own is not None and len(own.makes) == 1 else name
    found = _CLUSTER.fullmatch(name)
    if found is None:
        return None
    return (int(found[1]), found[2]) if found[1] else (int(found[4]), found[3])


def _first_leg(walk: Walk, number: int, place: Place) -> None:
    walk.stood = (number, ())
    walk.spend("ch", number)
    if walk.here:
        walk.use_next()
        walk.here = False
    elif walk.remaining(ANY_STITCH):
        walk.take(ANY_STITCH, 1, place)
    walk.begun = True
    walk.place_start = len(walk.out)


def _loop_of_its_own(walk: Walk, number: int) -> None:
    """`ch 5, sc in same loop`: the chain is the row's first loop."""
    walk.out.append(space(number))
    if walk.placing is not None:
        walk.placing.space(space(number))


def _stands_on_slipped(walk: Walk, place: Place) -> bool:
    """After slip stitches over several stitches the chain stands on the next one, or on the last of them."""
    if not walk.begun:
        return False
    ways = ("the chain stands on the next st", "the chain stands on the last slip-stitched st")
    return walk.site.choose("slipped", "the starting chain", ways, place, silent=True) == 1


def _preferred(walk: Walk, number: int, ways: Sequence[Standing], place: Place) -> int:
    order = walk.site.habits.get(f"start {number}", 0)
    order = order if order < len(ways) else 0
    arranged = [order, *(i for i in range(len(ways)) if i != order)]
    chosen = walk.site.choose(
        "start", "the starting chain", [say(number, ways[i]) for i in arranged], place, silent=True
    )
    return arranged[chosen]
