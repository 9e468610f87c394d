"""A laid-out chart as SVG fragments, row by row: stitches, row numbers with their direction, one repeat shaded."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from gradegen.write.chart.band import Band, repeat_band
from gradegen.write.chart.frames import Around, Frame
from gradegen.write.chart.glyphs import Pen, draw_picot, draw_space, draw_stitch, draw_upright
from gradegen.write.chart.layout import BASE_HIGH, CHAIN, GAP, Layout, bulge, ends_of, foot_beside, room, stem
from gradegen.write.chart.pen import distance, fine
from gradegen.write.chart.round import NARROW_SEAM, ring_radius, seam_of
from gradegen.write.chart.rows import Thing, height_of
from gradegen.write.drawing.sketch import Point

NUMBER_SIZE = 6.4
_SIGN_WIDE = 0.6  # of its size, a sign of the row numbers at its widest
_LOOSE = 6.4  # from the first stitch of a row to the chains before it that stand for none


@dataclass(frozen=True, slots=True)
class Inks:
    """The colours of a chart: rows in two, so that the eye can keep to one of them; grey for low ink."""

    odd: str = "#1d2b2a"
    even: str = "#a8442a"
    quiet: str = "#7d8a88"
    shade: str = "#e6efed"
    lettering: str = "#1d2b2a"


GREY = Inks(even="#6e6e6e", odd="#000000", quiet="#8a8a8a", shade="none", lettering="#000000")


@dataclass(frozen=True, slots=True)
class RowMark:
    """What stands at the beginning of a row: its number, or a letter explained below the chart; "" for nothing."""

    number: str
    title: str


@dataclass(frozen=True, slots=True)
class AgainMark:
    """Rows that are worked again later: the letter explained below the chart, the first of them and the last."""

    letter: str
    first: int
    last: int


@dataclass(slots=True)
class Sheet:
    """Fragments, and how far they reach."""

    fragments: list[str] = field(default_factory=list)
    reach: list[Point] = field(default_factory=list)

    def box(self, margin: float = 6.0) -> tuple[float, float, float, float]:
        """Left, top, width and height of all that is drawn."""
        xs, ys = [x for x, _ in self.reach] or [0.0], [y for _, y in self.reach] or [0.0]
        left, top = min(xs) - margin, min(ys) - margin
        return left, top, max(xs) + margin - left, max(ys) + margin - top


@dataclass(slots=True)
class Drawing:
    """Draws one layout. `marks`: one per row. `again`: rows that later rows only repeat. `lettering`: its size."""

    layout: Layout
    frame: Frame
    pen: Pen
    inks: Inks
    marks: Sequence[RowMark]
    again: Sequence[AgainMark] = ()
    lettering: float = NUMBER_SIZE
    sheet: Sheet = field(default_factory=Sheet)

    def draw(self) -> Sheet:
        """Everything, the shading first."""
        self._shade()
        self._middle()
        shown = 0
        for at, row in enumerate(self.layout.chart.rows):
            shown += not row.is_base
            self._row(at, self.inks.quiet if row.is_base else self.inks.even if shown % 2 == 0 else self.inks.odd)
        if not self.layout.chart.is_round:
            left = min(x for x, _ in self.sheet.reach) - 4
            for place, again in enumerate(self.again):
                self._again(again, left - 9 * place)
        return self.sheet

    def _again(self, again: AgainMark, left: float) -> None:
        """A bracket beside rows that are worked again, and its letter."""
        low = -self._beginning(again.first)[1]
        high = -max(self.layout.up[again.last]) - 1
        self._reach([(left - 8, low), (left - 8, high)])
        path = f"M{fine(left)} {fine(low)}H{fine(left - 3)}V{fine(high)}H{fine(left)}"
        ink = self.inks.quiet
        self.sheet.fragments.append(f'<path class="again" fill="none" stroke="{ink}" stroke-width=".8" d="{path}"/>')
        text = self._text(again.letter, (left - 5.5, (low + high) / 2 + 2.2), "end")
        self.sheet.fragments.append(f'<g fill="{self.inks.lettering}">{text}</g>')

    # rows -----------------------------------------------------------------------------------------------------------

    def _row(self, at: int, ink: str) -> None:
        row = self.layout.chart.rows[at]
        out = self.sheet.fragments
        out.append(f'<g class="row" data-row="{at}" stroke="{ink}" fill="{ink}">')
        for thing in range(len(row.things)):
            parts = list(self._thing(at, thing))
            one = row.things[thing]
            if parts:
                out.append(f'<g class="{_kind(one)}" data-stitch="{one.name}">' + "".join(parts) + "</g>")
        out += self._number(at)
        out.append("</g>")

    def _thing(self, at: int, thing: int) -> Iterator[str]:
        row = self.layout.chart.rows[at]
        one = row.things[thing]
        if one.what == "base":
            yield from self._base(at, thing)
        elif one.what == "st":
            feet = self._feet(at, thing) or [self._floor(at, thing)]
            top = self._top(at, thing)
            self._reach([*feet, top])
            shares = bool(one.feet) and sum(other.feet == one.feet for other in row.things) > 1
            yield from draw_stitch(self.pen, one.name, feet, top, one.loop, shares_foot=shares)
        elif one.what == "upright":
            foot, top = self._upright(at, thing)
            self._reach([foot, top])
            yield from draw_upright(self.pen, one.length, foot, top, "foundation" if one.from_base else "ch")
        elif one.what == "sp":
            yield from self._space(at, thing)
        elif one.what == "picot":
            yield from self._picot(at, thing)
        else:
            yield self.pen.mark("dot", self._dot(at, thing), 0, "sl-st")

    def _base(self, at: int, thing: int) -> Iterator[str]:
        one = self.layout.chart.rows[at].things[thing]
        if one.again and self.layout.chart.is_oval:
            return  # the same chain, met from below
        point = self._top(at, thing)
        self._reach([point])
        if one.name == "st":  # what another piece has left, seen as the tops of its stitches
            yield f'<path class="place" d="M{fine(point[0] - 3.1)} {fine(point[1])} h6.2" fill="none"/>'
            return
        mark = self.pen.mark("oval", point, 0, "again" if one.again else "ch" if one.name == "ch" else "place")
        yield f'<g stroke-dasharray="1.2 1">{mark}</g>' if one.again or one.name != "ch" else mark

    def _space(self, at: int, thing: int) -> Iterator[str]:
        one, unit = self.layout.chart.rows[at].things[thing], self.layout.unit[at]
        (left, left_up), (right, right_up) = ends_of(self.layout, at, thing)
        way = abs(right - left) / unit
        inset = min(3.2, max(0.0, (way - one.length * CHAIN) / 2)) if way > one.length * CHAIN else 1.4
        ends = [self._at(left + inset * unit, left_up), self._at(right - inset * unit, right_up)]
        away = self.frame.away(self.layout.along[at][thing], self.layout.up[at][thing])
        rise = self._rise(at, thing, ends)
        closed = height_of(one.closed_by) if one.closed_by else 0
        closing = None
        if closed and one.feet:
            first = self._at(*self._place(one.feet[0]))
            closing = (one.closed_by, first)
        self._reach([*ends, self._top(at, thing)])
        number, kind = max(1, one.length - closed), "foundation" if one.from_base else "ch"
        yield from draw_space(self.pen, number, (ends[0], ends[1]), rise, away, closing, kind)

    def _rise(self, at: int, thing: int, ends: Sequence[Point]) -> float:
        """How far the arch rises above the straight way on the sheet: at least as far as the row itself bends."""
        one = self.layout.chart.rows[at].things[thing]
        straight = distance(ends[0], ends[1])
        middle = ((ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2)
        (_, left_up), (_, right_up) = ends_of(self.layout, at, thing)
        level = (left_up + right_up) / 2
        bent, away = self._at(self.layout.along[at][thing], level), self.frame.away(self.layout.along[at][thing], level)
        bends = (bent[0] - middle[0]) * away[0] + (bent[1] - middle[1]) * away[1]
        return max(bulge(one.length * CHAIN, straight), bends)

    def _picot(self, at: int, thing: int) -> Iterator[str]:
        one = self.layout.chart.rows[at].things[thing]
        point = self._top(at, thing)
        away = self.frame.away(self.layout.along[at][thing], self.layout.up[at][thing])
        self._reach([point, (point[0] + away[0] * 9, point[1] + away[1] * 9)])
        yield from draw_picot(self.pen, one.length or 3, point, away)

    # points ---------------------------------------------------------------------------------------------------------

    def _at(self, along: float, up: float) -> Point:
        return self.frame.point(along, up)

    def _top(self, at: int, thing: int) -> Point:
        return self._at(self.layout.along[at][thing], self.layout.up[at][thing])

    def _place(self, ref: tuple[int, int]) -> tuple[float, float]:
        """Along and up of the foot of what is worked into a place."""
        row, at = ref
        return self.layout.along[row][at], self.layout.top_of(ref)

    def _feet(self, at: int, thing: int) -> list[Point]:
        """Where the feet of a stitch stand; side by side over a space, half-way down the post for a post stitch."""
        one = self.layout.chart.rows[at].things[thing]
        found = []
        for ref in one.feet:
            below = self.layout.chart.rows[ref[0]].things[ref[1]]
            along, up = self._place(ref)
            if below.what == "sp":
                along += (
                    0.42 * self.layout.pull.offsets[at][thing] * self.layout.unit[ref[0]] if len(one.feet) == 1 else 0
                )
            if one.name.startswith(("FP", "BP")) and below.what in ("st", "upright"):
                up -= GAP + 3.4
            found.append(self._at(along, up))
        return found

    def _floor(self, at: int, thing: int) -> Point:
        """Where a stitch without a foot begins: on the ring, or beside the row below."""
        along, up = self.layout.along[at][thing], self.layout.up[at][thing]
        if at == 0 and self.layout.chart.is_round:
            return self._at(along, ring_radius(self.layout.chart) + GAP)
        return self._at(along, up - stem(self.layout.chart.rows[at].things[thing]))

    def _upright(self, at: int, thing: int) -> tuple[Point, Point]:
        """Foot and top of chains that stand at the beginning of a row."""
        row = self.layout.chart.rows[at]
        one = row.things[thing]
        if one.has_room:
            foot = self._at(*self._place(one.feet[0])) if one.feet else self._floor(at, thing)
            return foot, self._top(at, thing)
        along, level = self._beginning(at)
        return self._at(along, level), self._at(along, level + CHAIN * one.length)

    def _beginning(self, at: int) -> tuple[float, float]:
        """Along and up of where chains that stand for no stitch begin: before the row's first stitch."""
        row = self.layout.chart.rows[at]
        order = self.layout.pull.order[at]
        first = order[0] if row.ahead == 1 else order[-1]
        one = row.things[first]
        feet = self.layout.feet_up(one)
        floor = ring_radius(self.layout.chart) + GAP if self.layout.chart.is_round else BASE_HIGH
        level = min(feet) if feet else foot_beside(self.layout, at, first, floor)
        here = self.layout.along[at][first]
        ends = [here, *(self.layout.near(self._place(foot)[0], here) for foot in one.feet if len(one.feet) > 1)]
        return (min(ends) if row.ahead == 1 else max(ends)) - row.ahead * _LOOSE * self.layout.unit[at], level

    def _dot(self, at: int, thing: int) -> Point:
        """Where a slip stitch lies: on what it is worked into, or where the row closes."""
        row = self.layout.chart.rows[at]
        one = row.things[thing]
        if one.feet:
            along, up = self._place(one.feet[0])
            return self._at(along, up)
        order = self.layout.pull.order[at]
        first, last = (order[0], order[-1]) if row.ahead == 1 else (order[-1], order[0])
        unit, up = self.layout.unit[at], self.layout.up[at][first]
        if isinstance(self.frame, Around):
            return self._at(self.layout.along[at][first] - row.ahead * 3.6 * unit, up + 1.0)
        point = self._at(self.layout.along[at][last] + row.ahead * (room(row.things[last]) / 2 + 3.5) * unit, up)
        self._reach([point])
        return point

    def _reach(self, points: Iterable[Point]) -> None:
        for x, y in points:
            self.sheet.reach += [(x - 4, y - 4), (x + 4, y + 4)]

    # beside the rows ------------------------------------------------------------------------------------------------

    def _number(self, at: int) -> Iterator[str]:
        """The row's number where it begins, and an arrow the way it goes."""
        row, mark = self.layout.chart.rows[at], self.marks[at]
        if not mark.number or not row.things:
            return
        along, level = self._beginning(at)
        up = level + 0.5 * CHAIN
        if isinstance(self.frame, Around):
            along -= row.ahead * (2.0 + (seam_of(self.layout.chart) - NARROW_SEAM) / 3) * self.layout.unit[at]
            point = self._at(along, up + 1)
            yield self._text(mark.number, (point[0], point[1] + 2.2), "middle")
            return
        point = self._at(along - row.ahead * 9, up)
        wide = max(5.6 + self.lettering, 3.5 + _SIGN_WIDE * self.lettering * len(mark.number))
        self._reach([(point[0] - row.ahead * wide, point[1])])
        yield self._arrow(point, row.ahead)
        yield self._text(
            mark.number, (point[0] - row.ahead * 7.5, point[1] + 2.2), "start" if row.ahead == -1 else "end"
        )

    def _text(self, words: str, at: Point, anchor: str) -> str:
        self._reach([at])
        return (
            f'<text x="{fine(at[0])}" y="{fine(at[1])}" font-size="{fine(self.lettering)}" text-anchor="{anchor}" '
            f'stroke="none">{words}</text>'
        )

    def _arrow(self, at: Point, ahead: int) -> str:
        x, y = at
        tip, back = x + 2.6 * ahead, x + ahead
        path = f"M{fine(x - 2.6 * ahead)} {fine(y)}H{fine(tip)}"
        path += f"M{fine(back)} {fine(y - 1.5)}L{fine(tip)} {fine(y)}L{fine(back)} {fine(y + 1.5)}"
        return f'<path fill="none" stroke-width=".7" d="{path}"/>'

    def _middle(self) -> None:
        """The ring that the first round goes into."""
        chart = self.layout.chart
        if not chart.is_round:
            return
        radius = ring_radius(chart)
        out = self.sheet.fragments
        out.append(f'<g class="middle" stroke="{self.inks.quiet}" fill="none">')
        if chart.middle == "ring":
            out.append(f'<circle r="{fine(radius - 1)}"/>')
        number = chart.middle_chains
        for at in range(number):
            x, y = self._at((at + 0.5) / number, radius)
            turn = -360 * (at + 0.5) / number
            out.append(self.pen.mark("oval", (x, y), turn, "ch"))
        out.append("</g>")

    def _shade(self) -> None:
        """One repeat on a tinted ground, as far up as the rows repeat by it."""
        band = repeat_band(self.layout)
        if band is None:
            return
        low, high = self._levels(band)
        if not self.layout.chart.is_round:
            self._bracket(band, low)
        if self.inks.shade == "none":
            return
        steps = 32
        edge = [(band.left + (band.right - band.left) * step / steps, high) for step in range(steps + 1)]
        edge += [(band.right - (band.right - band.left) * step / steps, low) for step in range(steps + 1)]
        places = [self._at(*each) for each in edge]
        points = " ".join(f"{fine(x)},{fine(y)}" for x, y in places)
        self.sheet.fragments.append(f'<polygon class="repeat" points="{points}" fill="{self.inks.shade}"/>')

    def _levels(self, band: Band) -> tuple[float, float]:
        """How far down and up the tinted ground goes."""
        ups = [up for at in range(band.rows) for up in self.layout.up[at]]
        low = min(self.layout.up[0]) - 5 if not self.layout.chart.is_round else ring_radius(self.layout.chart) + 1
        return low, max(ups) + 1.5

    def _bracket(self, band: Band, low: float) -> None:
        """Below the rows, from one end of the repeat to the other."""
        y = -low + 5
        self._reach([(band.left, y + 3 + self.lettering), (band.right, y + 3 + self.lettering)])
        path = f"M{fine(band.left)} {fine(y - 3)}V{fine(y)}H{fine(band.right)}V{fine(y - 3)}"
        middle = (band.left + band.right) / 2
        ink = self.inks.quiet
        self.sheet.fragments.append(f'<path class="repeat" fill="none" stroke="{ink}" stroke-width=".8" d="{path}"/>')
        words = f"repeat of {band.over} sts" if band.over > 1 else "repeat"
        self.sheet.fragments.append(
            f'<text x="{fine(middle)}" y="{fine(y + 1.6 + self.lettering)}" font-size="{fine(self.lettering)}" '
            f'text-anchor="middle" stroke="none" fill="{self.inks.lettering}">{words}</text>'
        )


def _kind(one: Thing) -> str:
    return {"upright": "chains", "sp": "space"}.get(one.what, one.what)
