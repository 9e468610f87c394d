"""One row on its way along the edge: what is taken, what is made, what is still owed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.rows import Make, Step, Thing
from gradegen.design.worked import WorkedStep
from gradegen.findings import Place
from gradegen.work.along.repeat_facts import RepeatFact
from gradegen.work.edge import kinds
from gradegen.work.edge.cursor import Cursor
from gradegen.work.edge.doubts import GROUPS_ALIKE, other_groups_alike
from gradegen.work.edge.edges import stitches, target
from gradegen.work.edge.kinds import ANY_PLACE, ANY_SPACE, ANY_STITCH, ANYTHING, HELD_STITCH, Kind
from gradegen.work.edge.makes import grouped, targets_of
from gradegen.work.edge.placing import Laid, Placing
from gradegen.work.edge.site import Made, Site
from gradegen.work.edge.stops import MISSING_TARGET, RUNS_SHORT, Fault, Unclear

RING = target("ring", "ring")


CursorSpot = tuple[list[object], list[int], list[int], int]


class Stretch(NamedTuple):
    """Places passed over and kept for later, in the order this row meets them; `chain`: chains made across them."""

    edge: Edge
    chain: int


class Spot(NamedTuple):
    """Where a walk stands, to come back to."""

    cursor: CursorSpot
    made: int
    last_made: Target | Run | None
    here: bool
    place_start: int
    begun: bool
    last_kind: str
    before: Edge
    passed: Edge
    delta: int
    unworked: bool
    used: int
    spent: dict[str, int]
    laid: tuple[Laid, ...]
    aside: tuple[tuple[Stretch, ...], CursorSpot | None, CursorSpot | None]
    left_before_last: Fault | None


@dataclass(slots=True)
class Walk:
    """The state of working one row in one size.

    `out`: the new edge so far. `here`: the cursor stands on a place that travelling has reached and nothing used yet.
    `place_start`: where in `out` the makings of the current place begin. `begun`: something of the edge was taken.
    `last_group`, `into_group`: the group passed and the one worked into last. `skipped_to_end`: the step before
    skipped places. `first_waits`: the first place is kept for the stitch that closes the round; `start_last`: the
    place it began in comes last. `between`: every gap between stitches is a space. `likely`: why what the row comes
    to is likely and not sure; `unsure`: why its count can't be known at all. `addressed`: the kinds that next, each
    and skip have named; these are owed to the end. `spent`: what was made and leaves no place on the edge (foundation
    and turning chains, slip stitches, joins, the chains of picots). `placing`: the record of what sits on what, where
    one is wanted. `kept_aside`: long stretches passed over; `gap`, `gap_kept`: where the skipping at hand, and that of
    the last stretch kept, began. `left_before_last`: stitches left standing before "the last 6 sts". `about`: why
    the count is no more than a guess where the printed one differs.
    """

    site: Site
    before: Edge
    underside: Edge = ()
    cursor: Cursor = field(init=False)
    out: list[Target | Run] = field(default_factory=list)
    here: bool = False
    place_start: int = 0
    begun: bool = False
    last_kind: str = ""
    addressed: dict[str, Kind] = field(default_factory=dict)
    facts: list[RepeatFact] = field(default_factory=list)
    passed: Edge = ()
    unworked: bool = False
    quota: tuple[int, int] | None = None
    delta: int = 0
    spent: dict[str, int] = field(default_factory=dict)
    inside: int = 0
    kept: int = 0
    loose: bool = False
    tiled: bool = False
    likely: str = ""
    unsure: str = ""
    first_waits: bool = False
    start_last: bool = False
    between: bool = False
    skipped_to_end: bool = False
    last_group: str = ""
    into_group: str = ""
    started: bool = False
    fresh_chain: int = 0
    used: int = 0
    ringed: bool = False
    turned_over: bool = False
    skipped: int = 0
    stood: tuple[int, tuple[str, ...]] | None = None
    half_twist: bool = False
    ahead: tuple[Step, ...] = ()
    trace: list[WorkedStep] | None = None
    muted: bool = False
    depth: int = 0
    placing: Placing | None = None
    kept_aside: tuple[Stretch, ...] = ()
    gap: CursorSpot | None = None
    gap_kept: CursorSpot | None = None
    left_before_last: Fault | None = None
    about: str = ""
    _made: Made = field(default_factory=dict)
    _kinds: dict[int, tuple[Sequence[Thing], Kind]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        if self.placing is not None:
            self.before = self.placing.open(self.before)
        self.cursor = Cursor(self.before)

    # places -------------------------------------------------------------------------------------------------------

    def onto(self, edge: Edge, *, again: bool = False) -> None:
        """Go on along another edge: a fresh chain, the other side of the foundation; `again`: the same, turned on."""
        if not again:
            self.used += stitches(self.before) - self.remaining(ANY_STITCH)
        if self.placing is not None:
            edge = self.placing.open(edge, "other side" if self.turned_over else "chain")
        self.before = edge
        self.cursor = Cursor(edge)
        self._kinds.clear()

    def kind(self, things: Sequence[Thing], *, each: bool = False) -> Kind:
        """What these things answer to on this edge; only `each st` may mean the spaces between stitches too."""
        if self.site.blind:
            return ANYTHING
        key = id(things) * 2 + each
        known = self._kinds.get(key)
        if known is None:
            union = self._kind_of(things[0], each) if things else ANY_STITCH
            for thing in things[1:]:
                union = union | self._kind_of(thing, each)
            known = self._kinds[key] = (things, union)  # the things are kept so that their id stays their own
        return known[1]

    def _kind_of(self, thing: Thing, each: bool) -> Kind:
        name = thing.name
        if name == "st":
            return self._any_stitch() if each else ANY_STITCH
        if name == "sp" and thing.length is None and self.site.edge_given is False:
            return self._any_space(thing.of or "")
        if name == "sp":
            return kinds.space_on(self.before, None if thing.length is None else self.site.number(thing.length))
        if name in ("ch", "free loop", "row end"):
            return self._foundation(name)
        if name == "place":
            return ANY_PLACE
        if name == "corner":
            return kinds.corner_kind(self.before)
        if name == "picot":
            return Kind("picot", lambda t: t.name == "picot", "picot")
        if name == "unworked" and self.site.on_held:
            return HELD_STITCH
        if name == "unworked" and self.site.edge_given:
            self.loose = True
            return ANY_STITCH
        if name in ("gap", "unworked", "group", "marker"):
            raise Unclear(f"the place '{name}' cannot be followed", self._somewhere)
        if name in self.site.definitions:
            if other_groups_alike(self.before, self.site.definitions[name]):
                self.unsure = GROUPS_ALIKE
            return kinds.own_stitch_kind(name, self.site.definitions, self.before)
        if not kinds.is_of_trade(name):
            made = kinds.group_kind(name)
            if kinds.holds(self.before, made.fits):
                return made
            raise Unclear(f"what a {name} is on the row before is not told", self._somewhere)
        return kinds.stitch_kind(name)

    def _foundation(self, name: str) -> Kind:
        kind = kinds.foundation_kind(name)
        if name == "ch" and not kinds.holds(self.before, kind.fits) and kinds.holds(self.before, ANY_SPACE.fits):
            return ANY_SPACE
        return kind

    def _any_space(self, size: str) -> Kind:
        """Loops; in another reading only those that are more than a picot in a group of stitches."""
        if size:
            return kinds.sized_space_kind(self.before, size)
        if self.between and not kinds.holds(self.before, ANY_SPACE.fits):
            return ANY_STITCH
        if not kinds.has_small_spaces(self.before):
            return ANY_SPACE
        ways = ("every loop is meant", "only the large loops are meant")
        if self.site.choose("loops", "the loops", ways, self._somewhere, silent=True):
            return kinds.LARGE_SPACE
        return ANY_SPACE

    def _any_stitch(self) -> Kind:
        """Stitches; in another reading the chain spaces between them as one stitch each."""
        if not self.whole(ANY_SPACE):
            return ANY_STITCH
        ways = ("chain spaces are passed over by 'each st'", "each chain space is worked as a st")
        if self.site.choose("spaces", "chain spaces", ways, self._somewhere, silent=True):
            return ANY_PLACE
        return ANY_STITCH

    @property
    def _somewhere(self) -> Place:
        return self.at

    at: Place = field(default=Place("<row>", 1, 1, 1, 1))

    # taking -------------------------------------------------------------------------------------------------------

    def must_see(self, place: Place) -> None:
        """Stop where how often something runs hangs on an edge that is not known."""
        if self.site.blind:
            raise Unclear("the row before could not be followed", place)

    def remaining(self, kind: Kind) -> int:
        """How many of this kind are still ahead."""
        return self.cursor.remaining(kind.key, kind.fits)

    def owe(self, kind: Kind) -> None:
        """From now on this kind is owed to the end of the edge."""
        self.addressed[kind.key] = kind

    def take(self, kind: Kind, number: int, place: Place) -> None:
        """Use the next so many of this kind, passing other kinds without a word."""
        if number <= 0:
            return
        if self.placing is not None:
            self.placing.reach(self.cursor, kind, number)
        if not self.cursor.pass_over(kind.key, kind.fits, number):
            raise self.short(kind, number, place)
        self.begun, self.here, self.last_kind, self.kept = True, False, kind.key, 0
        self.skipped_to_end = False

    def use_next(self) -> None:
        """Use the very place the cursor stands on."""
        if self.placing is not None:
            self.placing.reach_next(self.cursor)
        self.cursor.step()

    def short(self, kind: Kind, wanted: int, place: Place) -> Fault:
        """The fault of asking for more than there is, or for what is not there at all."""
        there = self.remaining(kind)
        if not kinds.holds(self.before, kind.fits) and self.before:
            return Fault(
                MISSING_TARGET,
                place,
                f"There is no {kind.words} to work into: the row before left none.",
                expected=f"a {kind.words}",
                found="none",
            )
        return Fault(
            RUNS_SHORT,
            place,
            "The row asks for more than is left on the edge.",
            expected=f"{wanted} {kind.words}",
            found=f"{there} left",
        )

    def whole(self, kind: Kind) -> int:
        """How many of this kind the edge has, passed or ahead."""
        return self.cursor.whole(kind.key, kind.fits)

    # making -------------------------------------------------------------------------------------------------------

    def targets(self, makes: tuple[Make, ...]) -> tuple[Target, ...]:
        """What goes into one place; found once per step."""
        known = self.site.made.get(id(makes)) or self._made.get(id(makes))
        if known is None:
            known = (makes, targets_of(makes, self.site))  # the makes are kept so that their id stays their own
            keep = self._made if any(make.times and len(make.times.values) != 1 for make in makes) else self.site.made
            keep[id(makes)] = known
        return known[1]

    def make(self, makes: tuple[Make, ...], times: int = 1) -> None:
        """Put the makings of `times` places on the new edge."""
        one = self.targets(makes)
        if times <= 0 or not one:
            return
        self.place_start = len(self.out)
        if self.placing is not None:
            self.placing.make(one, times)
            self.place_start += (times - 1) * len(one)
            self.out.extend(one * times)
        elif times > 1:
            self.out.append(Run(times, one))
        else:
            self.out.extend(one)

    @property
    def last_space(self) -> Target | None:
        """The chain space that was made last, where nothing stands behind it yet."""
        last = self.out[-1] if self.out else None
        return last if isinstance(last, Target) and last.kind == "sp" else None

    def spend(self, name: str, number: int = 1) -> None:
        """Something was made that leaves no place on the edge."""
        self.spent[name] = self.spent.get(name, 0) + number
        if self.placing is not None:
            self.placing.spend(name, number)

    def add_here(self, makes: tuple[Make, ...]) -> None:
        """More into the place that was worked last; what stands there becomes one group, if no part has a name."""
        one = self.targets(makes)
        start = self.place_start
        self._split_last_run()
        start = min(max(start, 0), len(self.out)) if self.place_start == start else self.place_start
        if self.placing is not None:
            self.placing.same(one)
        self.out.extend(one)
        parts = [part for part in self.out[start:] if isinstance(part, Target)]
        if len(parts) == len(self.out) - start and 1 < len(parts) <= 40:
            bare = [target(p.kind, p.name, p.length, chain=p.chain) for p in parts]
            whole = self._heirs(grouped(bare, self.site))
            self.out[start:] = parts if any(part.group for part in one) and not whole[0].group else whole

    def _heirs(self, parts: tuple[Target, ...]) -> tuple[Target, ...]:
        """Under the name of the group they were worked into, where they have none and a chain parts them."""
        if not self.into_group or parts[0].group or not any(part.kind == "sp" for part in parts):
            return parts
        return tuple(target(p.kind, p.name, p.length, self.into_group, p.nth, p.size, p.chain) for p in parts)

    def _split_last_run(self) -> None:
        """When the last makings were one run of many places, single out its last place."""
        if self.place_start == len(self.out) - 1 and self.out and isinstance(self.out[-1], Run):
            run = self.out.pop()
            assert isinstance(run, Run)
            if run.times > 1:
                self.out.append(Run(run.times - 1, run.items))
            self.place_start = len(self.out)
            self.out.extend(run.items)

    # coming back --------------------------------------------------------------------------------------------------

    def save(self) -> Spot:
        """Where we are."""
        last = self.out[-1] if self.out else None
        return Spot(
            self.cursor.save(),  # type: ignore[arg-type]
            len(self.out),
            last,
            self.here,
            self.place_start,
            self.begun,
            self.last_kind,
            self.before,
            self.passed,
            self.delta,
            self.unworked,
            self.used,
            dict(self.spent),
            () if self.placing is None else tuple(self.placing.laid),
            (self.kept_aside, self.gap, self.gap_kept),
            self.left_before_last,
        )

    def load(self, spot: Spot) -> None:
        """Back to where we were."""
        self.cursor.load(spot.cursor)  # type: ignore[arg-type]
        del self.out[spot.made :]
        if spot.last_made is not None:
            self.out[-1] = spot.last_made
        self.here, self.place_start = spot.here, spot.place_start
        self.begun, self.last_kind = spot.begun, spot.last_kind
        self.passed, self.delta, self.unworked = spot.passed, spot.delta, spot.unworked
        self.spent, self.used = dict(spot.spent), spot.used
        self.kept_aside, self.gap, self.gap_kept = spot.aside
        self.left_before_last = spot.left_before_last
        if self.placing is not None:
            self.placing.laid = list(spot.laid)
        if self.before is not spot.before:
            self.before = spot.before
            self._kinds.clear()

    # the end ------------------------------------------------------------------------------------------------------

    def left_over(self) -> tuple[int, Kind | None]:
        """How much that is owed was not worked, and of which kind."""
        most, which = 0, None
        groups = frozenset(key.lstrip("@<>") for key in self.addressed if key.startswith("@"))
        for kind in self.addressed.values():
            left = self.remaining(kinds.outside(kind, groups) if groups and kind.key[0] != "@" else kind)
            if left and self.passed:
                left = max(0, left - Cursor(self.passed).remaining(kind.key, kind.fits))
            if left > most:
                most, which = left, kind
        return most, which
