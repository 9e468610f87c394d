"""Outlines of a piece on one sheet: every size inside the next, or one alone; their measures, their key, a scale."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from gradegen.write.drawing.dimensions import LARGE, USUAL, Dimension, Spacing, draw_dimensions, room_beside
from gradegen.write.drawing.marks_on_lines import places_on_lines
from gradegen.write.drawing.outline import Outline, Point, Side, Span, drawn
from gradegen.write.drawing.sketch import (
    HALF_SHEET,
    INK,
    QUIET,
    SHEET,
    SMALL_SIZE,
    TINT,
    Sketch,
    room_for,
)
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import lengths_text

TALLEST = 205.0  # points
TALLER, ALONE, LARGE_PRINT = (
    260.0,
    128.0,
    340.0,
)  # of a narrow piece with a sheet of its own; of one size; of large print
_BESIDE: tuple[Side, Side] = ("left", "right")
_CORNER: tuple[Side, Side] = ("left", "below")
_LARGEST = 34.0  # points to the inch
_NARROW = 0.86  # across to down: what is narrower stands on half a sheet
_GAP = 2 * "\N{NO-BREAK SPACE}"
# Width and dashes of the sizes' lines, neighbours unlike in both or in one: told apart in grey, and without a mark.
LINES = ((0.9, "none"), (0.8, "4 2"), (0.45, "none"), (1.0, "0.1 2"), (0.8, "8 2 0.1 2"), (0.55, "2.2 1.4"))


@dataclass(frozen=True, slots=True)
class Sheet:
    """Where inches come to lie on the sheet: points to the inch, and the spot of the anchors."""

    scale: float
    spot: Point
    width: float

    def place(self, point: Point, outline: Outline) -> Point:
        """A point of an outline on the sheet."""
        x, y = point[0] - outline.anchor[0], point[1] - outline.anchor[1]
        return self.spot[0] + x * self.scale, self.spot[1] + y * self.scale


@dataclass(frozen=True, slots=True)
class Label:
    """How measures are written beside their lines: by their letters, on one size's pages with what they come to."""

    letters: Mapping[str, str]
    printing: Printing

    def text(self, span: Span) -> str:
        """`A`, or `A  17½ in (44.5 cm)`, with `around` where half is drawn; the name where a measure has no letter."""
        letter = self.letters.get(span.name, span.name)
        if not self.printing.is_one_size or self.is_large:
            return letter
        around = "\N{NO-BREAK SPACE}around" if span.times > 1 else ""
        return f"{letter}{_GAP}{lengths_text([span.length], self.printing.style)}{around}"

    @property
    def is_large(self) -> bool:
        """True for large print."""
        return self.printing.columns is not None

    @property
    def spacing(self) -> Spacing:
        """Of the dimension lines."""
        return LARGE if self.is_large else USUAL

    def letter(self, span: Span) -> str:
        """The letter alone."""
        return self.letters.get(span.name, span.name)


def is_narrow(outlines: Sequence[Outline]) -> bool:
    """True where half a sheet is wide enough."""
    left, top, right, bottom = extent(outlines)
    return right - left < _NARROW * (bottom - top)


def extent(outlines: Sequence[Outline]) -> tuple[float, float, float, float]:
    """What all of them cover, in inches from the anchors."""
    boxes = [outline.box for outline in outlines]
    return (
        min(box[0] for box in boxes),
        min(box[1] for box in boxes),
        max(box[2] for box in boxes),
        max(box[3] for box in boxes),
    )


def lay_sheet(outlines: Sequence[Outline], label: Label, *, half: bool) -> Sheet:
    """As large as the sheet allows with room for all dimension lines, in the middle."""
    width = HALF_SHEET if half else SHEET
    left, top, right, bottom = extent(outlines)
    trial = _dimensions(outlines, Sheet(8.0, (0.0, 0.0), width), label)
    beside = [room_beside(trial, side, label.spacing) for side in _BESIDE]
    room = width - sum(beside) - 12
    tallest = TALLEST if half or not is_narrow(outlines) else TALLER
    if len(outlines) == 1:
        tallest = LARGE_PRINT if label.is_large else ALONE
    scale = min(room / (right - left), tallest / (bottom - top), _LARGEST)
    across = beside[0] + 6 + (room - (right - left) * scale) / 2 - left * scale
    return Sheet(scale, (across, 10 + room_beside(trial, "above", label.spacing) - top * scale), width)


def draw_outlines(sketch: Sketch, outlines: Sequence[Outline], sheet: Sheet, label: Label) -> None:
    """The outlines with their marks and measures; below them the key of the lines and the scale."""
    order = sorted(range(len(outlines)), key=lambda at: -outlines[at].area)
    placed = [[sheet.place(point, outline) for point in outline.points] for outline in outlines]
    for at in order:
        width, dashes = line_of(at, outlines)
        fill = TINT if len(outlines) == 1 else "none"
        sketch.outline(placed[at], INK, width, fill, dashes, f"size {outlines[at].size}")
    for at in order[:1] if len(outlines) > 1 else order:
        for line in outlines[at].lines:
            sketch.line([sheet.place(point, outlines[at]) for point in line], QUIET, 0.5, "1.5 2")
    dimensions = _dimensions(outlines, sheet, label)
    left, top, right, bottom = extent(outlines)
    (x, y), scale = sheet.spot, sheet.scale
    box = (x + left * scale, y + top * scale, x + right * scale, y + bottom * scale)
    draw_dimensions(sketch, dimensions, box, label.spacing)
    if len(outlines) > 1:
        mark_lines(sketch, placed, marks_or_names(outlines, label.printing))
    before, under = (room_beside(dimensions, side, label.spacing) for side in _CORNER)
    draw_key(
        sketch, outlines, sheet, label, (6.0 if len(outlines) > 1 else max(6.0, box[0] - before), box[3] + under + 12)
    )


def line_of(at: int, outlines: Sequence[Outline]) -> tuple[float, str]:
    """Width and dashes of one size's line; one size alone has a plain one."""
    return LINES[at % len(LINES)] if len(outlines) > 1 else (1.0, "none")


def _dimensions(outlines: Sequence[Outline], sheet: Sheet, label: Label) -> list[Dimension]:
    """The measures as they lie on the largest size."""
    largest = max(outlines, key=lambda outline: outline.area)
    return [
        Dimension(
            label.letter(span),
            label.text(span),
            tuple(sheet.place(point, largest) for point in span.points),
            span.side,
        )
        for span in largest.spans
    ]


# sizes ------------------------------------------------------------------------------------------------------------


def marks_or_names(outlines: Sequence[Outline], printing: Printing) -> list[str]:
    """What stands on each line: the mark of the size; its name, where there are so few that none has a mark."""
    sizes = [size for size in printing.sizes if any(outline.size == size.name for outline in outlines)]
    return list(printing.marks_of(sizes)) or [size.name for size in sizes]


def mark_lines(sketch: Sketch, lines: Sequence[Sequence[Point]], marks: Sequence[str]) -> None:
    """Each size's mark on its own line."""
    for mark, places in zip(marks, places_on_lines(lines), strict=True):
        for place in places:
            put_mark(sketch, mark, place)


def put_mark(sketch: Sketch, mark: str, place: Point) -> None:
    """A mark, on clear ground."""
    wide = room_for(mark, SMALL_SIZE) if len(mark) > 1 else 0.0
    sketch.disc(place, max(3.7, 0.55 * wide))
    sketch.write(mark, (place[0], place[1] + 2.4), size=SMALL_SIZE)


def draw_key(sketch: Sketch, outlines: Sequence[Outline], sheet: Sheet, label: Label, at: Point) -> None:
    """A scale on the left; right of it each size's line with its mark and its name."""
    beyond, level = draw_scale(sketch, sheet.scale, at), at[1]
    if len(outlines) < 2:
        return
    names = [outline.size for outline in outlines]
    marks = marks_or_names(outlines, label.printing)
    step = 34 + max(room_for(name, SMALL_SIZE) for name in names)
    start = beyond + 16
    columns = max(1, int((sheet.width - start) / step))
    for place, (name, mark) in enumerate(zip(names, marks, strict=True)):
        x, y = start + place % columns * step, level + place // columns * 11
        width, dashes = line_of(place, outlines)
        sketch.line([(x, y), (x + 22, y)], INK, width, dashes)
        if mark != name:
            put_mark(sketch, mark, (x + 11, y))
        sketch.write(name, (x + 26, y + 2.5), size=SMALL_SIZE, anchor="start")


_BARS = ((1, 2), (2, 5), (4, 10), (8, 20), (12, 30), (20, 50))  # inches and centimetres that are nearly alike


def draw_scale(sketch: Sketch, scale: float, at: Point) -> float:
    """Two bars, one in inches and one in centimetres, about an inch and a half long; where they end."""
    inches, cm = min(_BARS, key=lambda bar: abs(math.log(bar[0] * scale / 40)))
    ends = []
    for length, name, down in ((Fraction(inches), f"{inches} in", -3.0), (Fraction(cm * 100, 254), f"{cm} cm", 4.5)):
        end = at[0] + drawn(length) * scale
        y = at[1] + down
        sketch.line([(at[0], y - 2), (at[0], y), (end, y), (end, y - 2)], INK, 0.6, of=f"scale {name}")
        sketch.write(name, (end + 3, y + 1.6), size=6.0, anchor="start")
        ends.append(end + room_for(name, 6.0))
    return max(ends)
