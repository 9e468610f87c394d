"""Passages over rows followed in one size: even rows, shaping every so many rows, and what stands at the end."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from gradegen.design.edge import Edge
from gradegen.design.passages import EvenRows, Shaping
from gradegen.design.rows import Aside, Chain, Change, Even, Join, Label, Row, Step, Turn
from gradegen.design.worked import WorkedStep
from gradegen.grade.shaping_faults import LONGER_THAN_SECTION, RUNS_OUT, TOO_DENSE
from gradegen.work.edges import plain, stitches, tally, tidy, turned
from gradegen.work.judge import made_of, units_of
from gradegen.work.labels import times_worked
from gradegen.work.measured_rows import rows_until
from gradegen.work.piece import PieceWork, shape_of, without_counts
from gradegen.work.row import Outcome, steps_of_size
from gradegen.work.shaping_plan import Event, Manner, delta_of, events_of, rows_used
from gradegen.work.shaping_totals import check_total
from gradegen.work.site import Site
from gradegen.work.stops import Fault, Unclear

_OWN_NUMBERS = "the rows before it are known by their own numbers only"
_MANNER = (Even, Aside, Turn, Chain, Join)


def is_passage(row: Row) -> bool:
    """True when the row's words count rows: even rows, or shaping over rows."""
    return any(isinstance(step, (EvenRows, Shaping)) for step in row.steps) or any(
        isinstance(inner, (EvenRows, Shaping)) for step in row.steps for inner in getattr(step, "body", ())
    )


@dataclass(slots=True)
class Course:
    """One written passage on its way in one size.

    `rows`: worked so far; `shaped`: its shapings with their events; `left`: stitches that short rows left unworked;
    `begun`: the row after which the shapings at hand begin.
    """

    piece: PieceWork
    row: Row
    size: int
    known: Mapping[str, Row]
    rows: int = 0
    census: Counter[str] = field(default_factory=Counter)
    shaped: list[tuple[Shaping, tuple[Event, ...]]] = field(default_factory=list)
    trace: list[WorkedStep] = field(default_factory=list)
    stitch: str | None = None
    blamed: Row | None = None
    left: int = 0
    begun: int = 0

    @property
    def site(self) -> Site:
        """This size's numbers."""
        return self.piece.site(self.size, {}, row=self.row)

    def follow(self) -> Outcome:
        """What the passage comes to; the size stands where it leads to, turned as the shape asks."""
        standing = self.piece.standings[self.size]
        before, doubted = standing.edge, standing.assumed or standing.doubtful
        outcome = Outcome(before or ())
        try:
            if before is None:
                raise Unclear("the row before could not be followed", self.row.place)
            room = self._room()
            self._work(steps_of_size(self.row, self.site), room)
            self._fill(room)
            self._count(outcome)
            check_total(outcome, self.row, self.site, stitches(before), self.shaped)
        except Fault as fault:
            outcome.fault = None if doubted else fault
            outcome.unclear = Unclear("what this part is worked into is not certain", fault.place) if doubted else None
        except Unclear as unclear:
            outcome.unclear = unclear
        self._stand(outcome, before)
        return outcome

    def _room(self) -> int | None:
        """The rows of the label: `Rows 5-40`, `Next 36 rows`; None where it is one row's label, or none."""
        label = self.row.label
        if label.last is None and label.rows is None and not label.listed:
            return None
        return times_worked(label, self.site)

    def _work(self, steps: Sequence[Step], room: int | None) -> None:
        own: list[Step] = []
        for step in steps:
            if isinstance(step, EvenRows):
                self._once(own)
                own = []
                self._even_rows(step)
                self.begun = self.rows
            elif isinstance(step, Shaping):
                self._once(own)
                own = []
                self._shape(step, None if room is None else room - self.rows)
            else:
                own.append(step)
        self._once(own)

    def _once(self, steps: Sequence[Step]) -> None:
        """Ordinary steps between passages: a row of its own; words that only name the stitch are none."""
        for step in steps:
            if isinstance(step, Even) and step.stitch:
                self.stitch = step.stitch
        if all(isinstance(step, _MANNER) for step in steps):
            return
        label = Label(self.row.label.text, self.row.label.kind, place=self.row.label.place)
        self._one_row(replace(self.row, steps=tuple(steps), stated=(), label=label))

    def _one_row(self, row: Row) -> None:
        outcome = self.piece.settle(row, [self.size]).outcomes[0]
        if outcome.fault is not None:
            self.blamed = row if row.place != self.row.place else None
            raise outcome.fault
        if outcome.unclear is not None:
            raise outcome.unclear
        self.rows += 1
        self.census.update(outcome.census)
        self.piece.go_on(row, self.size, outcome)

    # even rows ------------------------------------------------------------------------------------------------------

    def _even_rows(self, step: EvenRows) -> None:
        self.stitch = step.stitch or self.stitch
        if step.rows is not None:
            rows = self.site.number(step.rows)
        else:
            assert step.until is not None
            rows = rows_until(self.piece, self.size, step.until, 1)
        if step.over_all and self.left:
            self._set(plain(stitches(self._edge()) + self.left, self.stitch or _one_name(self._edge())), 0)
            self.left = 0
        self._even(rows, step.stitch)
        self._note(step, rows, 0)

    def _even(self, rows: int, stitch: str | None = None) -> None:
        """So many plain rows at once."""
        if rows <= 0:
            return
        edge = self._edge()
        if stitch is not None and not _has_spaces(edge):
            edge = plain(stitches(edge), stitch)
        self._add(edge, rows)
        self._set(turned(edge) if rows % 2 and self._turns() else edge, rows)

    def _fill(self, room: int | None) -> None:
        """The rows of the label that are left are plain; fewer rows than the shaping needs are a fault."""
        if room is None:
            return
        if self.rows > room:
            raise Fault(
                LONGER_THAN_SECTION,
                self.row.label.place,
                "There are too few rows here for the shaping.",
                expected=f"{self.rows} rows",
                found=f"{room} rows",
                because=self._working(),
            )
        self._even(room - self.rows)

    # shaping --------------------------------------------------------------------------------------------------------

    def _shape(self, shaping: Shaping, room: int | None) -> None:
        if shaping.labels:
            self._shape_by_row(shaping, room)
            return
        assert shaping.change is not None
        tracks = [(one, self._events(one, room, one is not shaping)) for one in (shaping, *shaping.together)]
        self.shaped += [(one, events) for one, events in tracks]
        start, at = self.rows, 0
        for row, falling in _by_row(tracks):
            self._even(row - at - 1)
            for one, event in falling:
                assert one.change is not None
                self._change(one.change, event.delta)
                self.left -= event.delta if one.leaves else 0
            self._advance()
            at = row
        assert self.rows == start + at
        for one, events in tracks:
            self._note(one, len(events), sum(event.delta for event in events))

    def _events(self, shaping: Shaping, room: int | None, beside: bool) -> tuple[Event, ...]:
        """The events of one shaping, in the manner that fits the rows there are and the count that is printed."""
        if shaping.change is None:
            raise Unclear("a row is named for what is worked at the same time", shaping.place)
        site = self.site
        after = site.number(shaping.after, 0) + (self.begun - self.rows if beside and shaping.after else 0)
        if after < 0:
            raise Unclear("what is worked at the same time begins before the words before it end", shaping.place)
        left = None if room is None else room - after
        count, delta = stitches(self._edge()), delta_of(shaping.change, site)
        events = self._fitting(shaping, count, delta, left)
        return tuple(replace(event, row=event.row + after) for event in events)

    def _fitting(self, shaping: Shaping, count: int, delta: int, room: int | None) -> tuple[Event, ...]:
        site, first = self.site, None
        for manner in self._manners(shaping):
            events = events_of(shaping, site, count, delta, room, manner)
            if first is None:
                first = events
            if (room is None or rows_used(events) <= room) and self._may_be(count + delta * len(events), manner):
                return events
        assert first is not None
        return first

    def _manners(self, shaping: Shaping) -> Iterator[Manner]:
        side = self.piece.standings[self.size].side
        wanted = shaping.rates[0].side
        to_side = None if side is None or wanted is None else 1 if side == wanted else 2
        both = (False, True) if any(rate.with_next and rate.times for rate in shaping.rates) else (False,)
        for besides in both:
            yield Manner(False, besides, to_side)
            yield Manner(True, besides, to_side)

    def _may_be(self, count: int, manner: Manner) -> bool:
        """True unless the one printed count says otherwise; only asked where words can be taken in two ways."""
        stated = [one for one in self.row.stated if one.unit.name != "sp"]
        one_shaping = sum(isinstance(step, Shaping) for step in self.row.steps) == 1
        if len(stated) != 1 or not one_shaping or not _says_next_and(self.row):
            return True
        return self.site.number(stated[0].number) == count

    def _change(self, change: Change, delta: int) -> None:
        """The edge with one event's increases or decreases in it."""
        edge = self._edge()
        before = stitches(edge)
        if _has_spaces(edge):
            raise Unclear("how this stitch pattern is shaped is not said", change.place)
        dense = change.where == "evenly" and (-2 * delta > before or delta > before)
        if dense or before + delta < 0:
            raise _cannot_be(change, before, delta, dense, self.rows + 1)
        self._set(plain(before + delta, self.stitch or _one_name(edge)), 0)

    def _advance(self) -> None:
        """The row of an event is worked."""
        edge = self._edge()
        self._add(edge, 1)
        self._set(turned(edge) if self._turns() else edge, 1)

    def _shape_by_row(self, shaping: Shaping, room: int | None) -> None:
        target = self._target(shaping)
        if target is None or len(shaping.labels) > 1 or shaping.together:
            raise Unclear(f"row {shaping.labels[0]} is not known here", shaping.place)
        once = without_counts(target)
        count = stitches(self._edge())
        outcome = self.piece.settle(once, [self.size]).outcomes[0]
        delta = (outcome.made or count) - count
        events = self._fitting(shaping, count, delta, room)
        self.shaped.append((shaping, events))
        at = 0
        for event in events:
            self._even(event.row - at - 1)
            self._one_row(once)
            at = event.row
        self._note(shaping, len(events), stitches(self._edge()) - count)

    def _target(self, shaping: Shaping) -> Row | None:
        found = named_row(self.known, shaping.labels[0], self.row.label.name)
        if found is None:
            return None
        steps = tuple(step for step in found.steps if not isinstance(step, (Shaping, EvenRows)))
        label = Label(found.label.text, found.label.kind, place=found.label.place)
        return replace(found, steps=steps, label=label)

    # where it stands ------------------------------------------------------------------------------------------------

    def _turns(self) -> bool:
        return shape_of(self.row, self.piece.shape) == "flat" and self.row.label.kind != "round"

    def _edge(self) -> Edge:
        edge = self.piece.standings[self.size].edge
        if edge is None:
            raise Unclear("the row before could not be followed", self.row.place)
        return edge

    def _set(self, edge: Edge, rows: int) -> None:
        standing = self.piece.standings[self.size]
        self.rows += rows
        flips = rows % 2 == 1 and self._turns() and standing.side is not None
        self.piece.standings[self.size] = replace(
            standing,
            edge=edge,
            turning_chain=None,
            rows=None if standing.rows is None else standing.rows + rows,
            side=("WS" if standing.side == "RS" else "RS") if flips else standing.side,
        )

    def _add(self, edge: Edge, rows: int) -> None:
        for name, number in units_of(tally(edge)).items():
            if name not in ("group", "sp"):
                self.census[name] += number * rows

    def _count(self, outcome: Outcome) -> None:
        edge = self._edge()
        outcome.after = tidy(turned(edge)) if self._turns() else edge
        standing = tally(outcome.after)
        outcome.made, outcome.units, outcome.census = made_of(standing), units_of(standing), dict(self.census)
        outcome.taken = stitches(outcome.before)
        outcome.trace = tuple(self.trace)

    def _stand(self, outcome: Outcome, before: Edge | None) -> None:
        """After a passage that was not followed the size stands on what the count says, which proves nothing."""
        standing = self.piece.standings[self.size]
        if outcome.fault is None and outcome.unclear is None:
            doubtful = standing.doubtful and not self.row.stated
            outcome.unclear = Unclear(_OWN_NUMBERS, self.row.place) if doubtful else None
            chain = self.row.turning_chain
            after = replace(standing, turning_chain=chain, assumed=False, doubtful=doubtful)
            self.piece.standings[self.size] = after
            return
        stopped = replace(outcome, after=(), made=None)
        standing.edge = before if any(isinstance(step, EvenRows) for step in self.row.steps) and before else None
        self.piece.go_on(self.row, self.size, stopped)
        self.piece.standings[self.size].rows = None

    def _note(self, step: EvenRows | Shaping, times: int, delta: int) -> None:
        """A line for `explain`: what the part did, and what stands after it."""
        now = stitches(self._edge())
        words = f"{abs(delta)} sts {'more' if delta > 0 else 'fewer'}" if delta else f"{times} rows even"
        self.trace.append(WorkedStep("", times, 0, f"up to row {self.rows}", now, words, now, step.place))

    def _working(self) -> str:
        parts = [f"{len(events)} shaping rows, the last on row {rows_used(events)}" for _, events in self.shaped]
        return "; ".join(parts) or f"{self.rows} rows are worked"


def _by_row(
    tracks: Sequence[tuple[Shaping, Sequence[Event]]],
) -> list[tuple[int, list[tuple[Shaping, Event]]]]:
    """The events of all tracks, row by row."""
    rows: dict[int, list[tuple[Shaping, Event]]] = {}
    for shaping, events in tracks:
        for event in events:
            rows.setdefault(event.row, []).append((shaping, event))
    return sorted(rows.items())


def _has_spaces(edge: Edge) -> bool:
    return any(one.kind == "sp" for one in tally(edge))


def _one_name(edge: Edge) -> str:
    """The name all stitches of an edge share; "st" where they differ."""
    names = {one.name if one.kind == "st" else "st" for one in tally(edge)}
    return names.pop() if len(names) == 1 else "st"


def _says_next_and(row: Row) -> bool:
    return any(rate.with_next for step in row.steps if isinstance(step, Shaping) for rate in step.rates)


def _cannot_be(change: Change, before: int, delta: int, dense: bool, row: int) -> Fault:
    if dense:
        most = before if delta > 0 else before // 2
        return Fault(
            TOO_DENSE,
            change.place,
            "This many cannot be placed in one row.",
            expected=f"{most} or fewer",
            found=str(abs(delta)),
            because=f"there are {before} sts in row {row}",
        )
    return Fault(
        RUNS_OUT,
        change.place,
        "No stitches are left for the edge.",
        expected=f"{-delta} sts or more",
        found=f"{before} sts",
        because=f"row {row} of this passage takes {-delta} away",
    )


_ALIKE = {"decrease": "dec", "increase": "inc", "rnd": "round"}


def named_row(known: Mapping[str, Row], label: str, section: str) -> Row | None:
    """The row that words such as `Dec Row`, `Decrease Row`, `last row` or `Row 5` mean, among those worked."""
    wanted = _levelled(label)
    if wanted in ("last", "this", "previous", "preceding"):
        return known.get("last")
    direct = known.get(f"{section.lower()} {wanted}".strip()) or known.get(wanted)
    if direct is not None:
        return direct
    return next(
        (row for name, row in reversed(list(known.items())) if _levelled(name).split(" ")[-1:] == [wanted]), None
    )


def _levelled(label: str) -> str:
    return " ".join(_ALIKE.get(word, word) for word in label.lower().split() if word not in ("row", "round"))
