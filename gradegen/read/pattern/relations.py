"""Relations between counts as a designer states them: `front = neck + 2 * shoulder`, `sleeve >= cuff`."""

from __future__ import annotations

import re
from collections.abc import Iterator

from gradegen.design.formula import Call, Formula, Name, Sum
from gradegen.design.relation import Relation, RelationSign
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.sums.formula import read_formula
from gradegen.read.yaml.fields import Kind, wrong_kind
from gradegen.read.yaml.nodes import Node, Scalar

RELATION_UNREADABLE = Rule(
    "relation-unreadable", Severity.ERROR, "file format", "A relation is not two sums of counts with a sign between."
)

_SIGNS = re.compile(r"[<>=≤≥!≠]+")
_SPELLINGS: dict[str, RelationSign] = {
    "=": "=", "==": "=", "<=": "<=", "=<": "<=", "≤": "<=", ">=": ">=", "=>": ">=", "≥": ">=", "<": "<", ">": ">",
}  # fmt: skip
_EXAMPLE = "front = neck + 2 * shoulder"


def read_relation(written: Written) -> tuple[Relation | None, tuple[Finding, ...]]:
    """One relation; None and a finding at the exact sign when it can't be read."""
    signs = list(_SIGNS.finditer(written.text))
    if not signs:
        message = "This is no relation: a sign =, >= or <= is missing between two sums of counts."
        return None, (RELATION_UNREADABLE.at(written.place(), message, hint=_EXAMPLE),)
    sign = signs[0]
    spelled = _SPELLINGS.get(sign.group())
    if spelled is None:
        place = written.place(sign.start(), sign.end())
        message = f"{sign.group()} is no sign of a relation; use =, >= or <=."
        return None, (RELATION_UNREADABLE.at(place, message, hint=_EXAMPLE),)
    if len(signs) > 1:
        place = written.place(signs[1].start(), signs[1].end())
        message = "A relation has one sign; write the second part as a relation of its own."
        middle = written.text[sign.end() : signs[1].start()].strip()
        hint = f"{middle} {signs[1].group()} {written.text[signs[1].end() :].strip()}"
        return None, (RELATION_UNREADABLE.at(place, message, hint=hint),)
    left, findings = _side(written, 0, sign.start())
    right, more = _side(written, sign.end(), len(written.text))
    if left is None or right is None:
        return None, (findings + more)[:1]
    text = " ".join(written.text.split())
    return Relation(text, left, spelled, right, written.place()), ()


def _side(written: Written, start: int, end: int) -> tuple[Formula | None, tuple[Finding, ...]]:
    if written.text[start:end].strip():
        return read_formula(written, start, end)
    message = "A sum of counts is missing on one side of the sign."
    return None, (RELATION_UNREADABLE.at(written.place(), message, hint=_EXAMPLE),)


def counts_named(relation: Relation) -> Iterator[str]:
    """The names of counts in a relation, as written, left to right; `band chain` is told by its count's name too."""
    for formula in (relation.left, relation.right):
        yield from _names(formula)


def _names(formula: Formula) -> Iterator[str]:
    match formula:
        case Name():
            yield formula.name
            if formula.name.lower().endswith(" chain"):
                yield formula.name[:-6]
        case Sum():
            yield from _names(formula.left)
            yield from _names(formula.right)
        case Call():
            for part in formula.parts:
                yield from _names(part)


def _read_node(node: Node) -> tuple[Relation | None, tuple[Finding, ...]]:
    if not isinstance(node, Scalar):
        return None, (wrong_kind(node, f"a relation such as {_EXAMPLE}"),)
    return read_relation(node.trimmed)


RELATION: Kind[Relation] = Kind(
    f"a relation such as {_EXAMPLE}", _read_node, {"type": "string", "examples": [_EXAMPLE, "sleeve >= cuff"]}
)
