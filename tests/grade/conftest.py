"""A small builder of patterns and size tables, so that grading is tested without the file readers."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from gradegen.design.formula import Amount, Formula
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule, Gauge, Measure, Pattern, Piece, SizeChoice, Text
from gradegen.design.relation import Relation
from gradegen.design.sizes import Band, Cell, Column, SizeTable
from gradegen.findings import Finding, Place, Written
from gradegen.grade import grade_sizes
from gradegen.read.pattern.relations import read_relation
from gradegen.read.sums.formula import read_formula

TESTS = str(Path(__file__).resolve().parents[1])
if TESTS not in sys.path:
    sys.path.append(TESTS)  # so that tests say `from grade import joints` however pytest was started

FILE, TABLE = "p.yaml", "t.yaml"

# CYC woman size chart, bust to fit, inches (several published copies agree), and upper arm (from memory, unchecked)
WOMEN = ("XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X")
BUST = [(28, 30), (32, 34), (36, 38), (40, 42), (44, 46), (48, 50), (52, 54), (56, 58), (60, 62)]
UPPER_ARM = [9.75, 10.25, 11, 12, 13.5, 15.5, 17, 18.5, 19.5]


def at(line: int, column: int = 5, width: int = 1, file: str = FILE) -> Place:
    return Place(file, line, column, line, column + width)


def text(words: str, line: int) -> Text:
    return Text(words, at(line, 5, len(words)))


def formula(words: str, line: int) -> Formula:
    tree, findings = read_formula(Written.plain(words, FILE, line, 20))
    assert tree is not None, findings
    return tree


def amount(words: str, line: int = 90) -> Amount:
    tree = formula(words, line)
    assert isinstance(tree, Amount)
    return tree


def band(value: Any) -> Band | None:
    if value is None:
        return None
    low, high = value if isinstance(value, tuple) else (value, value)
    return Band(Fraction(str(low)), Fraction(str(high)))


def column(name: str, inches: Sequence[Any] | None, cm: Sequence[Any] | None, line: int, **more: Any) -> Column:
    length = len(inches if inches is not None else cm or ())
    cells = []
    for rank in range(length):
        both = band(inches[rank]) if inches else None, band(cm[rank]) if cm else None
        cells.append(Cell(*both, at(line, 10 + rank, file=TABLE)) if any(both) else None)
    place = at(line, 1, file=TABLE)
    known = {"trust": "published copy seen", "trust_cm": None, "note": None, "derived": None, "spread_cm": None}
    return Column(name=name, cells=tuple(cells), place=place, **{**known, **more})


def size_table(
    sizes: Sequence[str] = WOMEN,
    by: str = "bust",
    inches: Mapping[str, Sequence[Any]] | None = None,
    cm: Mapping[str, Sequence[Any]] | None = None,
    wearers: Sequence[str] = (),
) -> SizeTable:
    inches = {"bust": BUST, "upper_arm": UPPER_ARM} if inches is None else inches
    columns = {name: column(name, row, None, 3 + line) for line, (name, row) in enumerate(inches.items())}
    columns |= {name: column(name, None, row, 30 + line) for line, (name, row) in enumerate((cm or {}).items())}
    return SizeTable(
        "women", TABLE, "A table", "A house", "2026", "here", "adult", by, tuple(sizes), columns, (),
        at(1, file=TABLE), tuple(wearers),
    )  # fmt: skip


def gauge(name: str, line: int, **given: Any) -> Gauge:
    """`stitches`, `rows`, `repeats`, `repeat_of`, `over`, `before_stitches`, `before_rows`."""
    numbers = {key: Fraction(str(given[key])) if key in given else None for key in
               ("stitches", "rows", "repeats", "before_stitches", "before_rows")}  # fmt: skip
    places = {key: at(line, 30, file=FILE) for key in given}
    return Gauge(
        name=name, repeat_of=given.get("repeat_of"), over=amount(given.get("over", "4 in"), line), hook=None,
        state="blocked", note=None, place=at(line, 3), places=places, **numbers,
    )  # fmt: skip


def count(name: str, line: int, **given: Any) -> CountRule:
    formulas = {key: formula(given[key], line) if key in given else None for key in ("across", "along", "sum")}
    places = {key: at(line, 60 + position) for position, key in enumerate(given)}
    named = text(given["gauge"], line) if "gauge" in given else None
    places |= {f"pin {size}": at(line, 80 + position) for position, size in enumerate(given.get("pins", ()))}
    plain = {"multiple": 1, "plus": 0, "base_extra": 0, "parity": None, "least": None, "most": None, "tie": "up",
             "both_sides": False, "pieces": 1, "centre": None, "even_steps": False, "weight": Fraction(1),
             "pins": {}}  # fmt: skip
    return CountRule(
        name=name, across=formulas["across"], along=formulas["along"], formula=formulas["sum"], gauge=named,
        place=at(line, 3), places=places, **{key: given.get(key, usual) for key, usual in plain.items()},
    )  # fmt: skip


def relation(words: str, line: int) -> Relation:
    found, findings = read_relation(Written.plain(words, FILE, line, 20))
    assert found is not None, findings
    return found


@dataclass
class Made:
    """A pattern put together in a test, and what grading it gives."""

    pattern: Pattern
    table: SizeTable
    sizes: tuple[GradedSize, ...] = ()
    findings: tuple[Finding, ...] = field(default=())

    def counts(self, name: str) -> list[int]:
        return [size.counts[name].n for size in self.sizes]

    def finished(self, name: str) -> list[Fraction]:
        return [size.measures[name].printed for size in self.sizes]

    def targets(self, name: str) -> list[Fraction]:
        return [size.measures[name].target for size in self.sizes]

    def rules(self) -> list[str]:
        return [finding.rule for finding in self.findings]

    def only(self, rule: str) -> Finding:
        found = [finding for finding in self.findings if finding.rule == rule]
        assert len(found) == 1, (rule, self.findings)
        return found[0]

    def grave(self) -> list[str]:
        return [finding.rule for finding in self.findings if finding.severity != "note"]


def build(
    measures: Mapping[str, str] | None = None,
    counts: Mapping[str, Mapping[str, Any]] | None = None,
    gauges: Mapping[str, Mapping[str, Any]] | None = None,
    table: SizeTable | None = None,
    sizes: Sequence[str] | None = None,
    by: str | None = None,
    take: str = "middle",
    width: str | None = None,
    relations: Sequence[str] = (),
) -> Made:
    """Measures stand on lines 10, 11 ... column 20; counts on 40, 41 ...; gauges on 70, 71 ...; sizes on line 3.

    Relations stand on lines 60, 61 ... column 20.
    """
    wanted = None if sizes is None else tuple(Text(size, at(3, 30 + 4 * i, len(size))) for i, size in enumerate(sizes))
    choice = SizeChoice(text("women", 3), wanted, None if by is None else text(by, 3), take, at(3))  # type: ignore[arg-type]
    gauges = {"plain": {"stitches": 14, "rows": 8}} if gauges is None else gauges
    piece = Piece(text("Body", 95), "flat", (), (), None if width is None else text(width, 96), None, at(95))
    pattern = Pattern(
        file=FILE, title=text("A pattern", 1), version=None, about=None, designer=None, terms="US", level=None,
        wearer=None, sizes=choice, units="inches first", rounding=None, yarns=(), notions=(),
        gauges={name: gauge(name, 70 + i, **given) for i, (name, given) in enumerate(gauges.items())},
        measures={
            name: Measure(name, formula(words, 10 + i), at(10 + i, 3))
            for i, (name, words) in enumerate((measures or {}).items())
        },
        counts={name: count(name, 40 + i, **given) for i, (name, given) in enumerate((counts or {}).items())},
        definitions=(), notes=(), pieces=(piece,), finishing=(), cautions=(), licence=None, place=at(1),
        relations=tuple(relation(words, 60 + i) for i, words in enumerate(relations)),
    )  # fmt: skip
    return Made(pattern, table or size_table())


def graded(*args: Any, **given: Any) -> Made:
    made = build(*args, **given)
    made.sizes, made.findings = grade_sizes(made.pattern, made.table)
    return made


@pytest.fixture(name="build")
def build_fixture() -> Callable[..., Made]:
    return build


@pytest.fixture(name="graded")
def graded_fixture() -> Callable[..., Made]:
    return graded


@pytest.fixture(name="size_table")
def size_table_fixture() -> Callable[..., SizeTable]:
    return size_table


@pytest.fixture(name="gauge")
def gauge_fixture() -> Callable[..., Gauge]:
    return gauge


@pytest.fixture(name="column")
def column_fixture() -> Callable[..., Column]:
    return column
