"""Where one size of a piece has come to, and how a row moves it on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from gradegen.design.edge import Edge
from gradegen.design.pattern import Shape
from gradegen.design.rows import Chain, Row
from gradegen.work.piece.left_behind import LeftBehind
from gradegen.work.row.row import Outcome
from gradegen.work.step.beginnings import begins_anew

Side = Literal["RS", "WS"]


@dataclass(slots=True)
class Standing:
    """Where one size has come to.

    `edge`: in the order the next row meets it; None: not known (nothing can be claimed). `assumed`: taken from a
    printed count only, or a new part begins: a row that does not fit it proves nothing. `doubtful`: it comes from rows
    worked by their own numbers alone, on an edge that is not known. `after_group`: the row before ended on a shell, so
    that its turning chain stands for no stitch of the edge. `underside`: free loops of the foundation. `rests`: what
    the two rows before left unworked, the last one's second: a turned row may end on what the one before it left.
    `start_unknown`: the row before is not written. `rows`: worked since the piece began (None: not known);
    `side_rows`: those of the piece it goes on from. `side`: of the next row, where a label has said it.
    `piece`: the piece at hand; `left`: what it and earlier ones left for later ones; `on_held`: the edge is part of it.
    """

    edge: Edge | None = None
    underside: Edge = ()
    turning_chain: Chain | None = None
    assumed: bool = False
    doubtful: bool = False
    after_group: bool = False
    rests: tuple[Edge, Edge] = ((), ())
    rows: int | None = 0
    side_rows: int | None = 0
    side: Side | None = None
    piece: str = ""
    left: tuple[LeftBehind, ...] = ()
    on_held: bool = False
    start_unknown: bool = False

    @property
    def is_doubted(self) -> bool:
        """True where the edge is not certain."""
        return self.assumed or self.doubtful

    @property
    def manner(self) -> tuple[object, ...]:
        """All that must be the same for sizes to be worked as one."""
        return self.turning_chain, self.after_group, self.on_held, self.start_unknown, self.rows, self.side_rows

    @property
    def beyond(self) -> Edge:
        """What lies behind the end of the edge among short rows, which turn early at both sides."""
        return self.rests[0] if all(self.rests) else ()


def stays_doubtful(row: Row, outcome: Outcome, standing: Standing) -> bool:
    """True where the new edge hangs on one that was not known, until a row begins by itself or a printed count fits."""
    if outcome.unclear is not None and outcome.made is not None:
        return True
    if standing.edge is None:
        return not begins_anew(row)
    return standing.doubtful and not (row.stated and outcome.balances)


def rows_after(standing: Standing, outcome: Outcome) -> int | None:
    """Rows worked so far; a row that only chains is none, and one that could not be followed leaves it unknown."""
    if standing.rows is None or outcome.made is None:
        return None
    return standing.rows + (1 if outcome.made else 0)


def side_after(row: Row, shape: Shape, standing: Standing) -> Side | None:
    """The side of the row to come: rows that turn change sides."""
    side = row.side if row.side is not None and row.label.last is None else standing.side
    if side is None or shape != "flat":
        return side
    return "WS" if side == "RS" else "RS"
