"""How finely a pattern depends on gauge and repeats, as tables and sentences for the screen."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from gradegen.grade.ask.sensitivity import Felt, FeltInSize, Limited, Sensitivity
from gradegen.numbers.exact import decimal_text

if TYPE_CHECKING:
    from rich.table import Table

    from gradegen.grade.ask.nearer import Nearer, Way

CM = Fraction(254, 100)  # 1 in = 2.54 cm by definition
NAMES = 26  # columns of the screen for names


def sensitivity_tables(found: Sensitivity, *, inches_first: bool, width: int = 200) -> list[Table]:
    """What half a stitch or row does to each count in each size, as many sizes side by side as fit."""
    names = list(dict.fromkeys(size.size for felt in found.felt for size in felt.sizes))
    at_once = max(1, (width - NAMES) // 15)
    parts = [names[start : start + at_once] for start in range(0, len(names), at_once)]
    return [_felt_table(found.felt, part, inches_first) for part in parts]


def sensitivity_words(found: Sensitivity, *, inches_first: bool) -> list[str]:
    """What the marks mean, and what other gauges and multiples would do."""
    words = [
        "looser / tighter: half a stitch or row fewer / more over the length of the gauge; counts stay as they are"
    ]
    if any(size.is_a_size for felt in found.felt for size in felt.sizes):
        words.append("*  more than half the step to the next size: the maker holds another size than her own")
    return [
        *words,
        "",
        *(nearer_words(found.nearer, inches_first) if found.nearer else ("Every count comes out even.",)),
    ]


def drift_table(limited: Sequence[Limited], *, inches_first: bool) -> Table:
    """How far each count is off in its worst size, the most its repeat can move it, and what keeps it there."""
    drawn = _table("largest drift of each count")
    for head in ("count", "largest", "in size", "half a repeat", "half a single one"):
        drawn.add_column(head, justify="left" if head == "count" else "right", no_wrap=True)
    drawn.add_column("kept off by", overflow="fold")
    for one in limited:
        lengths = [_length(length, inches_first) for length in (one.largest, one.half_repeat, one.half_one)]
        drawn.add_row(one.count, lengths[0], one.size if one.largest else "–", *lengths[1:], one.by or "–")
    return drawn


def nearer_words(nearer: Nearer, inches_first: bool) -> Iterator[str]:
    """The changes that were tried, in sentences."""
    now = nearer.now
    yield f"largest drift  {_length(now.off, inches_first)}, {now.count} in {now.size}"
    yield f"tried          {nearer.tried} changes: {nearer.reach}"
    for way in nearer.halving:
        yield f"halves it      {_way(way, inches_first)}"
    if not nearer.halving and nearer.best is not None:
        yield f"none halves it; nearest is {_way(nearer.best, inches_first)}"
    elif not nearer.halving:
        yield "none comes nearer"


def _way(way: Way, inches_first: bool) -> str:
    then = way.largest
    if not then.off:
        return f"{way.change}: every count comes out even"
    return f"{way.change}: then {_length(then.off, inches_first)} at most, {then.count} in {then.size}"


def _felt_table(felt: Sequence[Felt], sizes: Sequence[str], inches_first: bool) -> Table:
    drawn = _table(f"half a stitch or row of gauge, looser / tighter ({'in' if inches_first else 'cm'})")
    drawn.add_column("", no_wrap=True)
    drawn.add_column("over", no_wrap=True)
    for size in sizes:
        drawn.add_column(size, justify="right", no_wrap=True)
    for one in felt:
        by_name = {size.size: size for size in one.sizes}
        cells = [_cell(by_name[size], inches_first) if size in by_name else "–" for size in sizes]
        drawn.add_row(f"{one.count} ({one.unit})", one.over, *cells)
    return drawn


def _cell(size: FeltInSize, inches_first: bool) -> str:
    more, less = (_number(abs(length), inches_first) for length in (size.looser, size.tighter))
    return f"+{more} / −{less}{'*' if size.is_a_size else ''}"


def _length(length: Fraction, inches_first: bool) -> str:
    return f"{_number(length, inches_first)} {'in' if inches_first else 'cm'}"


def _number(length: Fraction, inches_first: bool) -> str:
    return decimal_text(length) if inches_first else decimal_text(length * CM, 1)


def _table(title: str) -> Table:
    from rich import box
    from rich.table import Table

    return Table(title=title, title_justify="left", title_style="bold", box=box.SIMPLE_HEAD, pad_edge=False)
