"""The count a passage ends on against the one that is printed, and by which name the difference goes."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.passages import Rate, Shaping
from gradegen.design.rows import Row, Stated
from gradegen.findings import Place
from gradegen.grade.shaping.faults import ODD_AT_BOTH_ENDS, TIMES_OR_MORE, TOTAL_DIFFERS
from gradegen.trade.stitches import stitches as stitch_names
from gradegen.work.edge.site import Site
from gradegen.work.edge.stops import COUNT_WRONG, Fault
from gradegen.work.passage.shaping_plan import Event
from gradegen.work.row.row import Outcome

Shaped = Sequence[tuple[Shaping, Sequence[Event]]]


def check_total(outcome: Outcome, row: Row, site: Site, before: int, shaped: Shaped) -> None:
    """Raises the fault of a printed count that the passage does not come to."""
    made = outcome.made or 0
    told = [one for one in row.stated if _counts_stitches(one)]
    if not told:
        return
    written = sum(site.number(one.number) for one in told)
    if written == made:
        return
    place = site.place_of(told[-1].number)
    if not shaped:
        raise _other_count(place, made, written, f"the rows are even: {before} sts stay {made}")
    because = working(before, shaped, made)
    raise (
        _odd_change(place, before, written, shaped)
        or _times_or_more(place, before, written, made, shaped, site)
        or Fault(
            TOTAL_DIFFERS,
            place,
            "The shaping ends on another count than it says.",
            expected=f"{made} sts",
            found=f"{written} sts",
            because=because,
            hint=f"write {made}, or check how often it is worked",
        )
    )


def _counts_stitches(one: Stated) -> bool:
    known = stitch_names().get(one.unit.name)
    return one.unit.name == "st" or (known is not None and known.base is None and one.unit.name != "ch")


def _other_count(place: Place, made: int, written: int, because: str) -> Fault:
    return Fault(
        COUNT_WRONG,
        place,
        "The rows make another count than they say.",
        expected=f"{made} sts",
        found=f"{written} sts",
        because=because,
    )


def working(before: int, shaped: Shaped, made: int) -> str:
    """`60 sts; 6 x 2 fewer every 4th row, 3 x 2 fewer every 6th row; 42 are left`."""
    parts = [f"it begins with {before} sts"]
    for shaping, events in shaped:
        for which, rate in enumerate(shaping.rates):
            own = [event for event in events if event.rate == which]
            if own:
                delta = own[0].delta
                often = "once" if len(own) == 1 else f"{len(own)} times"
                parts.append(f"{often} {abs(delta)} {'more' if delta > 0 else 'fewer'}{_every(rate)}")
    parts.append(f"it ends with {made} sts")
    return "; ".join(parts)


def rate_words(shaping: Shaping, which: int, site: Site) -> str:
    """`dec 1 st at each end every 4th row`: one rate of a shaping in one size."""
    every = site.number(shaping.rates[which].every)
    often = {1: "every row", 2: "every other row"}.get(every, f"every {_ordinal(every)} row")
    if shaping.change is None:
        return f"{shaping.labels[0]} row, {often}"
    return f"{change_words(shaping, site)}, {often}"


def change_words(shaping: Shaping, site: Site) -> str:
    """`dec 1 st at neck edge`, `leave 6 sts at each end`: what one event of a shaping does in one size."""
    change = shaping.change
    assert change is not None
    number = site.number(change.number)
    where = shaping.edge or {"each end": "at each end", "one end": "at one end", "evenly": "evenly"}[change.where]
    verb = "leave" if shaping.leaves else "inc" if change.sign > 0 else "dec"
    return f"{verb} {number} st{'' if number == 1 else 's'} {where}"


def _every(rate: Rate) -> str:
    values = rate.every.values
    if len(values) != 1 or values[0] is None or rate.alternate is not None:
        return ""
    if values[0] == 1:
        return ""
    return " on every other row" if values[0] == 2 else f" on every {_ordinal(values[0])} row"


def _ordinal(number: int) -> str:
    if number % 100 in (11, 12, 13):
        return f"{number}th"
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th') }"


def _odd_change(place: Place, before: int, written: int, shaped: Shaped) -> Fault | None:
    """An odd difference, where every event changes both ends alike."""
    both = all(
        shaping.change is not None and shaping.change.where == "each end" and events for shaping, events in shaped
    )
    if not both or (before - written) % 2 == 0:
        return None
    return Fault(
        ODD_AT_BOTH_ENDS,
        place,
        "An odd change cannot be the same at both ends.",
        expected=f"{written - 1} or {written + 1} sts",
        found=f"{written} sts",
        because=f"from {before} to {written} is a change of {abs(before - written)}, which is odd",
    )


def _times_or_more(place: Place, before: int, written: int, made: int, shaped: Shaped, site: Site) -> Fault | None:
    """The printed count fits when `times` is taken as `more times`, or the other way round."""
    for shaping, events in shaped:
        earlier = int(shaping.repeats)
        for which, rate in enumerate(shaping.rates):
            own = [event for event in events if event.rate == which]
            delta = own[0].delta if own else 0
            if delta and rate.times is not None and (earlier or which == len(shaping.rates) - 1):
                other = earlier if rate.how == "in all" else -earlier
                if other and made + delta * other == written:
                    return _said_otherwise(place, rate, len(own), made, written, working(before, shaped, made))
            earlier += len(own)
    return None


def _said_otherwise(place: Place, rate: Rate, times: int, made: int, written: int, because: str) -> Fault:
    said = "in all" if rate.how == "in all" else "more times"
    meant = "besides the first" if rate.how == "in all" else "in all, the first among them"
    return Fault(
        TIMES_OR_MORE,
        place,
        f"The count is only right if these {times} times are meant {meant}.",
        expected=f"{made} sts for {times} {said}",
        found=f"{written} sts",
        because=because,
        hint="write `k more times (k + 1 in all)`, so that nobody can miscount",
    )
