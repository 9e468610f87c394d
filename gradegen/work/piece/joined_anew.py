"""Rows that pass stitches by and join the yarn again: the other side of a neck, a second strap.

`Skip next 26 sts, join yarn in next st`: the stitches passed may be those of the row before, or those it left unworked.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from gradegen.design.rows import Aside, Row, Skip, Slip, Turn
from gradegen.work.piece.entry import Entries
from gradegen.work.piece.piece import PieceWork
from gradegen.work.piece.standing import Standing

_JOINS = re.compile(r"\b(?:re)?(?:join|attach)", re.IGNORECASE)


def passes_to_join(row: Row, piece: PieceWork) -> bool:
    """Forgets the edge, and True, for a row that joins the yarn anew and makes nothing: the next one begins there."""
    if not (_joins_anew(row) and all(isinstance(step, (Aside, Skip, Slip, Turn)) for step in row.steps)):
        return False
    piece.standings[:] = _somewhere(piece.standings)
    return True


def or_somewhere(row: Row, piece: PieceWork) -> Entries:
    """Where a row begins: where the row before ended; one that joins the yarn anew also on stitches nobody knows."""
    here = tuple(piece.standings)
    return (here, _somewhere(here)) if _joins_anew(row) else (here,)


def _joins_anew(row: Row) -> bool:
    """True where the first thing a row does is to skip, and the second to join the yarn."""
    steps = [step for step in row.steps if not isinstance(step, Turn) and not _is_remark(step)]
    return len(steps) > 1 and isinstance(steps[0], Skip) and isinstance(steps[1], Aside)


def _somewhere(standings: Sequence[Standing]) -> tuple[Standing, ...]:
    return tuple(Standing(rows=one.rows, piece=one.piece, left=one.left, start_unknown=True) for one in standings)


def _is_remark(step: object) -> bool:
    return isinstance(step, Aside) and not _JOINS.search(step.text)
