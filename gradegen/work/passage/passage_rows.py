"""Where one size stands while a passage is worked: its edge, the rows worked so far, and what they were made of."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from gradegen.design.edge import Edge
from gradegen.design.rows import Change, Row
from gradegen.grade.shaping.faults import RUNS_OUT
from gradegen.work.along.judge import add_census, census_of
from gradegen.work.edge.dense import is_too_dense, too_dense
from gradegen.work.edge.edges import plain, stitches, tally, turned
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import Fault, Unclear
from gradegen.work.piece.piece import PieceWork, shape_of
from gradegen.work.piece.standing import Standing


@dataclass(slots=True)
class PassageRows:
    """The rows of one passage in one size.

    `rows`: worked so far; `stitch`: named for them (None: as they stand); `turns`: each is worked back over the last.
    """

    piece: PieceWork
    row: Row
    size: int
    rows: int = 0
    census: dict[str, int] = field(default_factory=dict)
    stitch: str | None = None
    blamed: Row | None = None
    turns: bool = field(init=False)

    def __post_init__(self) -> None:
        self.turns = shape_of(self.row, self.piece.shape) == "flat" and self.row.label.kind != "round"

    @property
    def site(self) -> Site:
        """This size's numbers."""
        return self.piece.site(self.size, {}, shape=self.piece.manner(self.row).shape)

    @property
    def standing(self) -> Standing:
        """Where the size has come to."""
        return self.piece.standings[self.size]

    @property
    def edge(self) -> Edge:
        """The edge in the order the next row meets it; raises Unclear where it is not known."""
        edge = self.standing.edge
        if edge is None:
            raise Unclear("the row before could not be followed", self.row.place)
        return edge

    @property
    def count(self) -> int:
        """Stitches of the edge."""
        return stitches(self.edge)

    def even(self, rows: int, stitch: str | None = None) -> None:
        """So many plain rows at once."""
        if rows <= 0:
            return
        edge = self.edge
        if stitch is not None and not has_spaces(edge):
            edge = plain(stitches(edge), stitch)
        self._move(edge, rows)

    def written(self, row: Row) -> None:
        """One written row, worked stitch for stitch."""
        outcome = self.piece.settle(row, [self.size]).outcomes[0]
        if outcome.fault is not None:
            self.blamed = row if row.place != self.row.place else None
            raise outcome.fault
        if outcome.unclear is not None:
            raise outcome.unclear
        self.rows += 1
        add_census(self.census, outcome.census)
        self.piece.go_on(row, self.size, outcome)

    def change(self, change: Change, delta: int) -> None:
        """One event's increases or decreases; its row is not worked yet."""
        before = self.count
        if has_spaces(self.edge):
            raise Unclear("how this stitch pattern is shaped is not said", change.place)
        dense = is_too_dense(change, before, delta)
        if dense or before + delta < 1:
            raise _cannot_be(change, before, delta, dense, self.rows + 1)
        self.widen(delta)

    def widen(self, delta: int) -> None:
        """The edge with so many stitches more (or fewer), wherever they stand."""
        edge = self.edge
        name = self.stitch or _one_name(edge)
        self.piece.standings[self.size] = replace(self.standing, edge=plain(stitches(edge) + delta, name))

    def advance(self) -> None:
        """The row of an event is worked."""
        self._move(self.edge, 1)

    def _move(self, edge: Edge, rows: int) -> None:
        standing = self.standing
        self.piece.hear_of(edge, rows)
        add_census(self.census, {name: number * rows for name, number in census_of(tally(edge), {}).items()})
        self.rows += rows
        odd = rows % 2 == 1 and self.turns
        side = standing.side
        self.piece.standings[self.size] = replace(
            standing,
            edge=turned(edge) if odd else edge,
            turning_chain=None,
            rows=None if standing.rows is None else standing.rows + rows,
            side=("WS" if side == "RS" else "RS") if odd and side is not None else side,
        )


def has_spaces(edge: Edge) -> bool:
    """True when chain spaces lie on the edge, so that nobody can say what a plain decrease does to it."""
    return any(one.kind == "sp" for one in tally(edge))


def _one_name(edge: Edge) -> str:
    """The name all stitches of an edge share; "st" where they differ."""
    names = {one.name if one.kind == "st" else "st" for one in tally(edge)}
    return names.pop() if len(names) == 1 else "st"


def _cannot_be(change: Change, before: int, delta: int, dense: bool, row: int) -> Fault:
    if dense:
        return too_dense(change, before, delta, f"there are {before} sts in row {row}")
    return Fault(
        RUNS_OUT,
        change.place,
        "No stitches are left for the edge.",
        expected=f"{1 - delta} sts or more",
        found=f"{before} sts",
        because=f"row {row} of this passage takes {-delta} away",
    )
