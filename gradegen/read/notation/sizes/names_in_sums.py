"""The names in a sum of graded counts, `{2 * band + 1}`: what tells such braces from the trade's own brackets."""

from __future__ import annotations

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.read.notation.words.row_names import RowNames


def names_in_sum(formula: Formula | None, names: RowNames) -> set[str] | None:
    """The names in a sum; None when one of them is no count or measure of this pattern."""
    match formula:
        case Name(name=name):
            return {name} if name in names.counts or name in names.measures else None
        case Sum(left=left, right=right):
            return _all_known((left, right), names)
        case Call(parts=parts):
            return _all_known(parts, names)
        case Amount() | PerSize():
            return set()
    return None


def _all_known(parts: tuple[Formula, ...], names: RowNames) -> set[str] | None:
    found: set[str] = set()
    for part in parts:
        inner = names_in_sum(part, names)
        if inner is None:
            return None
        found |= inner
    return found
