"""Printed sizes: within their room, never larger than the pixels do, never out of proportion."""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.design.pictures import PictureFile
from gradegen.write.pictures.sizes import LEAST_DOTS, MOST_DOTS, ROOM, printed_size

# Letter is 215.9 x 279.4 mm (ANSI/ASME Y14.1), A4 210 x 297 mm (ISO 216); margins of large print are an inch
SMALLEST_COLUMN, SMALLEST_HALF = Fraction("210") - Fraction("50.8"), (Fraction("279.4") - Fraction("50.8")) / 2
SIZES = st.sampled_from(["quarter page", "half page", "whole page", "logo"])
SIDES = st.integers(1, 9000)


def file(across: int, up: int, kind: str = "JPEG") -> PictureFile:
    return PictureFile(Path("x"), kind, Fraction(across), Fraction(up))  # type: ignore[arg-type]


def test_the_rooms_fit_every_edition() -> None:
    assert all(across <= SMALLEST_COLUMN for across, _ in ROOM.values())
    assert all(ROOM[size][1] <= SMALLEST_HALF for size in ("quarter page", "half page"))


@settings(derandomize=True, max_examples=150)
@given(SIDES, SIDES, SIZES, st.sampled_from(["JPEG", "SVG"]))
def test_within_its_room_and_in_proportion(across, up, size, kind) -> None:
    printed = printed_size(file(across, up, kind), size)
    assert printed.across <= ROOM[size][0] * 10
    assert printed.up <= ROOM[size][1] * 10
    assert abs(printed.across * up - printed.up * across) <= 10 * max(across, up)  # a tenth of a millimetre is cut off
    if kind == "SVG":
        assert printed.pixels == (0, 0)


@settings(derandomize=True, max_examples=150)
@given(SIDES, SIDES, SIZES)
def test_enough_pixels_and_not_too_many(across, up, size) -> None:
    printed = printed_size(file(across, up), size)
    assert printed.pixels[0] <= across
    assert printed.pixels[1] <= up
    inches = Fraction(printed.across, 10) / Fraction("25.4")
    if printed.across > 100:
        assert printed.pixels[0] >= (inches - Fraction(1, 50)) * LEAST_DOTS
        assert printed.pixels[0] <= (inches + Fraction(1, 50)) * MOST_DOTS


@pytest.mark.parametrize(
    ("across", "up", "size", "millimetres"),
    [
        (4000, 3000, "half page", "138.6mm"),  # the height of half a page decides: 104 * 4 / 3
        (4000, 1000, "half page", "158.0mm"),
        (3000, 4000, "quarter page", "78.0mm"),
        (300, 200, "half page", "50.8mm"),  # 300 pixels at 150 to the inch are 2 in
    ],
)
def test_by_hand(across, up, size, millimetres) -> None:
    assert printed_size(file(across, up), size).width == millimetres
