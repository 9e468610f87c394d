"""Long stretches that a row passes over: sleeves at the division of a yoke, kept for the piece that works them."""

from __future__ import annotations

from gradegen.design.edge import Edge, Target
from gradegen.work.along.walk import Stretch, Walk
from gradegen.work.edge.edges import count_targets, leading

_LONG = 6  # stitches; lace passes over fewer
_OPENING = 3  # stitches of a thumb's opening, bridged by as many chains and outside a repeat


def begin_gap(walk: Walk) -> None:
    """Remember where skipping begins; more skips straight after it belong to the same gap."""
    if not walk.skipped_to_end or walk.gap is None:
        walk.gap = walk.cursor.save()  # type: ignore[assignment]


def keep_aside(walk: Walk, number: int, said: bool) -> None:
    """Keep what was passed over since the gap began, where it is long, said to be held, or more of such a gap.

    What lies before the row's first stitch is where the row does not reach, and is not kept.
    """
    if walk.site.blind or walk.gap is None:
        return
    more = bool(walk.kept_aside) and walk.gap_kept is walk.gap
    bridged = number >= _OPENING and not walk.inside and _chain_before(walk) >= number
    is_long = (number >= _LONG or bridged) and bool(walk.out)
    if not (is_long or said or more):
        return
    chain = walk.kept_aside[-1].chain if more else _chain_before(walk)
    earlier = walk.kept_aside[:-1] if more else walk.kept_aside
    walk.kept_aside, walk.gap_kept = (*earlier, Stretch(_passed(walk), chain)), walk.gap


def chain_across(walk: Walk, chains: int) -> None:
    """Chains made straight after a stretch was passed over lie across it."""
    if walk.skipped_to_end and walk.kept_aside and walk.gap_kept is walk.gap and not walk.kept_aside[-1].chain:
        walk.kept_aside = (*walk.kept_aside[:-1], Stretch(walk.kept_aside[-1].edge, chains))


def _chain_before(walk: Walk) -> int:
    last = walk.out[-1] if walk.out else None
    return last.length if isinstance(last, Target) and last.kind == "sp" and not last.group else 0


def _passed(walk: Walk) -> Edge:
    here = walk.cursor.save()
    assert walk.gap is not None
    left = count_targets(walk.cursor.rest())
    walk.cursor.load(walk.gap)  # type: ignore[arg-type]
    rest = walk.cursor.rest()
    walk.cursor.load(here)
    return leading(rest, count_targets(rest) - left)
