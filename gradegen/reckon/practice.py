"""A small version of a design for practice: the fewest stitches and rows that still show every step."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Amount
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule, Pattern
from gradegen.design.worked import WorkedRow
from gradegen.grade import grade_sizes
from gradegen.reckon.any_size import LeadingCount, leading_count, with_count
from gradegen.reckon.census.rows_of_size import for_one_size
from gradegen.reckon.multiples.foundation import foundations
from gradegen.reckon.multiples.trial import Trial
from gradegen.work.rows import work_rows


@dataclass(frozen=True, slots=True)
class Practice:
    """The small version: its count and chain, its numbers as one size, its rows as worked, and its own pattern.

    `shows_all` False: no smaller piece shows every row, so this is the smallest size itself.
    """

    count: int
    chains: int | None
    size: GradedSize
    rows: tuple[WorkedRow, ...]
    pattern: Pattern
    shows_all: bool = True

    @property
    def stitches(self) -> int:
        """Stitches to make in all, chains and joins not counted."""
        return sum(number for row in self.rows for name, number in row.census.items() if name not in ("ch", "sl st"))


def practice_piece(checked: Checked) -> Practice | None:
    """The smallest width in which every repeat runs twice, over the fewest rows that show all of them.

    Where the rows name their sizes, so that no other width works, the smallest size over the fewest rows; the smallest
    size as it is where no one count stands for the width. None where not all of its rows were proved.
    """
    leading = leading_count(checked)
    if not checked.sizes:
        return None
    if leading is None:
        return _as_it_is(checked, checked.sizes[0])
    smallest = min(
        (size for size in checked.sizes if leading.rule.name in size.counts),
        key=lambda size: size.counts[leading.rule.name].n,
    )
    rows = _rows_that_show_all(checked, leading, smallest)
    for count in _small_counts(checked, leading, smallest):
        if found := _worked(checked, leading, count, smallest, rows):
            return found
    return _worked(checked, leading, smallest.counts[leading.rule.name].n, smallest, rows, shows_all=False)


def _as_it_is(checked: Checked, size: GradedSize) -> Practice | None:
    rows = tuple(row for row in checked.worked.get(size.name, ()) if row.applies)
    if not rows or any(row.status != "proved" and row.why_not != "prose" for row in rows):
        return None
    found = next(iter(foundations(checked.pattern)), None)
    count = size.counts.get(found.count) if found is not None and found.count is not None else None
    chains = found.chains_for(count.n) if found is not None and count is not None else None
    return Practice(count.n if count is not None else 0, chains, size, rows, checked.pattern, False)


def _small_counts(checked: Checked, leading: LeadingCount, smallest: GradedSize) -> Iterator[int]:
    """Counts below the smallest size's, on the stated multiple, with which every repeat runs twice."""
    rule, foundation = leading.rule, leading.foundation
    if foundation is None:
        return
    trial = Trial(checked.pattern, checked.sizes, smallest.index, foundation, least_runs=2)
    for count in range(1, smallest.counts[rule.name].n):
        chains = foundation.chains_for(count)
        if chains and (count - rule.plus) % rule.multiple == 0 and trial.work(chains).works:
            yield count


def _rows_that_show_all(checked: Checked, leading: LeadingCount, size: GradedSize) -> Mapping[str, int]:
    """The smallest counts of rows with which every row of the size is worked at least once."""
    along = [rule for rule in checked.pattern.counts.values() if rule.along is not None and rule.name in size.counts]
    own = {rule.name: size.counts[rule.name].n for rule in along}
    labels = {row.row.place for row in checked.worked.get(size.name, ()) if row.applies and row.times}
    found = dict(own)
    for rule in along:
        for rows in _row_counts(rule, own[rule.name]):
            tried = {**found, rule.name: rows}
            worked = _work(checked, leading, size.counts[leading.rule.name].n, size, tried)
            if worked is not None and {row.row.place for row in worked[1] if row.times} >= labels:
                found = tried
                break
    return found


def _row_counts(rule: CountRule, own: int) -> Iterator[int]:
    for rows in range(max(1, rule.least or 1), own + 1):
        if (rows - rule.plus) % rule.multiple == 0:
            yield rows


def _worked(
    checked: Checked,
    leading: LeadingCount,
    count: int,
    size: GradedSize,
    rows: Mapping[str, int],
    shows_all: bool = True,
) -> Practice | None:
    found = _work(checked, leading, count, size, rows)
    if found is None:
        return None
    graded, worked, pattern = found
    return Practice(count, leading.chains(count), graded, worked, pattern, shows_all)


def _work(
    checked: Checked, leading: LeadingCount, count: int, size: GradedSize, rows: Mapping[str, int]
) -> tuple[GradedSize, tuple[WorkedRow, ...], Pattern] | None:
    """The size worked with this count and these numbers of rows; None where a row does not come out."""
    pattern = _with_rows(with_count(checked.pattern, leading, count), rows)
    graded, _ = grade_sizes(pattern, checked.table)
    mine = graded[size.index]
    if any(name not in mine.counts for name in checked.pattern.counts):
        return None
    worked, _ = work_rows(for_one_size(pattern, mine.name), graded)
    done = tuple(row for row in worked[mine.name] if row.applies)
    if any(row.status != "proved" and row.why_not != "prose" for row in done):
        return None
    return mine, done, pattern


def _with_rows(pattern: Pattern, rows: Mapping[str, int]) -> Pattern:
    """The pattern with these counts of rows as plain numbers."""
    counts = dict(pattern.counts)
    for name, number in rows.items():
        rule = counts[name]
        counts[name] = replace(
            rule, along=None, formula=Amount(Fraction(number), None, rule.place), multiple=1, plus=0, parity=None,
            least=None, most=None,
        )  # fmt: skip
    return replace(pattern, counts=counts)
