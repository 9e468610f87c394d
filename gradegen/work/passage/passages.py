"""Passages over rows followed in one size: even rows, shaping every so many rows, and what stands at the end."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from gradegen.design.edge import Edge
from gradegen.design.passages import EvenRows, Shaping
from gradegen.design.rows import Aside, Chain, Even, Join, Label, Row, RowsAgain, Step, Turn
from gradegen.design.schedule import TableRow
from gradegen.design.worked import WorkedStep
from gradegen.grade.shaping.faults import LONGER_THAN_SECTION, ROWS_DIFFER
from gradegen.work.along.judge import made_of, units_of
from gradegen.work.edge.edges import stitches, tally, tidy, turned
from gradegen.work.edge.stops import Fault, Unclear
from gradegen.work.passage.passage_rows import PassageRows
from gradegen.work.passage.shaping_plan import Event, Manner, delta_of, events_of, rows_used
from gradegen.work.passage.shaping_totals import change_words, check_total, rate_words
from gradegen.work.piece.labels import rows_named, times_worked
from gradegen.work.piece.measured_rows import rows_until
from gradegen.work.piece.named_rows import named_row
from gradegen.work.piece.piece import PieceWork
from gradegen.work.row.row import Outcome, steps_of_size

_OWN_NUMBERS = "the rows before it are known by their own numbers only"
_MANNER = (Even, Aside, Turn, Chain, Join)
_PASSAGE = (EvenRows, Shaping)


def is_passage(row: Row) -> bool:
    """True when the row's words count rows: even rows, or shaping over rows."""
    return any(isinstance(step, _PASSAGE) for step in row.steps) or any(
        isinstance(inner, _PASSAGE) for step in row.steps for inner in getattr(step, "body", ())
    )


def one_of_passage(row: Row) -> tuple[Step, ...]:
    """The steps of one row among those of `Rnds 4-9: Work 6 rnds even`, for a row that points back to them."""
    plain = all(isinstance(step, (EvenRows, *_MANNER)) for step in row.steps)
    ranged = row.label.last is not None or bool(row.label.listed)
    if not (plain and ranged):
        raise Unclear(f"one row of {row.label.text or 'that passage'} can't be told from the others", row.place)
    return tuple(Even(step.stitch, place=step.place) if isinstance(step, EvenRows) else step for step in row.steps)


@dataclass(slots=True)
class Course:
    """One written passage on its way in one size.

    `shaped`: its shapings with their events; `left`: stitches that short rows left unworked; `begun`: the row after
    which the shapings at hand begin; `merged`: what several at the same time come to, row by row.
    """

    piece: PieceWork
    row: Row
    size: int
    known: Mapping[str, Row]
    at: PassageRows = field(init=False)
    shaped: list[tuple[Shaping, tuple[Event, ...]]] = field(default_factory=list)
    trace: list[WorkedStep] = field(default_factory=list)
    left: int = 0
    begun: int = 0
    merged: list[TableRow] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.at = PassageRows(self.piece, self.row, self.size)

    @property
    def rows(self) -> int:
        """Rows worked so far."""
        return self.at.rows

    @property
    def census(self) -> dict[str, int]:
        """What they were made of."""
        return self.at.census

    @property
    def blamed(self) -> Row | None:
        """The other row that went wrong, where this one repeats it."""
        return self.at.blamed

    def follow(self) -> Outcome:
        """What the passage comes to; the size stands where it leads to, turned as the shape asks."""
        standing = self.at.standing
        before, doubted = standing.edge, standing.assumed or standing.doubtful
        outcome = Outcome(before or ())
        try:
            if before is None:
                raise Unclear("the row before could not be followed", self.row.place)
            room = self._room()
            self._work(steps_of_size(self.row, self.at.site), room)
            self._fill(room)
            self._count(outcome)
            check_total(outcome, self.row, self.at.site, stitches(before), self.shaped)
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
        return times_worked(label, self.at.site)

    def _work(self, steps: Sequence[Step], room: int | None) -> None:
        own: list[Step] = []
        for i, step in enumerate(steps):
            if isinstance(step, RowsAgain) and i:
                self._once(own)
                own = []
                self._again(step, steps[:i], room)
                continue
            if not isinstance(step, _PASSAGE):
                own.append(step)
                continue
            self._once(own)
            own = []
            if isinstance(step, EvenRows):
                self._even_rows(step)
                self.begun = self.rows
            else:
                self._shape(step, None if room is None else room - self.rows)
        self._once(own)

    def _again(self, again: RowsAgain, steps: Sequence[Step], room: int | None) -> None:
        """`Work 3 rnds even. Rep last 4 rnds once`: the whole passage so far, where those are its own rows."""
        own = all(label.startswith("last ") for label in again.labels) and rows_named(again) == self.rows
        if not own or again.until is not None or again.except_ or room is not None:
            raise Unclear("other rows are repeated inside this row", again.place)
        for _ in range(self.at.site.number(again.times)):
            self._work(steps, room)

    def _once(self, steps: Sequence[Step]) -> None:
        """Ordinary steps between passages: a row of its own; words that only name the stitch are none."""
        for step in steps:
            if isinstance(step, Even) and step.stitch:
                self.at.stitch = step.stitch
        if all(isinstance(step, _MANNER) for step in steps):
            return
        label = Label(self.row.label.text, self.row.label.kind, place=self.row.label.place)
        self.at.written(replace(self.row, steps=tuple(steps), stated=(), label=label))
        self.begun = self.rows

    def _even_rows(self, step: EvenRows) -> None:
        self.at.stitch = step.stitch or self.at.stitch
        if step.rows is not None:
            rows = self.at.site.number(step.rows)
        else:
            assert step.until is not None
            rows = rows_until(self.piece, self.size, step.until, 1)
        if step.over_all and self.left:
            self.at.widen(self.left)
            self.left = 0
        self.at.even(rows, step.stitch)
        self._note(step, "even rows", 1, f"{rows} rows even")

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
        if self.rows < room and self._tells_all_rows():
            raise Fault(
                ROWS_DIFFER,
                self.row.label.place,
                "The rows told here are fewer than those of the label.",
                expected=f"{self.rows} rows",
                found=f"{room} rows",
                because=self._working(),
            )
        self.at.even(room - self.rows)

    def _tells_all_rows(self) -> bool:
        """True when the words end with their own even rows, or come from a schedule that fills its rows."""
        last = next((step for step in reversed(self.row.steps) if not isinstance(step, (Aside, Turn))), None)
        counted = isinstance(last, EvenRows) and last.rows is not None
        return counted or bool(self.row.sentences)

    def _working(self) -> str:
        parts = [f"{len(events)} shaping rows, the last on row {rows_used(events)}" for _, events in self.shaped]
        return "; ".join(parts) or f"{self.rows} rows are worked"

    # shaping --------------------------------------------------------------------------------------------------------

    def _shape(self, shaping: Shaping, room: int | None) -> None:
        if shaping.labels:
            self._shape_by_row(shaping, room)
            return
        tracks = [(one, self._events(one, room, one is not shaping)) for one in (shaping, *shaping.together)]
        self.shaped += tracks
        first = self.at.count
        at = 0
        for row, falling in _by_row(tracks):
            self.at.even(row - at - 1)
            for one, event in falling:
                assert one.change is not None
                self.at.change(one.change, event.delta)
                self.left -= event.delta if one.leaves else 0
            self.at.advance()
            at = row
            if len(tracks) > 1:
                self._merge(falling)
        self._note_rates(tracks, first)

    def _merge(self, falling: Sequence[tuple[Shaping, Event]]) -> None:
        """A line of the table that several shapings print: the row's own number where the label names one."""
        first = self.row.label.first
        before = self.at.site.number(first) - 1 if first is not None else 0
        what = tuple(change_words(one, self.at.site) for one, _ in falling)
        self.merged.append(TableRow(before + self.rows, what, self.at.count))

    def _events(self, shaping: Shaping, room: int | None, beside: bool) -> tuple[Event, ...]:
        """The events of one shaping, in the manner that fits the rows there are and the count that is printed."""
        if shaping.change is None:
            raise Unclear("a row is named for what is worked at the same time", shaping.place)
        site = self.at.site
        after = site.number(shaping.after, 0) + (self.begun - self.rows if beside and shaping.after else 0)
        if after < 0:
            raise Unclear("what is worked at the same time begins before the words before it end", shaping.place)
        left = None if room is None else room - after
        events = self._fitting(shaping, self.at.count, delta_of(shaping.change, site), left)
        return tuple(replace(event, row=event.row + after) for event in events)

    def _fitting(self, shaping: Shaping, count: int, delta: int, room: int | None) -> tuple[Event, ...]:
        site, first = self.at.site, None
        for manner in self._manners(shaping):
            events = events_of(shaping, site, count, delta, room, manner)
            if first is None:
                first = events
            if (room is None or rows_used(events) <= room) and self._may_be(count + delta * len(events)):
                return events
        assert first is not None
        return first

    def _manners(self, shaping: Shaping) -> Iterator[Manner]:
        side, wanted = self.at.standing.side, shaping.rates[0].side
        to_side = None if side is None or wanted is None else 1 if side == wanted else 2
        both = (False, True) if any(rate.with_next and rate.times for rate in shaping.rates) else (False,)
        for besides in both:
            yield Manner(False, besides, to_side)
            yield Manner(True, besides, to_side)

    def _may_be(self, count: int) -> bool:
        """True unless the one printed count says otherwise; only asked where words can be taken in two ways."""
        shapings = [step for step in self.row.steps if isinstance(step, Shaping)]
        both_ways = any(rate.with_next for one in shapings for rate in one.rates)
        stated = [one for one in self.row.stated if one.unit.name != "sp"]
        if len(stated) != 1 or len(shapings) != 1 or not both_ways:
            return True
        return self.at.site.number(stated[0].number) == count

    def _shape_by_row(self, shaping: Shaping, room: int | None) -> None:
        """A written row is the event: it is worked stitch for stitch each time, with even rows between."""
        once = named_row(self.known, shaping.labels[0], self.row.label.name)
        if once is None or len(shaping.labels) > 1 or shaping.together:
            known = "is not known here" if shaping.rates else "could not be worked out"
            raise Unclear(f"{'row ' if shaping.rates else ''}{shaping.labels[0]} {known}", shaping.place)
        count = self.at.count
        outcome = self.piece.settle(once, [self.size]).outcomes[0]
        delta = (outcome.made or count) - count
        events = self._fitting(shaping, count, delta, room)
        self.shaped.append((shaping, events))
        at = 0
        for event in events:
            self.at.even(event.row - at - 1)
            self.at.written(once)
            at = event.row
        self._note_rates([(shaping, events)], count)

    # the end --------------------------------------------------------------------------------------------------------

    def _count(self, outcome: Outcome) -> None:
        edge = self.at.edge
        outcome.after = tidy(turned(edge)) if self.at.turns else edge
        standing = tally(outcome.after)
        outcome.made, outcome.units, outcome.census = made_of(standing), units_of(standing), dict(self.census)
        outcome.taken = stitches(outcome.before)
        self._note_side()
        outcome.trace = tuple(self.trace)

    def _note_side(self) -> None:
        """On which side the last row lies, where a label has said one."""
        coming = self.at.standing.side
        if coming is not None and self.at.turns:
            side = "WS" if coming == "RS" else "RS"
            now = self.at.count
            words = f"the last of {self.rows} rows is a {side} row"
            self.trace.append(WorkedStep(words, 1, 0, "", now, f"{now} sts", now, self.row.place))

    def _stand(self, outcome: Outcome, before: Edge | None) -> None:
        """After a passage that was not followed the size stands on what the count says, which proves nothing."""
        standing = self.at.standing
        if outcome.fault is None and outcome.unclear is None:
            doubtful = standing.doubtful and not self.row.stated
            outcome.unclear = Unclear(_OWN_NUMBERS, self.row.place) if doubtful else None
            chain = self.row.turning_chain
            after = replace(standing, turning_chain=chain, assumed=False, doubtful=doubtful)
            self.piece.standings[self.size] = after
            return
        self.piece.go_on(self.row, self.size, replace(outcome, after=(), made=None))
        after = self.piece.standings[self.size]
        after.rows = None
        if all(isinstance(step, (EvenRows, *_MANNER)) for step in self.row.steps):
            after.edge = before  # however many rows it was, they were even

    def _note_rates(self, tracks: Sequence[tuple[Shaping, Sequence[Event]]], count: int) -> None:
        """A line for `explain` per rate: how often it ran, what it changed, and up to which row."""
        for shaping, events in tracks:
            for which in range(len(shaping.rates)):
                own = [event for event in events if event.rate == which]
                change = sum(event.delta for event in own)
                count += change
                if own:
                    made = f"{abs(change)} sts {'more' if change > 0 else 'fewer'}, up to row {own[-1].row}"
                    self._note(shaping, rate_words(shaping, which, self.at.site), len(own), made, count)

    def _note(self, step: EvenRows | Shaping, words: str, times: int, made: str, left: int | None = None) -> None:
        now = self.at.count if left is None else left
        self.trace.append(WorkedStep(words, times, 0, "", now, made, now, step.place))


def _by_row(
    tracks: Sequence[tuple[Shaping, Sequence[Event]]],
) -> list[tuple[int, list[tuple[Shaping, Event]]]]:
    """The events of all tracks, row by row."""
    rows: dict[int, list[tuple[Shaping, Event]]] = {}
    for shaping, events in tracks:
        for event in events:
            rows.setdefault(event.row, []).append((shaping, event))
    return sorted(rows.items())
