"""How far a step goes: to a bound, to the last so many, and what it means when that does not come out."""

from __future__ import annotations

from gradegen.design.edge import Edge, Target
from gradegen.design.rows import Bound, Into, Mixed, Step, Work
from gradegen.work.along import repeats
from gradegen.work.along.centre import left_before_centre
from gradegen.work.along.passed_over import before_next
from gradegen.work.along.walk import Walk
from gradegen.work.edge import kinds
from gradegen.work.edge.cursor import Cursor
from gradegen.work.edge.kinds import Kind
from gradegen.work.edge.stops import DOES_NOT_FIT, LEFT_OVER, Fault, Unclear


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
    if bound.to == "before centre":
        if there != walk.remaining(kinds.ANY_STITCH):
            raise Unclear("not all stitches up to the centre are of one kind", step.place)
        return there - left_before_centre(walk, bound, step.place)
    assert bound.thing is not None
    stop = walk.kind((bound.thing,)) if bound.thing.name != "corner" else kinds.corner_kind(walk.before)
    passed = before_next(walk, kind, stop)
    if passed is None:
        if walk.inside and kinds.holds(walk.before, stop.fits) and there:
            return there  # `dc to next underarm` behind the last one
        raise walk.short(stop, 1, step.place)
    kept = walk.site.number(bound.number, 0)  # `to 1 st before ch-2 sp`
    if kept and (kept > passed or not kind.key.startswith(("st", "place", "="))):
        raise Unclear(f"how many {kind.words} stand before there is not certain", step.place)
    return passed - kept


def _before_last(walk: Walk, kind: Kind, bound: Bound, there: int) -> int:
    keep = walk.site.number(bound.number)
    last = walk.kind((bound.thing,)) if bound.thing else kind
    if last.key == kind.key:
        if there < keep:
            raise walk.short(kind, keep, walk.at)
        return there - keep
    others = walk.remaining(last) - keep
    if others < 0:
        raise walk.short(last, keep, walk.at)
    if not keep:
        return there
    # the kept ones stand last; what lies before the first of them is ours
    spot = walk.cursor.save()
    walk.cursor.pass_over(last.key, last.fits, others)
    passed = there - walk.remaining(kind) + (before_next(walk, kind, last) or 0)
    walk.cursor.load(spot)
    return passed


def to_last(walk: Walk, kind: Kind, wanted: int, into: Into, keep: int = 0) -> None:
    """Use up the last so many of a kind, or those before `keep` more; what stands before them must be used already."""
    if walk.site.blind:
        walk.take(kind, wanted, into.place)
        return
    there = walk.remaining(kind) - keep
    if there < wanted:
        if there == 0 and wanted == 1 and walk.begun:
            raise walk.short(kind, wanted, into.place)
        raise walk.short(kind, wanted, into.place)
    if (
        there > wanted
        and not walk.last_kind.startswith(("sp", "~", "@", "corner"))
        and not _spans(walk, there - wanted)
        and not (wanted == 1 and _ends_in_half_shell(walk))
    ):
        walk.left_before_last = walk.left_before_last or Fault(
            LEFT_OVER,
            into.place,
            "Stitches are left before the last ones.",
            expected=f"{wanted} left here",
            found=f"{there} left",
            complete=True,
        )
        if walk.inside or walk.first_waits:
            raise walk.left_before_last
    walk.take(kind, there, into.place)
    if walk.placing is not None:
        walk.placing.keep_last(wanted)
    if there > wanted:
        walk.owe(kind)


def _spans(walk: Walk, number: int) -> bool:
    """`ch 2, dc in end st`: the chain just made spans a few stitches without a word, along a foundation."""
    last = walk.out[-1] if walk.out else None
    return bool(walk.fresh_chain) and isinstance(last, Target) and last.kind == "sp" and number <= last.length + 1


def _ends_in_half_shell(walk: Walk) -> bool:
    """`..., 5 dc in next sc, sc in top of ch 3` along half shells at both ends: the rest of the last one is passed."""
    first, last = _runs_of(walk.before), _runs_of(walk.cursor.rest())
    if len(last) != 1 or len(first) < 2 or not 1 < last[0][1] <= _HALF_SHELL:
        return False
    return first[0] == last[0] and walk.last_kind == f"={first[1][0]}"


_HALF_SHELL = 5  # stitches


def _runs_of(edge: Edge) -> list[tuple[str, int]]:
    """The first two runs of like stitches on an edge, each with its name and its length."""
    found: list[tuple[str, int]] = []
    cursor = Cursor(edge)
    for _ in range(2 * _HALF_SHELL):
        one = cursor.peek()
        if one is None:
            break
        if found and found[-1][0] == one.name:
            found[-1] = (one.name, found[-1][1] + 1)
        else:
            found.append((one.name, 1))
        cursor.step()
    return found[:2]


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
