"""The outline of a flat piece, or of a tube laid flat, from its worked rows and its gauges; and the measures on it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from gradegen.design.checked import Checked
from gradegen.design.formula import Formula, Name
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule, Piece
from gradegen.design.seams import Division, Join
from gradegen.grade.body.sums import names_in
from gradegen.work.step.beginnings import begins_anew
from gradegen.write.drawing.courses import Course, courses_of, schedules_of
from gradegen.write.drawing.outline import Outline, Point, Side, Span, drawn
from gradegen.write.drawing.sides import Corner, Sides, find_sides
from gradegen.write.drawing.stretches import Gauges, Heights, Stretch, find_stretches, tops_of


@dataclass(frozen=True, slots=True)
class Fabric:
    """A piece in one size as its rows make it: what lies where, in stitches and rows, and how large those are."""

    piece: Piece
    checked: Checked
    size: GradedSize
    courses: tuple[Course, ...]
    sides: Sides
    stretches: tuple[Stretch, ...]
    heights: Heights
    per_inch: Fraction
    is_tube: bool
    from_top: bool

    @property
    def tops(self) -> list[int]:
        """Rows below each course, and in all."""
        return tops_of(self.courses)

    @property
    def rows(self) -> int:
        """Rows in all."""
        return self.tops[-1]

    def place(self, corner: Corner) -> Point:
        """A corner in inches, as it is drawn."""
        wide = corner[0] / self.per_inch / (2 if self.is_tube else 1)
        high = self.heights.at(corner[1])
        down = high if self.from_top else self.heights.at(self.rows) - high
        return drawn(wide), drawn(down)


def lay_out(piece: Piece, checked: Checked, size: GradedSize, gauges: Gauges) -> Fabric | None:
    """The piece in stitches and rows; None where its rows or its gauge do not say enough."""
    courses = courses_of(piece, checked, size)
    if not courses:
        return None
    stretches = find_stretches(courses, checked, size)
    heights = Heights(stretches, gauges)
    gauge = gauges.at(_across(courses, checked))
    if not heights.are_known or gauge is None or not gauge.stitches:
        return None
    sides = find_sides(courses, checked, size, is_flat=piece.shape == "flat")
    from_top = _is_from_top(piece, checked)
    return Fabric(
        piece, checked, size, courses, sides, stretches, heights, gauge.stitches, piece.shape != "flat", from_top
    )


def _across(courses: Sequence[Course], checked: Checked) -> CountRule | None:
    """The first count of stitches that a row ends with."""
    rules = (_counted(course, checked) for course in courses)
    return next((rule for rule in rules if rule is not None and rule.across is not None), None)


def _counted(course: Course, checked: Checked) -> CountRule | None:
    """The count that a row ends with, where it is no sum."""
    stated = [one for one in course.worked.row.stated if one.unit.name != "sp"]
    formula = stated[0].number.formula if len(stated) == 1 else None
    return checked.pattern.counts.get(formula.name) if isinstance(formula, Name) else None


def _is_from_top(piece: Piece, checked: Checked) -> bool:
    """True where the work goes down the body: on from a yoke, or from the edge that a sleeve is set in with."""
    start = f"{piece.name.text} start".casefold()
    for seam in checked.pattern.seams:
        sets_in = isinstance(seam, Join) and seam.kind == "sleeve"
        if isinstance(seam, Division | Join) and (sets_in or not isinstance(seam, Join)) and start in _ends_named(seam):
            return True
    first = next((row for row in piece.rows if not row.is_prose), None)
    return piece is not checked.pattern.pieces[0] and first is not None and not begins_anew(first)


def _ends_named(seam: Division | Join) -> set[str]:
    formulas: list[Formula | None] = [seam.left, seam.right] if isinstance(seam, Join) else [seam.body, seam.sleeve]
    return {name.name.casefold() for formula in formulas if formula is not None for name in names_in(formula)}


def outline_of(fabric: Fabric) -> Outline:
    """The closed outline and everything that is measured on it."""
    sides = fabric.sides
    points = [fabric.place(corner) for corner in (*sides.left, *reversed(sides.right))]
    spans = (*_widths(fabric), *_steps(fabric), *_neck(fabric), *_lengths(fabric))
    return Outline(fabric.size.name, tuple(points), spans, _anchor(fabric), tuple(_changes(fabric)))


def _changes(fabric: Fabric) -> Iterator[tuple[Point, ...]]:
    """A line across where one gauge ends and another begins, as above ribbing."""
    for one, next_one in pairwise(sorted(fabric.stretches, key=lambda stretch: stretch.begins)):
        gauges = [fabric.heights.gauges.at(stretch.rule) for stretch in (one, next_one)]
        if one.ends == next_one.begins and gauges[0] is not gauges[1]:
            left, right = fabric.sides.at(one.ends)
            yield fabric.place((left, one.ends)), fabric.place((right, one.ends))


def _anchor(fabric: Fabric) -> Point:
    """The middle of the first row; of a piece shaped at one end alone, the end that stays straight longest."""
    (left, right), shaped = fabric.sides.at(0), fabric.sides.shaped
    even = all(len(each) != 1 for each in shaped)
    first = next((each for each in shaped if each), set())
    if even or not first:
        return fabric.place(((left + right) / 2, 0))
    return fabric.place((right if first == {"left"} else left, 0))


# measures across --------------------------------------------------------------------------------------------------


def _widths(fabric: Fabric) -> Iterator[Span]:
    """Each count of stitches that a row ends with; a count without measure only where it is the last row's."""
    seen: set[str] = set()
    for at, course in enumerate(fabric.courses):
        rule = _counted(course, fabric.checked)
        count = fabric.size.counts.get(rule.name) if rule is not None else None
        if rule is None or count is None or count.n != course.after or rule.name in seen:
            continue
        is_last = course is fabric.courses[-1] and not fabric.is_tube
        times = (2 if fabric.is_tube else 1) * rule.pieces
        name, length = measured(rule.across, fabric.size, Fraction(count.n) / fabric.per_inch * rule.pieces)
        if not name and is_last and rule.across is None:
            name, length = rule.name, Fraction(count.n) / fabric.per_inch * rule.pieces
        if name and length is not None:
            seen.add(rule.name)
            yield _level(fabric, name, length, times, _row_for(fabric, at), rule.across is not None)


def measured(formula: Formula | None, size: GradedSize, length: Fraction) -> tuple[str, Fraction | None]:
    """The measure that a count is made from, and what is printed for it; "" where the drawing would say another."""
    if not isinstance(formula, Name) or formula.name not in size.measures:
        return "", None
    printed = size.measures[formula.name].printed
    return (formula.name, printed) if printed == length else ("", None)


def _row_for(fabric: Fabric, at: int) -> int:
    """Where a width is drawn: on the edge of the piece, as far as it stays the same up to there."""
    wide, tops = fabric.courses[at].after, fabric.tops
    if all(course.after == wide for course in fabric.courses[:at]):
        return 0
    if fabric.from_top and all(course.after == wide for course in fabric.courses[at:]):
        return fabric.rows
    return tops[at + 1]


def _level(fabric: Fabric, name: str, length: Fraction, times: int, row: int, is_measure: bool) -> Span:
    left, right = fabric.sides.at(row, below=True)
    points = (fabric.place((left, row)), fabric.place((right, row)))
    low = (row == 0) != fabric.from_top or (0 < row < fabric.rows and _is_low(fabric, row))
    return Span(name, length, points, "below" if low else "above", times, is_measure)


def _is_low(fabric: Fabric, row: int) -> bool:
    down = fabric.place((Fraction(0), row))[1]
    return down * 2 > drawn(fabric.heights.at(fabric.rows))


def _steps(fabric: Fabric) -> Iterator[Span]:
    """Stitches left unworked at once, where they have a measure of their own."""
    for at, steps in fabric.sides.steps.items():
        for rule, schedule in schedules_of(fabric.courses[at], fabric.checked, fabric.size):
            count = fabric.checked.pattern.counts.get(rule.leave.name) if isinstance(rule.leave, Name) else None
            if count is None or not schedule.leave:
                continue
            name, length = measured(count.across, fabric.size, schedule.leave / fabric.per_inch)
            if name and length is not None:
                ends = sorted((fabric.place(corner) for corner in steps[0]), key=lambda one: one[0])
                yield Span(name, length, tuple(ends), "below")


def _neck(fabric: Fabric) -> Iterator[Span]:
    """The stitches that a shoulder seam leaves free in the middle of the last row."""
    end = f"{fabric.piece.name.text} end".casefold()
    wide = fabric.courses[-1].after
    for seam in fabric.checked.pattern.seams:
        if not isinstance(seam, Join) or seam.kind != "shoulder":
            continue
        for formula in (seam.left, seam.right):
            names = [name.name for name in names_in(formula)]
            other = [name.name for side in (seam.left, seam.right) for name in names_in(side)]
            if end not in [name.casefold() for name in names] or not (names[1:] or other[1:]):
                continue
            yield from _centre(fabric, [name for name in (names if names[1:] else other)], wide)


def _centre(fabric: Fabric, names: Sequence[str], wide: int) -> Iterator[Span]:
    left, right = fabric.sides.at(fabric.rows)
    for name in names:
        rule, count = fabric.checked.pattern.counts.get(name), fabric.size.counts.get(name)
        if rule is None or count is None or count.n >= wide or (wide - count.n) % 2:
            continue
        named, length = measured(rule.across, fabric.size, count.n / fabric.per_inch)
        if named and length is not None:
            middle, half = (left + right) / 2, Fraction(count.n, 2)
            row = fabric.rows
            ends = (fabric.place((middle - half, row)), fabric.place((middle + half, row)))
            yield Span(named, length, ends, "above")


# measures along ---------------------------------------------------------------------------------------------------


def _lengths(fabric: Fabric) -> Iterator[Span]:
    """Each stretch whose count of rows comes from a measure, and the whole piece where it has several of them."""
    whole = fabric.heights.at(fabric.rows)
    covered = False
    spans = []
    for stretch in fabric.stretches:
        high = fabric.heights.at(stretch.ends) - fabric.heights.at(stretch.begins)
        name, length = measured(stretch.rule.along, fabric.size, high)
        if name and length is not None:
            covered = covered or high == whole
            spans.append(_upright(fabric, name, length, stretch.begins, stretch.ends, _side(fabric, stretch)))
    yield from spans
    if spans and not covered and not any(span.name == fabric.piece.name.text for span in spans):
        name = f"{fabric.piece.name.text.lower()}, total"
        yield _upright(fabric, name, whole, 0, fabric.rows, "right", is_measure=False)


def _side(fabric: Fabric, stretch: Stretch) -> Side:
    """On the side that is shaped there alone; else on the left."""
    inside = [
        shaped
        for shaped, begins in zip(fabric.sides.shaped, fabric.tops, strict=False)
        if stretch.begins <= begins < stretch.ends
    ]
    return "right" if {"right"} in inside and {"left"} not in inside else "left"


def _upright(
    fabric: Fabric, name: str, length: Fraction, begins: int, ends: int, side: Side, *, is_measure: bool = True
) -> Span:
    at = 0 if side == "left" else 1
    places = [fabric.place((fabric.sides.at(row)[at], row)) for row in (begins, ends)]
    return Span(name, length, tuple(sorted(places, key=lambda place: place[1])), side, 1, is_measure)
