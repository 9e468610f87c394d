"""Steps whose number of runs hangs on what comes after them: a repeat `across` leaves what the row's end needs."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import partial
from itertools import takewhile
from typing import TypeGuard

from gradegen.design.edge import Edge, Target
from gradegen.design.rows import (
    Aside,
    Bound,
    Chain,
    Either,
    Join,
    Mixed,
    Repeat,
    SizesOnly,
    Skip,
    Step,
    Turn,
    Work,
    worked,
)
from gradegen.read.notation.places.things import is_space
from gradegen.work.along.addressed import body_kind
from gradegen.work.along.closing import keep_for_closing, keep_for_join, waits_for_first
from gradegen.work.along.doing import do, reading_tried, run
from gradegen.work.along.repeats import loop, uneven
from gradegen.work.along.walk import Walk
from gradegen.work.edge.edges import split_first, stitches
from gradegen.work.edge.kinds import ANY_STITCH, Kind
from gradegen.work.edge.stops import DOES_NOT_FIT, LEFT_OVER, UNDEFINED, Fault, Unclear
from gradegen.work.row.correspond import end_to_correspond
from gradegen.work.row.unsaid_ends import ends_on_skip, ends_on_start, is_beside_group
from gradegen.work.step.groups import keep_whole, pass_rest
from gradegen.work.step.reach import how_many
from gradegen.work.step.stitching import work_mixed

_TRIES = 8


def work_steps(walk: Walk, steps: Sequence[Step], leaves: bool = False) -> None:
    """All steps of a row; a repeat `across` leaves what the steps after it need."""
    for i, step in enumerate(steps):
        tail = steps[i + 1 :]
        whole = False
        if isinstance(step, Repeat) and step.times.last_run:
            named = step.times.corresponds
            step = _ended(walk, step, cut_first=named or _begins_with_group(tail))
            whole = not step.times.last_run
            if named and not step.times.corresponds:
                _end_named(step, partial(_search_repeat, walk, step, tail, leaves))
                return
        if isinstance(step, Either) and any(isinstance(one, Repeat) and _is_open(one) for one in step.readings[0]):
            work_steps(walk, (*reading_tried(walk, step), *tail), leaves)
            return
        if isinstance(step, Repeat) and step.times.corresponds:
            end_to_correspond(walk, step, tail)
            if step.times.end_named:
                _end_named(step, partial(work_steps, walk, tail, leaves))
                return
            continue
        if not _is_open(step):
            do(walk, step)
            continue
        if isinstance(step, Repeat):
            keep_for_closing(walk, tail)
        waits = isinstance(step, Repeat) and waits_for_first(walk, step, tail)
        if waits or _stops_early(step) or _consumes(tail):
            if isinstance(step, Repeat):
                _search_repeat(walk, step, tail, leaves, whole)
            else:
                assert isinstance(step, (Work, Mixed))
                _search_each(walk, step, tail, leaves)
            return
        if isinstance(step, Repeat):
            keep_for_join(walk, tail)
            _to_the_end(walk, step, tail)
        else:
            do(walk, step)
    if not leaves:
        _finish(walk)


_ENDINGS = (
    "the last repeat is worked in full before the ending",
    "the ending takes the place of the last repeat's end",
)


def _begins_with_group(tail: Sequence[Step]) -> bool:
    """True for an ending of several stitches in one place: it stands for the group that the repeat itself works."""
    first = tail[0] if tail else None
    if isinstance(first, Either):
        first = first.readings[0][0]
    return isinstance(first, Work) and len(first.makes) > 1


def _ended(walk: Walk, step: Repeat, cut_first: bool) -> Repeat:
    """The repeat with its last run whole, or cut where the ending begins, in the reading that is being tried."""
    ways = _ENDINGS[::-1] if cut_first else _ENDINGS
    key = f"ending {step.place.line}:{step.place.column}"
    chosen = walk.site.choose(key, "the last repeat", ways, step.place, silent=True)
    whole = ways[chosen] == _ENDINGS[0]
    return replace(step, times=replace(step.times, last_run=()) if whole else replace(step.times, corresponds=False))


def _is_open(step: Step) -> bool:
    if isinstance(step, Repeat):
        return step.times.how == "bound" and (step.times.bound is None or step.times.bound.to in ("end", "last"))
    if isinstance(step, Work):
        into = step.into
        return into.which == "each" and into.number is None and (into.bound is None or into.bound.to == "end")
    return isinstance(step, Mixed) and (step.bound is None or step.bound.to == "end")


def _stops_early(step: Step) -> bool:
    return isinstance(step, Repeat) and (step.times.stop_at is not None or bool(step.times.last_run))


def _consumes(steps: Sequence[Step]) -> bool:
    """True when steps after this one use up places of the edge."""
    for step in steps:
        if isinstance(step, Work) and step.into.which not in ("same", "first", "ring"):
            return True
        if isinstance(step, (Skip, Mixed)):
            return True
        if isinstance(step, (Repeat, SizesOnly)) and _consumes(step.body):
            return True
        if isinstance(step, Either) and _consumes(step.readings[0]):
            return True
    return False


def _to_the_end(walk: Walk, step: Repeat, tail: Sequence[Step]) -> None:
    """A repeat `around` that ends the row: whole runs, or a last run whose end goes without saying."""
    spot = walk.save()
    started = bool(walk.out)
    try:
        do(walk, step)
    except Fault as fault:
        if fault.rule is not DOES_NOT_FIT:
            raise
        walk.load(spot)
        kind = body_kind(walk, step.body)
        if kind is None:
            raise
        loop(walk, step, None, lambda: walk.remaining(kind) <= 0, 0, kind)
        if (
            _ends_midway(walk, step)
            or ends_on_skip(walk, step, tail, kind)
            or ends_on_start(walk, step, tail, kind)
            or (started and _ends_on_first(walk, step, tail, kind))
        ):
            return
        raise


def _ends_midway(walk: Walk, step: Repeat) -> bool:
    """`* sc in each st to corner, 3 sc in corner; rep around` begun on a side: no corner is left, and the side is."""
    first = step.body[0]
    bound = first.into.bound if isinstance(first, Work) else None
    if not isinstance(first, Work) or bound is None or bound.to != "thing" or bound.thing is None:
        return False
    if len(step.body) < 2 or walk.remaining(walk.kind((bound.thing,))):
        return False
    do(walk, replace(first, into=replace(first.into, bound=Bound("end"))))
    return True


def _ends_on_first(walk: Walk, step: Repeat, tail: Sequence[Step], kind: Kind) -> bool:
    """`sc in same st, * ch 5, skip 3, sc in next; rep around, join`: the last sc is the first one of the round."""
    at = max((i for i, one in enumerate(step.body) if isinstance(one, Work)), default=0)
    last, body = step.body[at], step.body[:at]
    joins = any(isinstance(s, Join) for s in tail)
    if not joins or not isinstance(last, Work) or last.into.which != "next" or last.into.number is not None:
        return False
    if not _worked_alike(walk, last) or (step.body[at + 1 :] and not _begins_so(walk, last, step.body[at + 1 :])):
        return False
    if tail and isinstance(tail[0], Chain) and body and isinstance(body[-1], Chain):
        body = body[:-1]  # the chain to the join is said behind the repeat
    try:
        run(walk, body)
    except Fault:
        return False
    return walk.remaining(kind) == 0


def _worked_alike(walk: Walk, last: Work) -> bool:
    """False where the first stitch of the round went into a space and this one into a stitch, or the reverse."""
    first = next((one for one in worked(walk.ahead) if one.into.things), None)
    if first is None or (walk.stood is not None and walk.stood[1]):
        return True
    return is_space(first.into.things[0]) == is_space(last.into.things[0])


def _begins_so(walk: Walk, stitch: Work, chains: Sequence[Step]) -> bool:
    """`ch 4, * skip 1, dc in next, ch 1; rep around, join`: the round began with this stitch and these chains."""
    first, rest = split_first(tuple(walk.out))
    if len(stitch.makes) != 1 or not _is(first, "st") or first[0].name != stitch.makes[0].stitch:
        return False
    for one in chains:
        there, rest = split_first(rest)
        if not isinstance(one, Chain) or not _is(there, "sp") or there[0].length != walk.site.number(one.number):
            return False
    return True


def _is(edge: Edge, kind: str) -> TypeGuard[tuple[Target]]:
    return bool(edge) and isinstance(edge[0], Target) and edge[0].kind == kind


def _search_repeat(walk: Walk, step: Repeat, tail: Sequence[Step], leaves: bool, whole: bool = False) -> None:
    """Find how many runs leave exactly what the tail needs; `whole`: the tail is no end of the last run."""
    walk.must_see(step.place)
    kind = body_kind(walk, step.body)
    if kind is None:
        raise Unclear("this repeat goes nowhere", step.place)
    bound = step.times.bound
    keep = walk.site.number(bound.number) if bound and bound.to == "last" else 0
    if keep and step.times.stop_at is None:
        do(walk, step)
        work_steps(walk, tail, leaves)
        return
    closing = step.times.last_run if step.times.stop_at is None else step.body[: step.times.stop_at]
    spot, before = walk.save(), walk.remaining(kind)
    most = loop(walk, step, None, lambda: walk.remaining(kind) <= 0, 0, kind)
    there = walk.remaining(kind)
    if _tries(walk, spot, most, lambda runs: _runs(walk, step, runs, closing, tail, leaves, whole)):
        return
    passed = _passed_at_end(step, tail)
    if passed and _tries(walk, spot, most, lambda runs: _runs(walk, step, runs, passed, tail, leaves)):
        return
    walk.load(spot)
    most = loop(walk, step, None, lambda: walk.remaining(kind) <= 0, 0, kind)
    raise uneven(walk, step, kind, before, min(there, walk.remaining(kind)) * 0, most)


def _passed_at_end(step: Repeat, tail: Sequence[Step]) -> tuple[Step, ...]:
    """`* skip next dc and ch-2 sp, shell in next sc; rep across, sc in last sc`: what is left of the last group."""
    skips = tuple(takewhile(lambda one: isinstance(one, Skip), step.body))
    last = next((one for one in tail if not isinstance(one, Aside)), None)
    if not any(isinstance(one, Skip) and any(thing.name == "sp" for thing in one.into.things) for one in skips):
        return ()
    return skips if isinstance(last, Work) and last.into.which == "last" else ()


def _end_named(step: Repeat, work: Callable[[], None]) -> None:
    """`ending last repeat with ch 2, join`: where that does not come out even, the words may mean another place."""
    try:
        work()
    except Fault as fault:
        raise Unclear("how the last repeat ends can't be told", step.place) from fault


def _runs(
    walk: Walk,
    step: Repeat,
    runs: int,
    closing: Sequence[Step],
    tail: Sequence[Step],
    leaves: bool,
    whole: bool = False,
) -> None:
    loop(walk, step, runs)
    keep_whole(walk, tail, step.place)
    run(walk, closing)
    if whole and _passes_over_run(walk, tail):
        raise Unclear("most of a repeat is passed over before the ending", step.place)
    work_steps(walk, tail, leaves)


def _passes_over_run(walk: Walk, tail: Sequence[Step]) -> bool:
    """`* skip 2 dc, sc in next dc, ...; repeat, ending with 3 dc in last sc`: the dc left are named nowhere."""
    last = next((one for one in tail if not isinstance(one, Aside)), None)
    if not isinstance(last, Work) or last.into.which != "last" or not last.into.things:
        return False
    named = walk.kind(last.into.things)
    others = [kind for kind in walk.addressed.values() if kind.key.startswith("=") and kind.key != named.key]
    return named.key.startswith("=") and any(walk.remaining(kind) > 1 for kind in others)


def _tries(walk: Walk, spot: object, most: int, attempt: object) -> bool:
    for runs in range(most, max(-1, most - _TRIES), -1):
        walk.load(spot)  # type: ignore[arg-type]
        try:
            attempt(runs)  # type: ignore[operator]
        except Fault as fault:
            if fault.rule is UNDEFINED:
                raise
            continue
        return True
    return False


def _search_each(walk: Walk, step: Work | Mixed, tail: Sequence[Step], leaves: bool) -> None:
    """`sc in each st across, sc in last st`: find how many leave what the tail needs."""
    first: Fault | None = None
    if isinstance(step, Mixed):
        _search_mixed(walk, step, tail, leaves)
        return
    pass_rest(walk, step.into)
    spot = walk.save()
    kind: Kind = walk.kind(step.into.things, each=True)
    most = how_many(walk, kind, step.into.bound, step)
    for number in range(most, max(-1, most - _TRIES), -1):
        walk.load(spot)
        try:
            if number == most:
                do(walk, step)
            else:
                if walk.placing is not None:
                    walk.placing.begin(step)
                walk.owe(kind)
                walk.take(kind, number, step.place)
                walk.make(step.makes, number)
            keep_whole(walk, tail, step.place)
            work_steps(walk, tail, leaves)
        except Fault as fault:
            first = first or fault
            continue
        return
    raise first or walk.short(kind, 1, step.place)


def _search_mixed(walk: Walk, step: Mixed, tail: Sequence[Step], leaves: bool) -> None:
    """`dc in each dc and 2 dc in each sp across, dc in top of turning ch`: as far as the tail leaves room."""
    first: Fault | None = None
    spot = walk.save()
    for less in range(_TRIES):
        walk.load(spot)
        try:
            work_mixed(walk, step, less)
            work_steps(walk, tail, leaves)
        except Fault as fault:
            first = first or fault
            continue
        return
    assert first is not None
    raise first


def _turns_early(walk: Walk, left: int) -> bool:
    """`hdc in next 10 sts, turn.` with half the edge or more ahead: a shoulder, in the reading that is being tried."""
    steps = [step for step in walk.ahead if not isinstance(step, (Aside, Chain))]
    plain = all(isinstance(step, Work) and step.into.which == "next" for step in steps[:-1])
    if len(steps) < 2 or not plain or not isinstance(steps[-1], Turn) or 2 * left < stitches(walk.before):
        return False
    ways = ("the row goes to the end", "the rest of the row is left unworked")
    return walk.site.choose("rest", "what is left of the row", ways, steps[-1].place) == 1


def _ends_work(step: Step) -> bool:
    """A turn, or the end of the yarn."""
    return isinstance(step, Turn) or (isinstance(step, Aside) and _YARN_ENDS.match(step.text) is not None)


_YARN_ENDS = re.compile(r"(?:fasten|break|cut|end|finish) off", re.IGNORECASE)


def _finish(walk: Walk) -> None:
    """Nothing that is owed may be left."""
    if walk.left_before_last is not None and not walk.site.blind:
        raise walk.left_before_last
    if walk.unworked or walk.site.blind:
        return
    left, kind = walk.left_over()
    if not left or kind is None or is_beside_group(walk, left, kind):
        return
    if left == walk.kept and any(_ends_work(step) for step in walk.ahead):
        walk.unworked = True  # `sc in each st to last 2 sts, turn`: those two are meant to stay
        return
    if _turns_early(walk, left):
        walk.unworked = True
        return
    there = Fraction(stitches(walk.before))
    raise Fault(
        LEFT_OVER,
        walk.at,
        "The row ends before its edge does.",
        expected="0 left",
        found=f"{left} {kind.words} left",
        because=f"the row before leaves {there}; this row uses {there - walk.remaining(ANY_STITCH)} of them",
        complete=True,
    )
