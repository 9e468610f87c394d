"""The multiple a pattern states, held against what its rows allow."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import gcd

from gradegen.design.checked import Checked
from gradegen.findings import Place
from gradegen.reckon.multiples.foundation import Foundation, foundations
from gradegen.reckon.multiples.multiples import Derived, common_step, derive_multiple
from gradegen.reckon.multiples.trial import Trial
from gradegen.work.rows import explained

UNEVEN = {"repeat-does-not-fit", "runs-short", "stitches-left-over"}


@dataclass(frozen=True, slots=True)
class Stated:
    """A multiple as stated, in chains: `step` and what is left over it. `where`: "the count band", "the notes"."""

    step: int
    left: int
    where: str
    place: Place

    @property
    def words(self) -> str:
        """`a multiple of 6 plus 3`."""
        return f"a multiple of {self.step}" + (f" plus {self.left}" if self.left else "")

    def allows(self, chains: int) -> bool:
        """True when so many chains are on it."""
        return chains % self.step == self.left % self.step


@dataclass(frozen=True, slots=True)
class WrongMultiple:
    """A stated multiple that lets chains through which do not come out: the first of them, and where it stops."""

    stated: Stated
    derived: Derived
    chains: int
    stopped: tuple[str, str]


@dataclass(frozen=True, slots=True)
class StrictMultiple:
    """A stated multiple where a shorter one works as well: its step, and the chain that was worked to show it."""

    stated: Stated
    step: int
    chains: int
    first_made: int | None


Compared = tuple[WrongMultiple | StrictMultiple, ...]
_LAST: list[tuple[Checked, Compared]] = []  # several rules ask about one pattern


def compare_multiples(checked: Checked) -> Compared:
    """What is wrong or stricter than needed in every multiple stated; nothing where rows can't be followed."""
    if not _LAST or _LAST[0][0] is not checked:
        _LAST[:] = [(checked, tuple(_compared(checked)))]
    return _LAST[0][1]


def _compared(checked: Checked) -> Iterator[WrongMultiple | StrictMultiple]:
    for foundation in foundations(checked.pattern):
        chains = _chains(checked, foundation)
        stated = stated_multiples(checked, foundation)
        if not stated or not chains:
            continue
        trial: Trial | None = None
        for one in stated:
            uneven = _is_uneven(checked, foundation)
            if not uneven and not _needs_trial(checked, foundation):
                continue
            trial = trial or Trial(checked.pattern, checked.sizes, 0, foundation)
            found = _wrong(one, trial, chains, uneven) or (None if uneven else _strict(one, trial, chains[0]))
            if found is not None:
                yield found


def stated_multiples(checked: Checked, foundation: Foundation) -> tuple[Stated, ...]:
    """The multiples that the pattern states for a foundation chain, in chains."""
    return tuple(_stated(checked, foundation))


def _stated(checked: Checked, foundation: Foundation) -> Iterator[Stated]:
    """The multiple of the count the chain is made from, and that of the notes where it is another."""
    found: Stated | None = None
    rule = checked.pattern.counts.get(foundation.count) if foundation.count is not None else None
    if rule is not None and rule.multiple > 1:
        step, left = foundation.times * rule.multiple, foundation.times * rule.plus + foundation.more
        if step.denominator == left.denominator == 1:
            place = rule.places.get("multiple", rule.place)
            found = Stated(int(step), int(left) % int(step), f"the count {rule.name}", place)
            yield found
    names = tuple(size.name for size in checked.sizes)
    note = explained(checked.pattern, foundation.pieces[0], names)[1].multiple
    if note is None or note.of < 2:
        return
    left_over = (note.plus + note.extra) % note.of
    if found is None or (found.step, found.left) != (note.of, left_over):
        texts = (*foundation.pieces[0].notes, *checked.pattern.notes)
        place = next((text.place for text in texts if "ultiple" in text.text), foundation.row.place)
        yield Stated(note.of, left_over, "the notes", place)


def _chains(checked: Checked, foundation: Foundation) -> list[int]:
    """The chain of every size."""
    if foundation.count is None:
        values = foundation.chain.number.values
        return [value for value in values if value is not None]
    numbers = [size.numbers().get(foundation.count) for size in checked.sizes]
    chains = [foundation.chains_for(number) for number in numbers if number is not None]
    return [number for number in chains if number]


def _rows_of(checked: Checked, foundation: Foundation) -> Iterator[tuple[str, set[str]]]:
    """Status and rules of every row on this foundation, all sizes."""
    places = {row.place for piece in foundation.pieces for row in piece.rows}
    for rows in checked.worked.values():
        for row in rows:
            if row.applies and row.row.place in places and row.why_not != "prose":
                yield row.status, {finding.rule for finding in row.findings}


def _is_uneven(checked: Checked, foundation: Foundation) -> bool:
    """True when a row of some size does not come out even."""
    return any(rules & UNEVEN for _, rules in _rows_of(checked, foundation))


def _needs_trial(checked: Checked, foundation: Foundation) -> bool:
    """True when every row could be followed, so that other chains can be tried."""
    return all(status == "proved" for status, _ in _rows_of(checked, foundation))


def _wrong(stated: Stated, trial: Trial, chains: list[int], uneven: bool) -> WrongMultiple | None:
    if not uneven and not _next_fails(stated, trial, chains):
        return None
    derived = derive_multiple(trial.work)
    if derived is None or not derived.multiple:
        return None
    start = max(derived.smallest, min(chains))
    for tried in range(start, start + common_step(stated.step, derived.multiple) + 1):
        if stated.allows(tried) and not derived.allows(tried):
            return WrongMultiple(stated, derived, tried, trial.work(tried).stopped or ("", ""))
    return None


def _next_fails(stated: Stated, trial: Trial, chains: list[int]) -> bool:
    """True when one whole step more does not work; sizes that stand one step apart have shown that it does."""
    steps = [abs(one - chains[0]) for one in chains[1:]]
    if gcd(*steps) == stated.step:
        return False
    tried = trial.work(chains[0] + stated.step)
    return tried.is_clear and not tried.works


def _strict(stated: Stated, trial: Trial, chains: int) -> StrictMultiple | None:
    """The shortest step that works from this chain on; steps of one are plain rows, where a multiple is a choice."""
    step, shown = stated.step, None
    for prime in _primes(stated.step):
        while step % prime == 0 and step // prime > 1:
            tried = trial.work(chains + step // prime)
            if not tried.works:
                break
            step, shown = step // prime, tried
    if shown is None or _is_plain(stated, trial, chains, step):
        return None
    return StrictMultiple(stated, step, shown.chains, shown.first_made)


def _is_plain(stated: Stated, trial: Trial, chains: int, step: int) -> bool:
    return any(trial.work(chains + step // prime).works for prime in _primes(step))


def _primes(number: int) -> list[int]:
    found, divisor = [], 2
    while divisor * divisor <= number:
        while number % divisor == 0:
            number //= divisor
            if divisor not in found:
                found.append(divisor)
        divisor += 1
    return [*found, number] if number > 1 and number not in found else found
