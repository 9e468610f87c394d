"""Repeats in closed form: once a run of the repeat meets the edge as an earlier run did, the rest is multiplied.

A run meets the edge the same way when the cursor stands at the same place of the edge's own repeat, only with fewer of
that repeat left. Everything between two such runs then happens again and again until the edge's repeat gives out.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from gradegen.design.edge import Edge, Run
from gradegen.design.rows import Bound, Make, Mixed, Repeat, Skip, Work
from gradegen.work.along.addressed import body_kind
from gradegen.work.along.centre import left_before_centre
from gradegen.work.along.doing import run, works
from gradegen.work.along.made_enough import run_until_made
from gradegen.work.along.passed_over import before_next, passed_first, passes_last_stitch, passes_once_more
from gradegen.work.along.repeat_facts import RepeatFact
from gradegen.work.along.walk import Walk
from gradegen.work.edge import kinds
from gradegen.work.edge.doubts import NEVER_RUN, PASSED_OVER
from gradegen.work.edge.kinds import ANY_SPACE, ANY_STITCH, Kind
from gradegen.work.edge.stops import DOES_NOT_FIT, MISSING_TARGET, UNDEFINED, Fault, Unclear

Until = Callable[[], bool]


class Passed(NamedTuple):
    """How things stood after an earlier run: runs done, passes of the edge's repeat left, and what was made by then."""

    runs: int
    left: int
    made: int
    there: int
    spent: dict[str, int]


Seen = dict[object, Passed]
_MOST_RUNS = 400


@works(Repeat)
def work_repeat(walk: Walk, step: Repeat) -> None:
    """All runs of a repeat, where nothing after it decides how many."""
    if step.times.how == "bound":
        work_bound(walk, step)
        return
    number = times_of(walk, step)
    stop_at = step.times.stop_at
    if number <= 0:
        return
    whole = number if stop_at is None else number - 1
    share = _share(walk, step, number)
    ahead = _ahead(walk)
    if share is not None:
        for _ in range(min(whole, _MOST_RUNS)):
            walk.quota = (walk.remaining(ANY_STITCH), share)
            run(walk, step.body)
    else:
        loop(walk, step, whole)
    if stop_at is not None:
        run(walk, step.body[:stop_at])
    _keep_fact(walk, step, ahead, number)


def times_of(walk: Walk, step: Repeat) -> int:
    """How often a repeat with a number runs in all, in the reading being tried."""
    number = walk.site.number(step.times.number)
    if step.times.how == "more":
        return number + 1
    if step.times.how == "in all":
        return number
    key = f"times {step.place.line}:{step.place.column}"
    ways = (f"{number} times in all", f"{number} times besides the first")
    if walk.site.booklet:
        ways = ways[::-1]
    chosen = walk.site.choose(key, "the repeat", ways, step.place)
    return number + (1 if ways[chosen].endswith("first") else 0)


def _share(walk: Walk, step: Repeat, number: int) -> int | None:
    """The stitches of one run, where a marker inside the repeat divides the edge evenly."""
    has_marker = any(isinstance(s, Work) and s.into.bound and s.into.bound.to == "before marker" for s in step.body)
    if not has_marker:
        return None
    there = walk.remaining(ANY_STITCH)
    if there % number:
        raise Unclear("the markers' places are not known", step.place)
    return there // number


def before_marker(walk: Walk, kind: Kind, bound: Bound, step: Work | Mixed) -> int:
    """How many stitches before a marker that stands at the end of this run's share."""
    if walk.quota is None:
        raise Unclear("the marker's place is not known", step.place)
    start, share = walk.quota
    number = share - (start - walk.remaining(ANY_STITCH)) - walk.site.number(bound.number, 0)
    if number < 0 or kind.key != "st":
        raise Unclear("the marker's place is not known", step.place)
    return number


# loops --------------------------------------------------------------------------------------------------------------


def loop(
    walk: Walk, step: Repeat, limit: int | None, until: Until | None = None, keep: int = 0, kind: Kind | None = None
) -> int:
    """Run the body `limit` times, or (None) as often as it fits whole; how many runs that were.

    `until` ends it earlier: True when no more than `keep` of `kind` are left.
    """
    muted = walk.muted
    walk.inside += 1
    try:
        done = _run_on(walk, step, limit, until, keep, kind)
        if limit is None and not done:
            walk.unsure = NEVER_RUN
        if walk.placing is not None:
            walk.placing.end_runs(walk.inside)
        return done
    finally:
        walk.muted = muted
        walk.inside -= 1


def _run_on(walk: Walk, step: Repeat, limit: int | None, until: Until | None, keep: int, kind: Kind | None) -> int:
    done = worked = 0
    seen: Seen = {}
    while (limit is None or done < limit) and not (until and until()):
        spot, moved = walk.save() if limit is None else None, walk.cursor.moved
        if walk.placing is not None:
            walk.placing.begin_run(walk.inside, step.place)
        try:
            run(walk, step.body)
        except Fault as fault:
            if spot is None or fault.rule is UNDEFINED or (fault.rule is MISSING_TARGET and not done):
                raise
            walk.load(spot)
            break
        done, worked, walk.muted = done + 1, worked + 1, True
        if limit is None and walk.cursor.moved == moved:
            raise Unclear("this repeat takes nothing, so it never ends", step.place)
        if worked > _MOST_RUNS:
            raise Unclear("too many repeats without a pattern", step.place)
        if limit is None or limit - done > 1:
            done += _skip_ahead(walk, seen, done, limit, keep, kind)
    return done


def _skip_ahead(
    walk: Walk,
    seen: Seen,
    done: int,
    limit: int | None,
    keep: int,
    kind: Kind | None,
) -> int:
    """Runs that can be multiplied instead of worked, and are; 0 when none yet, and where every place is recorded."""
    if walk.placing is not None:
        return 0
    cursor = walk.cursor
    at, left = tuple(cursor.at), tuple(cursor.left)
    there = walk.remaining(kind) if kind else 0
    for depth, span in enumerate(cursor.spans):
        if span.times == 1 and (depth > 0 or limit is None):
            continue  # passed once only; what takes nothing is bound to come back all the same
        key = (depth, at, left[:depth], left[depth + 1 :])
        earlier = seen.get(key)
        now = Passed(done, left[depth], len(walk.out), there, dict(walk.spent))
        seen[key] = now
        cycles = _cycles(earlier, now, limit, there - keep) if earlier else 0
        if earlier and cycles > 0:
            _multiply(walk, depth, earlier, cycles)
            for later in [key for key, passed in seen.items() if passed.runs > earlier.runs]:
                del seen[later]  # what they remember of the new edge has been folded into one run
            return cycles * (done - earlier.runs)
    return 0


def _cycles(earlier: Passed, now: Passed, limit: int | None, spare: int) -> int:
    """How many whole cycles may be skipped."""
    passes = earlier.left - now.left
    bounds = []
    if passes > 0:
        bounds.append((now.left - 1) // passes)
        if earlier.there > now.there:
            bounds.append(spare // (earlier.there - now.there))
    elif limit is None:
        return 0
    if limit is not None:
        bounds.append((limit - now.runs) // (now.runs - earlier.runs))
    return min(bounds)


def _multiply(walk: Walk, depth: int, earlier: Passed, cycles: int) -> None:
    walk.cursor.left[depth] -= cycles * (earlier.left - walk.cursor.left[depth])
    again = tuple(walk.out[earlier.made :])
    if again:
        walk.out[earlier.made :] = [Run(cycles + 1, again)]
    for name, number in walk.spent.items():
        walk.spent[name] = number + cycles * (number - earlier.spent.get(name, 0))
    walk.place_start = len(walk.out)


def each_of(walk: Walk, pairs: Sequence[tuple[Kind, tuple[Make, ...]]], number: int, step: Mixed) -> None:
    """The next `number` targets of several kinds, each with the makings of its own kind."""
    union = _union(pairs)
    keep = walk.remaining(union) - number
    seen: Seen = {}
    done = worked = 0
    while walk.remaining(union) > keep:
        one = walk.cursor.peek()
        if one is None:
            break
        if not union.fits(one) and ANY_STITCH.fits(one):
            walk.unsure = PASSED_OVER
        makes = next((makes for kind, makes in pairs if kind.fits(one)), None)
        walk.use_next()
        if makes is not None:
            walk.make(makes)
            walk.begun = True
        done, worked = done + 1, worked + 1
        done += _skip_ahead(walk, seen, done, None, keep, union)
        if worked > _MOST_RUNS:
            raise Unclear("too many places without a pattern", step.place)


def _union(pairs: Sequence[tuple[Kind, tuple[Make, ...]]]) -> Kind:
    union = pairs[0][0]
    for kind, _ in pairs[1:]:
        union = union | kind
    return union


# repeats to the end or a limit --------------------------------------------------------------------------------------


def work_bound(walk: Walk, step: Repeat) -> None:
    """A repeat to the end or to a limit, where nothing after it decides how often it runs."""
    bound = step.times.bound or Bound("end")
    if bound.to == "made":
        run_until_made(walk, step, bound, lambda times: loop(walk, step, times))
        return
    walk.must_see(step.place)
    kind = body_kind(walk, step.body)
    if kind is None:
        raise Unclear("this repeat goes nowhere", step.place)
    ahead = _ahead(walk)
    if bound.to in ("thing", "before marker"):
        before = walk.remaining(kind)
        done = loop(walk, step, None, _at_thing(walk, bound, kind))
        if not _at_thing(walk, bound, kind)():
            raise uneven(walk, step, kind, before, 0, done)
        return
    keep = walk.site.number(bound.number) if bound.to == "last" else 0
    counted = walk.kind((bound.thing,)) if bound.to == "last" and bound.thing else kind
    if bound.to == "before centre":
        keep, counted = left_before_centre(walk, bound, step.place), ANY_STITCH
    if keep > 1 and counted.key == "st" and bound.to == "last" and kinds.holds(walk.before, ANY_SPACE.fits):
        ways = ("the last sts are stitches alone", "a chain space is one of the last sts")
        if walk.site.choose(f"last {step.place.line}:{step.place.column}", "the last sts", ways, step.place) == 1:
            counted = kinds.ANY_PLACE
    if counted.key == "st" and not _has_stitches(kind):
        counted, keep = kind, 0  # `(...) in next sp; rep to last st`: all spaces, whatever stitches stand after them
    elif keep and counted.key.startswith("=") and not _has_stitches(kind):
        counted, keep = kind, _among_last(walk, kind, counted, keep)
    before = walk.remaining(counted)
    if before < keep and counted.of_several and not kinds.holds(walk.before, counted.fits):
        raise Unclear(f"the row before is not known to hold a {counted.words}", step.place)
    if before == 0 and not kinds.holds(walk.before, kind.fits):
        raise walk.short(kind, 1, step.place)
    passed = passed_first(walk, step)
    done = loop(walk, step, None, lambda: walk.remaining(counted) <= keep, keep, counted)
    if walk.remaining(counted) != keep and not (
        keep == 0 and (passes_once_more(walk, passed) or passes_last_stitch(walk, step))
    ):
        raise uneven(walk, step, counted, before, keep, done)
    walk.kept = keep
    _keep_fact(walk, step, ahead, done)


def _among_last(walk: Walk, kind: Kind, counted: Kind, keep: int) -> int:
    """How many spaces stand among the last so many stitches: `(...) in next sp; rep to last 2 dc`."""
    spot, there = walk.cursor.save(), walk.remaining(counted)
    if there < keep:
        raise walk.short(counted, keep, walk.at)
    walk.cursor.pass_over(counted.key, counted.fits, there - keep + 1)
    found = walk.remaining(kind)
    walk.cursor.load(spot)
    return found


def _has_stitches(kind: Kind) -> bool:
    """True when a repeat works into stitches, not into spaces alone."""
    return any(name in ("st", "place") or name.startswith(("=", "#")) for name in kind.key.split("|"))


def _at_thing(walk: Walk, bound: Bound, kind: Kind) -> Until:
    assert bound.thing is not None
    stop, kept = walk.kind((bound.thing,)), walk.site.number(bound.number, 0)

    def reached() -> bool:
        between = before_next(walk, kind, stop)
        return walk.remaining(kind) == 0 if between is None else between <= kept

    return reached


def uneven(walk: Walk, step: Repeat, kind: Kind, before: int, keep: int, done: int) -> Fault:
    """The fault of a repeat with a remainder, with the working and the nearest counts that would fit."""
    left = walk.remaining(kind) - keep
    each = (before - keep - left) // done if done else _one_run(walk, step, kind)
    there = before - keep
    words = kind.words
    if each <= 0:
        return Fault(
            DOES_NOT_FIT, step.place, "The repeat does not come out even.", because=f"{there} {words} are there for it"
        )
    low = there - there % each
    good = ", ".join(str(n + keep) for n in (low, low + each) if n + keep > 0)
    return Fault(
        DOES_NOT_FIT,
        step.place,
        "The repeat does not come out even.",
        expected=f"a multiple of {each}" + (f" plus {keep}" if keep else ""),
        found=f"{before} {words}, {there % each or left} too many",
        because=f"{there} {words} in repeats of {each} go {there // each} times and leave {there % each or left}",
        hint=f"counts that fit here: {good}",
    )


def _one_run(walk: Walk, step: Repeat, kind: Kind) -> int:
    """What one run would take, by the written numbers alone, where not even one run fits."""
    total = 0
    for inner in step.body:
        if isinstance(inner, (Work, Skip)) and inner.into.which in ("next", "each"):
            try:
                total += walk.site.number(inner.into.number)
            except (Fault, Unclear):
                return 0
    return total


class Ahead(NamedTuple):
    """What was ahead of a repeat, and what had been made before it."""

    sts: int
    spaces: int
    made: Edge


def _ahead(walk: Walk) -> Ahead:
    return Ahead(walk.remaining(ANY_STITCH), walk.remaining(ANY_SPACE), tuple(walk.out))


def _keep_fact(walk: Walk, step: Repeat, before: Ahead, times: int) -> None:
    """Remember how a repeat went, for the working of a finding; repeats inside repeats are left out."""
    if times and not walk.inside and len(walk.facts) < 20:
        after = _ahead(walk)
        took, spaces = before.sts - after.sts, before.spaces - after.spaces
        walk.facts.append(RepeatFact(step.place, took, spaces, before.made, after.made, times))
