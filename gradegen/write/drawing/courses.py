"""The rows of a piece as worked in one size: how wide each is, and where its shaping falls."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.edge import Edge, Run
from gradegen.design.graded import GradedSize
from gradegen.design.passages import Shaping
from gradegen.design.pattern import Piece
from gradegen.design.schedule import Schedule, ScheduleRule
from gradegen.design.worked import WorkedRow


@dataclass(frozen=True, slots=True)
class Course:
    """One written row as worked: the stitches before it and after it, and how many rows it is."""

    worked: WorkedRow
    before: int
    after: int
    rows: int


@dataclass(frozen=True, slots=True)
class Event:
    """What happens to the two edges in one row of a course, counted from 1: stitches more at each.

    `is_step`: all at once, at the beginning of the row, as where stitches are left unworked.
    """

    row: int
    left: Fraction
    right: Fraction
    is_step: bool = False


def courses_of(piece: Piece, checked: Checked, size: GradedSize) -> tuple[Course, ...]:
    """The rows in working order, without foundations; () where one of them is not known."""
    mine = {row.place for row in piece.rows}
    found: list[Course] = []
    for row in checked.worked.get(size.name, ()):
        if row.row.place not in mine or not row.applies or row.times < 1 or row.row.is_prose:
            continue
        if not row.made and row.row.label.name:
            continue  # a foundation chain has no height
        wide = max(row.made or 0, width_of(row.after))
        if not wide or row.status != "proved":
            return ()
        found.append(Course(row, found[-1].after if found else wide, wide, row.times))
    return tuple(found)


def width_of(edge: Edge) -> int:
    """Stitches and the chains of its spaces."""
    total = 0
    for item in edge:
        if isinstance(item, Run):
            total += item.times * width_of(item.items)
        else:
            total += item.length if item.kind == "sp" else item.kind in ("st", "ch", "free loop", "row end")
    return total


def schedules_of(course: Course, checked: Checked, size: GradedSize) -> Iterator[tuple[ScheduleRule, Schedule]]:
    """The schedules whose sentence stands in the row, those that are worked at the same time one by one."""
    for sentence in course.worked.row.sentences:
        rule = checked.pattern.shaping[sentence.schedule]
        for name in [text.text for text in rule.together] or [rule.name]:
            scheduled = checked.pattern.scheduled.get(name)
            one = scheduled.sizes[size.index] if scheduled and size.index < len(scheduled.sizes) else None
            if scheduled is not None and one is not None:
                yield scheduled.rule, one


def events_in(
    course: Course, checked: Checked, size: GradedSize, edges: dict[str, str], *, is_flat: bool
) -> tuple[Event, ...]:
    """Where the edges of a course go. `edges`: which side an edge named in words lies on, filled as they come."""
    found = [
        event
        for rule, one in schedules_of(course, checked, size)
        for event in (_sloped(rule, one, edges) if rule.way == "short rows" else _scheduled(rule, one, edges))
    ]
    if sum(event.left + event.right for event in found) == course.after - course.before:
        return tuple(sorted(found, key=lambda event: event.row))
    return _spread(course, edges, is_flat=is_flat)


def _scheduled(rule: ScheduleRule, one: Schedule, edges: dict[str, str]) -> Iterator[Event]:
    for at, (row, change) in enumerate(one.events()):
        is_step = bool(one.leave) and at == 0
        yield _placed(row + one.after, change, is_step, "" if one.ends == 2 else _side(rule.edge, edges))


def _sloped(rule: ScheduleRule, one: Schedule, edges: dict[str, str]) -> Iterator[Event]:
    """Short rows: each step leaves its stitches at the end of two rows, one at each end of the piece."""
    steps = [stitches for stitches, times in one.groups for _ in range(times)]
    for at, stitches in enumerate(steps):
        yield _placed(2 * (at + 1), -stitches * one.ends, False, "" if one.ends == 2 else _side(rule.edge, edges))


def _placed(row: int, change: int, is_step: bool, side: str) -> Event:
    if not side:
        return Event(row, Fraction(change, 2), Fraction(change, 2), is_step)
    left = Fraction(change if side == "left" else 0)
    return Event(row, left, change - left, is_step)


def _side(edge: str, edges: dict[str, str]) -> str:
    """The first edge that is named lies on the left, any other on the right."""
    return edges.setdefault(edge, "right" if edges else "left")


_SUDDEN = 2  # stitches at one edge in one row: more of them are a step


def _spread(course: Course, edges: dict[str, str], *, is_flat: bool) -> tuple[Event, ...]:
    """A change whose rows are not known one by one lies evenly over them; a large one in one flat row is a step."""
    change = course.after - course.before
    if not change:
        return ()
    one_ended = [
        step
        for step in course.worked.row.steps
        if isinstance(step, Shaping) and step.change is not None and step.change.where == "one end"
    ]
    side = _side(one_ended[0].edge, edges) if one_ended else ""
    sudden = is_flat and course.rows == 1 and abs(change) > _SUDDEN * (1 if side else 2)
    return (_placed(course.rows, change, sudden, side),)
