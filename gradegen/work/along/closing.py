"""A round's last chain loop that a tall stitch closes: the hook stands in that loop when the next round begins.

`* ch 6, sc in next loop; repeat from * around, ending with ch 3, dc in first sc`: the ch 3 and the dc are one loop. It
stands last on the edge, as a space that keeps the name of the stitch which closed it. The next round may begin in it
(`3 dc in same loop`), pass it by (`* ch 6, sc in next loop`), and end in it (`ending with ch 3, dc in dc`).
"""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.edge import Edge, Target
from gradegen.design.rows import Aside, Chain, Into, Join, Repeat, Step, Turn, Work
from gradegen.trade.stitches import stitches
from gradegen.work.along.walk import Walk
from gradegen.work.edge import kinds
from gradegen.work.edge.edges import split_first, target
from gradegen.work.edge.kinds import Kind


def is_closing(one: object) -> bool:
    """True for a loop that a stitch closed."""
    return isinstance(one, Target) and one.kind == "sp" and one.name not in ("sp", "picot")


def stand_in(walk: Walk) -> None:
    """Begin the row in the loop that closed the round before, where there is one."""
    edge = walk.before
    if walk.site.blind or not edge:
        return
    if walk.site.shape == "flat":
        walk.here = is_closing(edge[0])
    elif is_closing(edge[-1]):
        walk.onto((edge[-1], *edge[:-1]), again=True)
        walk.here = True


def stands_in(walk: Walk) -> bool:
    """True while nothing was worked and the hook still stands in the closing loop."""
    return walk.here and is_closing(walk.cursor.peek())


def pass_by(walk: Walk, into: Into | None) -> None:
    """Leave the closing loop for a place that is not this one: in a round it comes last, in a row never."""
    if not stands_in(walk) or (into is not None and (into.which == "same" or into.loosely)):
        return
    closing, rest = walk.cursor.rest()[:1], walk.cursor.rest()[1:]
    walk.onto(rest if walk.site.shape == "flat" else (*rest, *closing), again=True)
    walk.here = False


def leave_start(walk: Walk) -> None:
    """`sl st to picot, * ch 8, sc in next picot`: the chain leads away from the picot; in a round it comes last."""
    if not walk.here or walk.begun or len(walk.out) != 1 or walk.last_space is None:
        return
    if walk.site.shape == "flat" or walk.site.blind:
        return
    rest = walk.cursor.rest()
    first, others = split_first(rest)
    walk.onto((*others, *first), again=True)
    walk.here, walk.start_last = False, True


def keep_for_join(walk: Walk, tail: Sequence[Step]) -> None:
    """`* ch 9, sc in next loop; repeat from * around, ch 9, join in dc`: the loop that dc closed is left for it."""
    if walk.site.blind or walk.site.shape == "flat" or not _chains_to_join(tail):
        return
    pass_by(walk, None)
    rest = walk.cursor.rest()
    if rest and is_closing(rest[-1]):
        walk.onto(rest[:-1], again=True)


def keep_for_closing(walk: Walk, tail: Sequence[Step]) -> None:
    """`* ch 5, sc in next loop; repeat from * around, ending with ch 2, dc in dc`: that dc's loop is left for it."""
    steps = [step for step in tail if not isinstance(step, (Aside, Turn, Join))]
    if len(steps) != 2 or not isinstance(steps[0], Chain) or not isinstance(steps[1], Work) or not stands_in(walk):
        return
    closing, last = walk.cursor.peek(), steps[1]
    named = last.into.things[0].name if last.into.which == "next" and last.into.things else ""
    if walk.site.shape == "flat" or not isinstance(closing, Target) or closing.name != named or not _is_tall(last):
        return
    pass_by(walk, None)
    walk.onto(walk.cursor.rest()[:-1], again=True)


def _chains_to_join(tail: Sequence[Step]) -> bool:
    steps = [step for step in tail if not isinstance(step, (Aside, Turn))]
    return len(steps) == 2 and isinstance(steps[0], Chain) and isinstance(steps[1], Join)


def waits_for_first(walk: Walk, step: Repeat, tail: Sequence[Step]) -> bool:
    """`* ch 8, sc in next sc; repeat from * around, ending with ch 3, tr in first sc`: that sc is kept."""
    last = next((one for one in reversed(tail) if not isinstance(one, (Aside, Turn, Join))), None)
    goes_first = isinstance(last, Work) and last.into.which == "first" and _is_tall(last)
    walk.first_waits = goes_first and not walk.out and not walk.begun and isinstance(step.body[0], Chain)
    return walk.first_waits


def _is_tall(step: Work) -> bool:
    return len(step.makes) == 1 and step.makes[0].times is None and _height(step) > 1


def closes(walk: Walk, step: Work) -> bool:
    """True for the tall stitch at a row's end that closes the chains before it to a loop."""
    if len(walk.out) < 2 or walk.last_space is None or not _is_tall(step):
        return False
    return _is_last(walk, step) and _goes_back(walk, step)


def _goes_back(walk: Walk, step: Work) -> bool:
    """True where the stitch goes to the beginning of its round, or into what is used up already."""
    into = step.into
    if into.which == "last":
        return walk.site.shape == "flat" and _names_space(into) and not _left(walk, into)
    if walk.site.shape == "flat" or into.number is not None:
        return False
    if into.which in ("first", "tch"):
        return True
    if into.which == "ring":
        return any(_works_other(one, step) for one in _inside(walk.ahead))
    one_stitch = len(into.things) == 1 and into.things[0].name in stitches()
    return into.which == "next" and into.loosely and one_stitch and not _left(walk, into)


def _names_space(into: Into) -> bool:
    return bool(into.things) and into.things[0].name == "sp"


def _left(walk: Walk, into: Into) -> int:
    return 0 if walk.site.blind else walk.remaining(walk.kind(into.things))


def _works_other(one: Step, step: Work) -> bool:
    return isinstance(one, Work) and one.into.which == "ring" and one.makes != step.makes


def _inside(steps: Sequence[Step]) -> list[Step]:
    found: list[Step] = []
    for step in steps:
        found += _inside(step.body) if hasattr(step, "body") else [step]
    return found


def _is_last(walk: Walk, step: Work) -> bool:
    """True when nothing but the end of the row stands behind this step."""
    for i, one in enumerate(walk.ahead):
        if one is step:
            return all(isinstance(after, (Aside, Turn, Join, Chain)) for after in walk.ahead[i + 1 :])
    return False


def close(walk: Walk, step: Work) -> None:
    """The chains made last and this stitch become one loop."""
    last = walk.out[-1]
    assert isinstance(last, Target)
    name, height = step.makes[0].stitch, _height(step)
    walk.out[-1] = target("sp", name, last.length + height)
    if walk.placing is not None:
        walk.placing.close_space(name, height)
    if walk.first_waits:
        walk.take(walk.kind(step.into.things), 1, step.into.place)
    elif not walk.site.blind:
        goes_first = walk.start_last and step.into.which == "first"
        if is_closing(_at_end(walk.cursor.rest())) or (goes_first and _left(walk, step.into) == 1):
            walk.cursor.to_end()


def _at_end(edge: Edge) -> object:
    return edge[-1] if len(edge) == 1 else None


def take_waiting(walk: Walk, into: Into, kind: Kind) -> bool:
    """`ending with ch 7, sc in dc`: uses the loop which that dc closed; False where none waits, or a dc is left."""
    name = into.things[0].name if len(into.things) == 1 else ""
    last = walk.cursor.peek()
    if walk.site.blind or last is None or last.kind != "sp" or last.name != name:
        return False
    if walk.remaining(kind) or _at_end(walk.cursor.rest()) is not last:
        return False
    walk.take(kinds.ANY_SPACE, 1, into.place)
    return True


def _height(step: Work) -> int:
    known = stitches().get(step.makes[0].stitch)
    return (known.height or 0) if known else 0
