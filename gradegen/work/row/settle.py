"""Several readings of one row side by side, settled by arithmetic in all sizes at once, never by guess."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from gradegen.work.edge.site import Choice
from gradegen.work.row.row import Outcome

Reading = Mapping[str, int]
_MOST = 28


@dataclass(slots=True)
class Settled:
    """The reading that was chosen, its outcome per size, and what had to be chosen.

    `rivals`: choices that another way settles just as well, with another result.
    """

    outcomes: list[Outcome]
    reading: Reading
    choices: dict[str, Choice]
    rivals: list[str]


def settle(work: Callable[[Reading], tuple[list[Outcome], dict[str, Choice]]], has_count: bool) -> Settled:
    """Try readings, the likeliest first, until one balances in every size; else the one that balances in most.

    `work(reading)` works the row in all its sizes and says which choices it met.
    """
    queue: list[Reading] = [{}]
    tried: set[frozenset[tuple[str, int]]] = {frozenset()}
    best: Settled | None = None
    while queue and len(tried) <= _MOST:
        reading = queue.pop(0)
        outcomes, choices = work(reading)
        settled = Settled(outcomes, reading, choices, [])
        if all(_is_unclear(outcome) for outcome in outcomes):
            return settled
        if all(outcome.balances for outcome in outcomes):
            return settled if has_count else _with_rivals(settled, work)
        if best is None or _rank(settled) > _rank(best):
            best = settled
        _push(queue, tried, reading, choices)
    assert best is not None
    return best


def _push(
    queue: list[Reading], tried: set[frozenset[tuple[str, int]]], reading: Reading, choices: Mapping[str, Choice]
) -> None:
    for key, choice in choices.items():
        if key in reading:
            continue
        for way in range(1, len(choice.ways)):
            other = {**reading, key: way}
            name = frozenset(other.items())
            if name not in tried:
                tried.add(name)
                queue.append(other)


def _is_unclear(outcome: Outcome) -> bool:
    """True for a row that can't be proved but comes to a count, and nothing is held against it."""
    return outcome.unclear is not None and outcome.made is not None and not outcome.mismatches


def _rank(settled: Settled) -> tuple[int, int, int]:
    """Better readings balance in more sizes, then leave fewer sizes faulty, then come to a count in more."""
    balanced = sum(outcome.balances for outcome in settled.outcomes)
    sound = sum(outcome.fault is None and outcome.unclear is None for outcome in settled.outcomes)
    return balanced, sound, sum(outcome.made is not None and not outcome.mismatches for outcome in settled.outcomes)


def _with_rivals(settled: Settled, work: Callable[[Reading], tuple[list[Outcome], dict[str, Choice]]]) -> Settled:
    """Look whether another way of a spoken choice balances too, and comes to something else."""
    for key, choice in settled.choices.items():
        if choice.silent or key == "spaces":
            continue
        for way in range(1, len(choice.ways)):
            if key in settled.reading:
                continue
            outcomes, _ = work({**settled.reading, key: way})
            if all(o.balances for o in outcomes) and [o.made for o in outcomes] != [o.made for o in settled.outcomes]:
                settled.rivals.append(key)
    return settled
