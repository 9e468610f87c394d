"""Rows in working order: ranges row by row, rows that point back, rows of some sizes only."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from functools import partial

from gradegen.design.rows import Aside, Chain, Row, RowsAgain, Step, Turn, Unread
from gradegen.design.worked import WorkedRow
from gradegen.findings import Finding
from gradegen.work.along.judge import add_census
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import Fault, Unclear
from gradegen.work.order.any_name import worked_again
from gradegen.work.order.growing import Growing
from gradegen.work.order.grown_rounds import grown_rows, grows_between
from gradegen.work.order.pointed_rows import grows, no_changes, plain_row
from gradegen.work.order.recurring import MOST_ROWS, Recurring
from gradegen.work.order.second_thoughts import LastRow, forget_unsure, think_again, weigh
from gradegen.work.passage.order_flips import find_order_flips
from gradegen.work.passage.passages import Course, is_passage
from gradegen.work.piece.broken_off import stands_elsewhere
from gradegen.work.piece.done import (
    UNCERTAIN,
    Done,
    falls_short,
    has_failed,
    is_off_by_one,
    stopped,
    unworked_row,
    worked_row,
)
from gradegen.work.piece.entry import Entries, on_held
from gradegen.work.piece.joined_anew import or_somewhere, passes_to_join
from gradegen.work.piece.labels import (
    in_this_size,
    is_alike,
    is_single,
    look_up,
    row_keys,
    rows_named,
    rows_to_work,
    times_worked,
)
from gradegen.work.piece.measured_rows import rows_until
from gradegen.work.piece.numbering import Numbering
from gradegen.work.piece.piece import PieceWork, against, without_counts
from gradegen.work.piece.standing import Standing
from gradegen.work.piece.telling import notes_of, notes_on_counts
from gradegen.work.row.row import Outcome
from gradegen.work.row.settle import Settled
from gradegen.work.step.beginnings import begins_anew, begins_ring

BY_OWN_NUMBERS = "the rows before it are known by their own numbers only"


@dataclass(slots=True)
class RowsInOrder:
    """Works the rows of one piece, keeping those that later rows may repeat."""

    piece: PieceWork
    known: list[dict[str, Row]] = field(default_factory=list)
    section: str | None = None
    numbering: Numbering = field(default_factory=Numbering)
    above: LastRow | None = None
    revised: list[WorkedRow] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    entries: Entries = ()
    told: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.known = self.known or [{} for _ in self.piece.sizes]

    def work(self, row: Row) -> list[WorkedRow]:
        """The row in every size, in order of sizes."""
        self._new_section(row)
        self._mark(row)
        self._find_beginning(row)
        if row.defines:
            self.piece.definitions = {**self.piece.definitions, **{one.name: one for one in row.defines}}
        wanted = [i for i, name in enumerate(self.piece.sizes) if row.sizes is None or name in row.sizes]
        if row.is_prose or passes_to_join(row, self.piece):
            self.piece.pass_by(row)
            return [unworked_row(self.piece, row, i, i in wanted, "prose") for i in range(len(self.piece.sizes))]
        done, settled, standings = self._enter(row, wanted)
        work = partial(self._work_label, row, wanted)
        if self.above is not None and any(falls_short(one) for one in done.values()):
            other = think_again(self.above, self.piece, wanted, work)
            if other is not None:
                done, settled = other.done, other.settled
                self._revise(self.above, other.above)
        elif self.above is not None and self.above.is_unsure:
            certain = weigh(self.above, self.piece, done, work)
            if certain is not None:
                self._revise(self.above, certain)
        self.above = None
        if settled is not None and settled.choices and all(done[i].times == 1 for i in wanted):
            self.above = LastRow(row, wanted, standings, settled)
        forget_unsure(self.piece, done, self.above)
        wanted = [i for i in wanted if done[i].last is not None]  # a range of no rows is not worked in that size
        worked = [
            worked_row(self.piece, row, i, done[i], settled)
            if i in wanted
            else unworked_row(self.piece, row, i, False, "other sizes")
            for i in range(len(self.piece.sizes))
        ]
        self.remember(row, wanted)
        if settled is not None and not any((last := done[i].last) and last.fault for i in wanted):
            self.findings += [*notes_of(settled, row), *notes_on_counts(settled, row, self.told)]
        return worked

    def _enter(self, row: Row, wanted: Sequence[int]) -> tuple[dict[int, Done], Settled | None, list[Standing]]:
        """The row worked; on held stitches, from the first place to begin at that fits in every size."""
        ways = self.entries or on_held(row, self.piece) or or_somewhere(row, self.piece)
        self.entries = ()
        for way in (*ways, ways[0]):
            self.piece.standings[:] = way
            done = {i: Done() for i in wanted}
            settled = self._work_label(row, wanted, done)
            if len(ways) == 1 or not any(falls_short(one) for one in done.values()):
                break
        return done, settled, list(way)

    def _revise(self, above: LastRow, other: Settled) -> None:
        """The row above as it is read now."""
        for i, outcome in zip(above.wanted, other.outcomes, strict=True):
            done = Done(outcome, outcome, 1, dict(outcome.census), stood=outcome.stood)
            self.revised.append(worked_row(self.piece, above.row, i, done, other))

    def _new_section(self, row: Row) -> None:
        """A label that starts numbering again under another name begins a part whose edge is only assumed."""
        name = row.label.name.lower()
        if self.section is not None and name != self.section and not row.is_prose and name not in _ORDINARY:
            for standing in self.piece.standings:
                standing.assumed = True
        if not row.is_prose and name not in _ORDINARY:
            self.section = name

    def _mark(self, row: Row) -> None:
        """Keep how many rows there were when a named label came by, for lengths measured from it."""
        name = row.label.name.lower()
        if name in _ORDINARY:
            return
        for standing, marks in zip(self.piece.standings, self.piece.marks, strict=True):
            if standing.rows is not None:
                marks[name] = standing.rows

    def _find_beginning(self, row: Row) -> None:
        """Start afresh where a row begins by itself; forget the edge where rows above it are not written here."""
        if row.is_prose or self.piece.edge_given:
            return
        if begins_anew(row):
            self.piece.ringed = begins_ring(row)
        follows = self.numbering.follows(row)
        if follows == "on" and self.known and stands_elsewhere(self.known[0].get("last"), row, self.piece):
            follows = "elsewhere"
        if follows != "on":
            self.piece.forget_edges(unwritten=follows != "anew")

    def remember(self, row: Row, wanted: Sequence[int] | None = None) -> None:
        """Keep a row for those that point back to it."""
        keys: list[str] | None = None
        for i in range(len(self.piece.sizes)) if wanted is None else wanted:
            try:
                keys = keys if keys is not None and is_alike(row.label) else row_keys(row, self.piece.site(i, {}))
            except (Fault, Unclear):
                keys = []
            for key in keys:
                self.known[i][key] = row
            self.known[i]["last"] = row

    # one label ------------------------------------------------------------------------------------------------------

    def _work_label(self, row: Row, wanted: Sequence[int], done: dict[int, Done]) -> Settled | None:
        if is_passage(row):
            self._follow(row, wanted, done)
            return None
        again = next((step for step in row.steps if isinstance(step, RowsAgain)), None)
        if again is None:
            return self._work_range(row, wanted, done)
        settled = None
        own = tuple(step for step in row.steps if not isinstance(step, RowsAgain))
        if _has_work(own):
            settled = self._work_range(replace(row, steps=own, stated=()), wanted, done, once=True)
            again = replace(again, more=True)
        for i in wanted:
            self._work_again(row, again, i, done[i])
            if any(isinstance(step, Unread) and _ROWS_NAMED.search(step.text) for step in own):
                done[i].last = stop = stopped(Unclear("more rows are named than could be read", row.place))
                self.piece.go_on(row, i, stop)
        return settled

    def _follow(self, row: Row, wanted: Sequence[int], done: dict[int, Done]) -> None:
        """A passage over rows, followed in each size; sizes in which its shapings swap places are told of."""
        courses = [Course(self.piece, row, i, self.known[i]) for i in wanted]
        for i, course in zip(wanted, courses, strict=True):
            done[i].first = done[i].last = course.follow()
            done[i].times, done[i].census, done[i].blamed = course.rows, course.census, course.blamed
            done[i].fault_at, done[i].merged = row.place, tuple(course.merged)
        self.findings.extend(find_order_flips(courses))

    def _times(self, row: Row, i: int, once: bool) -> int | Fault | Unclear:
        if once or is_single(row.label):
            return 1
        try:
            return times_worked(row.label, self.piece.site(i, {}))
        except (Fault, Unclear) as stop:
            return stop

    def _work_range(self, row: Row, wanted: Sequence[int], done: dict[int, Done], once: bool = False) -> Settled | None:
        times = {i: self._times(row, i, once) for i in wanted}
        for i, number in times.items():
            if not isinstance(number, int):
                done[i].last = stopped(number)
        left = {i: number for i, number in times.items() if isinstance(number, int) and number > 0}
        early = without_counts(row) if any(number > 1 for number in left.values()) else row
        settled, turn, recurring, growing = None, 0, Recurring(), Growing(self.piece)
        while left:
            turn += 1
            room = min(left.values()) - turn
            if room > 0:
                passed = recurring.skip(self._standing(left), turn, room, [done[i] for i in left])
                passed = passed or growing.skip((early,), room, {i: done[i] for i in left})
                turn += self.piece.pass_rows(left, passed)
            self._not_endless(row, recurring, left, done)
            lasting = [i for i in left if turn < left[i]]
            ending = [i for i in left if turn == left[i]]
            for which, version in ((lasting, early), (ending, row)):
                if which:
                    settled = self._one_turn(version, which, done)
            left = {i: number for i, number in left.items() if turn < number and not has_failed(done[i])}
        return settled

    def _standing(self, which: Iterable[int]) -> object:
        """What these sizes stand on, to know it again."""
        return tuple((i, self.piece.key(i)) for i in which)

    def _not_endless(self, row: Row, recurring: Recurring, left: dict[int, int], done: dict[int, Done]) -> None:
        """Give up on a label of more rows than anybody works, where each leaves another edge."""
        if len(recurring.seen) > MOST_ROWS:
            for i in left:
                done[i].last = stopped(Unclear("more rows than can be followed", row.place))
            left.clear()

    def _one_turn(self, row: Row, which: Sequence[int], done: dict[int, Done]) -> Settled:
        settled = self.piece.settle(row, which)
        for i, outcome in zip(which, settled.outcomes, strict=True):
            self._take(row, i, outcome, done[i])
        self._check_convention(row, which, settled, done)
        self._keep_habit(settled)
        return settled

    def _take(self, row: Row, i: int, outcome: Outcome, done: Done) -> None:
        outcome = self._doubted(row, i, outcome)
        done.first = done.first or outcome
        done.last, done.stood = outcome, outcome.stood
        done.times += 1
        add_census(done.census, outcome.census)
        self.piece.go_on(row, i, outcome)

    def _doubted(self, row: Row, i: int, outcome: Outcome) -> Outcome:
        """The outcome as far as it can be held to: on an edge only assumed nothing is wrong, and nothing proved."""
        standing = self.piece.standings[i]
        if standing.edge is None and outcome.unclear is not None and outcome.mismatches:
            return Outcome((), unclear=outcome.unclear)
        if standing.edge is not None and outcome.unclear is not None and outcome.made is None and outcome.placeless:
            self.piece.standings[i] = replace(standing, edge=None)
            alone = self.piece.settle(row, [i]).outcomes[0]
            return replace(alone, unclear=outcome.unclear)
        if standing.edge is None or not standing.is_doubted:
            return outcome
        if outcome.fault is not None or (standing.doubtful and outcome.mismatches):
            self.piece.standings[i] = replace(standing, edge=None)
            alone = self.piece.settle(row, [i]).outcomes[0]
            return replace(alone, unclear=Unclear(UNCERTAIN, row.place))
        if standing.doubtful and outcome.unclear is None and not row.stated:
            return replace(outcome, unclear=Unclear(BY_OWN_NUMBERS, row.place))
        return outcome

    def _check_convention(self, row: Row, which: Sequence[int], settled: Settled, done: dict[int, Done]) -> None:
        """A count that is wrong by the notes and right against them is a fault of its own name."""
        wrong = [i for i, o in zip(which, settled.outcomes, strict=True) if o.stood is not None and is_off_by_one(o)]
        if not wrong:
            return
        standings = self.piece.standings
        before = {i: settled.outcomes[list(which).index(i)].before for i in wrong}
        kept = {i: standings[i] for i in wrong}
        for i in wrong:
            standings[i] = Standing(before[i], kept[i].underside)
        other = self.piece.settle(_unsaid(row), wrong, against(self.piece.notes))
        flipped = zip(wrong, other.outcomes, strict=True)
        fits_all = all(outcome.balances and outcome.stood != done[i].stood for i, outcome in flipped)
        for i in wrong:
            done[i].against_note = fits_all
            standings[i] = kept[i]

    def _keep_habit(self, settled: Settled) -> None:
        """The way a starting chain was read becomes the likelier one for the rows after it."""
        way = settled.reading.get("start")
        stood = next((o.stood for o in settled.outcomes if o.stood), None)
        if way and stood and all(o.balances for o in settled.outcomes):
            key = f"start {stood[0]}"
            self.piece.habits.setdefault(key, way)

    # rows again -----------------------------------------------------------------------------------------------------

    def _work_again(self, row: Row, again: RowsAgain, i: int, done: Done) -> None:
        site = self.piece.site(i, {})
        try:
            again = in_this_size(again, site)
            known = self.known[i]
            if again.more:
                known = {**known, **dict.fromkeys(row_keys(row, site), row)}
            number = self._rows_again(again, row, site, i)
            targets = [plain_row(target) for target in look_up(again, known, row)]
            no_changes(again)
        except (Fault, Unclear) as stop:
            done.last = stopped(stop)
            if not (again.until is not None and self._stays(row, again, i)):
                self.piece.go_on(row, i, done.last)
            return
        done.fault_at = again.place
        if grows_between(again):
            self._grow(row, targets[-1], number, i, done)
            return
        self._cycle(row, targets, number, i, done)
        last = done.last
        if last is not None and ((last.fault and grows(row)) or (again.except_ and (last.fault or last.mismatches))):
            done.last = stopped(Unclear("each time something is added or left out", again.place))
            self.piece.go_on(row, i, done.last)

    def _grow(self, row: Row, base: Row, number: int, i: int, done: Done) -> None:
        """Rounds that change the count as the one before them did."""
        try:
            versions = grown_rows(row, base, number, self.piece.standings[i].edge or (), self.piece.site(i, {}))
        except (Fault, Unclear) as stop:
            done.last = stopped(stop)
            self.piece.go_on(row, i, done.last)
            return
        for version in versions:
            self._take(version, i, self.piece.settle(version, [i]).outcomes[0], done)

    def _stays(self, row: Row, again: RowsAgain, i: int) -> bool:
        """True where rows worked an unknown number of times leave the edge as it was; the piece then stands on it."""
        before, standing, done = self.piece.key(i), self.piece.standings[i], Done()
        try:
            targets = [plain_row(target) for target in look_up(again, self.known[i], row)]
        except (Fault, Unclear):
            return False
        self._cycle(row, targets, rows_named(again), i, done)
        stays = not has_failed(done) and self.piece.key(i) == before
        self.piece.standings[i] = replace(standing, rows=None, side=None)
        return stays

    def _rows_again(self, again: RowsAgain, row: Row, site: Site, i: int) -> int:
        ranged = row.label.last is not None or row.label.rows is not None or bool(row.label.listed)
        if again.measure is None or again.times is not None or ranged:
            return rows_to_work(again, row, site)
        return rows_until(self.piece, i, again.measure, rows_named(again))

    def _cycle(self, row: Row, targets: Sequence[Row], number: int, i: int, done: Done) -> None:
        early = [without_counts(target) for target in targets]
        turn, recurring, growing, shaky = 0, Recurring(), Growing(self.piece), ""
        while turn < number:
            which = turn % len(targets)
            room = number - 1 - turn
            passed = recurring.skip((which, self._standing([i])), turn, room, [done])
            passed = passed or growing.skip((*early[which:], *early[:which]), room, {i: done})
            turn += self.piece.pass_rows([i], passed)
            version = replace(targets[which], stated=row.stated) if turn == number - 1 else early[which]
            outcome = worked_again(self.piece, version, i)
            done.blamed = targets[which]
            shaky = shaky or outcome.unsure
            if shaky and not (version.stated and outcome.balances):
                outcome = outcome if outcome.balances and turn < number - 1 else stopped(Unclear(shaky, row.place))
            self._take(version, i, outcome, done)
            if has_failed(done):
                return
            turn += 1
            if len(recurring.seen) > MOST_ROWS:
                done.last = stopped(Unclear("more rows than can be followed", row.place))
                return


_ROWS_NAMED = re.compile(r"\b(?:rows?|rnds?|rounds?)\s+\d", re.IGNORECASE)
_ORDINARY = {"next", "last", "foundation", "final", "base", ""}


def _has_work(steps: Sequence[Step]) -> bool:
    return any(not isinstance(step, (Aside, Turn, Unread)) for step in steps)


def _unsaid(row: Row) -> Row:
    """The row with what it says its own starting chain counts as left out."""
    return replace(row, steps=tuple(replace(s, counts=None) if isinstance(s, Chain) else s for s in row.steps))
