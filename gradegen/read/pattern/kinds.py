"""The kinds of values only a pattern has: put-ups, sizes wanted, rows."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Amount, Formula, PerSize, Sum
from gradegen.design.pattern import Text
from gradegen.findings import Finding, Place, Rule, Severity, Written
from gradegen.numbers.units import kind_of
from gradegen.read.sums.formula import read_formula
from gradegen.read.yaml.fields import Kind, list_of, wrong_kind
from gradegen.read.yaml.kinds import NUMBER_KIND, NUMBER_OUT_OF_RANGE, SUM, TEXT, UNIT_WRONG, read_measure
from gradegen.read.yaml.nodes import Node, Scalar

ROWS_FOLDED = Rule("rows-folded", Severity.ERROR, "file format", "Rows are written so that their lines run together.")

Skein = tuple[Amount | None, Amount | None, Amount | None, Amount | None]  # length, mass, and each in the other unit


def _read_skein(node: Node) -> tuple[Skein | None, tuple[Finding, ...]]:
    if not isinstance(node, Scalar):
        return None, (wrong_kind(node, "a put-up such as 200 yd / 100 g"),)
    formula, findings = read_formula(node.trimmed)
    if formula is None:
        return None, findings
    parts = list(_parts_of(formula))
    lengths, masses = ([part for part in parts if kind_of(part.unit) == kind] for kind in ("length", "mass"))
    sound = all(part.number > 0 for part in parts) and len(lengths) + len(masses) == len(parts)
    most = 2 if lengths and masses else 1
    if not sound or any(
        len({part.unit for part in same}) < len(same) or len(same) > most for same in (lengths, masses)
    ):
        hint = "Write length and mass of one skein, such as 200 yd / 100 g; one of them is enough."
        return None, (UNIT_WRONG.at(node.place, "This is no put-up of a skein.", hint=hint),)
    length, length_also = (*lengths, None, None)[:2]
    mass, mass_also = (*masses, None, None)[:2]
    return (length, mass, length_also, mass_also), ()


def _parts_of(formula: Formula) -> Iterator[Amount]:
    """The amounts between strokes; an amount of no unit stands for what is no amount."""
    if isinstance(formula, Sum) and formula.sign == "/":
        yield from _parts_of(formula.left)
        yield from _parts_of(formula.right)
    else:
        yield formula if isinstance(formula, Amount) else Amount(Fraction(0), None, formula.place)


SKEIN: Kind[Skein] = Kind(
    "a put-up such as 200 yd / 100 g", _read_skein, {"type": "string", "examples": ["200 yd / 100 g"]}
)


def _used(lengths: tuple[str, ...], example: str) -> Kind[Amount]:
    """An amount of yarn by its mass, or by its length in one of these units."""

    def read(node: Node) -> tuple[Amount | None, tuple[Finding, ...]]:
        if not isinstance(node, Scalar):
            return None, (wrong_kind(node, f"an amount of yarn such as {example}"),)
        found, _ = read_formula(node.trimmed)
        is_length = isinstance(found, Amount) and found.unit in lengths
        return read_measure(node.trimmed, "length" if is_length else "mass", example)

    return Kind(f"an amount of yarn such as {example}", read, {"type": "string", "examples": [example]})


YARN_USED = _used(("yd", "m"), "168 g")
YARN_BESIDES = _used(("yd", "m", "ft", "in", "cm"), "3 yd")


def _read_percent(node: Node) -> tuple[Fraction | None, tuple[Finding, ...]]:
    number, findings = NUMBER_KIND.read(node)
    if number is not None and not 0 <= number <= 100:
        hint = "Write a number from 0 to 100, such as 10 for a tenth more."
        return None, (NUMBER_OUT_OF_RANGE.at(node.place, "This can't be meant as a percentage.", hint=hint),)
    return number, findings


PERCENT: Kind[Fraction] = Kind("a number of percent", _read_percent, {"type": "number", "minimum": 0, "maximum": 100})


def numbers_each(unit: str | None) -> Kind[Formula]:
    """One number for all sizes or one per size, bare or in this unit."""

    def read(node: Node) -> tuple[Formula | None, tuple[Finding, ...]]:
        found, findings = SUM.read(node)
        if found is None:
            return None, findings
        each = found.each if isinstance(found, PerSize) else (found,)
        if all(isinstance(one, Amount) and one.unit in (None, unit) and one.number > 0 for one in each):
            return found, findings
        hint = "Write one number for all sizes, or a list such as [2, 2, 3]."
        return None, (wrong_kind(node, "a number, or one per size,", hint),)

    return Kind("a number, or one per size", read, SUM.schema)


_SOME_SIZES = list_of(TEXT, "a list of sizes")


@dataclass(frozen=True, slots=True)
class SizesWanted:
    """Sizes by name, None for all of the table's."""

    sizes: tuple[Text, ...] | None
    place: Place


def _read_sizes(node: Node) -> tuple[SizesWanted | None, tuple[Finding, ...]]:
    if isinstance(node, Scalar) and node.text.strip().casefold() == "all":
        return SizesWanted(None, node.place), ()
    sizes, findings = _SOME_SIZES.read(node)
    return (SizesWanted(sizes, node.place) if sizes else None), findings


SIZES_WANTED: Kind[SizesWanted] = Kind(
    "all or a list of sizes", _read_sizes, {"anyOf": [{"const": "all"}, _SOME_SIZES.schema]}
)


def _read_rows(node: Node) -> tuple[Written | None, tuple[Finding, ...]]:
    hint = "Write `rows: |` and start each row on its own line below, two spaces further in."
    if not isinstance(node, Scalar):
        return None, (wrong_kind(node, "rows, one a line,", hint),)
    if node.style != "literal" and (node.style == "folded" or node.place.end_line > node.place.line):
        return None, (ROWS_FOLDED.at(node.place, "Written like this, all rows run together into one.", hint=hint),)
    return node.trimmed, ()


ROWS: Kind[Written] = Kind("rows, one a line", _read_rows, {"type": "string"})
