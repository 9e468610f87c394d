"""The drawings and tables of every demo in every size, read back and measured, against what was graded.

What a measure is on an outline is said here once more, from its corners alone: the maker's geometry, no source needed.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Sequence
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest
from drawn import (
    Drawn,
    Point,
    bottom,
    height,
    left_step,
    length,
    page,
    printing_of,
    read_drawings,
    read_tables,
    top,
    widest,
)

from gradegen import pipeline
from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.write.words.print_numbers import length_style

PATTERNS = Path(__file__).resolve().parents[3] / "shared" / "patterns"
DEMOS = sorted(path.stem for path in PATTERNS.glob("*.yaml") if not re.search("sizes|heads", path.stem))
NEAR = 0.02  # inches: coordinates have two decimals, and points are about ten to the inch


@cache
def demo(name: str) -> Checked:
    checked = pipeline.check_file(PATTERNS / f"{name}.yaml").checked
    assert checked is not None
    return checked


@cache
def html_of(name: str, *sizes: str) -> str:
    return page(demo(name), printing_of(demo(name), *sizes))


def _underarm(line: Sequence[Point]) -> float:
    start, end = left_step(line)
    return end[0] - start[0]


def _side(line: Sequence[Point]) -> float:
    return max(y for _, y in line) - left_step(line)[0][1]


def _above(line: Sequence[Point]) -> float:
    return height(line) - _side(line)


def _neck_depth(line: Sequence[Point]) -> float:
    right = max(x for x, _ in line)
    return min(y for x, y in line if abs(x - right) < NEAR) - min(y for _, y in line)


def _raglan_neck(line: Sequence[Point]) -> float:
    return 2 * length([line[6], line[7], line[0], line[1]])


def _raglan_depth(line: Sequence[Point]) -> float:
    return line[3][1] - line[0][1]


def _ring_neck(line: Sequence[Point]) -> float:
    return 2 * length(line[: len(line) // 2])


def _ring_depth(line: Sequence[Point]) -> float:
    inner, outer = line[: len(line) // 2], line[len(line) // 2 :]
    return outer[len(outer) // 2][1] - inner[len(inner) // 2][1]


def _girth(line: Sequence[Point]) -> float:
    """Round the hat where it is even: the half width that most rounds have."""
    middle = (min(x for x, _ in line) + max(x for x, _ in line)) / 2
    halves = [round(x - middle, 2) for x, _ in line if x > middle]
    return 2 * math.pi * max(set(halves), key=halves.count)


def _hat_side(line: Sequence[Point]) -> float:
    lowest = max(range(len(line)), key=lambda at: line[at][0])
    last = max(at for at in range(lowest, len(line)) if abs(line[at][0] - line[lowest][0]) < NEAR)
    return length(line[: last + 1])


Measure = Callable[[Sequence[Point]], float]
SUM: dict[str, dict[str, dict[str, Measure]]] = {
    "slipway-cardigan": {
        "Back": {
            "back width": bottom, "cross width": top, "side": _side, "armhole": _above, "underarm width": _underarm,
        },
        "Fronts": {
            "front width": bottom, "side": _side, "armhole": _above, "neck depth": _neck_depth,
            "underarm width": _underarm,
        },
        "Sleeves": {
            "wrist": bottom, "cap top": top, "arm": widest, "sleeve length": _side, "cap height": _above,
            "underarm width": _underarm,
        },
    },
    "gunwale-pullover": {
        "Yoke": {"neck opening": _raglan_neck, "yoke depth": _raglan_depth,
                 "back neck": lambda line: line[0][0] - line[7][0]},
        "Body": {"chest": lambda line: 2 * bottom(line)},
        "Sleeves": {"arm": lambda line: 2 * top(line), "wrist": lambda line: 2 * bottom(line)},
    },
    "limpet-pullover": {
        "Yoke": {"neck opening": _ring_neck, "yoke depth": _ring_depth},
        "Body": {"around": lambda line: 2 * bottom(line)},
        "Sleeves": {"arm": lambda line: 2 * top(line), "wrist": lambda line: 2 * bottom(line)},
    },
    "bollard-hat": {"Hat": {"around": _girth, "crown to edge": _hat_side}},
    "skerrywick-wrap": {"Wrap": {"around": widest, "depth": height}},
}  # fmt: skip
TOTALS = {  # the whole height is the sum of these measures
    ("gunwale-pullover", "Body"): ("body length", "hem"),
    ("gunwale-pullover", "Sleeves"): ("sleeve length", "hem"),
    ("limpet-pullover", "Body"): ("body length", "rib"),
    ("limpet-pullover", "Sleeves"): ("sleeve length", "rib"),
    ("slipway-cardigan", "Back"): ("side", "armhole"),
}
LOOSE = {"crown to edge": 0.3, "neck opening": 0.05, "around": 0.07}  # bends softened; arcs of straight pieces


def _close(found: float, size: GradedSize, name: str, *, doubled: bool = False) -> None:
    printed = float(size.measures[name].printed)
    assert found == pytest.approx(printed, abs=LOOSE.get(name, 2 * NEAR if doubled else NEAR)), (size.name, name)


def _compare(name: str, drawings: Sequence[Drawn], sizes: Sequence[GradedSize]) -> None:
    assert [drawn.caption.split(",")[0].split(" in size")[0] for drawn in drawings] == list(SUM[name])
    for drawn, (piece, measures) in zip(drawings, SUM[name].items(), strict=True):
        for size in sizes:
            line = drawn.outlines[size.name]
            for measure, read in measures.items():
                _close(read(line), size, measure, doubled=True)
            total = TOTALS.get((name, piece))
            if total is not None:
                whole = float(sum(size.measures[each].printed for each in total))
                assert height(line) == pytest.approx(whole, abs=2 * NEAR)


@pytest.mark.parametrize("name", DEMOS)
def test_nested_outlines_measure_what_is_graded(name: str) -> None:
    checked = demo(name)
    drawings = read_drawings(html_of(name))
    for drawn in drawings:
        assert set(drawn.outlines) == {size.name for size in checked.sizes}
    _compare(name, drawings, checked.sizes)


@pytest.mark.parametrize("name", DEMOS)
def test_the_outline_of_one_size_measures_what_is_graded(name: str) -> None:
    checked = demo(name)
    for size in checked.sizes:
        drawings = read_drawings(html_of(name, size.name))
        assert all(list(drawn.outlines) == [size.name] for drawn in drawings)
        _compare(name, drawings, (size,))


@pytest.mark.parametrize("name", DEMOS)
def test_every_dimension_line_is_as_long_as_its_measure(name: str) -> None:
    """On one size's pages: from one end of the line to the other, twice where a tube is laid flat."""
    checked = demo(name)
    for size in checked.sizes:
        html = html_of(name, size.name)
        letters = {letter: cells[0] for _, rows in read_tables(html) for letter, _, cells in rows if letter}
        seen: set[str] = set()
        for drawn in read_drawings(html):
            for letter, lines in drawn.lines.items():
                places = [place for line in lines for place in line]
                if len(places) > 4:
                    continue  # along an edge, or around
                long = math.dist(places[0], places[-1])
                printed = _inches(letters[letter])
                half = "widths are half" in drawn.caption and abs(places[0][1] - places[-1][1]) < NEAR
                assert long * (2 if half else 1) == pytest.approx(printed, abs=0.13), (size.name, letter)
                seen.add(letter)
        assert seen or name == "bollard-hat"


def _inches(cell: str) -> float:
    whole, sign = re.fullmatch(r"−?(\d*)([¼½¾⅛⅜⅝⅞]?)", cell).groups()  # type: ignore[union-attr]
    parts = {"": 0.0, "¼": 0.25, "½": 0.5, "¾": 0.75, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875}
    return float(whole or 0) + parts[sign]


@pytest.mark.parametrize("name", DEMOS)
def test_the_tables_say_what_is_graded_in_both_units(name: str) -> None:
    checked = demo(name)
    style = length_style(checked.pattern)
    tables = read_tables(html_of(name))
    assert [heads[0] for heads, _ in tables] == ["Size (in)", "Size (cm)"]
    for (heads, rows), show in zip(tables, (style.rounding.inches_text, style.rounding.centimetres_text), strict=True):
        assert heads[1:] == [size.name for size in checked.sizes]
        cells = {row.casefold(): found for _, row, found in rows}
        for measure in checked.pattern.measures:
            wanted = [show(size.measures[measure].printed) for size in checked.sizes]
            assert cells[measure.casefold()] == wanted, measure


@pytest.mark.parametrize("name", DEMOS)
def test_every_letter_of_a_drawing_stands_in_the_table_and_the_other_way_round(name: str) -> None:
    for sizes in ((), (demo(name).sizes[-1].name,)):
        html = html_of(name, *sizes)
        tables = read_tables(html)
        letters = {letter: row for letter, row, _ in tables[0][1] if letter}
        drawings = read_drawings(html)
        words = {word.split("\N{NO-BREAK SPACE}")[0] for drawn in drawings for word in drawn.words}
        assert set(letters) <= words
        for drawn in drawings:
            named = re.findall(r"\b([A-Z]) ([a-z][^,.]*(?:, total)?)", drawn.caption.split(". ", 1)[1])
            for letter, what in named:
                assert letters[letter].casefold() == what.strip(), drawn.caption
        assert not {"I", "O"} & set(letters)


@pytest.mark.parametrize("name", DEMOS)
def test_body_finished_and_ease_of_every_key_measure(name: str) -> None:
    """Ease is the finished measure less the body (design reference: ease is finished minus body)."""
    checked = demo(name)
    style = length_style(checked.pattern)
    _, rows = read_tables(html_of(name))[0]
    names = [row for _, row, _ in rows]
    for key in checked.sizes[0].key_eases:
        at = [each.casefold() for each in names].index(key.measure.casefold())
        assert key.body.replace("_", " ").casefold() in names[at - 1].casefold()
        assert names[at + 1] == "Ease"
        for size, cell in zip(checked.sizes, rows[at + 1][2], strict=True):
            ease = size.measures[key.measure].printed - size.graded_body[key.body]
            shown = style.rounding.inches_text(abs(ease))
            assert cell.lstrip("+−") == shown
            assert cell.startswith("−") == (ease < 0 and shown != "0")


@pytest.mark.parametrize("name", DEMOS)
def test_what_a_drawing_shows_is_said_with_its_measures(name: str) -> None:
    checked = demo(name)
    size = checked.sizes[0]
    for drawn, (piece, measures) in zip(read_drawings(html_of(name, size.name)), SUM[name].items(), strict=True):
        assert piece.lower() in drawn.title
        for measure in measures:
            printed = length_style(checked.pattern).rounding.inches_text(size.measures[measure].printed)
            assert re.search(
                rf"\b[A-Z] {measure}: {printed} in \([\d.]+ cm\)", drawn.title.replace("\N{NO-BREAK SPACE}", " ")
            )
    for drawn in read_drawings(html_of(name)):
        assert f"in {len(checked.sizes)} sizes, one outline inside the other" in drawn.title


def test_the_sides_of_front_and_back_are_equal_stitch_for_stitch() -> None:
    """Back and fronts are sewn at the sides: the drawn edges are equally long in every size."""
    back, fronts, _ = read_drawings(html_of("slipway-cardigan"))
    for size in demo("slipway-cardigan").sizes:
        assert _side(back.outlines[size.name]) == pytest.approx(_side(fronts.outlines[size.name]), abs=2 * NEAR)


def test_the_drawing_follows_the_rows_and_not_the_measure() -> None:
    """The yoke's lower edge is drawn from its worked stitches: front and half the sleeves, at 15 stitches to 4 in."""
    checked = demo("gunwale-pullover")
    yoke = read_drawings(html_of("gunwale-pullover"))[0]
    for size in checked.sizes:
        line = yoke.outlines[size.name]
        stitches = size.counts["back"].n + size.counts["sleeve part"].n
        assert length([line[5], line[4], line[3], line[2]]) == pytest.approx(
            float(Fraction(stitches * 4, 15)), abs=0.05
        )
