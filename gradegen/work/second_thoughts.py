"""When a row does not fit: another way to read the row above it, where that fits as well as the way first taken.

`Ch 72, dc in 4th ch from hook and in each ch across` leaves 69 or 70 dc, as the skipped chains count or not; the
next row may tell which.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from gradegen.design.rows import Row
from gradegen.work.piece import PieceWork, Standing
from gradegen.work.settle import Reading, Settled

_MOST = 12  # other readings tried


@dataclass(slots=True)
class LastRow:
    """The row above: the sizes that worked it, where they stood before it, and how it was settled."""

    row: Row
    wanted: Sequence[int]
    standings: Sequence[Standing]
    settled: Settled

    def others(self, piece: PieceWork) -> Iterator[Settled]:
        """The row in every other reading that balances in all its sizes too; the piece stands behind it each time."""
        if self.row.stated:
            return
        for reading in self._readings():
            piece.standings[:] = self.standings
            settled = piece.in_reading(self.row, self.wanted, reading)
            if all(outcome.balances for outcome in settled.outcomes):
                for i, outcome in zip(self.wanted, settled.outcomes, strict=True):
                    piece.go_on(self.row, i, outcome)
                yield settled

    def _readings(self) -> Iterator[Reading]:
        tried = 0
        chosen: Mapping[str, int] = self.settled.reading
        for key, choice in self.settled.choices.items():
            for way in range(len(choice.ways)):
                if way != chosen.get(key, 0) and tried < _MOST:
                    tried += 1
                    yield {**chosen, key: way}
