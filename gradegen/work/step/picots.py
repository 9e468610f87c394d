"""Picots: little chain rings that are no stitch and no space, and the chain loops that carry them."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.rows import Aside, Chain, Into, Repeat, Slip, Step, Work
from gradegen.trade.stitches import stitches
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import space, target
from gradegen.work.edge.kinds import foundation_kind

PICOT = target("gap", "picot")
_LONGEST_STUB = 3  # chains of a loop that may stand before its picot in one `ch`


def make_picot(walk: Walk, nth: int, closed_with: str) -> None:
    """The last `nth` chains made become a picot; chains before them stay a space."""
    last = walk.out[-1]
    assert isinstance(last, Target)
    left = max(0, last.length - nth)
    walk.out[-1:] = [space(left), PICOT] if left else [PICOT]
    walk.spend("ch", last.length - left)
    if closed_with:
        walk.spend(closed_with, 1)
    if walk.placing is not None:
        walk.placing.picot(last.length - left, left)


def close_picot(walk: Walk, into: Into) -> bool:
    """`ch 3, sl st in 3rd ch from hook`: True when chains were just made that this closes to a picot."""
    last = walk.out[-1] if walk.out else None
    if not isinstance(last, Target) or last.kind != "sp":
        return False
    make_picot(walk, walk.site.number(into.nth, last.length), "sl st")
    return True


def picot_from_hook(walk: Walk, step: Work) -> bool:
    """`ch 4, sc in 3rd ch from hook`, `ch 5, tr in 5th ch from hook`: True when it is a picot; a tall stitch counts."""
    last = walk.out[-1] if walk.out else None
    nth = walk.site.number(step.into.nth)
    if _is_picot_of_foundation(walk, step):
        walk.take(foundation_kind("ch"), nth, step.into.place)
        walk.out.append(PICOT)
        walk.spend(step.makes[0].stitch)
        return True
    if not isinstance(last, Target) or last.kind != "sp" or last.name != "sp":
        return False
    if last.length - nth > _LONGEST_STUB or _goes_on_along_chain(walk.ahead, step):
        return False
    known = stitches().get(step.makes[0].stitch)
    tall = known is None or known.varies or (known.height or 0) > 1 or known.base is not None
    make_picot(walk, nth, "" if tall else step.makes[0].stitch)
    if tall:
        walk.place_start = len(walk.out)
        walk.make(step.makes)
    return True


def picot_in_chain(walk: Walk, step: Work) -> bool:
    """`ch 5, 2 tr in 1st st of ch`: back into the chain just made."""
    last = walk.last_space
    if last is None:
        return False
    make_picot(walk, last.length, "")
    walk.place_start = len(walk.out)
    walk.make(step.makes)
    return True


def closes_with_stitch(walk: Walk, step: Work) -> bool:
    """`ch 3, sc in top of sc for picot`: True when chains were just made and the words behind say it is a picot."""
    last = walk.last_space
    if last is None or last.name != "sp" or len(step.makes) != 1:
        return False
    into = step.into
    back = into.which == "same" or (into.which == "next" and into.loosely and into.number is None)
    if not back or not (step.called == "picot" or _says_picot(walk.ahead, step)):
        return False
    make_picot(walk, last.length, step.makes[0].stitch)
    return True


def _says_picot(steps: Sequence[Step], step: Step) -> bool:
    """True where the step is followed by a remark that names a picot, however deep it stands."""
    for one, after in zip(steps, (*steps[1:], None), strict=True):
        if one is step:
            return isinstance(after, Aside) and "picot" in after.text
        if isinstance(one, Repeat) and _says_picot(one.body, step):
            return True
    return False


def _is_picot_of_foundation(walk: Walk, step: Work) -> bool:
    """`Ch 80, sc in 3rd ch from hook for picot`: a remark right behind it says so."""
    if not walk.fresh_chain or walk.out or walk.begun:
        return False
    after = steps_after(walk.ahead, step)
    return bool(after) and isinstance(after[0], Aside) and "picot" in after[0].text


def _goes_on_along_chain(ahead: Sequence[Step], step: Work) -> bool:
    after = steps_after(ahead, step)
    return bool(after) and isinstance(after[0], Work) and any(thing.name == "ch" for thing in after[0].into.things)


def steps_after(steps: Sequence[Step], step: Step) -> Sequence[Step]:
    """What comes after a step at the row's top level; nothing for a step inside a repeat."""
    for i, one in enumerate(steps):
        if one is step:
            return steps[i + 1 :]
    return ()


def begins_with_picot(walk: Walk, chain: Chain) -> int:
    """The chains of the picot that the row's first chain ends in (`ch 8, sl st in 5th ch from hook`); else 0."""
    after = steps_after(walk.ahead, chain)
    if after and isinstance(after[0], Slip) and after[0].into.which == "from hook":
        return walk.site.number(after[0].into.nth)
    return 0


# loops with picots on them ---------------------------------------------------------------------------------------


def joined_loops(edge: Edge) -> Edge:
    """The edge with `ch 2, picot, ch 2` as the one loop it is for the next row."""
    if not _holds_picot(edge):
        return edge
    found: list[Target | Run] = []
    held: list[Target] = []
    for item in _opened(edge):
        if isinstance(item, Target) and _is_of_loop(item):
            held.append(item)
            continue
        found += _as_loop(held)
        held = []
        found.append(Run(item.times, joined_loops(item.items)) if isinstance(item, Run) else item)
    return (*found, *_as_loop(held))


def _holds_picot(edge: Edge) -> bool:
    for item in edge:
        if isinstance(item, Run):
            if _holds_picot(item.items):
                return True
        elif item.kind == "gap" and item == PICOT:
            return True
    return False


def _is_of_loop(one: Target) -> bool:
    return (one.kind == "sp" and not one.group) or one == PICOT


def _as_loop(held: Sequence[Target]) -> list[Target]:
    chains = sum(one.length for one in held if one.kind == "sp")
    if PICOT not in held or len(held) < 2 or not chains:
        return list(held)
    return [target("sp", "picot", chains)]


def _opened(edge: Edge) -> list[Target | Run]:
    """Runs whose loops go on from one time to the next, turned so that each loop stands in one piece."""
    found: list[Target | Run] = []
    for item in edge:
        if not isinstance(item, Run) or not isinstance(item.items[-1], Target) or not _is_of_loop(item.items[-1]):
            found.append(item)
            continue
        lead = 0
        while lead < len(item.items) and isinstance(one := item.items[lead], Target) and _is_of_loop(one):
            lead += 1
        if lead in (0, len(item.items)):
            found.append(item)
            continue
        first, rest = item.items[:lead], item.items[lead:]
        found += [*first, *([Run(item.times - 1, (*rest, *first))] if item.times > 1 else []), *rest]
    return found
