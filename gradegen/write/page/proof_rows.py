"""How a row is looked for in a printed text, and what its numbers must be there."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gradegen.design.graded import GradedSize
from gradegen.design.rows import Listed, Row, Stated
from gradegen.design.worked import WorkedRow
from gradegen.numbers.exact import mixed_text
from gradegen.write.page.typeset import plain_again
from gradegen.write.view.rows import count_start, row_sizes, row_spans
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import lengths_text
from gradegen.write.words.sums import worth
from gradegen.write.words.unfold import LIST

Wanted = tuple[str, ...] | None


@dataclass(frozen=True, slots=True)
class Search:
    """A pattern with a group for every size list of the row and for every number of its closing count.

    `listed`: what stands there in the written row (None: a plain number, which is the pattern itself). The groups from
    `count_from` on belong to the closing count.
    """

    pattern: re.Pattern[str]
    listed: tuple[Listed | None, ...]
    count_from: int


@dataclass(frozen=True, slots=True)
class _Stretch:
    """Some of the pattern: its regular expression, and the list its group stands for."""

    expression: str
    listed: tuple[Listed | None, ...]


def row_search(row: Row, printing: Printing) -> Search:
    """The row as it must stand in a text without blanks, its numbers left open."""
    label, only, text = row_spans(row, printing)
    count = count_start(row)
    start, end = text
    split = end if count is None else max(count, start)
    parts = [list(_stretches(row, *label, printing, as_count=False)), [_Stretch(":?", ())]]
    if not printing.is_one_size:
        parts.append(list(_stretches(row, *only, printing, as_count=False)))
    parts.append(list(_stretches(row, start, split, printing, as_count=False)))
    before = sum(len(each.listed) for part in parts for each in part)
    parts.append(list(_stretches(row, split, end, printing, as_count=True)))
    every = [each for part in parts for each in part]
    expression = "".join(each.expression for each in every)
    return Search(re.compile(expression), tuple(item for each in every for item in each.listed), before)


def _stretches(row: Row, start: int, end: int, printing: Printing, *, as_count: bool) -> Iterator[_Stretch]:
    at = start
    for listed in sorted(row.lists, key=lambda each: each.start):
        if not start <= listed.start or listed.end > end:
            continue
        yield from _fixed(row.text[at : listed.start], as_count=as_count, between=at > start)
        yield _open(listed, row, printing)
        at = listed.end
    yield from _fixed(row.text[at:end], as_count=as_count, between=False)


def _open(listed: Listed, row: Row, printing: Printing) -> _Stretch:
    """A group for a list of numbers; a length, or what could not be worked out, must stand there as it is."""
    sizes = row_sizes(row, printing.sizes)
    if _wanted(listed, printing, sizes) is not None:
        return _Stretch(f"({LIST})", (listed,))
    worths = [worth(listed.formula, size) if listed.formula else None for size in sizes]
    lengths = [each.number for each in worths if each is not None and each.is_length]
    text = lengths_text(lengths, printing.style) if lengths else row.text[listed.start : listed.end]
    return _Stretch(re.escape(plain_again(text)), ())


def _fixed(text: str, *, as_count: bool, between: bool) -> Iterator[_Stretch]:
    """Words as they are; a dash between two lists may be printed as "to"; numbers of a count get a group."""
    if between and text in ("-", "–"):
        yield _Stretch("(?:-|to)", ())
        return
    if not as_count:
        yield _Stretch(re.escape(plain_again(text)), ())
        return
    for part in re.split(r"(?<![\w-])(\d+)(?=\s)", text):
        if part.isdigit():
            yield _Stretch(f"({part})", (None,))
        else:
            yield _Stretch(re.escape(plain_again(part)), ())


def wanted_numbers(
    listed: Sequence[Listed | None], printing: Printing, sizes: Sequence[GradedSize]
) -> tuple[Wanted, ...]:
    """For every group, the value in each of these sizes; None where there is nothing to compare with."""
    return tuple(None if each is None else _wanted(each, printing, sizes) for each in listed)


def _wanted(listed: Listed, printing: Printing, sizes: Sequence[GradedSize]) -> Wanted:
    if listed.formula is not None:
        worths = [worth(listed.formula, size) for size in sizes]
        numbers = [each.number for each in worths if each is not None and not each.is_length]
        return tuple(mixed_text(number) for number in numbers) if len(numbers) == len(sizes) else None
    if len(listed.values) == len(printing.all_sizes):
        return tuple(plain_again(listed.values[size.index]) for size in sizes)
    return tuple(plain_again(value) for value in listed.values) if len(listed.values) == len(sizes) else None


def sums_left_in(row: Row, sizes: Sequence[GradedSize]) -> Iterator[str]:
    """Braces of the row that hold a sum of graded counts and yet belong to no list; the trade's own braces are none."""
    names = {name for size in sizes for name in (*size.numbers(), *size.measures)}
    covered = [(listed.start, listed.end) for listed in row.lists]
    for found in re.finditer(r"\{([^{}]+)\}", row.text):
        terms = [term.strip() for term in re.split(r"[-+*/()]", found[1])]
        is_sum = all(not term or term.isdigit() or term in names for term in terms) and any(t in names for t in terms)
        if is_sum and found.span() not in covered:
            yield found[0]


def stated_in_size(stated: Stated, worked: WorkedRow) -> int | None:
    """How many of the stated thing the worked row made; None where the worked row doesn't tell."""
    name = stated.unit.name
    if name == "st":
        return worked.made
    if name == "sp" and stated.unit.length is not None:
        lengths = stated.unit.length.values
        name = f"ch-{lengths[0]} sp" if len(lengths) == 1 else name
    return worked.units.get(name)
