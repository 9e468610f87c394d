"""The small steps: joins, loose changes, readings, sides; and what signs up all the others."""

from __future__ import annotations

import re
from typing import Any

from gradegen.design.rows import (
    Aside,
    Change,
    Either,
    Elsewhere,
    Even,
    Make,
    RowsAgain,
    SizesOnly,
    Turn,
    Unread,
    Unworked,
    Work,
)
from gradegen.work.along import repeats  # noqa: F401 - they sign up their own steps
from gradegen.work.along.doing import reading_tried, run, works
from gradegen.work.along.petals import goes_behind_petals
from gradegen.work.along.walk import Walk
from gradegen.work.edge.dense import is_too_dense, too_dense
from gradegen.work.edge.edges import ENDLESS, plain
from gradegen.work.edge.edges import stitches as count_stitches
from gradegen.work.edge.kinds import holds
from gradegen.work.edge.stops import Unclear
from gradegen.work.step import starts, stitching, travel  # noqa: F401 - they sign up their own steps


@works(Change)
def do_change(walk: Walk, step: Change) -> None:
    """Increases or decreases spread loosely over the row."""
    number = walk.site.number(step.number) * (2 if step.where == "each end" else 1)
    before = count_stitches(walk.before)
    if before and not walk.site.blind and is_too_dense(step, before, step.sign * number):
        raise too_dense(step, before, step.sign * number, f"the row before leaves {before} sts")
    walk.delta += step.sign * number


@works(Even)
def do_even(walk: Walk, step: Even) -> None:
    """As many as before."""
    walk.must_see(step.place)
    rest = walk.cursor.rest()
    if walk.placing is not None:
        walk.placing.even(rest, step.stitch)
    if step.stitch:
        walk.make((Make(step.stitch, place=step.place),), count_stitches(rest))
    else:
        walk.out.extend(rest)
    walk.begun = True
    walk.cursor.to_end()


@works(Either)
def do_either(walk: Walk, step: Either) -> None:
    """The reading that is being tried."""
    run(walk, reading_tried(walk, step))


@works(SizesOnly)
def do_sizes_only(walk: Walk, step: SizesOnly) -> None:
    """Steps of some sizes only."""
    if walk.site.size_name in step.sizes:
        run(walk, step.body)


@works(Elsewhere)
def do_elsewhere(walk: Walk, step: Elsewhere) -> None:
    """From here only the row's own numbers tell what is made; on row ends the edge is where the row goes."""
    if walk.site.edge_given and holds(walk.before, lambda one: one.kind == "row end"):
        return
    if not walk.begun and walk.site.rows and _goes_along_rows(walk):
        return
    if not walk.begun and goes_behind_petals(walk, walk.ahead):
        return
    if walk.site.edge_given and not walk.begun and _EDGE.search(step.text):
        walk.about = "how many rows this edge has is not certain"
        return
    walk.site.blind = True
    walk.onto(plain(ENDLESS), again=True)
    walk.likely = walk.likely or "part of this row is worked away from the edge of the row before"


_EDGE = re.compile(r"\b(?:edge|side)$")


def _goes_along_rows(walk: Walk) -> bool:
    """`Working down the side, sc in the end of each row`."""
    work = next((one for one in walk.ahead if isinstance(one, Work)), None)
    return work is not None and any(thing.name == "row end" for thing in work.into.things)


@works(Unworked)
def do_unworked(walk: Walk, step: Unworked) -> None:
    """What is left stays, and that is meant."""
    walk.unworked = True


@works(Unread)
def do_unread(walk: Walk, step: Unread) -> None:
    """Words nobody could read: nothing is claimed about the row."""
    raise Unclear(f"'{step.text.strip()[:60]}' could not be read", step.place)


@works(RowsAgain)
def do_rows_again(walk: Walk, step: RowsAgain) -> None:
    """Whole rows again are worked by the room's conductor, not inside a row."""
    raise Unclear("other rows are repeated inside this row", step.place)


@works(Turn, Aside)
def _nothing(walk: Walk, step: Any) -> None:
    """Turns and asides change no count."""
