"""Shapings worked at the same time that change places from one size to another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from gradegen.design.passages import Shaping
from gradegen.findings import Finding
from gradegen.grade.shaping.faults import ORDER_FLIPS
from gradegen.work.passage.passages import Course
from gradegen.work.passage.shaping_plan import Event

Marks = dict[str, int]  # "neck edge begins" -> row of the passage


def find_order_flips(courses: Sequence[Course]) -> Iterator[Finding]:
    """One finding per passage and size in which two of its marks stand the other way round than in most sizes."""
    if not courses or not any(shaping.together for shaping, _ in courses[0].shaped):
        return
    marks = [_marks(course.shaped) for course in courses]
    for one, other in combinations(marks[0], 2):
        signs = [_sign(found.get(one, 0) - found.get(other, 0)) for found in marks]
        usual = 1 if signs.count(1) > signs.count(-1) else -1
        flipped = [course for course, sign in zip(courses, signs, strict=True) if sign == -usual]
        if flipped and usual in signs:
            yield from (_finding(course, one, other, usual) for course in flipped)


def _finding(course: Course, one: str, other: str, usual: int) -> Finding:
    first, second = (other, one) if usual > 0 else (one, other)
    return ORDER_FLIPS.at(
        course.row.place,
        f"In this size {second} before {first}; in most sizes it is the other way round.",
        size=course.piece.sizes[course.size],
        row=course.row.label.text or None,
        hint="print the rows of this size apart, or move one of the two",
    )


def _marks(shaped: Sequence[tuple[Shaping, Sequence[Event]]]) -> Marks:
    found: Marks = {}
    for at, (shaping, events) in enumerate(shaped):
        if events:
            name = shaping.edge.removeprefix("at ") or f"shaping {at + 1}"
            found[f"the shaping at the {name} begins" if shaping.edge else f"{name} begins"] = events[0].row
            found[f"the shaping at the {name} ends" if shaping.edge else f"{name} ends"] = events[-1].row
    return found


def _sign(number: int) -> int:
    return (number > 0) - (number < 0)
