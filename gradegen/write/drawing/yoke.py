"""Yokes worked from the neck, laid flat: between raglan lines, or round as part of a ring."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction

from gradegen.design.edge import Edge, Run
from gradegen.grade.body.sums import names_in
from gradegen.write.drawing.outline import Outline, Point, Span, drawn
from gradegen.write.drawing.piece_outline import Fabric, measured

_STEEP = 0.6  # of outward to downward: what grows faster than this is no tube
_WIDEST = 5.0  # radians: a ring that is open further is no yoke laid flat
_LINES, _ARC = 4, 32
_Parts = tuple[int, int, int]  # stitches of a front, of a sleeve, of the back


def yoke_outline(fabric: Fabric) -> Outline | None:
    """The yoke laid flat, front upwards; None where the piece is none."""
    first, last = fabric.courses[0].after, fabric.courses[-1].after
    depth = drawn(fabric.heights.at(fabric.rows))
    if drawn((last - first) / fabric.per_inch) / 4 < _STEEP * depth:
        return None
    parts = _parts(fabric)
    return _raglan(fabric, parts) if parts else _ring(fabric, first, last, depth)


# between raglan lines ---------------------------------------------------------------------------------------------


def _parts(fabric: Fabric) -> list[tuple[int, _Parts]] | None:
    """After so many rows: how many stitches lie in each part. None where four lines do not part every row."""
    found: list[tuple[int, _Parts]] = []
    for course, rows in zip(fabric.courses, fabric.tops[1:], strict=True):
        parts = _between_spaces(course.worked.after)
        if len(parts) == 5:
            parts = [parts[0] + parts[4], *parts[1:4]]
        if len(parts) != 4 or parts[1] != parts[3]:
            return None
        found.append((rows, (parts[2], parts[1], parts[0])))
    return found


def _between_spaces(edge: Edge) -> list[int]:
    """Stitches before, between and after the chain spaces of an edge; what is empty at an end is left out."""
    found = [0]
    for part in _flat(edge):
        if part:
            found[-1] += part
        else:
            found.append(0)
    return [part for at, part in enumerate(found) if part or at not in (0, len(found) - 1)]


def _flat(edge: Edge) -> Iterator[int]:
    """Stitches in a row as one number, 0 for a space."""
    for item in edge:
        if not isinstance(item, Run):
            yield 0 if item.kind == "sp" else 1
        elif any(part == 0 for part in _flat(item.items)):
            for _ in range(item.times):
                yield from _flat(item.items)
        else:
            yield item.times * sum(_flat(item.items))


def _raglan(fabric: Fabric, parts: Sequence[tuple[int, _Parts]]) -> Outline:
    """The front between its two lines, and half of each sleeve beside it, turned outwards until the lines meet."""
    lines = [
        (drawn(front / fabric.per_inch) / 2, drawn(fabric.heights.at(rows - parts[0][0])))
        for rows, (front, _, _) in parts
    ]
    depth = drawn(fabric.heights.at(fabric.rows))
    line = [*lines[:-1], (lines[-1][0], depth)]
    halves = [drawn(parts[at][1][1] / fabric.per_inch) / 2 for at in (0, -1)]
    turn = math.atan2(line[-1][0] - line[0][0], depth) + math.atan2(halves[1] - halves[0], depth)
    out = (math.cos(turn), -math.sin(turn))
    neck_end, sleeve_end = (
        (place[0] + half * out[0], place[1] + half * out[1])
        for place, half in zip((line[0], line[-1]), halves, strict=True)
    )
    right = [line[0], neck_end, sleeve_end, line[-1]]
    points = (*right, *_mirrored(reversed(right)))
    raglan = (tuple(line), tuple(_mirrored(line)))
    neck = (*_mirrored([neck_end, line[0]]), line[0], neck_end)
    spans = [*_depth(fabric), *_opening(fabric, neck), *_back_neck(fabric, parts[0][1], line[0][0])]
    return Outline(fabric.size.name, points, tuple(spans), (0.0, 0.0), raglan)


def _mirrored(points: Sequence[Point] | Iterator[Point]) -> list[Point]:
    return [(-x, y) for x, y in points]


def _back_neck(fabric: Fabric, parts: _Parts, half: float) -> Iterator[Span]:
    """The front between its lines at the neck, where a count of the first rows is made from a measure for it."""
    lists = [listed for course in fabric.courses[:2] for listed in course.worked.row.lists if listed.formula]
    names = dict.fromkeys(name.name for one in lists if one.formula for name in names_in(one.formula))
    for name in names:
        rule, count = fabric.checked.pattern.counts.get(name), fabric.size.counts.get(name)
        if rule is None or count is None or count.n != parts[0]:
            continue
        named, length = measured(rule.across, fabric.size, count.n / fabric.per_inch)
        if named and length is not None:
            yield Span(named, length, ((-half, 0.0), (half, 0.0)), "above")


# round ------------------------------------------------------------------------------------------------------------


def _ring(fabric: Fabric, first: int, last: int, depth: float) -> Outline | None:
    """Part of a ring: folded at its sides a yoke lies like this, its rounds as arcs as long as half their stitches."""
    neck, edge = (drawn(count / fabric.per_inch) / 2 for count in (first, last))
    open_by = (edge - neck) / depth
    if open_by > _WIDEST:
        return None
    inner = neck / open_by
    arcs = [_arc(inner, inner + share * depth / _LINES, open_by) for share in range(_LINES + 1)]
    points = (*arcs[0], *reversed(arcs[-1]))
    spans = (*_depth(fabric), *_opening(fabric, tuple(arcs[0])))
    rings = [_arc(inner, inner + down, open_by) for down in _grown(fabric, depth)]
    return Outline(fabric.size.name, points, spans, (0.0, 0.0), tuple(tuple(ring) for ring in rings))


def _arc(inner: float, radius: float, open_by: float) -> list[Point]:
    turns = [open_by * (at / _ARC - 0.5) for at in range(_ARC + 1)]
    return [(radius * math.sin(turn), radius * math.cos(turn) - inner) for turn in turns]


def _grown(fabric: Fabric, depth: float) -> list[float]:
    """How far down each round lies that is written by itself and widens the yoke, as its rings begin."""
    return [
        drawn(fabric.heights.at(begins))
        for course, begins in zip(fabric.courses, fabric.tops, strict=False)
        if course.rows == 1 and course.after > course.before and 0 < drawn(fabric.heights.at(begins)) < depth
    ]


# both -------------------------------------------------------------------------------------------------------------


def _depth(fabric: Fabric) -> Iterator[Span]:
    """The whole depth, where a measure says it."""
    whole = fabric.heights.at(fabric.rows)
    for stretch in fabric.stretches:
        name, length = measured(stretch.rule.along, fabric.size, whole)
        if name and length is not None and stretch.ends - stretch.begins == fabric.rows:
            yield Span(name, length, ((0.0, 0.0), (0.0, drawn(whole))), "inside")


def _opening(fabric: Fabric, neck: tuple[Point, ...]) -> Iterator[Span]:
    """The first round, all the way round."""
    stated = [one for one in fabric.courses[0].worked.row.stated if one.unit.name != "sp"]
    for formula in (one.number.formula for one in stated[:1]):
        for name in names_in(formula) if formula is not None else ():
            rule, count = fabric.checked.pattern.counts.get(name.name), fabric.size.counts.get(name.name)
            if rule is None or count is None or rule.across is None:
                continue
            named, length = measured(rule.across, fabric.size, Fraction(count.n) / fabric.per_inch)
            if named and length is not None:
                yield Span(named, length, neck, "along", 2)
