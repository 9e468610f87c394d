"""What sits on what: each thing a row makes, in working order, with the places it went into; kept only when asked.

A chart is drawn from this. The edge is opened into single places, each known by its own number, so a row's record can
be laid on the record of the row before. Where the record and the new edge differ in one place, there is no record.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from gradegen.design.edge import Edge, Run, Target
from gradegen.design.rows import Mixed, Step, Work
from gradegen.findings import Place
from gradegen.work.edge.cursor import Cursor
from gradegen.work.edge.kinds import Kind

MOST_PLACES = 3_000  # of an edge that is opened
Beside = Literal["edge", "chain", "other side"]


@dataclass(frozen=True, slots=True)
class Spot:
    """A place to work into: the `at`-th (from 0) of the edge before, of a chain this row made, or of its other side."""

    on: Beside
    at: int


@dataclass(frozen=True, slots=True)
class Laid:
    """One thing a row made, and the places it was worked into (none: it hangs on its neighbours, or goes into a ring).

    `what`: a stitch; a chain space; a picot of `length` chains; `length` chains that leave no place (foundation,
    starting chain); a slip stitch; the slip stitch that closes a round. `chain`: a stitch that the chains before it
    stand for. `closed_by`: the stitch that closes a chain space for its last chains. "run": nothing made; one run of a
    repeat begins here, `length` repeats deep (1: not inside another), `line`:`column` of the repeat in `name`.
    """

    what: Literal["st", "sp", "picot", "chains", "slip", "join", "run", "runs end"]
    name: str
    length: int = 0
    into: tuple[Spot, ...] = ()
    loop: Literal["front", "back"] | None = None
    chain: bool = False
    group: str = ""
    closed_by: str = ""

    @property
    def leaves_place(self) -> bool:
        """True for what the next row can work into."""
        return self.what in ("st", "sp", "picot")


@dataclass(frozen=True, slots=True)
class Placed:
    """One row: the edge it met and the edge it left, place by place, and what it made in order."""

    before: tuple[Target, ...]
    laid: tuple[Laid, ...]
    after: tuple[Target, ...]


def opened(edge: Edge) -> list[Target]:
    """The targets of an edge one by one; the same object may stand in it many times."""
    found: list[Target] = []
    for item in edge:
        if isinstance(item, Run):
            found += opened(item.items) * item.times
        else:
            found.append(item)
    return found


def own(one: Target) -> Target:
    """A target equal to this one that is an object of its own."""
    return Target(one.kind, one.name, one.length, one.group, one.nth, one.size, one.chain)


@dataclass(slots=True)
class Placing:
    """Keeps the record while a row is worked. `reached`: the places that the next makings go into."""

    laid: list[Laid] = field(default_factory=list)
    reached: list[Spot] = field(default_factory=list)
    last: tuple[Spot, ...] = ()
    first: tuple[Spot, ...] = ()
    loop: Literal["front", "back"] | None = None
    _spots: dict[int, Spot] = field(default_factory=dict)
    _kept: list[Target] = field(default_factory=list)  # so that no other object gets the same number

    def open(self, edge: Edge, on: Beside = "edge") -> Edge:
        """The edge with an object of its own for every place; places known already stay who they are."""
        places: list[Target | Run] = []
        fresh = 0
        for one in opened(edge):
            if id(one) not in self._spots:
                one = own(one)
                self._kept.append(one)
                if one.kind != "ring":
                    self._spots[id(one)] = Spot(on, fresh)
                fresh += one.kind != "ring" or on == "edge"
            places.append(one)
        return tuple(places)

    # reaching places ------------------------------------------------------------------------------------------------

    def begin(self, step: Step) -> None:
        """A new step: nothing is reached yet."""
        work = step.works[0] if isinstance(step, Mixed) else step
        self.reached = []
        self.loop = work.into.loop if isinstance(work, Work) else None

    def reach(self, cursor: Cursor, kind: Kind, number: int) -> None:
        """The next so many places of a kind are worked into next; the cursor stays where it is."""
        saved = cursor.save()
        self.reached = []
        while len(self.reached) < number and (one := cursor.peek()) is not None:
            if kind.fits(one):
                self.reached += self._spot(one)
            cursor.step()
        cursor.load(saved)
        self._keep_first()

    def reach_next(self, cursor: Cursor) -> None:
        """The place the cursor stands on is worked into next."""
        one = cursor.peek()
        self.reached = self._spot(one) if one is not None else []
        self._keep_first()

    def keep_last(self, number: int) -> None:
        """Of the places passed only the last so many are worked into."""
        self.reached = self.reached[-number:]

    def back_to_first(self) -> None:
        """The row's first place is worked into once more."""
        self.reached, self.last = list(self.first), self.first

    def _spot(self, one: Target) -> list[Spot]:
        spot = self._spots.get(id(one))
        return [] if spot is None else [spot]

    def _keep_first(self) -> None:
        if not self.first and self.reached:
            self.first = (self.reached[0],)

    # laying -----------------------------------------------------------------------------------------------------------

    def make(self, one: Sequence[Target], times: int) -> None:
        """`times` times the makings of one place, shared out over the places reached."""
        reached = self.reached
        each = len(reached) // times if len(reached) >= times else 0
        for turn in range(times):
            into = tuple(reached[turn * each : (turn + 1) * each]) if each else tuple(reached[-1:])
            self._lay(one, into)
        self.reached = []

    def same(self, one: Sequence[Target]) -> None:
        """More into the place that was worked last."""
        self._lay(one, self.last)
        self.reached = []

    def _lay(self, one: Sequence[Target], into: tuple[Spot, ...]) -> None:
        self.last = into
        crossed = len(one) == len(into) > 1
        for at, target in enumerate(one):
            feet = (into[-1 - at],) if crossed else into
            self.laid.append(_laid(target, feet if target.kind == "st" else (), self.loop))

    def stand(self, standing: Sequence[Target]) -> None:
        """A chain that stands for a stitch, on the place reached."""
        self._lay(standing, tuple(self.reached))
        self.reached = []

    def space(self, target: Target) -> None:
        """Chains between stitches."""
        self.laid.append(_laid(target, (), None))

    def even(self, places: Edge, stitch: str | None) -> None:
        """Every place once more: by a stitch that is made next, or (None) by its own like."""
        if stitch is not None:
            self.reached = [spot for one in opened(places) if one.kind not in ("sp", "gap") for spot in self._spot(one)]
            return
        for one in opened(places):
            self._lay((one,), tuple(self._spot(one)))

    def spend(self, name: str, number: int) -> None:
        """Chains and slip stitches that leave no place."""
        if name == "ch":
            self.laid.append(Laid("chains", "ch", number))
            return
        spots = self.reached if len(self.reached) == number else []
        for at in range(number):
            self.laid.append(Laid("slip", name, 1, tuple(spots[at : at + 1])))
        self.reached = []

    def join(self) -> None:
        """The last slip stitch closes a ring or a round."""
        if self.laid[-1].what == "slip":
            self.laid[-1] = Laid("join", self.laid[-1].name, 1)

    def picot(self, chains: int, left: int = 0) -> None:
        """The chains made last are a picot, but for the first `left`; what closed it belongs to it."""
        at = self._last_space()
        stub = [replace(self.laid[at], length=left)] if left else []
        self.laid[at:] = [*stub, Laid("picot", "picot", chains)]

    def take_back(self) -> None:
        """The chains made last are an edge of their own, not a space."""
        del self.laid[self._last_space()]

    def _last_space(self) -> int:
        return next(at for at in range(len(self.laid) - 1, -1, -1) if self.laid[at].what == "sp")

    def close_space(self, stitch: str, longer: int) -> None:
        """The chain space made last is closed by a stitch instead of its last chains, in the row's first place."""
        at = self._last_space()
        space = self.laid[at]
        self.laid[at] = replace(space, length=space.length + longer, closed_by=stitch, into=self.first)

    def begin_run(self, depth: int, place: Place) -> None:
        """One run of a repeat begins."""
        self.laid.append(Laid("run", f"{place.line}:{place.column}", depth))

    def end_runs(self, depth: int) -> None:
        """The runs of a repeat are over."""
        self.laid.append(Laid("runs end", "", depth))

    # the end ----------------------------------------------------------------------------------------------------------

    def record(self, before: Edge, after: Edge) -> Placed | None:
        """The row's record; None where it does not tell the edge that was left."""
        left = opened(after)
        made = [one for one in self.laid if one.leaves_place]
        chained = not made and any(one.what == "chains" for one in self.laid)
        agrees = len(made) == len(left) and all(_tells(one, target) for one, target in zip(made, left, strict=True))
        return Placed(tuple(opened(before)), tuple(self.laid), tuple(left)) if agrees or chained else None


def _laid(one: Target, into: tuple[Spot, ...], loop: Literal["front", "back"] | None) -> Laid:
    if one.kind == "sp":
        return Laid("sp", "ch", one.length, group=one.group)
    if one.kind == "gap":
        return Laid("picot", one.name, 0, into, group=one.group)
    return Laid("st", one.name, 0, into, loop, one.chain, one.group)


def _tells(one: Laid, target: Target) -> bool:
    if one.what == "sp":
        return target.kind == "sp" and target.length == one.length
    if one.what == "picot":
        return target.kind == "gap"
    return target.kind not in ("sp", "gap") and target.name == one.name and target.chain == one.chain
