"""How large a picture is printed, and with how many pixels."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from gradegen.design.pictures import PictureFile, PictureSize

# The most room in millimetres, across and up, that every edition has: the column of large print on Letter is the
# narrowest. Half a page is half its height, caption and all; a quarter is half of that across.
ROOM: dict[PictureSize | Literal["logo"], tuple[int, int]] = {
    "quarter page": (78, 104),
    "half page": (158, 104),
    "whole page": (158, 180),
    "logo": (48, 15),
}
MOST_DOTS, LEAST_DOTS = 240, 150  # to the inch; common practice, no source
_INCH = Fraction(254, 10)


@dataclass(frozen=True, slots=True)
class Printed:
    """A picture's printed size in tenths of a millimetre, and the pixels kept of it (0, 0 for drawings)."""

    across: int
    up: int
    pixels: tuple[int, int]

    @property
    def width(self) -> str:
        """The width as style sheets write it."""
        return f"{self.across // 10}.{self.across % 10}mm"


def printed_size(file: PictureFile, size: PictureSize | Literal["logo"]) -> Printed:
    """The largest size within its room at which the pixels do."""
    room = ROOM[size]
    scale = min(room[0] / file.across, room[1] / file.up)
    if not file.is_scalable:
        scale = min(scale, _INCH / LEAST_DOTS)
    across, up = (max(1, int(scale * side * 10)) for side in (file.across, file.up))
    if file.is_scalable:
        return Printed(across, up, (0, 0))
    wide, high = (
        max(1, round(side / 10 / _INCH * MOST_DOTS)) for side in (scale * file.across * 10, scale * file.up * 10)
    )
    return Printed(across, up, (min(wide, int(file.across)), min(high, int(file.up))))
