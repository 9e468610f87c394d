"""The kinds of values only a pattern has: put-ups, sizes wanted, rows."""

from __future__ import annotations

from dataclasses import dataclass

from gradegen.design.formula import Amount, Sum
from gradegen.design.pattern import Text
from gradegen.findings import Finding, Place, Rule, Severity, Written
from gradegen.numbers.units import kind_of
from gradegen.read.fields import Kind, list_of, wrong_kind
from gradegen.read.formula import read_formula
from gradegen.read.kinds import TEXT, UNIT_WRONG
from gradegen.read.nodes import Node, Scalar

ROWS_FOLDED = Rule("rows-folded", Severity.ERROR, "file format", "Rows are written so that their lines run together.")

Skein = tuple[Amount | None, Amount | None]  # length, mass


def _read_skein(node: Node) -> tuple[Skein | None, tuple[Finding, ...]]:
    if not isinstance(node, Scalar):
        return None, (wrong_kind(node, "a put-up such as 200 yd / 100 g"),)
    formula, findings = read_formula(node.trimmed)
    parts = (formula.left, formula.right) if isinstance(formula, Sum) and formula.sign == "/" else (formula,)
    if formula is None:
        return None, findings
    by_kind = {kind_of(part.unit): part for part in parts if isinstance(part, Amount) and part.number > 0}
    if len(by_kind) != len(parts) or not by_kind.keys() <= {"length", "mass"}:
        hint = "Write length and mass of one skein, such as 200 yd / 100 g; one of them is enough."
        return None, (UNIT_WRONG.at(node.place, "This is no put-up of a skein.", hint=hint),)
    return (by_kind.get("length"), by_kind.get("mass")), ()


SKEIN: Kind[Skein] = Kind(
    "a put-up such as 200 yd / 100 g", _read_skein, {"type": "string", "examples": ["200 yd / 100 g"]}
)

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
