"""From along and up to points on the sheet: straight rows, or rounds about a middle, some of them with corners."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Protocol

from gradegen.write.drawing.sketch import Point

_BECOMES_STRAIGHT = 26.0  # how far from the middle the sides of a motif with corners are straight


class Frame(Protocol):
    """Where things of a chart come to lie; y grows downwards."""

    def point(self, along: float, up: float) -> Point:
        """The point on the sheet."""

    def away(self, along: float, up: float) -> Point:
        """The direction, of length 1, that stitches grow in there."""


@dataclass(frozen=True, slots=True)
class Straight:
    """Rows one above the other."""

    def point(self, along: float, up: float) -> Point:
        """The point on the sheet."""
        return along, -up

    def away(self, along: float, up: float) -> Point:
        """Upwards."""
        return 0.0, -1.0


@dataclass(frozen=True, slots=True)
class Around:
    """Rounds: `along` in turns, anticlockwise from the top; `corners` of them, the first at `first` turns.

    With corners the whole is turned so that a side lies at the top.
    """

    corners: int = 0
    first: float = 0.0

    def perimeter(self, up: float) -> float:
        """The way once around."""
        if not self.corners:
            return 2 * math.pi * up
        straight = self._straight(up)
        return up * (2 * math.pi * (1 - straight) + 2 * self.corners * math.tan(math.pi / self.corners) * straight)

    def up_for(self, way: float) -> float:
        """How far out the way once around is this long."""
        return way / (self.perimeter(100.0) / 100.0)

    def _straight(self, up: float) -> float:
        return min(1.0, max(0.0, up / _BECOMES_STRAIGHT - 0.4)) if self.corners else 0.0

    def point(self, along: float, up: float) -> Point:
        """The point on the sheet."""
        turn = self._angle(along)
        x, y = up * math.cos(turn), -up * math.sin(turn)
        straight = self._straight(up)
        if not straight:
            return x, y
        side_x, side_y = self._on_side(along, up)
        return x + (side_x - x) * straight, y + (side_y - y) * straight

    def _angle(self, along: float) -> float:
        turned = 0.5 / self.corners - self.first if self.corners else 0.0
        return math.pi / 2 + 2 * math.pi * (along + turned)

    def _on_side(self, along: float, up: float) -> Point:
        """On the straight side between two corners; equal steps along are equal ways."""
        side, way = divmod((along - self.first) * self.corners, 1.0)
        middle = self._angle(self.first + (side + 0.5) / self.corners)
        aside = up * math.tan(math.pi / self.corners) * (2 * way - 1)
        x = up * math.cos(middle) - aside * math.sin(middle)
        y = up * math.sin(middle) + aside * math.cos(middle)
        return x, -y

    def away(self, along: float, up: float) -> Point:
        """Straight away from the round below."""
        inner, outer = self.point(along, up), self.point(along, up + 1.0)
        x, y = outer[0] - inner[0], outer[1] - inner[1]
        long = math.hypot(x, y) or 1.0
        return x / long, y / long


@dataclass(frozen=True, slots=True)
class Oval(Around):
    """Rounds about a level chain: `along` in turns, anticlockwise from the right end of its upper side.

    `half` of the chain's length; `side`, `turn`: how much of the way around each side and each end takes.
    """

    half: float = 0.0
    side: float = 0.25
    turn: float = 0.25

    def perimeter(self, up: float) -> float:
        """The way once around."""
        return 4 * self.half + 2 * math.pi * up

    def up_for(self, way: float) -> float:
        """How far out the way once around is this long."""
        return (way - 4 * self.half) / (2 * math.pi)

    def point(self, along: float, up: float) -> Point:
        """The point on the sheet."""
        lower, way = divmod(along % 1.0, 0.5)
        way_round = 1 if lower < 1 else -1  # the lower half is the upper one turned half around
        if way < self.side:
            x, y = self.half - 2 * self.half * way / self.side, -up
        else:
            turn = math.pi / 2 + math.pi * (way - self.side) / self.turn
            x, y = -self.half + up * math.cos(turn), -up * math.sin(turn)
        return x * way_round, y * way_round
