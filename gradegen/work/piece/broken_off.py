"""Yarn that was broken off, and a row that goes on without taking up another: what it stands on is not written."""

from __future__ import annotations

import re
from collections.abc import Sequence

from gradegen.design.rows import Aside, Row, RowsAgain, Step, Turn, Unread
from gradegen.work.piece.piece import PieceWork
from gradegen.work.step.beginnings import begins_anew

_BROKEN = re.compile(
    r"\b(?:break|fasten) off\b|\b(?:break|cut|fasten)(?: off)?(?: the)? (?:thread|yarn|warp)\b", re.IGNORECASE
)
_TAKEN_UP = re.compile(r"\b(?:attach|join|with)\b", re.IGNORECASE)


def stands_elsewhere(above: Row | None, row: Row, piece: PieceWork) -> bool:
    """True for a row behind broken yarn that names no new one, where what came before is doubtful anyhow."""
    doubtful = any(standing.doubtful for standing in piece.standings)
    return doubtful and above is not None and _is_broken(above) and not begins_anew(row) and not _takes_up(row.steps)


def _is_broken(row: Row) -> bool:
    last = [step for step in row.steps if not isinstance(step, (Turn, RowsAgain))][-1:]
    return any(isinstance(step, Aside) and _BROKEN.search(step.text) is not None for step in last)


def _takes_up(steps: Sequence[Step]) -> bool:
    """True where words about yarn stand before the first stitch, and where words could not be read."""
    first = next((i for i, step in enumerate(steps) if not isinstance(step, (Aside, Turn, Unread))), len(steps))
    texts = [step.text for step in steps[:first] if isinstance(step, (Aside, Unread))]
    return any(_TAKEN_UP.search(text) for text in texts) or any(isinstance(step, Unread) for step in steps)
