"""Rounds that go on growing: `Continue in this manner, working 1 more sc between increases each rnd`.

Each of them adds (or takes away) as many stitches as the round it follows did, however many lie between.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from gradegen.design.edge import Edge
from gradegen.design.number import Number
from gradegen.design.passages import Change
from gradegen.design.rows import (
    PLACELESS,
    Aside,
    Bound,
    Into,
    Make,
    Repeat,
    Row,
    RowsAgain,
    Step,
    Thing,
    Work,
    worked,
)
from gradegen.findings import Place
from gradegen.trade.stitches import stitches
from gradegen.work.edge.edges import stitches as stitches_of
from gradegen.work.edge.makes import takes_of, targets_of
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import Unclear

_BETWEEN = re.compile(r"\b(?:between|before|after)\b.*\b(?:inc|dec)", re.IGNORECASE)


def grows_between(again: RowsAgain) -> bool:
    """True where the rows are repeated with more (or fewer) stitches between their increases or decreases."""
    return any(isinstance(step, Aside) and _BETWEEN.search(step.text) for step in again.except_)


def grown_rows(row: Row, base: Row, number: int, edge: Edge, site: Site) -> list[Row]:
    """So many such rounds on the edge that `base` left; only the last of them has the printed count."""
    steps = _grown_steps(base, stitches_of(edge), site, row.place)
    one = replace(row, steps=steps, stated=())
    return [*[one] * (min(number, _MOST) - 1), replace(one, stated=row.stated)]


_MOST = 200  # rounds


def _grown_steps(base: Row, count: int, site: Site, place: Place) -> tuple[Step, ...]:
    """One such round on `count` stitches, which `base` left: all even, with its change spread over them."""
    delta = _delta(base.steps, count, site, place)
    main = next((make.stitch for work in worked(base.steps) for make in work.makes if _is_plain(make.stitch)), None)
    if not delta or main is None:
        raise Unclear("how this row changes the count is not plain", place)
    work = Work((Make(main, place=place),), Into("each", (Thing("st"),), bound=Bound("end"), place=place), place=place)
    number = Number((abs(delta),), place=place, places=(place,))
    return (work, Change(1 if delta > 0 else -1, number, "evenly", place=place))


def _is_plain(name: str) -> bool:
    known = stitches().get(name)
    return known is not None and known.base is None and bool(known.height) and name not in ("inc", "dec", "ch")


def _delta(steps: Sequence[Step], count: int, site: Site, place: Place) -> int:
    """What the row added: its stitches less its places, an open repeat as often as its stitches are there now."""
    delta = made = 0
    open_one: tuple[int, int] | None = None
    for step in steps:
        if isinstance(step, PLACELESS):
            continue
        takes, makes = _used(step, site, place)
        if isinstance(step, Repeat) and step.times.how == "bound":
            if open_one is not None:
                raise Unclear("how often its repeats run is not known", place)
            open_one = (takes, makes)
            continue
        delta, made = delta + makes - takes, made + makes
    if open_one is None:
        return delta
    takes, makes = open_one
    if makes <= 0 or (count - made) % makes:
        raise Unclear("how often its repeat runs is not known", place)
    return delta + (count - made) // makes * (makes - takes)


def _names_places(into: Into) -> bool:
    """True for so many places: `in next 3 sts`, `in each of next 3 sts`, `in last st`."""
    return into.which in ("next", "first", "last") or (into.which == "each" and into.number is not None)


def _used(step: Step, site: Site, place: Place) -> tuple[int, int]:
    """The places a step uses and the stitches it makes; for a repeat of open length those of one run."""
    if isinstance(step, Repeat):
        parts = [_used(inner, site, place) for inner in step.body if not isinstance(inner, PLACELESS)]
        times = 1 if step.times.how == "bound" else site.number(step.times.number)
        if step.times.how in ("more", "unsure") or step.times.stop_at is not None:
            raise Unclear("how often its repeats run is not known", place)
        return sum(takes for takes, _ in parts) * times, sum(makes for _, makes in parts) * times
    if not isinstance(step, Work) or not _names_places(step.into):
        raise Unclear("how this row changes the count is not plain", place)
    number = site.number(step.into.number)
    each = takes_of(step.makes, site.definitions)
    made = sum(one.kind == "st" for one in targets_of(step.makes, site))
    if each > 1 and number == each and not step.bare:
        number = 1
    return number * each, number * made
