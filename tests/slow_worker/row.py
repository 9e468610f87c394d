"""One written row, worked in every size by hand."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from slow_worker.counts import number_made, take_stated, units_of
from slow_worker.habits import agreed_in, habit
from slow_worker.hands import Trouble, Worker
from slow_worker.reading import read
from slow_worker.sizes import NotWorkedError, WrongLengthError, for_size
from slow_worker.state import Hands, into
from slow_worker.steps import (
    CannotReadError,
    Chain,
    Choice,
    Each,
    Join,
    Place,
    Repeat,
    Skip,
    Slip,
    Turn,
    UndefinedError,
    Work,
)
from slow_worker.stitches import Own, family, is_stitch, read_own
from slow_worker.words import spell

READ_TROUBLE = "unread"
Edge = list[str]
Steps = tuple[object, ...]


@dataclass
class Result:
    """One row in one size. `error`: None, the fault's name, or "unread"; `made` is None where it can't be said.

    `times`: rows worked under this label, 0 in a size that does not work it.
    """

    made: int | None = None
    units: dict[str, int] = field(default_factory=dict)
    taken: int | None = None
    after: Edge = field(default_factory=list)
    error: str | None = None
    why: str = ""
    stated: list[tuple[int, str]] = field(default_factory=list)
    turning_chain: str | None = None  # made at this row's end for the next row
    turned: bool = False
    times: int = 1


@dataclass(frozen=True)
class Agreed:
    """What holds for a whole piece, whichever row and size. `leaves`: rows may stop early."""

    sizes: Sequence[str]
    shape: str
    counts: Mapping[str, Sequence[int]] = field(default_factory=dict)
    notes: Sequence[str] = ()
    definitions: Mapping[str, str] = field(default_factory=dict)
    terms: str = "US"
    leaves: bool = False


def work(
    text: str,
    *,
    prior: Edge | None,
    sizes: Sequence[str],
    shape: str,
    counts: Mapping[str, Sequence[int]] | None = None,
    notes: Sequence[str] = (),
    definitions: Mapping[str, str] | None = None,
    priors: Sequence[Edge | None] | None = None,
    turning_chain: str | None = None,
    terms: str = "US",
    leaves: bool = False,
) -> list[Result]:
    """One `Result` per size. `priors` gives every size an edge of its own; `prior` is the same edge for all."""
    agreed = Agreed(sizes, shape, counts or {}, notes, definitions or {}, terms, leaves)
    edges = priors if priors is not None else [prior] * len(sizes)
    results = [work_size(text, size, edges[size], agreed, turning_chain) for size in range(len(sizes))]
    if any(result.error == "size-list-length" for result in results):
        return [Result(error="size-list-length", why=results[0].why) for _ in sizes]
    return results


def work_size(
    text: str, size: int, prior: Edge | None, agreed: Agreed, turning_chain: str | None, counted: bool = True
) -> Result:
    """One row in one size. `counted` False: the count printed behind the row is not held against it."""
    try:
        plain = for_size(text, size, agreed.sizes, agreed.counts)
    except WrongLengthError as problem:
        return Result(error="size-list-length", why=str(problem))
    except NotWorkedError:
        return Result(after=list(prior or []))
    except CannotReadError as problem:
        return Result(error=READ_TROUBLE, why=str(problem))
    return work_one(plain, prior, agreed, turning_chain, counted)


def work_one(text: str, prior: Edge | None, agreed: Agreed, turning_chain: str | None, counted: bool) -> Result:
    """One row for one size, as that size's maker reads it."""
    shape, notes, terms = agreed.shape, agreed.notes, agreed.terms
    own = read_own(agreed.definitions, notes)
    own_names = [stitch.name for stitch in own.values()]
    plain, stated = take_stated(spell(text, own_names))
    stated = stated if counted else []
    plain, ahead = _chain_ahead(expand(plain, own))
    try:
        steps = read(plain, own, terms, _inc_stitch(notes))
    except CannotReadError as problem:
        return Result(error=READ_TROUBLE, why=str(problem), stated=stated)
    except UndefinedError as problem:
        return Result(error="undefined-stitch", why=str(problem), stated=stated)
    if turning_chain:
        steps = (Chain(int(re.sub(r"\D", "", turning_chain))), *steps)
    row = Row(steps, own, shape, notes, terms, agreed.leaves)
    result = row.settle(prior, stated)
    if prior is None and all(isinstance(step, (Chain, Join, Turn)) for step in steps):
        result = Result(0, after=foundation(steps, shape))
    result.turning_chain = ahead
    result.turned = bool(re.search(r"\bturn\b", plain)) or ahead is not None
    return result


def expand(plain: str, own: Mapping[str, Own]) -> str:
    """Own stitches that are a longer wording (`sp = ch 2, sk 2 st, dc in next st`) are written out."""
    for name, stitch in own.items():
        if stitch.macro:
            plain = re.sub(
                rf"(?:(\d+) )?\b{name}\b", lambda found, text=stitch.macro: f"({text}) {found[1] or 1} times", plain
            )
    return plain


def _chain_ahead(plain: str) -> tuple[str, str | None]:
    """A chain right before the last turn belongs to the next row."""
    found = re.search(r"\bch (\d+)[ ,]*turn\b[ .]*$", plain)
    if not found or not re.search(r"[a-z0-9)*]", plain[: found.start()]):
        return plain, None
    return plain[: found.start()] + "turn.", f"ch {found[1]}"


def _inc_stitch(notes: Sequence[str]) -> str:
    """The stitch that `inc` is made of, when the notes say so."""
    for note in notes:
        if found := re.search(r"\binc = 2 (\w+)", note):
            return found[1]
    return ""


@dataclass
class Row:
    """A row's steps and what was agreed about its chains."""

    steps: Steps
    own: Mapping[str, Own]
    shape: str
    notes: Sequence[str]
    terms: str
    leaves: bool

    def settle(self, prior: Edge | None, stated: list[tuple[int, str]]) -> Result:
        """Works every reading; the first that comes out even (and agrees with its count) is the row's."""
        troubles: list[Trouble] = []
        even: list[Hands] = []
        uneven: list[Hands] = []
        for ends, met in self.ways(prior, against=False):
            troubles += met
            for hands in ends:
                (uneven if hands.left() and not self.spans(hands) else even).append(hands)
        for hands in even:
            result = self.result(hands, stated)
            if result.error is None:
                return result
        return self.fault(prior, stated, even, uneven, troubles)

    def spans(self, hands: Hands) -> bool:
        """Whether what is left lies under the last loop: `ending with ch 5, join`, without a word about the skip."""
        steps = [step for step in self.steps if not isinstance(step, (Join, Turn))]
        return hands.round_ and isinstance(steps[-1], Chain) and len(hands.left()) <= hands.skipped

    def fault(
        self,
        prior: Edge | None,
        stated: list[tuple[int, str]],
        even: list[Hands],
        uneven: list[Hands],
        met: list[Trouble],
    ) -> Result:
        """The name of what is wrong when no reading comes out."""
        if even:
            result = self.result(even[0], stated)
            for ends, _ in self.ways(prior, against=True):
                if any(not hands.left() and self.result(hands, stated).error is None for hands in ends):
                    return replace(result, error="turning-chain-convention")
            return result
        missing = next((trouble for trouble in met if trouble.fault == "names-missing-target"), None)
        if missing and not uneven:
            return Result(error=missing.fault, why=missing.why, stated=stated)
        if any(step.bound for step in all_repeats(self.steps)):
            return Result(error="repeat-does-not-fit", why=_why(met, uneven), stated=stated)
        if uneven:
            result = self.result(min(uneven, key=lambda hands: len(hands.left())), [])
            return replace(result, error="stitches-left-over", why=_why(met, uneven), stated=stated)
        worst = max(met, key=lambda trouble: trouble.at, default=Trouble("runs-short", "", 0))
        return Result(error=worst.fault, why=worst.why, stated=stated)

    def result(self, hands: Hands, stated: list[tuple[int, str]]) -> Result:
        """What one finished way of working gives, and whether its count is as stated."""
        units = units_of(hands.made, hands.groups, hands.named, self.own)
        made = sum(1 for item in hands.made if is_stitch(item))
        taken = None
        if not hands.ring and hands.edge:
            short = hands.left() and not self.spans(hands)
            end = hands.at if hands.leaves or short else len(hands.edge)
            taken = len(hands.tops) + sum(1 for item in hands.edge[:end] if is_stitch(item))
        counted = {unit: number_made(unit, units, self.own, hands.groups) for _, unit in stated}
        off = [(number, unit) for number, unit in stated if counted[unit] != number]
        why = "; ".join(f"stated {number} {unit}, made {counted[unit]}" for number, unit in off)
        return Result(made, units, taken, list(hands.made), "stated-count-wrong" if off else None, why, stated)

    # -- beginnings --------------------------------------------------------------------------------------------------

    def ways(self, prior: Edge | None, against: bool) -> Iterator[tuple[list[Hands], list[Trouble]]]:
        """Every way the row's beginning can be meant; `against`: only the ways that words and notes forbid."""
        for hands, steps in self.beginnings(prior, against):
            worker = Worker(self.terms)
            ends = list(worker.run(steps, hands, whole=True))
            yield ends, worker.troubles

    def beginnings(self, prior: Edge | None, against: bool) -> Iterator[tuple[Hands, Steps]]:
        hands = Hands(list(prior or []), round_=self.shape != "flat", leaves=self.leaves)
        steps = self.steps
        if prior is None and steps and isinstance(steps[0], Chain):
            hands.ring = any(step.place.which == "ring" for step in all_works(steps))
            hands.edge = [] if hands.ring else foundation(steps, self.shape)
            steps = steps[2:] if len(steps) > 1 and isinstance(steps[1], Join) else steps[1:]
        elif prior is None:
            hands.ring = True
        yield from self.starting_chain(hands, steps, against)

    def starting_chain(self, hands: Hands, steps: Steps, against: bool) -> Iterator[tuple[Hands, Steps]]:
        """The row's own first chain, counted or not; likewise the chains skipped before `in 4th ch from hook`."""
        slips = next((i for i, step in enumerate(steps) if not isinstance(step, (Slip, Turn, Join))), len(steps))
        if slips < len(steps) and isinstance(steps[slips], Chain):
            chain = steps[slips]
            for counted in self.readings(chain.number, chain.counts, against):
                worker = Worker(self.terms)
                for start in worker.run(steps[:slips], hands):
                    yield stand(start.copy(), counted), steps[slips + 1 :]
            return
        head = steps[0] if steps else None
        first = head.meanings[0][0] if isinstance(head, Choice) else head
        if isinstance(first, Work) and first.place.which == "hook":
            skipped = (first.place.nth or 1) - 1
            for counted in self.readings(skipped, first.skipped, against, foundation=True):
                start = hands.copy()
                start.made += counted
                yield start, steps
            return
        if not against:
            yield hands, steps

    def readings(
        self, number: int, said: tuple[str, ...] | None, against: bool, foundation: bool = False
    ) -> list[tuple[str, ...]]:
        """What a starting chain of `number` can stand for, likeliest first."""
        first = self.first_stitch()
        agreed = said if said is not None else agreed_in(self.notes, number)
        if agreed == ("st",):
            agreed = (first or "st",)
        if agreed is not None:
            if against:
                flat_start = Worker(self.terms).heights.get(first or "", 0) < 2  # nobody counts the ch 1 before sc
                return [] if flat_start and not agreed else [(first or "st",) if not agreed else ()]
            return [agreed]
        return [] if against else habit(number, first, Worker(self.terms).heights, foundation)

    def first_stitch(self) -> str | None:
        """The first ordinary stitch of the row: what its turning chain would stand for."""
        heights = Worker(self.terms).heights
        for step in flat(self.steps):
            for atoms in lots_of(step):
                for atom in atoms:
                    if family(atom) in heights:
                        return family(atom)
        return None


def foundation(steps: Steps, shape: str) -> Edge:
    """The chain as an edge: its chains, and in a half-twist band the free loops after them."""
    chain = steps[0].number if steps and isinstance(steps[0], Chain) else 0
    return ["ch"] * chain + (["free loop"] * chain if shape == "half-twist band" else [])


def stand(hands: Hands, counted: tuple[str, ...]) -> Hands:
    """A counted chain stands on the first stitch, or where slip stitches brought us; an uncounted one takes nothing."""
    if not counted:
        return hands
    if hands.ring or not hands.edge:
        into(hands, -1, counted, "")
        return hands
    if hands.fresh and hands.here is not None:
        into(hands, hands.here, counted, "")
        hands.at, hands.fresh = hands.here + 1, False
        return hands
    spot = hands.find(("st",))
    if spot is not None:
        into(hands, spot, counted, "")
        hands.at, hands.here = spot + 1, spot
    return hands


def flat(steps: Steps) -> Iterator[object]:
    """All steps, those inside repeats too."""
    for step in steps:
        if isinstance(step, Repeat):
            yield from flat(step.body)
        elif isinstance(step, Choice):
            yield from flat(step.meanings[0])
        else:
            yield step


def all_works(steps: Steps) -> list[Work]:
    return [step for step in flat(steps) if isinstance(step, Work)]


def all_repeats(steps: Steps) -> list[Repeat]:
    """Every repeat, at any depth."""
    found: list[Repeat] = []
    for step in steps:
        if isinstance(step, Repeat):
            found += [step, *all_repeats(step.body)]
        elif isinstance(step, Choice):
            found += [inner for meaning in step.meanings for inner in all_repeats(meaning)]
    return found


def lots_of(step: object) -> list[tuple[str, ...]]:
    """What a step puts into places."""
    if isinstance(step, Work):
        return [step.atoms]
    return [atoms for atoms, _ in step.lots] if isinstance(step, Each) else []


def _why(met: list[Trouble], uneven: list[Hands]) -> str:
    if uneven:
        return f"{min(len(hands.left()) for hands in uneven)} left over"
    return met[-1].why if met else ""


__all__ = ["Place", "Result", "Skip", "work", "work_one"]
