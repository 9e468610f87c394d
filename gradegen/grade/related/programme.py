"""Related counts as an integer programme over some sizes: unknowns, rows that hold, drifts to keep small."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import lcm

from gradegen.design.pattern import CountRule
from gradegen.grade.related.conditions import Condition, ConditionKind, grid_kept, repeat_kept
from gradegen.grade.related.joint import Held, Joint, Key
from gradegen.grade.related.parts import Drift, Parts
from gradegen.grade.related.solver import Column, Row
from gradegen.grade.related.whole_sums import Equation, has_whole_solution
from gradegen.numbers.snap import Grid

FAR = 20  # times the largest count wished or limited: no related count is larger
SMALLEST_FAR = 1000

Kinds = frozenset[ConditionKind]


@dataclass(slots=True)
class Programme:
    """Unknowns, rows and drifts of some sizes. The count of a key is first + step * its unknown, by its grid.

    `at`: the column of each count; `impossible`: a count alone has no value that its own conditions allow.
    """

    sizes: tuple[int, ...]
    parts: Parts
    columns: list[Column] = field(default_factory=list)
    rows: list[Row] = field(default_factory=list)
    drifts: list[Drift] = field(default_factory=list)
    at: dict[Key, int] = field(default_factory=dict)
    grids: dict[Key, Grid] = field(default_factory=dict)
    impossible: bool = False

    def counts(self, values: Sequence[int]) -> dict[Key, int]:
        """The counts that these values of the unknowns make."""
        return {key: self.grids[key].first + self.grids[key].step * values[column] for key, column in self.at.items()}

    def values(self, counts: Mapping[Key, int]) -> tuple[int, ...]:
        """The values of the unknowns that make these counts, where there are no others besides."""
        return tuple((counts[key] - grid.first) // grid.step for key, grid in self.grids.items())

    def rules_itself_out(self) -> bool:
        """True when no whole numbers at all, of whatever size, satisfy its equations."""
        if self.impossible:
            return True
        equations = [Equation(row.times, row.low) for row in self.rows if row.low is not None and row.low == row.high]
        return not has_whole_solution(equations)

    def column(self, low: int, high: int, *, derived: bool = False) -> int:
        """A new unknown; its place."""
        self.columns.append(Column(low, high, derived))
        return len(self.columns) - 1

    def row(self, times: Mapping[int, Fraction | int], low: Fraction | int | None, high: Fraction | int | None) -> None:
        """A new row, made whole."""
        self.rows.append(whole_row(times, low, high))


def whole_row(times: Mapping[int, Fraction | int], low: Fraction | int | None, high: Fraction | int | None) -> Row:
    """A row times the smallest number that makes all of it whole."""
    ends = [Fraction(end) for end in (low, high) if end is not None]
    by = lcm(*(Fraction(number).denominator for number in (*times.values(), *ends)))
    sides = [None if end is None else int(end * by) for end in (low, high)]
    return Row({column: int(often * by) for column, often in times.items() if often}, *sides)


def programme_of(joint: Joint, kept: Sequence[Condition], sizes: Sequence[int], parts: Parts) -> Programme:
    """The programme for these sizes with only these conditions kept."""
    made = Programme(tuple(sizes), parts)
    asked, far = frozenset(kept), _far(joint)
    for rule in joint.rules.values():
        own = [condition for condition in asked if condition.of == rule.name and condition.kind != "relation"]
        kinds = frozenset(condition.kind for condition in own)
        pinned = frozenset(condition.size for condition in own if condition.kind == "pin")
        _add_unknowns(made, joint, rule, kinds, pinned, far)
        if made.impossible:
            return made
        _tie_steps(made, joint, rule, kinds, far)
        _tie_centres(made, rule, kinds, far)
    for held in joint.held:
        if held.condition in asked and held.size in made.sizes:
            _add_held(made, held)
    _add_drifts(made, joint)
    return made


def _far(joint: Joint) -> int:
    wanted = [int(abs(wish.off.number)) for wish in joint.wishes]
    limits = [n for rule in joint.rules.values() for n in (rule.least, rule.most, *rule.pins.values()) if n]
    return FAR * max([*wanted, *limits, SMALLEST_FAR // FAR])


def _add_unknowns(
    made: Programme, joint: Joint, rule: CountRule, kinds: Kinds, pinned: frozenset[str | None], far: int
) -> None:
    grid = grid_kept(rule, kinds, may_be_none=rule.name in joint.may_be_none)
    keys = [(rule.name, size) for size in made.sizes if (rule.name, size) in joint.present]
    if keys and not isinstance(grid, Grid):
        made.impossible = True
        return
    for key in keys:
        assert isinstance(grid, Grid)
        low, high = 0, ((far if grid.last is None else grid.last) - grid.first) // grid.step
        size = joint.sizes[key[1]]
        if size in pinned:
            spot, over = divmod(rule.pins[size] - grid.first, grid.step)
            low, high = (spot, spot) if not over and 0 <= spot <= high else (1, 0)
        made.grids[key], made.at[key] = grid, made.column(low, high)
        made.impossible |= low > high


def _tie_steps(made: Programme, joint: Joint, rule: CountRule, kinds: Kinds, far: int) -> None:
    """Even steps: each is one same number of good counts, or one more."""
    if "steps" not in kinds:
        return
    grown = made.column(-far, far)
    for before, after in joint.neighbours:
        small, large = made.at.get((rule.name, before)), made.at.get((rule.name, after))
        if small is not None and large is not None:
            made.row({large: 1, small: -1, grown: -1}, 0, 1)


def _tie_centres(made: Programme, rule: CountRule, kinds: Kinds, far: int) -> None:
    """The same centre: the repeats are all even, or all odd."""
    if "centre" not in kinds or rule.centre != "same":
        return
    multiple, plus = repeat_kept(rule, kinds)
    odd = made.column(0, 1)
    for size in made.sizes:
        if (column := made.at.get((rule.name, size))) is not None:
            grid = made.grids[rule.name, size]
            half = made.column(-far, far)
            besides = Fraction(grid.first - plus, multiple)
            made.row({column: Fraction(grid.step, multiple), odd: -1, half: -2}, -besides, -besides)


def _add_held(made: Programme, held: Held) -> None:
    times = {made.at[name, held.size]: n * made.grids[name, held.size].step for name, n in held.sum.times.items()}
    number = held.sum.value({name: made.grids[name, held.size].first for name in held.sum.times})
    made.row(times, -number if held.is_equal else None, -number)


def _add_drifts(made: Programme, joint: Joint) -> None:
    for wish in joint.wishes:
        if wish.size in made.sizes:
            parts, number = made.parts.whole(wish)
            grids = {name: made.grids[name, wish.size] for name in parts}
            times = {made.at[name, wish.size]: n * grids[name].step for name, n in parts.items()}
            made.drifts.append(Drift(wish, times, number + sum(n * grids[name].first for name, n in parts.items())))
