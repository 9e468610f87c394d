"""Whole pieces: rows in order, each on the edge the one before left; ranges, and rows that say "Rep Row 3"."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from slow_worker.counts import number_made, take_stated
from slow_worker.row import Agreed, Edge, Result, work_size
from slow_worker.sizes import NotWorkedError, WrongLengthError, for_size, label_for_size
from slow_worker.steps import CannotReadError
from slow_worker.stitches import read_own
from slow_worker.words import spell

ROWS = r"(?:rows?|rnds?|rounds?|r|rd)"
NTH = r"(\d+)(?:st|nd|rd|th)?"
SPAN = rf"{NTH} ?(?:-|–|to|through) ?(?:{ROWS} ?)?{NTH}"
NUMBERS = r"\d+(?:(?:, and |, | and | & | ?- ?| to )\d+)*"
RANGE = re.compile(rf"(?i)^(?:\S+ )?{ROWS}\.? ?{SPAN}\b|^{SPAN} {ROWS}\b|^{SPAN}[).]?$")
LISTED = re.compile(rf"(?i)^(?:\S+ )?{ROWS} {NTH}(?:, {NTH})? (?:and|&) {NTH}\b|^{NTH} and {NTH} {ROWS}\b")
SINGLE = re.compile(rf"(?i)^(?:\S+ )?{ROWS}\.? ?{NTH}\b|^{NTH} {ROWS}\b|^{NTH}[).]?$")
NEXT = re.compile(rf"(?i)^next (\d+) {ROWS}\b")
AGAIN = re.compile(
    rf"(?i)^(?:rep|repeat|as|same as|work as)(?: for)? "
    rf"(?:{ROWS} ({NUMBERS})|((?:\d+(?:st|nd|rd|th)(?:, | and | to )?)+) {ROWS})"
    r"(?:,? (\d+|once|twice|two|three|four|five|six)(?: (more))?(?: times?)?)?[^.()\[\]{}=]*"
)
WORDS = {"once": 1, "twice": 2, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
LABEL = re.compile(rf"(?i)^\s*((?:[^:.]*?\b{ROWS}\b[^:]*|foundation|base|edging|border)(?:\([^)]*\))?)\s*:\s*(.*)$")


@dataclass(frozen=True)
class Rows:
    """What a label says in one size: row numbers `first` to `last`, or `count` rows without numbers."""

    first: int | None
    count: int


def rows_of(label: str) -> Rows:
    """How many rows a label (of one size) stands for, and the number of the first."""
    plain = re.sub(r"\((?:rs|ws)\)", "", label.strip(), flags=re.I).strip()
    if found := RANGE.match(plain):
        first, last = (int(number) for number in found.groups() if number)
        return Rows(first, last - first + 1)
    if found := LISTED.match(plain):
        numbers = [int(number) for number in found.groups() if number]
        return Rows(numbers[0], len(numbers))
    if found := NEXT.match(plain):
        return Rows(None, int(found[1]))
    if found := SINGLE.match(plain):
        return Rows(int(next(number for number in found.groups() if number)), 1)
    return Rows(None, 1)


def sizes_only(label: str, sizes: Sequence[str]) -> Sequence[str]:
    """The sizes that work a row labelled `Rnd 9 (M and L only)`; all sizes for other labels."""
    found = re.search(r"\(([^()]+) only\)", label)
    named = re.split(r", | and ", found[1]) if found else []
    return named if named and set(named) <= set(sizes) else sizes


def rows_named(text: str) -> tuple[list[int], int | None, bool] | None:
    """`Rep Rows 3 and 4 six times`: numbers, times (None: as the label says), whether `more`; None for other rows."""
    found = AGAIN.match(text.strip())
    if not found:
        return None
    named = found[1] or found[2]
    span = re.fullmatch(rf"\s*{NTH}\s*(?:-|to)\s*{NTH}\s*", named)
    numbers = [int(number) for number in re.findall(r"\d+", named)]
    if span:
        numbers = list(range(int(span[1]), int(span[2]) + 1))
    times = None if found[3] is None else WORDS.get(found[3].lower()) or int(found[3])
    return numbers, times, bool(found[4])


def work_labelled(
    label: str,
    text: str,
    *,
    priors: Sequence[Edge | None],
    sizes: Sequence[str],
    shape: str,
    earlier: Mapping[int, str],
    counts: Mapping[str, Sequence[int]] | None = None,
    notes: Sequence[str] = (),
    definitions: Mapping[str, str] | None = None,
    turning_chains: Sequence[str | None] | None = None,
    applies_to: Sequence[str] | None = None,
    terms: str = "US",
    leaves: bool = False,
) -> list[Result]:
    """One label's rows in every size: the last row's result, with `taken` from the first row's edge and `times`."""
    agreed = Agreed(sizes, shape, counts or {}, notes, definitions or {}, terms, leaves)
    results = []
    for size, name in enumerate(sizes):
        only = applies_to if applies_to is not None else sizes_only(label, sizes)
        if name not in only:
            results.append(Result(after=list(priors[size] or []), times=0))
            continue
        chain = turning_chains[size] if turning_chains else None
        results.append(_one_label(label, text, size, priors[size], chain, earlier, agreed))
    if any(result.error == "size-list-length" for result in results):
        return [Result(error="size-list-length") for _ in sizes]
    return results


def _one_label(
    label: str,
    text: str,
    size: int,
    prior: Edge | None,
    chain: str | None,
    earlier: Mapping[int, str],
    agreed: Agreed,
) -> Result:
    """Works a label's rows for one size."""
    try:
        rows = rows_of(label_for_size(label, size, agreed.sizes, agreed.counts))
        own_text = for_size(text, size, agreed.sizes, agreed.counts)
    except WrongLengthError as problem:
        return Result(error="size-list-length", why=str(problem))
    except CannotReadError as problem:
        return Result(error="unread", why=str(problem))
    except NotWorkedError:
        return Result(after=list(prior or []), times=0)
    named = rows_named(own_text)
    plan = [text] * rows.count if named is None else _plan(named, rows.count, earlier)
    if isinstance(plan, Result):
        return plan
    edge, result, first = prior, Result(), None
    for at, row in enumerate(plan):
        if at:
            edge, chain = next_edge(result, agreed.shape), result.turning_chain
        result = work_size(row, size, edge, agreed, chain, counted=at == len(plan) - 1 and named is None)
        first = first or result
        if result.error not in (None, "stated-count-wrong"):
            return replace(result, times=at + 1)
    if named is not None:
        result = _restated(result, AGAIN.sub("Work", own_text.strip(), count=1), agreed)
    return replace(result, taken=first.taken if first else None, times=len(plan))


def _plan(named: tuple[list[int], int | None, bool], rows: int, earlier: Mapping[int, str]) -> list[str] | Result:
    """The texts of the rows that are worked again, in order; a result with an error when they don't fill the label."""
    numbers, times, more = named
    if more or any(number not in earlier for number in numbers):
        return Result(error="unread", why=f"rows {numbers} are not known")
    cycle = [earlier[number] for number in numbers]
    runs = times if times is not None else rows // len(cycle)
    if rows % len(cycle) or (times is not None and rows not in (1, runs * len(cycle))):
        return Result(error="row-range-does-not-divide", why=f"{rows} rows by {len(cycle)}")
    return cycle * runs


def _restated(result: Result, tail: str, agreed: Agreed) -> Result:
    """The last repeated row against the count printed behind "Rep Row 3"."""
    own = read_own(agreed.definitions, agreed.notes)
    _, stated = take_stated(spell(tail, [stitch.name for stitch in own.values()]))
    made = {unit: number_made(unit, result.units, own) for _, unit in stated}
    why = "; ".join(f"stated {number} {unit}, made {made[unit]}" for number, unit in stated if made[unit] != number)
    return replace(result, error="stated-count-wrong" if why else result.error, why=why, stated=stated)


def next_edge(result: Result, shape: str) -> Edge:
    """The edge as the next row meets it: from the other end when turned, a joined round with its first stitch first."""
    if shape == "flat":
        return result.after[::-1]
    if result.turned:
        return result.after[:1] + result.after[:0:-1]
    return list(result.after)


def split_rows(rows_text: str) -> list[tuple[str, str]]:
    """Label and text of each row; a line that starts with white space continues the one above."""
    lines: list[str] = []
    for line in rows_text.splitlines():
        if line[:1].isspace() and line.strip() and lines:
            lines[-1] += " " + line.strip()
        elif line.strip():
            lines.append(line.strip())
    labelled = [(LABEL.match(line), line) for line in lines]
    return [(found[1].strip(), found[2].strip()) if found else ("", line) for found, line in labelled]


def work_pattern(
    rows_text: str,
    sizes: Sequence[str],
    shape: str,
    counts: Mapping[str, Sequence[int]] | None = None,
    notes: Sequence[str] = (),
    definitions: Mapping[str, str] | None = None,
    terms: str = "US",
) -> list[list[Result]]:
    """For every row its results, one per size; after a row that can't be read the rest is unread too."""
    edges: list[Edge | None] = [None] * len(sizes)
    chains: list[str | None] = [None] * len(sizes)
    earlier: dict[int, str] = {}
    worked: list[list[Result]] = []
    lost: set[int] = set()
    for label, text in split_rows(rows_text):
        numbers = rows_of(_first_size(label, sizes, counts))
        results = work_labelled(
            label, text, priors=edges, sizes=sizes, shape=shape, earlier=earlier, counts=counts, notes=notes,
            definitions=definitions, turning_chains=chains, terms=terms,
        )  # fmt: skip
        if numbers.first is not None and not rows_named(text):
            earlier.update((number, text) for number in range(numbers.first, numbers.first + numbers.count))
        if not label and text.lower().startswith("ch"):
            earlier.setdefault(1, text)
        for size, result in enumerate(results):
            if size in lost:
                results[size] = Result(error="unread", why="a row above was not read")
            elif result.times == 0:
                continue
            elif result.error not in (None, "stated-count-wrong") or result.made is None:
                lost.add(size)
            else:
                edges[size], chains[size] = next_edge(result, shape), result.turning_chain
                if result.made == 0:
                    edges[size] = list(result.after)
        worked.append(results)
    return worked


def _first_size(label: str, sizes: Sequence[str], counts: Mapping[str, Sequence[int]] | None) -> str:
    try:
        return label_for_size(label, 0, sizes, counts or {})
    except (WrongLengthError, CannotReadError):
        return label


def label_numbers(texts: Mapping[str, str]) -> dict[int, str]:
    """Rows by number, from rows by label, without those that only point to others; an unlabelled first row is row 1."""
    numbered: dict[int, str] = {}
    for label, text in texts.items():
        rows = rows_of(re.sub(r"(?<=\d)(?:st|nd|rd|th)\b", "", label))
        if rows_named(text):
            continue
        if rows.first is not None:
            numbered.update((number, text) for number in range(rows.first, rows.first + rows.count))
        elif not label:
            numbered.setdefault(1, text)
    return numbered
