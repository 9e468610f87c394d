"""When a row does not fit: another way to read the row above it, where that fits as well as the way first taken.

`Ch 72, dc in 4th ch from hook and in each ch across` leaves 69 or 70 dc, as the skipped chains count or not; the
next row may tell which. Where only one of them fits it, that one is known; where several do, the count of the row above
is not claimed, nor that of the next row where it hangs on it.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from gradegen.design.rows import Row
from gradegen.work.piece.done import UNCERTAIN, Done, falls_short
from gradegen.work.piece.piece import PieceWork
from gradegen.work.piece.standing import Standing
from gradegen.work.row.settle import Reading, Settled

Work = Callable[[dict[int, Done]], "Settled | None"]  # works the row below in all its sizes
UNSURE_CHOICES = ("start", "skipped")  # what a chain at the beginning counts as
_MOST = 12  # other readings tried


@dataclass(slots=True)
class LastRow:
    """The row above: the sizes that worked it, where they stood before it, and how it was settled."""

    row: Row
    wanted: Sequence[int]
    standings: Sequence[Standing]
    settled: Settled

    @property
    def is_unsure(self) -> bool:
        """True while the count of the row hangs on a reading that nothing has settled."""
        return any(outcome.unsure for outcome in self.settled.outcomes)

    def others(self, piece: PieceWork, keys: Container[str] | None = None) -> Iterator[Settled]:
        """The row in every other reading that balances in all its sizes too; the piece stands behind it each time.

        `keys`: the only choices that are tried another way.
        """
        if self.row.stated:
            return
        for reading in self._readings(keys):
            piece.standings[:] = self.standings
            settled = piece.in_reading(self.row, self.wanted, reading)
            if all(outcome.balances for outcome in settled.outcomes):
                for i, outcome in zip(self.wanted, settled.outcomes, strict=True):
                    piece.go_on(self.row, i, outcome)
                yield settled

    def _readings(self, keys: Container[str] | None) -> Iterator[Reading]:
        tried = 0
        chosen: Mapping[str, int] = self.settled.reading
        for key, choice in self.settled.choices.items():
            if keys is not None and key not in keys:
                continue
            for way in range(len(choice.ways)):
                if way != chosen.get(key, 0) and tried < _MOST:
                    tried += 1
                    yield {**chosen, key: way}


@dataclass(frozen=True, slots=True)
class Revised:
    """A row on the row above in another reading: what the sizes came to, and both as settled now."""

    done: dict[int, Done]
    settled: Settled | None
    above: Settled


def think_again(above: LastRow, piece: PieceWork, wanted: Sequence[int], work: Work) -> Revised | None:
    """The row on what the row above leaves in another reading, where it fits that in every size."""
    after = list(piece.standings)
    for other in above.others(piece):
        done = {i: Done() for i in wanted}
        settled = work(done)
        if not any(falls_short(one) for one in done.values()):
            return Revised(done, settled, other)
    piece.standings[:] = after
    return None


def forget_unsure(piece: PieceWork, done: Mapping[int, Done], above: LastRow | None) -> None:
    """Rows after an unsure one that the next row can't settle stand on an edge that is not known."""
    for i, one in done.items():
        if one.last is not None and one.last.unsure and (above is None or one.last.unclear is not None):
            piece.standings[i] = replace(piece.standings[i], edge=None)


def weigh(above: LastRow, piece: PieceWork, done: Mapping[int, Done], work: Work) -> Settled | None:
    """The unsure row above as it is now known, since the next row, which fits it, fits no other reading of it.

    `work` works that next row. Where it fits several readings and comes to different edges, it becomes unsure itself.
    """
    after, rivals = list(piece.standings), []
    for _ in above.others(piece, UNSURE_CHOICES):
        other = {i: Done() for i in done}
        work(other)
        if not any(falls_short(one) for one in other.values()):
            rivals.append(other)
    piece.standings[:] = after
    if not rivals and all(one.last is not None and one.last.balances for one in done.values()):
        return replace(above.settled, outcomes=[replace(outcome, unsure="") for outcome in above.settled.outcomes])
    for i, one in done.items():
        edges = {None if (last := other[i].last) is None else last.after for other in rivals}
        if one.last is not None and edges - {one.last.after}:
            one.last = replace(one.last, unsure=UNCERTAIN)
    return None
