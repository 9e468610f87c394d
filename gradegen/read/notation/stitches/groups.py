"""Groups written without brackets: `2 dc, ch 2, 2 dc in next sp` goes into one place."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Chain, Either, Make, Step, Work
from gradegen.read.notation.places.things import is_space
from gradegen.read.notation.stitches.makes import read_between, spaced_out
from gradegen.read.notation.words.reading import Reading
from gradegen.trade.stitches import stitches

_FILET = frozenset({"sp", "space", "bl", "block", "mesh"})


def gathered(r: Reading, steps: list[Step], barrier: int) -> None:
    """Joins bare stitches and chains before the last step to it, when they plainly go into its place."""
    work = steps[-1] if steps else None
    if not isinstance(work, Work) or work.bare or not _is_one_place(work):
        return
    begins = _run_before(steps, barrier)
    if begins is None:
        return
    before = steps[begins:-1]
    makes = tuple(_make(step) for step in before) + work.makes
    between = read_between(r)
    if between is not None:
        makes = spaced_out(makes, between) or makes
    group = replace(work, makes=makes, place=replace_place(before[0], work))
    if _is_certain(r, before, work):
        steps[begins:] = [group]
        return
    why = ("all go into one place", "only the last goes there, the others into the places before it")
    steps[begins:] = [Either(((group,), (*before, work)), why, place=group.place)]


def replace_place(first: Step, last: Work):  # type: ignore[no-untyped-def]
    """From the first step to the last."""
    return replace(first.place, end_line=last.place.end_line, end_column=last.place.end_column)


def _is_one_place(work: Work) -> bool:
    into = work.into
    return into.number is None and into.which in ("next", "same", "first", "last", "of", "ring") and into.bound is None


def _run_before(steps: list[Step], barrier: int) -> int | None:
    """Where the bare stitches and chains before the last step begin, a chain between them; None without any."""
    i = len(steps) - 1
    chains = 0
    while i > barrier and _joins(steps[i - 1]):
        i -= 1
        chains += isinstance(steps[i], Chain)
    while i < len(steps) - 1 and (isinstance(steps[i], Chain) or _is_picot(steps[i])):
        chains -= isinstance(steps[i], Chain)
        i += 1
    bare = [step for step in steps[i:-1] if isinstance(step, Work)]
    if not bare or (chains < 1 and not any(_is_picot(step) for step in bare)):
        return None
    if any(make.stitch in _FILET for step in bare for make in step.makes):
        return None
    return i


def _joins(step: Step) -> bool:
    if isinstance(step, Chain):
        return step.counts is None
    if not isinstance(step, Work) or not step.bare or step.into.which != "next" or len(step.makes) != 1:
        return False
    return not step.called and not _says_its_place(step.makes[0])


def _says_its_place(make: Make) -> bool:
    """`sc2tog`, `inc`: a stitch over two places, or two in one, needs no place named behind it."""
    known = stitches().get(make.stitch)
    return known is not None and not known.varies and (known.takes > 1 or len(known.makes) > 1)


def _is_picot(step: Step) -> bool:
    if not isinstance(step, Work):
        return False
    known = stitches().get(step.makes[0].stitch)
    return step.makes[0].stitch == "picot" or (known is not None and known.takes == 0)


def _make(step: Step) -> Make:
    if isinstance(step, Chain):
        number = None if step.number.values == (1,) else step.number
        return Make("ch", number, place=step.place)
    assert isinstance(step, Work)
    make = step.makes[0]
    return replace(make, times=step.into.number) if step.into.number is not None else make


def _is_certain(r: Reading, before: list[Step], work: Work) -> bool:
    """True when the numbers and the place leave no doubt: `1 sc, ch 3, 1 sc in next loop`."""
    first = before[0]
    counted = _begins_with_number(r, first)
    return (
        counted
        and _begins_with_number(r, work)
        and (bool(work.into.things) and (is_space(work.into.things[0]) or _alike(first, work)))
    )


def _alike(first: Step, work: Work) -> bool:
    return isinstance(first, Work) and first.makes[0].stitch == work.makes[-1].stitch


def _begins_with_number(r: Reading, step: Step) -> bool:
    place = step.place
    for token in r.tokens:
        if token.kind in ("number", "count") and r.written.place(token.start, token.start + 1).column == place.column:
            return True
    return False
