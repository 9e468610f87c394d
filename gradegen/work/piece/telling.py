"""From what a row came to, the findings: what is wrong, in trade words, with the working."""

from __future__ import annotations

from collections.abc import Iterator

from gradegen.design.edge import Edge
from gradegen.design.rows import Row
from gradegen.findings import Finding, Place
from gradegen.work.edge.edges import stitches, tally, words
from gradegen.work.edge.stops import CHAIN_CONVENTION, COUNT_WRONG, NOT_COMPARED, READING_CHOSEN, TWO_READINGS
from gradegen.work.row.row import Outcome
from gradegen.work.row.settle import Settled

_TOPS = 6


def faults_of(
    outcome: Outcome, row: Row, size: str | None, against_note: bool, at: Place | None = None
) -> Iterator[Finding]:
    """Findings of one row in one size. `at`: where to point instead, when the row is repeated by another."""
    label = row.label.text or None
    fault = outcome.fault
    if fault is not None:
        yield fault.rule.at(
            at or fault.place,
            fault.message,
            size=size,
            row=label,
            expected=fault.expected,
            found=fault.found,
            because=fault.because or _edge_words(outcome),
            hint=fault.hint,
        )
    for missed in outcome.mismatches:
        rule = CHAIN_CONVENTION if against_note else COUNT_WRONG
        yield rule.at(
            missed.place,
            _CHAIN_MESSAGE if against_note else "The row makes another count than it says.",
            size=size,
            row=label,
            expected=f"{missed.worked} {missed.unit}",
            found=f"{missed.written} {missed.unit}",
            because=working(outcome),
            hint=f"write {missed.worked}, or check the row",
        )


_CHAIN_MESSAGE = "This count is only right if the turning chain is treated against what the pattern says of it."


def _edge_words(outcome: Outcome) -> str:
    if not outcome.before:
        return "the row before left nothing to work into"
    return f"the row before leaves {counted(outcome.before)}: {words(outcome.before, _TOPS)}"


def working(outcome: Outcome) -> str:
    """How the made count comes about: what was there, what each repeat took and made, how often, and what was made."""
    parts = []
    if outcome.taken and outcome.taken > stitches(outcome.before):
        sides = " on both sides" if outcome.before else ""
        parts.append(f"the chain gives {outcome.taken} places{sides}")
    elif outcome.before:
        parts.append(f"the row before leaves {counted(outcome.before)}")
    for fact in outcome.facts[:2]:
        spaces = f" and {fact.spaces} sps" if fact.spaces else ""
        parts.append(f"the repeat takes {fact.takes} sts{spaces} and makes {fact.makes}, {fact.times} times")
    if outcome.stood is not None:
        number, stands_for = outcome.stood
        parts.append(
            f"ch {number} counts as {' and '.join(stands_for)}" if stands_for else f"ch {number} does not count"
        )
    parts.append(f"that makes {counted(outcome.after)}")
    return "; ".join(parts)


def counted(edge: Edge) -> str:
    """What stands on an edge, by number: `212 sts (53 hdc, 159 dc) and 106 ch-1 sps`."""
    standing = tally(edge)
    named: dict[str, int] = {}
    spaces: dict[int, int] = {}
    for one, number in standing.items():
        if one.kind == "sp":
            spaces[one.length] = spaces.get(one.length, 0) + number
        elif one.kind not in ("gap", "ring"):
            named[one.name] = named.get(one.name, 0) + number
    said = f"{sum(named.values())} sts"
    if len(named) > 1:
        said += f" ({', '.join(f'{number} {name}' for name, number in named.items())})"
    elif named:
        said = f"{sum(named.values())} {next(iter(named))}"
    return said + "".join(f" and {n} {f'ch-{length} ' if length else ''}sps" for length, n in spaces.items())


def readings_of(settled: Settled, row: Row) -> tuple[str, ...]:
    """The choices made in words, those worth a word first; choices settled by habit alone come last."""
    said = []
    for key, choice in settled.choices.items():
        way = settled.reading.get(key, 0)
        if way < len(choice.ways) and (not choice.silent or way or key == "start"):
            said.append(choice.ways[way])
    return tuple(said)


def notes_of(settled: Settled, row: Row) -> Iterator[Finding]:
    """Notes on choices that arithmetic settled, and warnings where two ways fit."""
    label = row.label.text or None
    for key, choice in settled.choices.items():
        way = settled.reading.get(key, 0)
        if key in settled.rivals:
            yield TWO_READINGS.at(
                choice.place,
                f"Two ways to read {choice.about} both fit, with different counts.",
                row=label,
                because=" / ".join(choice.ways),
                hint="say which is meant, or print the count",
            )
        elif way or not choice.silent:
            yield READING_CHOSEN.at(choice.place, f"Read as: {choice.ways[min(way, len(choice.ways) - 1)]}.", row=label)


def notes_on_counts(settled: Settled, row: Row, told: set[str]) -> Iterator[Finding]:
    """A note on each unit whose printed count nothing could be held against; once a piece, in its first row.

    `told`: the units already spoken of; those of this row are added.
    """
    for one in {one.unit.name: one for outcome in settled.outcomes for one in outcome.open_counts}.values():
        name = one.unit.name
        if name not in told:
            told.add(name)
            yield NOT_COMPARED.at(
                one.place,
                f"The row tells its stitches one by one and makes no {name} by name; this count was not compared.",
                row=row.label.text or None,
                hint=f"count the {name} by hand, here and in later rows",
            )
