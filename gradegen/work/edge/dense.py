"""More increases or decreases than one row has places for."""

from __future__ import annotations

from gradegen.design.rows import Change
from gradegen.grade.shaping.faults import TOO_DENSE
from gradegen.work.edge.stops import Fault


def is_too_dense(change: Change, before: int, delta: int) -> bool:
    """True for decreases over half the stitches there are, and for more increases than stitches, spread over a row."""
    return change.where == "evenly" and (-2 * delta > before or delta > before)


def too_dense(change: Change, before: int, delta: int, because: str) -> Fault:
    """The fault of more increases or decreases than a row has places for."""
    return Fault(
        TOO_DENSE,
        change.place,
        "This many cannot be placed in one row.",
        expected=f"{before if delta > 0 else before // 2} or fewer",
        found=str(abs(delta)),
        because=because,
        hint="spread them over two rows or more",
    )
