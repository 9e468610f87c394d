"""One row in one size under one reading: worked to its end, or stopped by a fault."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.rows import (
    Aside,
    Chain,
    Either,
    Join,
    Mixed,
    Repeat,
    Row,
    SizesOnly,
    Stated,
    Step,
    Turn,
    Unread,
    Work,
)
from gradegen.design.worked import WorkedStep
from gradegen.work.along.closing import stand_in
from gradegen.work.along.judge import Mismatch, census_of, compare, made_of, name_groups, units_of
from gradegen.work.along.petals import petals_are_left
from gradegen.work.along.repeat_facts import RepeatFact
from gradegen.work.along.walk import Stretch, Walk
from gradegen.work.edge.doubts import START_MISSING, start_is_missing
from gradegen.work.edge.edges import plain, tally, tidy
from gradegen.work.edge.kinds import ANY_STITCH
from gradegen.work.edge.placing import Placed, Placing
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import OFF_MULTIPLE, Fault, Unclear
from gradegen.work.row.row_ends import work_steps
from gradegen.work.step import steps as _steps  # noqa: F401 - signs up how steps are worked
from gradegen.work.step.heirs import name_heirs
from gradegen.work.step.picots import joined_loops
from gradegen.work.step.starts import start
from gradegen.work.step.stitching import goes_beside, leave_edge
from gradegen.work.step.tiles import close_tile

_MOST_ITEMS = 600  # of an edge in its shortest form; a row of many stitches has few


@dataclass(slots=True)
class Outcome:
    """What one row came to. `fault`, `unclear`: None when it balances; `mismatches`: printed counts it misses.

    `open_counts`: printed counts that nothing it makes can be held against. `placeless`: all was read, and a place
    could not be found. `unsure`: why the count can't be known, though it balances. `kept_aside`: stretches left for a
    later piece. `longer`: it took some of what lies behind its edge.
    """

    before: Edge
    after: Edge = ()
    underside: Edge = ()
    rest: Edge = ()
    made: int | None = None
    units: dict[str, int] = field(default_factory=dict)
    taken: int | None = None
    census: dict[str, int] = field(default_factory=dict)
    fault: Fault | None = None
    unclear: Unclear | None = None
    mismatches: tuple[Mismatch, ...] = ()
    open_counts: tuple[Stated, ...] = ()
    facts: tuple[RepeatFact, ...] = ()
    trace: tuple[WorkedStep, ...] = ()
    stood: tuple[int, tuple[str, ...]] | None = None
    placeless: bool = False
    unsure: str = ""
    placed: Placed | None = None
    kept_aside: tuple[Stretch, ...] = ()
    longer: bool = False

    @property
    def left(self) -> tuple[Stretch, ...] | None:
        """What it leaves for later pieces; None where it was not followed."""
        return self.kept_aside if self.fault is None and self.unclear is None else None

    @property
    def balances(self) -> bool:
        """True when nothing is wrong and nothing was left unread."""
        return self.fault is None and self.unclear is None and not self.mismatches


def work_once(
    row: Row,
    site: Site,
    before: Edge,
    underside: Edge = (),
    *,
    leaves: bool = False,
    beyond: Edge = (),
    placing: Placing | None = None,
) -> Outcome:
    """The row worked in the site's size and reading; `placing` keeps what sits on what.

    `beyond`: what lies behind the edge, of which the row may take some.
    """
    walk = Walk(site, (*before, *beyond), underside, placing=placing, unworked=bool(beyond))
    stand_in(walk)
    walk.ahead = steps_of_size(row, site)
    walk.trace = [] if site.tracing else None
    outcome = Outcome(before, longer=bool(beyond))
    try:
        if id(row) not in site.read:
            _all_read(walk.ahead)
            if walk.ahead is row.steps:
                site.read[id(row)] = row
        walk.started = True
        if goes_beside(walk.ahead):
            leave_edge(walk)
        _turning_chain(walk, row)
        work_steps(walk, walk.ahead, leaves)
        close_tile(walk)
        name_heirs(walk, row)
        _spread_change(walk)
        outcome.after = tidy(walk.out) or _foundation_edge(walk)
        if len(outcome.after) > _MOST_ITEMS:
            raise Unclear("the new edge has no pattern that could be followed", row.place)
        _count(walk, row, outcome)
        _on_multiple(walk, row, outcome.made)
        outcome.unsure = "" if row.stated and not outcome.mismatches else walk.unsure
        if walk.about and outcome.mismatches:
            outcome.mismatches, walk.likely = (), walk.about
        if walk.likely:
            outcome.unclear = Unclear(walk.likely, row.place)
        outcome.placed = placing.record(before, outcome.after) if placing is not None else None
    except Fault as fault:
        if _leaves_its_edge(row, walk) or (walk.about and walk.site.edge_given):
            outcome.unclear = Unclear("this row goes on into what it makes itself", fault.place)
        else:
            outcome.fault = fault
        if fault.complete and not (outcome.unclear and petals_are_left(walk)):
            outcome.after = tidy(walk.out)
            standing = tally(outcome.after)
            outcome.made, outcome.units = made_of(standing), units_of(standing)
    except Unclear as unclear:
        outcome.unclear, outcome.placeless = unclear, walk.started
    except RecursionError:
        outcome.unclear = Unclear("nested too deeply", row.place)
    if site.blind:
        outcome.before = ()
    outcome.facts, outcome.trace, outcome.stood = tuple(walk.facts), tuple(walk.trace or ()), walk.stood
    return outcome


def _leaves_its_edge(row: Row, walk: Walk) -> bool:
    """True for a row that turns and goes on within itself, and for a round of loops that no join ends."""
    worked = False
    for step in row.steps:
        if isinstance(step, Turn) and worked:
            worked = any(isinstance(one, (Work, Repeat, Mixed)) for one in row.steps[row.steps.index(step) :])
            if worked:
                return True
        worked = worked or isinstance(step, (Work, Repeat, Mixed))
    if walk.site.shape == "flat" or any(isinstance(step, (Join, Turn)) for step in row.steps):
        return False
    first = next((step for step in row.steps if not isinstance(step, Aside)), None)
    if not isinstance(first, Repeat) or not isinstance(first.body[0], Chain):
        return False
    return walk.site.shape == "spiral" or first.times.how != "bound"


def _only_in_words(step: Step) -> str:
    """A limit or an exception that only the piece itself can answer."""
    if isinstance(step, Repeat):
        bound = step.times.bound
        return step.times.but or (bound.words if bound is not None else "")
    if isinstance(step, Work) and step.into.which == "evenly":
        return ""
    bound = step.into.bound if isinstance(step, Work) else step.bound if isinstance(step, Mixed) else None
    return bound.words if bound is not None else ""


def _all_read(steps: Sequence[Step]) -> None:
    """Words nobody could read may hide stitches: nothing is claimed about such a row, wherever they stand in it."""
    for step in steps:
        if isinstance(step, Unread):
            raise Unclear(f"'{step.text.strip()[:60]}' could not be read", step.place)
        words = _only_in_words(step)
        if words:
            raise Unclear(f"'{words[:60]}' can't be computed", step.place)
        if isinstance(step, (Repeat, SizesOnly)):
            _all_read(step.body)


def steps_of_size(row: Row, site: Site) -> tuple[Step, ...]:
    """The row's steps without those that only other sizes work."""
    if id(row) in site.read or not any(isinstance(step, SizesOnly) for step in row.steps):
        return row.steps
    named = {size for step in row.steps if isinstance(step, SizesOnly) for size in step.sizes}
    mine = site.size_name
    steps: list[Step] = []
    for step in row.steps:
        if not isinstance(step, SizesOnly):
            steps.append(step)
        elif mine in step.sizes or (not step.sizes and mine not in named):
            steps.extend(step.body)
    return tuple(steps)


def _turning_chain(walk: Walk, row: Row) -> None:
    """The chain that the row before made at its end for this one, unless this row makes its own."""
    chain = walk.site.turning_chain
    if chain is None:
        if walk.site.start_unknown and start_is_missing(walk.ahead, walk.site):
            walk.unsure = START_MISSING
        return
    for step in walk.ahead:
        if isinstance(step, Chain):
            return
        if isinstance(step, (Work, Repeat, Mixed, Either)):
            break
    start(walk, walk.site.number(chain.number), chain.counts, chain.place)


def _foundation_edge(walk: Walk) -> Edge:
    """A row that only chains leaves its chain."""
    return walk.before if walk.fresh_chain and not walk.begun else ()


def _count(walk: Walk, row: Row, outcome: Outcome) -> None:
    standing = {} if _only_chains(walk) else tally(outcome.after)
    outcome.made = made_of(standing)
    outcome.units = units_of(standing)
    if "sp" in outcome.units and "picot" in outcome.units:
        outcome.units["sp"] = units_of(tally(joined_loops(outcome.after))).get("sp", 0)
    outcome.census = census_of(standing, walk.spent)
    if walk.site.blind:
        name_groups(row.stated, outcome.units, walk.site)
        outcome.mismatches, outcome.open_counts = compare(row.stated, outcome.made, outcome.units, walk)
        return
    there = walk.used + walk.whole(ANY_STITCH)
    outcome.rest = walk.cursor.rest() if walk.unworked else ()
    outcome.kept_aside = walk.kept_aside + ((Stretch(outcome.rest, 0),) if outcome.rest else ())
    outcome.taken = there - walk.remaining(ANY_STITCH) if walk.unworked else there
    outcome.underside = _underside(walk)
    name_groups(row.stated, outcome.units, walk.site)
    outcome.mismatches, outcome.open_counts = compare(row.stated, outcome.made, outcome.units, walk)


def _only_chains(walk: Walk) -> bool:
    return bool(walk.fresh_chain) and not walk.out


def _underside(walk: Walk) -> Edge:
    if walk.turned_over:
        return ()
    if walk.fresh_chain:
        return plain(walk.fresh_chain - walk.skipped, "ch", "ch")
    return walk.underside


def _on_multiple(walk: Walk, row: Row, made: int | None) -> None:
    """A foundation chain against the multiple that the notes state, of stitches or of chains."""
    multiple = walk.site.notes.multiple
    if multiple is None or not walk.fresh_chain or not multiple.of:
        return
    chain = walk.fresh_chain
    off = (chain - multiple.plus - multiple.extra) % multiple.of
    if off == 0 or (multiple.of_stitches and made and (made - multiple.plus) % multiple.of == 0):
        return
    step = next((s for s in row.steps if isinstance(s, Chain)), None)
    place = walk.site.place_of(step.number) if step else row.place
    low = chain - off
    raise Fault(
        OFF_MULTIPLE,
        place,
        "The chain is not on the multiple that the notes state.",
        expected=f"a multiple of {multiple.of} plus {multiple.plus + multiple.extra}",
        found=f"{chain} ch",
        because=f"{chain} less {multiple.plus + multiple.extra} leaves {off} over whole repeats of {multiple.of}",
        hint=f"chains that fit: {low}, {low + multiple.of}",
    )


def _spread_change(walk: Walk) -> None:
    """Loose increases and decreases change the count, wherever they stand."""
    if walk.delta > 0:
        walk.out.append(Run(walk.delta, _main_stitch(walk)))
    elif walk.delta < 0:
        _take_away(walk, -walk.delta)


def _main_stitch(walk: Walk) -> tuple[Target, ...]:
    for item in walk.out:
        if isinstance(item, Run) and len(item.items) == 1 and isinstance(item.items[0], Target):
            return (item.items[0],)
    return tuple(t for t in walk.out if isinstance(t, Target) and t.kind == "st")[:1] or plain_one()


def plain_one() -> tuple[Target, ...]:
    """One unnamed stitch."""
    return tuple(item.items[0] for item in plain(1) if isinstance(item, Run) and isinstance(item.items[0], Target))


def _take_away(walk: Walk, number: int) -> None:
    for i, item in enumerate(walk.out):
        if isinstance(item, Run) and len(item.items) == 1 and item.times > number:
            walk.out[i] = Run(item.times - number, item.items)
            return
    raise Unclear("where these decreases go is not said", walk.at)
