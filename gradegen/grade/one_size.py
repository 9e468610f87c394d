"""One size graded without the others: its counts as they are when nothing else is to be even with them."""

from __future__ import annotations

from collections.abc import Mapping

from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Pattern
from gradegen.design.sizes import SizeTable
from gradegen.grade.body.bodies import choose_bodies
from gradegen.grade.body.naming import Naming
from gradegen.grade.counts import grade_counts
from gradegen.grade.grading import graded_size
from gradegen.grade.measure.measures import target_measures


def one_graded(pattern: Pattern, table: SizeTable, index: int) -> GradedSize | None:
    """The size at this place in the pattern, with its counts alone; None where there is none."""
    bodies = tuple(body for body in choose_bodies(pattern, table)[0] if body.index == index)
    if not bodies:
        return None
    naming = Naming.of(pattern, table)
    targets, _ = target_measures(pattern, table, bodies, naming)
    counted, _, _ = grade_counts(pattern, table, bodies, naming, targets)
    return graded_size(bodies[0], {}, counted[0], None, None)


def numbers_of_one(pattern: Pattern, table: SizeTable, index: int) -> Mapping[str, int]:
    """The counts of the size at this place in the pattern; {} where there is none. What is amiss is not told."""
    size = one_graded(pattern, table, index)
    return {} if size is None else size.numbers()
