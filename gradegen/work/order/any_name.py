"""Rows repeated on stitches of another name: `dc in next dc` of Row 3, worked again on a row of sc."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import PLACELESS, Bound, Into, Repeat, Row, Step, Thing, Work
from gradegen.trade.stitches import stitches
from gradegen.work.edge.edges import stitches as count_stitches
from gradegen.work.piece.piece import PieceWork
from gradegen.work.row.row import Outcome


def worked_again(piece: PieceWork, row: Row, size: int) -> Outcome:
    """A row pointed to; where its names do not fit this edge and plain stitches do, each in the next one, those."""
    outcome, edge = piece.settle(row, [size]).outcomes[0], piece.standings[size].edge
    if edge is None or (outcome.fault is None and outcome.made == count_stitches(edge)):
        return outcome
    other = _by_any_name(row)
    again = piece.settle(other, [size]).outcomes[0] if other is not None else outcome
    return again if again.balances and again.made == again.taken == count_stitches(edge) else outcome


def _by_any_name(row: Row) -> Row | None:
    """The row with each stitch it goes into called just a stitch; None where it skips some or names groups."""
    steps = _steps(row.steps)
    return replace(row, steps=steps) if steps is not None and steps != row.steps else None


def _steps(steps: tuple[Step, ...]) -> tuple[Step, ...] | None:
    found = [_step(step) for step in steps]
    return None if None in found else tuple(step for step in found if step is not None)


def _step(step: Step) -> Step | None:
    if isinstance(step, Repeat):
        body, bound = _steps(step.body), step.times.bound
        if body is None or step.times.last_run:
            return None
        times = step.times if bound is None else replace(step.times, bound=_bound(bound))
        return replace(step, body=body, times=times)
    if isinstance(step, Work):
        into = _into(step.into)
        return None if into is None else replace(step, into=into)
    return step if isinstance(step, PLACELESS) else None


def _into(into: Into) -> Into | None:
    if into.of is not None:
        return None
    return replace(
        into, things=tuple(map(_thing, into.things)), bound=None if into.bound is None else _bound(into.bound)
    )


def _bound(bound: Bound) -> Bound:
    return bound if bound.thing is None else replace(bound, thing=_thing(bound.thing))


def _thing(thing: Thing) -> Thing:
    known = stitches().get(thing.name)
    plain = known is not None and known.counts and len(known.makes) == 1 and thing.name != "ch"
    return Thing("st") if plain else thing
