"""One piece on the hook, in all its sizes: the edge each size has come to, and the rows it can go back to."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from fractions import Fraction
from typing import ClassVar, NamedTuple

from gradegen.design.edge import Edge
from gradegen.design.notes import NoteFacts
from gradegen.design.pattern import Shape
from gradegen.design.rows import Chain, Definition, Even, Row, Turn, Unread
from gradegen.findings import Place
from gradegen.work.edge.edges import ENDLESS, plain, stitches, tidy, turned, turned_round
from gradegen.work.edge.site import Choice, Made, Site
from gradegen.work.edge.stops import RUNS_SHORT, Fault, Unclear
from gradegen.work.piece.left_behind import left_by
from gradegen.work.piece.standing import Standing, rows_after, side_after, stays_doubtful
from gradegen.work.row.row import Outcome, work_once
from gradegen.work.row.settle import Reading, Settled, settle
from gradegen.work.row.together import SiteOfAll, work_together
from gradegen.work.step.beginnings import begins_anew as begins_anew
from gradegen.work.step.beginnings import ends_on_group, may_leave_spaces
from gradegen.work.step.beginnings import shape_of as shape_of
from gradegen.work.step.picots import joined_loops
from gradegen.work.step.stitching import goes_beside

_PLAIN = ("st", "sc", "hdc", "dc", "tr")  # units of a count that says how many stitches stand on the edge
NOT_FOLLOWED = "the row before could not be followed"


class Manner(NamedTuple):
    """What is the same of a row in every size; the row and the stitches are kept so that their ids stay their own."""

    shape: Shape
    ends_on_group: bool
    row: Row
    definitions: Mapping[str, Definition]


@dataclass(slots=True)
class PieceWork:
    """Works rows one after the other in every size, each on what the row before left.

    `one_by_one`: every row is wanted, also where many could be worked at once.
    """

    one_by_one: ClassVar[bool] = False

    shape: Shape
    sizes: tuple[str, ...]
    definitions: Mapping[str, Definition]
    notes: NoteFacts
    counts: Sequence[Mapping[str, int]]
    booklet: bool = False
    standings: list[Standing] = field(default_factory=list)
    habits: dict[str, int] = field(default_factory=dict)
    leaves: bool = False
    edge_given: bool = False
    ringed: bool = False
    tracing: int | None = None
    name: str = ""
    told_chains: frozenset[int] = frozenset()
    told_loops: frozenset[int] = frozenset()
    told_skips: frozenset[int] = frozenset()
    chain_for_all: Chain | None = None
    turns_with_chain: bool = False
    rows_per_inch: Fraction | None = None
    measures: Sequence[Mapping[str, Fraction]] = ()
    marks: list[dict[str, int]] = field(default_factory=list)
    _made: Made = field(default_factory=dict)
    _known: dict[object, tuple[Row, NoteFacts | None, Settled]] = field(default_factory=dict)
    _manners: dict[tuple[int, bool, int], Manner] = field(default_factory=dict)
    _read: dict[int, Row] = field(default_factory=dict)
    _apart: set[Place] = field(default_factory=set)

    def __post_init__(self) -> None:
        if not self.standings:
            self.standings = [Standing() for _ in self.sizes]
        self.marks = self.marks or [{} for _ in self.sizes]

    def site(
        self,
        size: int,
        reading: Reading,
        notes: NoteFacts | None = None,
        *,
        shape: Shape | None = None,
        tracing: bool = False,
    ) -> Site:
        """What stays the same while a row is worked in this size under this reading; `shape`: how that row goes."""
        standing = self.standings[size]
        return Site(
            size=size,
            sizes=self.sizes,
            shape=shape or self.shape,
            definitions=self.definitions,
            notes=notes or self.notes,
            counts=self.counts[size],
            measures=self.measures[size] if self.measures else {},
            turning_chain=standing.turning_chain,
            after_group=standing.after_group,
            booklet=self.booklet,
            edge_given=self.edge_given,
            rows=standing.side_rows if standing.rows == 0 else standing.rows,
            on_held=standing.on_held,
            told_chains=self.told_chains,
            told_loops=self.told_loops,
            told_skips=self.told_skips,
            start_unknown=standing.start_unknown and self.turns_with_chain,
            tracing=tracing,
            habits=self.habits,
            reading=reading,
            made=self._made,
            read=self._read,
        )

    def manner(self, row: Row) -> Manner:
        """How the row is worked in every size alike."""
        key = (id(row), self.ringed, id(self.definitions))
        known = self._manners.get(key)
        if known is None:
            shape = shape_of(row, self.shape, self.ringed)
            known = self._manners[key] = Manner(shape, ends_on_group(row, self.definitions), row, self.definitions)
        return known

    def settle(self, row: Row, wanted: Sequence[int], notes: NoteFacts | None = None) -> Settled:
        """The row's outcomes in these sizes, in the reading that fits them all (or most)."""
        key = (id(row), id(notes), tuple(wanted), *(self.key(size) for size in wanted))
        known = self._known.get(key)
        if known is None:
            settled = settle(lambda reading: self._work(row, wanted, reading, notes), bool(row.stated))
            if self.tracing is not None and row.place.line <= self.tracing <= row.place.end_line:
                self._trace(row, wanted, settled)
            self._known[key] = known = (row, notes, settled)  # the row is kept so that its id stays its own
        return known[2]

    def in_reading(self, row: Row, wanted: Sequence[int], reading: Reading) -> Settled:
        """The row's outcomes in these sizes in one reading."""
        outcomes, choices = self._work(row, wanted, reading, None)
        return Settled(outcomes, reading, choices, [])

    def key(self, size: int) -> object:
        """What a size stands on; rows worked on equal keys come to the same."""
        standing = self.standings[size]
        return standing.edge, standing.underside, standing.turning_chain is None, standing.rests

    def _work(
        self, row: Row, wanted: Sequence[int], reading: Reading, notes: NoteFacts | None
    ) -> tuple[list[Outcome], dict[str, Choice]]:
        shape = self.manner(row).shape
        if len(wanted) > 1 and row.place not in self._apart:
            alike = self._together(row, wanted, reading, notes)
            if alike is not None:
                return alike
        outcomes, choices = [], {}
        for size in wanted:
            site = self.site(size, reading, notes, shape=shape)
            outcomes.append(self._once(row, site, self.standings[size]))
            choices.update(site.choices)
        return outcomes, choices

    def _together(
        self, row: Row, wanted: Sequence[int], reading: Reading, notes: NoteFacts | None
    ) -> tuple[list[Outcome], dict[str, Choice]] | None:
        """The row worked once for all these sizes; None where they part, which is then remembered."""
        standings = [self.standings[size] for size in wanted]
        site = self._site_of_all(row, wanted, standings, reading, notes)
        if site is not None:
            edges, undersides = [one.edge or () for one in standings], [one.underside for one in standings]
            outcomes = work_together(row, site, edges, undersides, leaves=self.leaves)
            if outcomes is not None:
                return outcomes, site.choices
        self._apart.add(row.place)
        return None

    def _site_of_all(
        self, row: Row, wanted: Sequence[int], standings: Sequence[Standing], reading: Reading, notes: NoteFacts | None
    ) -> SiteOfAll | None:
        """The site of all these sizes; None where they do not stand alike, or on edges that are not known."""
        known = {one.edge is not None for one in standings}
        if len(known) > 1 or any(one.manner != standings[0].manner for one in standings):
            return None
        if not known.pop() and not begins_anew(row) and not goes_beside(row.steps):
            return None
        shape = self.manner(row).shape
        of_first = self.site(wanted[0], reading, notes, shape=shape)
        values = {one.name: getattr(of_first, one.name) for one in fields(Site)}
        return SiteOfAll(**values, wanted=wanted, alone=lambda i: self.site(i, reading, notes, shape=shape))

    def _once(self, row: Row, site: Site, standing: Standing) -> Outcome:
        if standing.edge is None:
            return self._once_alone(row, site)
        outcome = work_once(row, site, standing.edge, standing.underside, leaves=self.leaves)
        beyond = standing.beyond
        if beyond and outcome.fault is not None and outcome.fault.rule is RUNS_SHORT:
            longer = work_once(row, site, standing.edge, standing.underside, beyond=beyond)
            return longer if longer.fault is None else outcome
        return outcome

    def work_on(self, edge: Edge, row: Row, size: int) -> Outcome:
        """The row in its likeliest reading on another edge than the one at hand."""
        site = self.site(size, {}, shape=self.manner(row).shape)
        site.rows = None
        return work_once(row, site, edge, self.standings[size].underside, leaves=self.leaves)

    def _once_alone(self, row: Row, site: Site) -> Outcome:
        """A row whose edge is not known: whole where it makes its own beginning, else by its own numbers alone."""
        if begins_anew(row) or goes_beside(row.steps):
            return work_once(row, site, (), (), leaves=self.leaves)
        site.blind = True
        outcome = work_once(row, site, plain(ENDLESS), (), leaves=self.leaves)
        if outcome.fault is not None:
            outcome = Outcome(())
        if outcome.unclear is None:
            outcome.unclear = Unclear(NOT_FOLLOWED, row.place)
        return outcome

    def _trace(self, row: Row, wanted: Sequence[int], settled: Settled) -> None:
        """Work the row once more in the settled reading, keeping what each step took and made."""
        for size, outcome in zip(wanted, settled.outcomes, strict=True):
            standing = self.standings[size]
            site = self.site(size, settled.reading, shape=self.manner(row).shape, tracing=True)
            again = work_once(row, site, standing.edge or (), standing.underside, leaves=self.leaves)
            outcome.trace = again.trace

    def pass_by(self, row: Row) -> None:
        """Remember that words were passed by which nobody could read: stitches may be held there."""
        if any(isinstance(step, Unread) for step in row.steps):
            numbered = row.label.first is not None or row.label.rows is not None  # a row of the piece, whatever it says
            for one in self.standings:
                one.left = left_by(row.label.text, one.piece, None, one.left)
                one.assumed = one.assumed or numbered
        if row.stated and not self.edge_given:
            self._believe(row)

    def _believe(self, row: Row) -> None:
        """After words that nobody could read and a printed count: that many stitches, which proves nothing."""
        for size, standing in enumerate(self.standings):
            try:
                number = self.site(size, {}).number(row.stated[0].number)
            except (Fault, Unclear):
                number = 0
            plainly = len(row.stated) == 1 and row.stated[0].unit.name in _PLAIN
            if standing.edge is None or stitches(standing.edge) != number or not plainly:
                edge = tidy(plain(number)) if plainly and number else None
                self.standings[size] = replace(standing, edge=edge, assumed=True, rows=None)

    def go_on(self, row: Row, size: int, outcome: Outcome) -> None:
        """Move this size on to the edge after the row, turned as the shape asks."""
        standing, manner = self.standings[size], self.manner(row)
        edge = self._after(row, size, outcome, standing)
        self.standings[size] = Standing(
            edge=edge,
            underside=outcome.underside or standing.underside,
            turning_chain=row.turning_chain,
            after_group=manner.ends_on_group,
            assumed=outcome.unclear is not None or (outcome.fault is not None),
            doubtful=stays_doubtful(row, outcome, standing),
            rests=self._rests(row, outcome, standing),
            rows=rows_after(standing, outcome),
            side=side_after(row, manner.shape, standing),
            piece=standing.piece,
            left=left_by(row.label.text, standing.piece, outcome.left, standing.left),
        )

    def pass_rows(self, which: Iterable[int], number: int) -> int:
        """So many rows further without working them: they count, and turn the work; the number."""
        for i in which:
            standing = self.standings[i]
            rows = None if standing.rows is None else standing.rows + number
            side = standing.side
            if side is not None and number % 2 and self.shape == "flat":
                side = "WS" if side == "RS" else "RS"
            self.standings[i] = replace(standing, rows=rows, side=side)
        return number

    def _rests(self, row: Row, outcome: Outcome, standing: Standing) -> tuple[Edge, Edge]:
        if outcome.left is None:
            return (), ()
        beyond = () if outcome.longer else standing.beyond
        return standing.rests[1], (*outcome.rest, *beyond)

    def forget_edges(self, *, unwritten: bool) -> None:
        """Stand on nothing known: a row begins by itself, or rows above it are not written here (`unwritten`)."""
        for i, one in enumerate(self.standings):
            fresh = Standing(piece=one.piece, left=one.left, rows=None if unwritten else one.rows)
            if unwritten:
                fresh.start_unknown, fresh.turning_chain = True, self.chain_for_all
            self.standings[i] = fresh

    def hear_of(self, edge: Edge, rows: int) -> None:
        """Told of so many plain rows that a passage works at once, each making `edge`; it goes on by itself."""

    def _after(self, row: Row, size: int, outcome: Outcome, standing: Standing) -> Edge | None:
        if outcome.unclear is not None or outcome.fault is not None:
            return self._unfollowed(row, size, outcome, standing)
        return self.turned(row, outcome)

    def turned(self, row: Row, outcome: Outcome) -> Edge:
        """The new edge as the next row meets it."""
        after = joined_loops(outcome.after) if "picot" in outcome.units else outcome.after
        if self.manner(row).shape == "flat":
            return turned(after)
        if any(isinstance(step, Turn) for step in row.steps):
            if outcome.rest:
                return turned(after)
            return turned_round(after)
        return after

    def _unfollowed(self, row: Row, size: int, outcome: Outcome, standing: Standing) -> Edge | None:
        """After a row that was not followed: as before where it works even, else as its one printed count says."""
        even = any(isinstance(step, Even) for step in row.steps)
        if even and not (row.stated and any(isinstance(step, Unread) for step in row.steps)):
            return standing.edge
        if outcome.after and outcome.made is not None:
            return self.turned(row, outcome)
        plainly = len(row.stated) == 1 and row.stated[0].unit.name in _PLAIN
        if not plainly or may_leave_spaces(row.steps):
            return None
        try:
            number = self.site(size, {}).number(row.stated[0].number)
        except (Fault, Unclear):
            return None
        return tidy(plain(number))


def without_counts(row: Row) -> Row:
    """The row with no printed count: for all but the last time it is worked."""
    return replace(row, stated=())


def against(notes: NoteFacts) -> NoteFacts:
    """The notes with what they say of turning chains left out."""
    return replace(notes, chains=())
