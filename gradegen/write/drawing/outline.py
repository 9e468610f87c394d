"""What a schematic is drawn from: the outline of a piece in one size, and the measures that lie on it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Point = tuple[float, float]
Side = Literal["below", "above", "left", "right", "inside", "along", "around"]


def drawn(length: Fraction) -> float:
    """A length for the pen; nothing is counted with it."""
    return length.numerator / length.denominator


@dataclass(frozen=True, slots=True)
class Span:
    """A measure on an outline: its name, what it comes to in inches, and the points it runs through.

    `times`: so many times the drawn stretch is the measure (2 where a tube is laid flat). `side`: where its dimension
    line stands; "along" an edge; "around" a piece seen from the side, where it is the front of a girth. `is_measure`:
    named by the designer, and not after a count or a piece.
    """

    name: str
    length: Fraction
    points: tuple[Point, ...]
    side: Side
    times: int = 1
    is_measure: bool = True


@dataclass(frozen=True, slots=True)
class Outline:
    """A piece in one size, in inches, y downwards.

    `points`: its closed edge. `lines`: other lines on it. `anchor`: the point that lies on the same spot in all sizes.
    """

    size: str
    points: tuple[Point, ...]
    spans: tuple[Span, ...]
    anchor: Point
    lines: tuple[tuple[Point, ...], ...] = ()

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom, from the anchor."""
        xs, ys = [x - self.anchor[0] for x, _ in self.points], [y - self.anchor[1] for _, y in self.points]
        return min(xs), min(ys), max(xs), max(ys)

    @property
    def area(self) -> float:
        """Of its box, for the order of drawing."""
        left, top, right, bottom = self.box
        return (right - left) * (bottom - top)


@dataclass(frozen=True, slots=True)
class Schematic:
    """A piece in the sizes that are drawn, the printed sizes with all its measures, and what kind of drawing it is."""

    name: str
    kind: str
    outlines: tuple[Outline, ...]


@dataclass(frozen=True, slots=True)
class Schematics:
    """All that is drawn of a pattern. `letters`: measure -> the letter it has; the tables show both."""

    pieces: tuple[Schematic, ...]
    letters: dict[str, str]

    def besides(self) -> dict[str, dict[str, Fraction]]:
        """Measures that only the drawings have: name -> size -> inches."""
        found: dict[str, dict[str, Fraction]] = {}
        for piece in self.pieces:
            for outline in piece.outlines:
                for span in outline.spans:
                    if not span.is_measure:
                        found.setdefault(span.name, {})[outline.size] = span.length
        return found
