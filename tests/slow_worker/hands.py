"""Works steps on a plain list, one stitch at a time, in every way the wording allows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from slow_worker.state import Hands, close_loop, into, make, other_side
from slow_worker.steps import (
    Bound,
    Chain,
    Choice,
    Each,
    Evenly,
    Join,
    Leave,
    OtherSide,
    Place,
    Repeat,
    Skip,
    Slip,
    Turn,
    Work,
)
from slow_worker.stitches import HEIGHTS, is_stitch

Steps = tuple[object, ...]


@dataclass(frozen=True)
class Trouble:
    """Why one way of working went no further, and how far it got."""

    fault: str
    why: str
    at: int


class Worker:
    """Tries every way of working a row; keeps the troubles met on the way."""

    def __init__(self, terms: str = "US") -> None:
        self.heights = HEIGHTS[terms]
        self.troubles: list[Trouble] = []

    def run(self, steps: Steps, hands: Hands, whole: bool = False) -> Iterator[Hands]:
        """Every state that working all of `steps` can end in; `whole`: they are the whole row."""
        if not steps:
            yield hands
            return
        for after in self.do(steps[0], hands, steps[1:], whole):
            yield from self.run(steps[1:], after, whole)

    def trouble(self, fault: str, why: str, hands: Hands) -> None:
        self.troubles.append(Trouble(fault, why, hands.at))

    def do(self, step: object, hands: Hands, then: Steps, whole: bool = False) -> Iterator[Hands]:
        """Every state that one step can end in."""
        hands = hands.copy()
        if isinstance(step, Work):
            yield from self._work(step, hands, then)
        elif isinstance(step, Each):
            yield from self._each(step.lots, step.bound, hands, then, "")
        elif isinstance(step, Skip):
            yield from self._skip(step.place, hands)
        elif isinstance(step, Slip):
            yield from self._slip(step.place, hands)
        elif isinstance(step, Chain):
            make(hands, (f"ch-{step.number} sp",))
            yield hands
        elif isinstance(step, Repeat):
            closing = all(isinstance(later, (Join, Turn)) for later in then)
            yield from self._repeat(step, hands, to_the_end=whole and closing)
        elif isinstance(step, Choice):
            for meaning in step.meanings:
                yield from self.run(meaning, hands)
        elif isinstance(step, Evenly):
            yield from self._evenly(step.change, hands)
        elif isinstance(step, OtherSide):
            yield other_side(hands)
        else:
            hands.leaves = hands.leaves or isinstance(step, Leave)
            assert isinstance(step, (Join, Turn, Leave)), step
            yield hands

    # -- into places -------------------------------------------------------------------------------------------------

    def _work(self, step: Work, hands: Hands, then: Steps) -> Iterator[Hands]:
        place = step.place
        if place.which == "each":
            yield from self._each(((step.atoms, place.kinds),), place.bound or Bound("end"), hands, then, step.unit)
            return
        if place.which == "ring" or (place.which == "here" and hands.ring and not hands.edge):
            hands.ring = True
            into(hands, -1, step.atoms, step.unit)
            yield hands
            return
        if place.which == "here" and step.atoms == ("picot",):
            into(hands, -2, step.atoms, "")
            yield hands
            return
        if self._closes(step, hands, then):
            yield close_loop(hands, self.heights.get(step.atoms[0], 1))
            return
        if place.number == 0:
            yield hands
            return
        spots = self._spots(place, hands)
        if spots is None:
            return
        if step.together:
            hands.groups.append((spots[0], step.atoms))
            make(hands, step.atoms)
        else:
            for spot in spots:
                into(hands, spot, step.atoms, step.unit)
        hands.at, hands.here, hands.fresh = max(hands.at, spots[-1] + 1), spots[-1], False
        yield hands

    def _closes(self, step: Work, hands: Hands, then: Steps) -> bool:
        """`ch 2, dc in first sc` at a round's end is the last loop, not a stitch."""
        return (
            hands.round_
            and step.place.which == "first"
            and bool(hands.made)
            and hands.made[-1].endswith(" sp")
            and hands.at > 0
            and all(isinstance(later, (Join, Turn)) for later in then)
        )

    def _spots(self, place: Place, hands: Hands) -> list[int] | None:
        """The places on the edge; None (and a trouble) when they aren't there."""
        if place.which in ("same", "here"):
            return self._same(place, hands)
        if place.which == "hook":
            spot = (place.nth or 1) - 1
            return [spot] if spot < len(hands.edge) else self._short(place, hands)
        if place.which == "first":
            found = [at for at in range(len(hands.edge)) if hands.any_of(place.kinds, at)][: place.number]
            return found if len(found) == place.number else self._short(place, hands)
        if place.which in ("last", "tch"):
            number = place.number if place.which == "last" else 1
            rest = hands.rest(place.kinds)
            if len(rest) < number or number < 1:
                return self._short(place, hands)
            between = range(hands.at, rest[-number])
            if not hands.leaves and any(hands.any_of(tuple(hands.owes), at) for at in between):
                self.trouble("stitches-left-over", f"{len(rest)} left before the last {number}", hands)
                return None
            return rest[-number:]
        if place.which == "nth":
            return self._in_group(place, hands)
        hands.owes |= set(place.kinds)
        spots: list[int] = []
        ahead = hands.copy()
        for _ in range(place.number):
            spot = ahead.find(place.kinds)
            if spot is None:
                return self._short(place, hands)
            spots.append(spot)
            ahead.at = spot + 1
        return spots if spots else None

    def _same(self, place: Place, hands: Hands) -> list[int] | None:
        just_here = hands.here is not None and hands.fresh and hands.any_of(place.kinds, hands.here)
        if hands.here is not None and (place.which == "same" or just_here):
            return [hands.here]
        if hands.here is None and place.which == "same" and hands.at == 0 and hands.edge:
            return [0]
        if place.which == "same":
            self.trouble("names-missing-target", "nothing was worked yet to be the same", hands)
            return None
        return self._spots(replace(place, which="next"), hands)

    def _in_group(self, place: Place, hands: Hands) -> list[int] | None:
        """The nth (or centre) stitch of the next run of stitches of one kind."""
        start = hands.find(place.kinds)
        if start is None:
            return self._short(place, hands)
        end = start
        while end < len(hands.edge) and hands.any_of(place.kinds, end):
            end += 1
        nth = place.nth or (end - start + 1) // 2
        if nth > end - start or (place.nth is None and (end - start) % 2 == 0):
            return self._short(place, hands)
        hands.owes |= set(place.kinds)
        hands.at = end  # the whole group is passed
        return [start + nth - 1]

    def _short(self, place: Place, hands: Hands) -> None:
        exists = any(hands.any_of(place.kinds, at) for at in range(len(hands.edge)))
        named = any(kind not in ("st", "ch", "place") for kind in place.kinds)
        fault = "names-missing-target" if named and not exists else "runs-short"
        self.trouble(fault, f"no {' or '.join(place.kinds)} left at {hands.at} of {len(hands.edge)}", hands)

    def _each(
        self, lots: Sequence[tuple[tuple[str, ...], Sequence[str]]], bound: Bound, hands: Hands, then: Steps, unit: str
    ) -> Iterator[Hands]:
        kinds = tuple(kind for _, kinds in lots for kind in kinds)
        hands.owes |= set(kinds)
        end = self._limit(bound, hands)
        if end is None:
            return
        spots = [at for at in range(hands.at, end) if hands.any_of(kinds, at)]
        if not spots and not any(hands.any_of(kinds, at) for at in range(len(hands.edge))):
            self._short(Place("next", kinds), hands)
            return
        if spots and then and isinstance(then[0], Work) and then[0].place.which == "tch":
            spots.pop()
        for spot in spots:
            atoms = next(atoms for atoms, of in lots if hands.any_of(tuple(of), spot))
            into(hands, spot, atoms, unit)
            hands.at, hands.here, hands.fresh = spot + 1, spot, False
        yield hands

    def _limit(self, bound: Bound, hands: Hands) -> int | None:
        """Where on the edge a run must stop."""
        if bound.to == "end":
            return hands.owed_end
        if bound.to == "before":
            found = hands.find(bound.kinds)
            if found is None:
                self._short(Place("next", bound.kinds), hands)
            return found
        rest = [at for at in hands.rest(bound.kinds) if at < hands.owed_end]
        if len(rest) < bound.number:
            self._short(Place("next", bound.kinds), hands)
            return None
        return rest[-bound.number] if bound.number else hands.owed_end

    # -- passing -----------------------------------------------------------------------------------------------------

    def _skip(self, place: Place, hands: Hands) -> Iterator[Hands]:
        if place.which == "first":
            spots = self._spots(replace(place, which="first"), hands)
            if spots is not None:
                hands.at = max(hands.at, spots[-1] + 1)
                yield hands
            return
        if place.number == 0:
            yield hands
            return
        spots = self._spots(place, hands)
        if spots is not None:
            hands.at, hands.fresh, hands.skipped = spots[-1] + 1, False, len(spots)
            yield hands

    def _slip(self, place: Place, hands: Hands) -> Iterator[Hands]:
        spots = self._spots(replace(place, which="next") if place.which in ("here", "first") else place, hands)
        if spots is None:
            return
        space = not is_stitch(hands.edge[spots[-1]])
        if not hands.made and hands.round_ and hands.optional is None:
            passed = spots[-1] if space or len(spots) == 1 else spots[0]
            hands.edge = hands.edge[passed:] + hands.edge[:passed]
            hands.optional = len(hands.edge) - passed
            spots = [spot - passed for spot in spots]
        if not hands.made:
            hands.owes.clear()
        hands.here, hands.fresh = spots[-1], True
        hands.at = spots[-1] if space else spots[-1] + 1
        yield hands

    def _evenly(self, change: int, hands: Hands) -> Iterator[Hands]:
        names = [name for name in hands.made if is_stitch(name)]
        if not names or (change < 0 and 2 * -change > len(names)) or change > len(names):
            self.trouble("runs-short", "too many changes for this row", hands)
            return
        if change > 0:
            hands.made += [names[-1]] * change
        for _ in range(-change):
            hands.made.pop()
        yield hands

    # -- repeats -----------------------------------------------------------------------------------------------------

    def _repeat(self, step: Repeat, hands: Hands, to_the_end: bool) -> Iterator[Hands]:
        """`to_the_end`: nothing comes after that could take what is left, so only the last run counts."""
        last = step.body if step.stop_at is None else step.body[: step.stop_at]
        if step.bound is None:
            for times in step.times:
                if times == 0:
                    yield hands.copy()
                else:
                    yield from self.run(step.body * (times - 1) + last, hands)
            return
        states = [hands]
        while states:
            ends = [after for state in states for after in self.run(last, state)]
            states = [after for state in states for after in self.run(step.body, state) if after.at > state.at]
            if to_the_end and step.bound.to == "end" and any(state.at < state.owed_end for state in states):
                more = [after for state in states for after in self.run(last, state) if after.at > state.at]
                if more:
                    continue
            for end in ends:
                if self._reached(step, end):
                    yield end

    def _reached(self, step: Repeat, hands: Hands) -> bool:
        bound = step.bound
        assert bound is not None
        if bound.to == "last":
            left = [at for at in hands.rest(bound.kinds) if at < hands.owed_end]
            if len(left) < bound.number:
                return False
            end = left[-bound.number] if bound.number else hands.owed_end
            return not any(hands.any_of(tuple(hands.owes), at) for at in range(hands.at, end))
        if bound.to == "before":
            found = hands.find(bound.kinds)
            return found is not None and not any(hands.any_of(tuple(hands.owes), at) for at in range(hands.at, found))
        return True
