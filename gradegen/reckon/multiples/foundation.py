"""Foundation chains: which count of the pattern each is made from, and what the other counts become when it changes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Name, PerSize
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule, Pattern, Piece
from gradegen.design.rows import Aside, Chain, Number, Row, Turn, worked
from gradegen.grade.body.order import work_order
from gradegen.grade.body.sums import Refused, Value, names_in, reckon
from gradegen.grade.measure.snapped import snap_to_rule
from gradegen.numbers.snap import NoCount
from gradegen.work.piece.piece import begins_anew

CHAIN = " chain"


@dataclass(frozen=True, slots=True)
class Foundation:
    """The chain a piece stands on, with the pieces that go on from it.

    `count`: the count it is made from, None for a chain written as plain numbers. chain = times * count + more.
    """

    pieces: tuple[Piece, ...]
    row: Row
    chain: Chain
    count: str | None
    times: Fraction
    more: Fraction

    def count_for(self, chains: int) -> int | None:
        """The count that asks for so many chains; None where no whole count does."""
        number = (chains - self.more) / self.times
        return int(number) if number.denominator == 1 else None

    def chains_for(self, count: int) -> int | None:
        """The chain that a count asks for; None where it is not whole."""
        number = self.times * count + self.more
        return int(number) if number.denominator == 1 else None


@dataclass(frozen=True, slots=True)
class _Numbers:
    """What the names of counts mean in one size."""

    index: int
    numbers: Mapping[str, int]

    def named(self, name: Name) -> Value:
        if name.name not in self.numbers:
            raise Refused(None)
        return Value(Fraction(self.numbers[name.name]), None)

    def entry(self, listed: PerSize) -> Value:
        if self.index >= len(listed.each):
            raise Refused(None)
        return Value(listed.each[self.index].number, None)


def foundations(pattern: Pattern) -> tuple[Foundation, ...]:
    """Every foundation chain of the pattern, in working order; pieces begun in a ring or picked up have none."""
    return tuple(_foundations(pattern))


def piece_groups(pattern: Pattern) -> tuple[tuple[Piece, ...], ...]:
    """Every piece that begins by itself, with those that go on from it."""
    groups: list[list[Piece]] = []
    for piece in pattern.pieces:
        if not groups or _starts(piece):
            groups.append([])
        groups[-1].append(piece)
    return tuple(map(tuple, groups))


def _foundations(pattern: Pattern) -> Iterator[Foundation]:
    for group in piece_groups(pattern):
        row = _first_row(group[0])
        chain = next((step for step in row.steps if not isinstance(step, (Aside, Turn))), None) if row else None
        if row is None or not isinstance(chain, Chain) or begins_in_ring(group[0]):
            continue
        made = _made_from(chain.number, pattern)
        if made is not None:
            yield Foundation(group, row, chain, *made)


def _first_row(piece: Piece) -> Row | None:
    return next((row for row in piece.rows if not row.is_prose), None)


def begins_in_ring(piece: Piece) -> bool:
    """True when the first stitches go into a ring: then its chains are no width."""
    rows = [row for row in piece.rows if not row.is_prose][:2]
    return any(step.into.which == "ring" for row in rows for step in worked(row.steps))


def _starts(piece: Piece) -> bool:
    row = _first_row(piece)
    return row is None or begins_anew(row)


def _made_from(number: Number, pattern: Pattern) -> tuple[str | None, Fraction, Fraction] | None:
    """The count, how many chains each stitch of it is, and the chains besides; None for a chain of several counts."""
    if number.formula is None:
        return None, Fraction(1), Fraction(0)
    names = {name.name.removesuffix(CHAIN) for name in names_in(number.formula)}
    if len(names) != 1:
        return None
    (count,) = names
    rule = pattern.counts.get(count)
    extra = rule.base_extra if rule else 0
    try:
        at = [reckon(number.formula, _Numbers(0, {count: n, count + CHAIN: n + extra})).number for n in (0, 60, 120)]
    except Refused:
        return None
    if at[2] - at[1] != at[1] - at[0] or at[1] == at[0]:
        return None
    return count, (at[1] - at[0]) / 60, at[0]


def numbers_with(pattern: Pattern, size: GradedSize, count: str | None, n: int) -> dict[str, int]:
    """The numbers of one size's rows when `count` is n: sums of it worked out anew, counts over the same measure too.

    A sum that is not whole, or that falls below nothing, is left out: no row can name it.
    """
    numbers = size.numbers()
    rule = pattern.counts.get(count) if count is not None else None
    if rule is None or count is None:
        return numbers
    _set(numbers, rule, n)
    for other in pattern.counts.values():
        if other is not rule and other.across is not None and other.across == rule.across:
            _set(numbers, other, _over_same_measure(other, size, count, n))
    sums = {name: other for name, other in pattern.counts.items() if other.formula is not None and name != count}
    needs = {
        name: [_plain(one.name) for one in names_in(other.formula)] for name, other in sums.items() if other.formula
    }
    for name in work_order(needs).names:
        _set(numbers, sums[name], _summed(sums[name], size, numbers))
    return numbers


def _plain(name: str) -> str:
    return name.removesuffix(CHAIN)


def _set(numbers: dict[str, int], rule: CountRule, n: int | None) -> None:
    if n is None or n < 0:
        numbers.pop(rule.name, None)
        numbers.pop(rule.name + CHAIN, None)
    else:
        numbers[rule.name], numbers[rule.name + CHAIN] = n, n + rule.base_extra


def _over_same_measure(other: CountRule, size: GradedSize, count: str, n: int) -> int | None:
    """Another count over the width that n stitches make."""
    mine, theirs = size.counts.get(count), size.counts.get(other.name)
    if mine is None or theirs is None or not mine.finished or not theirs.finished or not mine.n or not theirs.n:
        return None
    raw = n * (mine.finished / mine.n) / (theirs.finished / theirs.n)
    snapped = snap_to_rule(raw, other)
    return None if isinstance(snapped, NoCount) else snapped.n


def _summed(rule: CountRule, size: GradedSize, numbers: Mapping[str, int]) -> int | None:
    assert rule.formula is not None
    try:
        value = reckon(rule.formula, _Numbers(size.index, numbers)).number
    except Refused:
        return None
    if rule.multiple > 1 or rule.parity is not None or rule.least is not None or rule.most is not None:
        snapped = snap_to_rule(value, rule) if value > 0 else None
        return None if snapped is None or isinstance(snapped, NoCount) else snapped.n
    return int(value) if value.denominator == 1 else None
