"""How a row begins: foundation chains, rings, starting and turning chains, and the other side of the chain."""

from __future__ import annotations

import re
from collections.abc import Sequence

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.rows import Aside, Chain, Counts, Into, Join, OtherSide, Repeat, Skip, Step, Work
from gradegen.findings import Place
from gradegen.trade.stitches import stitches
from gradegen.work import aside
from gradegen.work.doing import works
from gradegen.work.edges import plain, space, tally, target
from gradegen.work.kinds import ANY_STITCH, family, foundation_kind
from gradegen.work.makes import takes_of
from gradegen.work.picots import begins_with_picot, picot_from_hook, steps_after
from gradegen.work.stops import Unclear
from gradegen.work.walk import RING, Walk

Standing = tuple[str, ...]  # what a chain stands for: () nothing, ("dc",), ("dc", "ch-2 sp")
_CLUSTER = re.compile(r"(\d+)-(\w+) cluster|(\w+?)(\d+)tog")
_SPARE = 3  # chains that turn at the beginning of a foundation without a word
_BY_LENGTH = {1: "sc", 2: "hdc", 3: "dc", 4: "tr", 5: "dtr", 6: "trtr"}


# chains -------------------------------------------------------------------------------------------------------------


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
    if stub > 1 and following is not None and _height(following) == stub:
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
    ways = standings(walk, number, counts)
    said = tuple(_say(number, way) for way in ways)
    sure = len(ways) == 1
    chosen = 0 if sure else _preferred(walk, number, ways, said, place)
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
    _stand(walk, stands_for)


def is_first_leg(walk: Walk, number: int) -> bool:
    """`ch 4, 2-tr cluster` in a round of 3-tr clusters: the chain is the first one's third leg, and no stitch."""
    if walk.site.shape == "flat":
        return False
    works = [step for step in worked(walk.ahead) if len(step.makes) == 1]
    first = next((step for step in walk.ahead if isinstance(step, (Work, Repeat, Skip))), None)
    legs = _legs(walk, first.makes[0].stitch) if isinstance(first, Work) and len(first.makes) == 1 else None
    if legs is None or _height(legs[1]) != number:
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


def worked(steps: Sequence[Step]) -> list[Work]:
    """All works of a row, however deep."""
    found: list[Work] = []
    for step in steps:
        if isinstance(step, Work):
            found.append(step)
        elif isinstance(step, Repeat):
            found += worked(step.body)
    return found


def _loop_of_its_own(walk: Walk, number: int) -> None:
    """`ch 5, sc in same loop`: the chain is the row's first loop."""
    walk.out.append(space(number))
    if walk.placing is not None:
        walk.placing.space(space(number))


def _stand(walk: Walk, stands_for: Standing) -> None:
    """Put what a counting chain stands for on the new edge; its spaces are counted there, and not as chains besides."""
    standing = stand(stands_for)
    walk.out.extend(standing)
    for one in standing:
        if one.kind == "sp":
            walk.spent["ch"] = walk.spent.get("ch", 0) - one.length
    if walk.placing is not None:
        walk.placing.stand(standing)


def _stands_on_slipped(walk: Walk, place: Place) -> bool:
    """After slip stitches over several stitches the chain stands on the next one, or on the last of them."""
    if not walk.begun:
        return False
    ways = ("the chain stands on the next st", "the chain stands on the last slip-stitched st")
    return walk.site.choose("slipped", "the starting chain", ways, place, silent=True) == 1


def _preferred(walk: Walk, number: int, ways: Sequence[Standing], said: Sequence[str], place: Place) -> int:
    order = walk.site.habits.get(f"start {number}", 0)
    order = order if order < len(ways) else 0
    arranged = [order, *(i for i in range(len(ways)) if i != order)]
    chosen = walk.site.choose("start", "the starting chain", [said[i] for i in arranged], place, silent=True)
    return arranged[chosen]


def _say(number: int, way: Standing) -> str:
    return f"ch {number} counts as {' and '.join(way)}" if way else f"ch {number} does not count as a st"


def stand(stands_for: Standing) -> list[Target]:
    """The targets a counting chain leaves."""
    found = []
    for name in stands_for:
        if name.startswith("ch-"):
            found.append(space(int("".join(sign for sign in name if sign.isdigit()) or 1)))
        else:
            found.append(target("st", name, chain=True))
    return found


def standings(walk: Walk, number: int, counts: Counts | None) -> list[Standing]:
    """Every way to read a starting chain, likeliest first: its own words, the notes, the join, the trade's habit."""
    following = first_stitch(walk.ahead, walk) or _BY_LENGTH.get(number, "dc")
    if counts is not None:
        return [_spelled(counts.as_, number, following)]
    for note in walk.site.notes.chains:
        if note.length in (None, number) and note.before in (None, following):
            noted = _spelled(note.as_, number, following)
            return [(), noted] if number == 1 and note.length is None and noted else [noted]
    counted = _spelled(("st",), number, following)
    if _joined_to_chain(walk.ahead):
        return [counted]
    if number == 1:
        return [()]
    if number == 2 and following in ("hdc", "dc"):
        return [(), (following,)]
    if following == "sc" and number > 1:
        loop: Standing = (f"ch-{number} sp",)
        return [loop, (), counted] if number > 3 else [(), counted, *_others(number, following), loop]
    if walk.site.after_group and walk.site.turning_chain is not None:
        return [(), counted]
    return [counted, (), *_others(number, following)]


def _others(number: int, following: str) -> list[Standing]:
    by_length = _BY_LENGTH.get(number)
    return [(by_length,)] if by_length and by_length != following and number > 2 else []


def _spelled(as_: Sequence[str], number: int, following: str) -> Standing:
    """`("st",)` as the stitch it stands for, with the chain space that is left over."""
    if not as_:
        return ()
    if list(as_) not in (["st"], ["place"]):
        if len(as_) == 1 and number - _height(as_[0]) >= 1 and number > 3:
            return (as_[0], f"ch-{number - _height(as_[0])} sp")
        return tuple(as_)
    height = _height(following)
    if height and number > height:
        return (following, f"ch-{number - height} sp")
    return (following,)


def _height(name: str) -> int:
    known = stitches().get(name)
    return (known.height or 0) if known else 0


def _joined_to_chain(steps: Sequence[Step]) -> bool:
    return any(isinstance(step, Join) and step.to == "top of chain" for step in steps)


def first_stitch(steps: Sequence[Step], walk: Walk, depth: int = 0) -> str | None:
    """The plain stitch a row begins with, after its starting chain."""
    for step in steps:
        found: str | None = None
        if isinstance(step, Work) and step.makes:
            found = _plain_name(step.makes[0].stitch, walk, depth)
        elif isinstance(step, Repeat) and depth < 6:
            found = first_stitch(step.body, walk, depth + 1)
        elif hasattr(step, "readings"):
            found = first_stitch(step.readings[0], walk, depth + 1)
        elif hasattr(step, "works"):
            found = first_stitch(step.works, walk, depth + 1)
        if found:
            return found
    return None


def _plain_name(name: str, walk: Walk, depth: int) -> str | None:
    definition = walk.site.definitions.get(name)
    if definition and definition.makes and depth < 6 and definition.makes[0].stitch != name:
        return _plain_name(definition.makes[0].stitch, walk, depth + 1)
    known = stitches().get(name)
    if known is None:
        return "dc"
    if known.makes and known.makes[0] != name and known.makes[0] in stitches():
        return family(known.makes[0])
    plain_name = family(name)
    return plain_name if _height(plain_name) else ("dc" if known.counts else None)


# foundations --------------------------------------------------------------------------------------------------------


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
    raise Unclear("there is no fresh chain here to work into", step.place)


def _is_bare_chain(edge: Edge) -> bool:
    """True for the foundation chain that a row of its own has made."""
    return bool(edge) and all(
        _is_bare_chain(item.items) if isinstance(item, Run) else item.kind == "ch" for item in edge
    )


def _stand_for_skipped(walk: Walk, step: Work, skipped: int) -> None:
    """What chains skipped at the start count as, in the reading being tried."""
    name = _plain_name(step.makes[0].stitch, walk, 0) or "dc"
    ways = _skipped_ways(walk, step, skipped, name)
    said = [
        f"the {skipped} skipped ch count as {' and '.join(way)}" if way else f"the {skipped} skipped ch do not count"
        for way in ways
    ]
    chosen = walk.site.choose("skipped", "the skipped chains", said, step.place, silent=True)
    _stand(walk, ways[chosen])


def _skipped_ways(walk: Walk, step: Work, skipped: int, name: str) -> list[Standing]:
    if step.skipped is not None:
        return [_spelled(step.skipped.as_, skipped, name)]
    height = _height(name)
    if skipped == 0 or height <= 1 >= skipped:
        return [()]
    for note in walk.site.notes.chains:
        if note.length == skipped and skipped > 1:
            return list(dict.fromkeys([_spelled(note.as_, skipped, name), (), (name,)]))
    ways: list[Standing] = [(name,), ()] if skipped == height > 2 else [(), (name,)]
    if skipped > height:
        gap, odd = divmod(skipped - height, 2)
        ways = [(name, f"ch-{gap} sp"), *ways] if gap and not odd else ways
        ways.append((name, f"ch-{skipped - height} sp"))
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
            loops = plain(_free_loops(walk, tally(loops).total(), place), "ch", "ch")
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
