"""What stays the same while one row is worked in one size: its numbers, its stitches, and the reading tried."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from gradegen.design.edge import Target
from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.design.notes import NoteFacts
from gradegen.design.pattern import Shape
from gradegen.design.rows import Chain, Definition, Make, Number, Row
from gradegen.findings import Place
from gradegen.work.edge.stops import LIST_LENGTH, NO_SUCH_COUNT, NOT_WHOLE, Fault, Unclear

Made = dict[int, tuple[tuple[Make, ...], tuple[Target, ...]]]


@dataclass(frozen=True, slots=True)
class Choice:
    """One point where a row can be read in several ways: what it is about, and the ways in words, likeliest first."""

    about: str
    ways: tuple[str, ...]
    place: Place
    silent: bool = False  # settled by the trade's habit: not worth a word when the first way fits


@dataclass(slots=True)
class Site:
    """One row in one size under one reading. `reading` and `choices` share their keys."""

    size: int
    sizes: tuple[str, ...]
    shape: Shape
    definitions: Mapping[str, Definition]
    notes: NoteFacts
    counts: Mapping[str, int] = field(default_factory=dict)
    measures: Mapping[str, Fraction] = field(default_factory=dict)
    turning_chain: Chain | None = None
    after_group: bool = False
    booklet: bool = False
    edge_given: bool = False
    blind: bool = False  # the edge is not known: only what the row's own numbers say can be worked
    rows: int | None = None  # worked since the piece began
    on_held: bool = False  # the edge is one that an earlier row left unworked
    told_chains: frozenset[int] = frozenset()  # starting chains of these lengths are worked into as stitches later
    told_loops: frozenset[int] = frozenset()  # turning chains of these lengths are worked into as loops at the side
    told_skips: frozenset[int] = frozenset()  # chains skipped at the start besides a stitch's height, told later
    start_unknown: bool = False  # the row before is not written, and rows here make the next row's chain at their end
    tracing: bool = False
    habits: Mapping[str, int] = field(default_factory=dict)
    reading: Mapping[str, int] = field(default_factory=dict)
    choices: dict[str, Choice] = field(default_factory=dict)
    made: Made = field(default_factory=dict)  # makings that are the same in every size
    read: dict[int, Row] = field(default_factory=dict)  # rows known to hold nothing unread

    @property
    def size_name(self) -> str:
        """The size being worked."""
        return self.sizes[self.size]

    def choose(self, key: str, about: str, ways: Sequence[str], place: Place, *, silent: bool = False) -> int:
        """Which of the ways is tried in this reading; the first where nothing is set."""
        if len(ways) < 2:
            return 0
        self.choices.setdefault(key, Choice(about, tuple(ways), place, silent))
        return min(self.reading.get(key, 0), len(ways) - 1)

    def number(self, number: Number | None, otherwise: int = 1) -> int:
        """The whole number of this size; a size that does not work it raises Unclear."""
        if number is None:
            return otherwise
        if number.formula is not None:
            return self._whole(number)
        values = number.values
        if len(values) == 1:
            value = values[0]
        elif len(values) == len(self.sizes):
            value = values[self.size]
        else:
            raise wrong_length(len(values), len(self.sizes), number.place)
        if value is None:
            raise Unclear("this size has no number here", number.place)
        return value

    def has_none(self, number: Number) -> bool:
        """True for the `-` of a list: a size in which this is not worked."""
        return len(number.values) == len(self.sizes) > 1 and number.values[self.size] is None

    def place_of(self, number: Number) -> Place:
        """The place of this size's own entry of a list."""
        if len(number.places) == len(self.sizes) > 1:
            return number.places[self.size]
        return number.places[0] if len(number.places) == 1 else number.place

    def _whole(self, number: Number) -> int:
        assert number.formula is not None
        value = self._value(number.formula)
        if value.denominator != 1 or value < 0:
            raise Fault(
                NOT_WHOLE, number.place, "This sum is not a whole number.", expected="a whole number", found=str(value)
            )
        return int(value)

    def _value(self, formula: Formula) -> Fraction:
        if isinstance(formula, Amount):
            return formula.number
        if isinstance(formula, Name):
            if formula.name not in self.counts and formula.name not in self.measures:
                raise Unclear(f"{formula.name} could not be worked out", formula.place)
            if formula.name not in self.counts:
                raise Fault(NO_SUCH_COUNT, formula.place, f"The pattern has no count named {formula.name}.")
            return Fraction(self.counts[formula.name])
        if isinstance(formula, PerSize):
            if len(formula.each) != len(self.sizes):
                raise wrong_length(len(formula.each), len(self.sizes), formula.place)
            return formula.each[self.size].number
        if isinstance(formula, Sum):
            return self._sum(formula)
        return _called(formula, [self._value(part) for part in formula.parts])

    def _sum(self, formula: Sum) -> Fraction:
        left, right = self._value(formula.left), self._value(formula.right)
        if formula.sign == "+":
            return left + right
        if formula.sign == "-":
            return left - right
        if formula.sign == "*":
            return left * right
        if right == 0:
            raise Fault(NOT_WHOLE, formula.place, "This sum divides by nothing.")
        return left / right


def wrong_length(found: int, wanted: int, place: Place) -> Fault:
    """The fault of a size list with another length than the pattern has sizes."""
    few = "few" if found < wanted else "many"
    return Fault(
        LIST_LENGTH, place, f"This list has too {few} numbers.", expected=f"{wanted} numbers", found=f"{found} numbers"
    )


def _called(formula: Call, parts: list[Fraction]) -> Fraction:
    if formula.function == "max":
        return max(parts)
    if formula.function == "min":
        return min(parts)
    if formula.function == "up":
        return Fraction(-(-parts[0] // 1))
    if formula.function == "down":
        return Fraction(parts[0] // 1)
    return Fraction((2 * parts[0] + 1) // 2)
