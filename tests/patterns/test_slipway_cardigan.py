"""The cardigan, worked by hand: every row in every size as a plain list of stitches, and its seams."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import pairwise

import pytest
from patterns.by_hand import Edge, read_yaml, stated_in
from patterns.garments import even, graded, numbers, of_size, passage, relations_hold, rows_by_piece, shaped

NAME = "slipway-cardigan"
SIZES = ("XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X")
BUST = dict(zip(SIZES, range(29, 62, 4), strict=True))  # middles of the Craft Yarn Council's bands, inches
STITCH, ROW = Fraction(15, 4), Fraction(3)  # of half double crochet, to the inch
BAND = 6


@pytest.fixture(scope="module")
def pattern() -> dict:
    return read_yaml(f"{NAME}.yaml")


def worked(row: str, size: str, edge: list[str]) -> list[list[str]]:
    """Every row of a shaping passage of one size."""
    return list(shaped(of_size(passage(NAME, row), SIZES.index(size), len(SIZES)), edge, "hdc"))


def test_nine_sizes() -> None:
    assert tuple(graded(NAME)["sizes"]) == SIZES


@pytest.mark.parametrize("size", SIZES)
def test_relations_hold_and_the_chest_comes_out(pattern: dict, size: str) -> None:
    n = numbers(NAME, size)
    assert relations_hold(NAME, size) == []
    assert pattern["measures"]["chest"] == "bust + 5 in"
    assert n["around"] == n["back"] + 2 * n["front"] + BAND  # the bands lie one on the other
    assert abs(n["around"] / STITCH - (BUST[size] + 5)) <= Fraction(2) / STITCH  # half of 4 sts


def flat(count: int) -> list[str]:
    """`Ch 1 more. Hdc in 2nd ch from hook, hdc in each ch across`: the first chain is passed."""
    edge = Edge(["ch"] * (count + 1))
    edge.take("ch")
    while not edge.is_done:
        edge.work("ch", "hdc")
    return edge.close()


def test_file_holds_the_rows_worked_here(pattern: dict) -> None:
    rows = rows_by_piece(pattern)
    for piece, count in (("Back", "back"), ("Fronts", "front"), ("Sleeves", "cuff")):
        assert rows[piece]["Row 1"].startswith(
            f"Row 1: Ch {{{count} + 1}}. Hdc in 2nd ch from hook, hdc in each ch across."
        )
    assert list(rows["Fronts"])[-2:] == ["Next {front rows} rows", "Next {neck rows} rows"]
    hole = "sc in next 2 sts, ch 2, sk next 2 sts, sc in last 2 sts"
    assert [label for label, row in rows["Buttonhole Band"].items() if hole in row] == [
        "Row {low + 1}",
        "Row {band rows - 4}",
    ]


@pytest.mark.parametrize("size", SIZES)
def test_every_count_of_back_and_fronts(pattern: dict, size: str) -> None:
    n, rows = numbers(NAME, size), rows_by_piece(pattern)
    back = even(flat(n["back"]), "hdc")
    for label in ("Row 1", "Rows 2-5", "Rows 6-{side rows}"):
        assert stated_in(rows["Back"][label], n) == {"hdc": len(back)}
    shaping = worked("Next {arm rows} rows: {back armhole}", size, back)
    assert len(shaping) == n["arm rows"]
    assert stated_in(rows["Back"]["Next {arm rows} rows"], n) == {"hdc": len(shaping[-1])}
    front = even(flat(n["front"]), "hdc")
    assert stated_in(rows["Fronts"]["Rows 6-{side rows}"], n) == {"hdc": len(front)}
    armhole = worked("Next {front rows} rows: {front armhole}", size, front)
    assert stated_in(rows["Fronts"]["Next {front rows} rows"], n) == {"hdc": len(armhole[-1])}
    neck = worked("Next {neck rows} rows: {front neckline}", size, armhole[-1])
    assert stated_in(rows["Fronts"]["Next {neck rows} rows"], n) == {"hdc": len(neck[-1])}
    assert len(armhole) + len(neck) == n["arm rows"]
    assert 2 * len(neck[-1]) + n["neck"] == len(shaping[-1])  # both shoulders, and the neck between them


@pytest.mark.parametrize("size", SIZES)
def test_every_count_of_the_sleeves(pattern: dict, size: str) -> None:
    n, rows = numbers(NAME, size), rows_by_piece(pattern)["Sleeves"]
    edge = flat(n["cuff"])
    for label in ("Row 1", "Rows 2-5", "Row 6"):
        assert stated_in(rows[label], n) == {"hdc": len(edge)}
    sides = worked("Next {sleeve rows - 6} rows: {sleeve sides}", size, edge)
    assert len(sides) + 6 == n["sleeve rows"]
    assert stated_in(rows["Next {sleeve rows - 6} rows"], n) == {"hdc": len(sides[-1])}
    cap = worked("Next {cap rows} rows: {sleeve cap}", size, sides[-1])
    assert len(cap) == n["cap rows"]
    assert stated_in(rows["Next {cap rows} rows"], n) == {"hdc": len(cap[-1])}


@pytest.mark.parametrize("size", SIZES)
def test_every_row_of_the_bands(pattern: dict, size: str) -> None:
    n, rows = numbers(NAME, size), rows_by_piece(pattern)["Buttonhole Band"]
    plain, hole = "plain", "hole"
    block = [hole, "fill", *[plain] * 8]
    order = [plain] * n["low"] + block * (n["buttons"] - 1) + [hole, "fill", *[plain] * 3]
    assert len(order) == n["band rows"]
    assert order.count(hole) == n["buttons"]
    for label, at in {
        "Rows 2-{low}": n["low"],
        "Row {low + 1}": n["low"] + 1,
        "Row {low + 2}": n["low"] + 2,
        "Rows {low + 3}-{low + 10}": n["low"] + 10,
        "Rows {low + 11}-{band rows - 5}": n["band rows"] - 5,
        "Row {band rows - 4}": n["band rows"] - 4,
        "Row {band rows - 3}": n["band rows"] - 3,
        "Rows {band rows - 2}-{band rows}": n["band rows"],
    }.items():
        wanted = {"sc": 4, "ch-2 sp": 1} if order[at - 1] == hole else {"sc": BAND}
        assert stated_in(rows[label], n) == wanted, (size, label)
    assert (n["band rows"] - 5 - (n["low"] + 11) + 1) % 10 == 0  # whole runs of the ten rows


@pytest.mark.parametrize("size", SIZES)
def test_bands_are_as_long_as_the_fronts(size: str) -> None:
    """By the two gauges: 18 rows of band and 12 of front to 4 in."""
    n = numbers(NAME, size)
    assert Fraction(n["band rows"] * 4, 18) == Fraction((n["side rows"] + n["front rows"]) * 4, 12)


@pytest.mark.parametrize("size", SIZES)
def test_the_cap_fits_the_armhole(size: str) -> None:
    """Length of both seam lines by Pythagoras, at the gauge; half an inch is eased in: common practice, no source."""
    n = numbers(NAME, size)
    across, up = n["arm decs"] / STITCH, n["arm decs"] / ROW
    armhole = 2 * (n["underarm"] / STITCH + (n["arm rows"] - 1 - n["arm decs"]) / ROW) + 2 * Fraction(
        math.hypot(across, up)
    )
    slope = math.hypot((n["sleeve"] - 2 * n["underarm"] - n["cap"]) / 2 / STITCH, (n["cap rows"] - 1) / ROW)
    cap = 2 * n["underarm"] / STITCH + n["cap"] / STITCH + 2 * Fraction(slope)
    assert abs(cap - armhole) <= Fraction(1, 2)


def test_nothing_shrinks_and_the_back_grows_less_than_the_bust() -> None:
    """Cross-back grows by half an inch a size at most above L: our own band, from published schematics."""
    by_size = [numbers(NAME, size) for size in SIZES]
    for name in (
        "around",
        "cross",
        "neck",
        "sleeve",
        "cuff",
        "arm rows",
        "underarm",
        "band rows",
        "buttons",
        "cap rows",
    ):
        assert all(a[name] <= b[name] for a, b in pairwise(by_size)), name
    assert all((b["cross"] - a["cross"]) / STITCH <= Fraction(3, 5) for a, b in pairwise(by_size[4:]))
    assert by_size[-1]["cross"] / by_size[0]["cross"] < 1.3 < 1.9 < by_size[-1]["around"] / by_size[0]["around"]
