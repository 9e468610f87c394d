"""What a sum in braces is worth in one size, when a page needs it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Formula
from gradegen.design.graded import GradedSize
from gradegen.grade.body.printed import Printed
from gradegen.grade.body.sums import Refused, reckon


@dataclass(frozen=True, slots=True)
class Worth:
    """A bare number, or a length in exact inches."""

    number: Fraction
    is_length: bool


def worth(formula: Formula, size: GradedSize) -> Worth | None:
    """What a formula comes to in this size; None where it cannot be worked out, as grading reported."""
    try:
        value = reckon(formula, Printed(size))
    except Refused:
        return None
    return Worth(value.number, value.kind == "length")
