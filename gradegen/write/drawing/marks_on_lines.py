"""Where the marks of the sizes stand on nested outlines: each on its own line, clear of all others."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from gradegen.write.drawing.outline import Point

_STEP = 2.5  # points from one possible place to the next
_CELL = 3.0
_FAR = 3  # cells around a place that are looked at
_MARK = 8.5  # points from one mark to the next


def places_on_lines(lines: Sequence[Sequence[Point]], most: int = 2) -> list[list[Point]]:
    """For each closed line up to `most` places on it, the clearest first; at least one, wherever it is clearest."""
    samples = [list(_along(line)) for line in lines]
    ground = _Ground(samples)
    found: list[list[Point]] = [[] for _ in lines]
    taken: list[Point] = []
    for turn in range(most):
        for at, places in enumerate(samples):
            place = _clearest(ground, at, places, taken, found[at], is_needed=turn == 0)
            if place is not None:
                found[at].append(place)
                taken.append(place)
    return found


def _along(line: Sequence[Point]) -> Iterator[Point]:
    for (x, y), (to_x, to_y) in zip(line, [*line[1:], line[0]], strict=True):
        steps = max(1, round(math.dist((x, y), (to_x, to_y)) / _STEP))
        for step in range(steps):
            yield x + (to_x - x) * step / steps, y + (to_y - y) * step / steps


class _Ground:
    """Which lines run through which small square of the sheet."""

    def __init__(self, samples: Sequence[Sequence[Point]]) -> None:
        self.cells: dict[tuple[int, int], set[int]] = {}
        for at, places in enumerate(samples):
            for place in places:
                self.cells.setdefault(_cell(place), set()).add(at)

    def clearance(self, at: int, place: Point) -> int:
        """How many rings of squares around a place are free of other lines."""
        x, y = _cell(place)
        for ring in range(_FAR + 1):
            for across in range(-ring, ring + 1):
                for down in range(-ring, ring + 1):
                    if max(abs(across), abs(down)) == ring and self.cells.get((x + across, y + down), set()) - {at}:
                        return ring
        return _FAR + 1


def _cell(place: Point) -> tuple[int, int]:
    return math.floor(place[0] / _CELL), math.floor(place[1] / _CELL)


def _clearest(
    ground: _Ground, at: int, places: Sequence[Point], taken: Sequence[Point], own: Sequence[Point], *, is_needed: bool
) -> Point | None:
    """The place with most room; of several the one nearest to the mark set last, so that marks run in a row."""
    near = taken[-1] if taken else places[0]
    free = [place for place in places if all(math.dist(place, other) >= _MARK for other in taken)]
    apart = [place for place in free if all(math.dist(place, other) > 60 for other in own)]
    rated = [(min(ground.clearance(at, place), 2), -math.dist(place, near), place) for place in apart]
    best = max(rated, default=None)
    if best is None or (best[0] < 2 and not is_needed):
        return None if not is_needed else (places[0] if best is None else best[2])
    return best[2]
