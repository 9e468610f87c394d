"""The hat, worked by hand: every round in every size as a plain list, and its heads against the published ones."""

import math
import re
from fractions import Fraction

import pytest
from patterns.by_hand import Edge, label_of, nearest, read_yaml, rows_of, stated_in, value_of

SIZES = ("NB", "B1", "B3", "Y1", "Y2", "T", "S", "M", "L")
# Worked out on paper from the size table and the gauge, 16 sc and 17 rounds over 4 in.
FULL = dict(zip(SIZES, (48, 54, 60, 66, 72, 78, 84, 90, 96), strict=True))
LAST = dict(zip(SIZES, (26, 28, 30, 33, 35, 39, 41, 43, 46), strict=True))
BRIM = dict(zip(SIZES, (6, 6, 6, 7, 7, 9, 10, 10, 11), strict=True))


@pytest.fixture(scope="module")
def pattern() -> dict:
    return read_yaml("bollard-hat.yaml")


@pytest.fixture(scope="module")
def heads() -> dict:
    return read_yaml("bollard-hat-heads.yaml")


def numbers(size: str) -> dict[str, int]:
    last_side = LAST[size] - BRIM[size]
    return {"full": FULL[size], "crown": FULL[size] // 6, "last side": last_side, "last": LAST[size]}


def inches_per_size(text: str) -> list[Fraction]:
    return [Fraction(entry.strip()) for entry in text[text.index("[") + 1 : text.index("]")].split(",")]


@pytest.mark.parametrize("size", SIZES)
def test_counts_are_the_nearest_ones(pattern: dict, heads: dict, size: str) -> None:
    at = SIZES.index(size)
    low, high = heads["columns"]["head"]["in"][at]
    gauge = pattern["gauge"]["single crochet"]
    around = (Fraction(str(low)) + Fraction(str(high))) / 2 - 1
    assert pattern["measures"]["around"] == "head - 1 in"
    assert nearest(around * gauge["stitches"] / 4, 6) == FULL[size]
    assert abs(Fraction(FULL[size] * 4, gauge["stitches"]) - around) <= Fraction(1, 2)
    per_inch = Fraction(gauge["rows"], 4)
    assert nearest(inches_per_size(pattern["measures"]["crown to edge"])[at] * per_inch, 1) == LAST[size]
    assert nearest(inches_per_size(pattern["measures"]["brim"])[at] * per_inch, 1, least=6) == BRIM[size]


def rnd_1(_: list[str], __: int) -> list[str]:
    return ["sc"] * 6


def even(before: list[str], _: int) -> list[str]:
    edge = Edge(before)
    while not edge.is_done:
        edge.work("sc", "sc")
    return edge.close()


def with_increases(plain: int):
    """*Sc in next `plain` sts, inc in next st; rep from * around."""

    def work(before: list[str], _: int) -> list[str]:
        edge = Edge(before)
        while not edge.is_done:
            for _stitch in range(plain):
                edge.work("sc", "sc")
            edge.work("sc", "sc", "sc")
        return edge.close()

    return work


def crown_round(number: int):
    """Every increase in the middle of its sixth of the round in even rounds, at its end in odd ones."""
    plain = number - 2
    if number % 2:
        return with_increases(plain)

    def work(before: list[str], _: int) -> list[str]:
        edge = Edge(before)
        for _sixth in range(6):
            for stitch in range(plain):
                if stitch == plain // 2:
                    edge.work("sc", "sc", "sc")
                edge.work("sc", "sc")
            if plain == 0:
                edge.work("sc", "sc", "sc")
        return edge.close()

    return work


def crown_wording(number: int) -> str:
    plain, half = number - 2, number // 2 - 1
    if number == 2:
        return "Inc in each st around."
    if number % 2:
        return f"*Sc in next {_sts(plain)}, inc in next st; rep from * around."
    return (
        f"Sc in next {_sts(half)}, inc in next st, *sc in next {_sts(plain)}, inc in next st; rep from * 4 more times, "
        f"sc in next {_sts(half)}."
    )


def _sts(number: int) -> str:
    return "st" if number == 1 else f"{number} sts"


def crown_label(number: int) -> str:
    wearing = [size for size in SIZES if FULL[size] >= 6 * number]
    if len(wearing) == len(SIZES):
        return f"Rnd {number}"
    if len(wearing) == 1:
        return f"Rnd {number} ({wearing[0]} only)"
    return f"Rnd {number} ({', '.join(wearing[:-1])} and {wearing[-1]} only)"


# Label -> (wording, what a hand makes of it, first and last round as sums), in the order of the file.
ROUNDS = {
    "Rnd 1": ("6 sc in magic ring.", rnd_1, "1", "1"),
    **{crown_label(n): (crown_wording(n), crown_round(n), str(n), str(n)) for n in range(2, 17)},
    "Rnd {crown + 1}": ("Sc in back loop only of each st around.", even, "crown + 1", "crown + 1"),
    "Rnds {crown + 2}-{last side - 4}": ("Sc in each st around.", even, "crown + 2", "last side - 4"),
    "Rnds {last side - 3}-{last side - 1}": (
        "Sc in back loop only of each st around.",
        even,
        "last side - 3",
        "last side - 1",
    ),
    "Rnd {last side}": ("Sc in each st around.", even, "last side", "last side"),
    "Rnd {last side + 1}": (
        "Working in front loops only, *sc in next 5 sts, inc in next st; rep from * around.",
        with_increases(5),
        "last side + 1",
        "last side + 1",
    ),
    "Rnds {last side + 2}-{last side + 3}": ("Sc in each st around.", even, "last side + 2", "last side + 3"),
    "Rnd {last side + 4}": (
        "*Sc in next 6 sts, inc in next st; rep from * around.",
        with_increases(6),
        "last side + 4",
        "last side + 4",
    ),
    "Rnds {last side + 5}-{last}": ("Sc in each st around.", even, "last side + 5", "last"),
}


def worked_by(size: str) -> list[str]:
    """The labels this size works: crown rounds up to its own last increase, and all that follow."""
    return [label for label in ROUNDS if "only" not in label or size in label.split("(")[1].replace(",", "").split()]


def test_file_holds_the_rounds_worked_here(pattern: dict) -> None:
    rows = rows_of(pattern)
    assert [label_of(row) for row in rows] == list(ROUNDS)
    for row in rows:
        assert row.startswith(f"{label_of(row)}: {ROUNDS[label_of(row)][0]} ("), row


@pytest.mark.parametrize("size", SIZES)
def test_every_stated_count(pattern: dict, size: str) -> None:
    rows, edge = {label_of(row): row for row in rows_of(pattern)}, []
    for label in worked_by(size):
        _, work, first, last = ROUNDS[label]
        for number in range(value_of(first, numbers(size)), value_of(last, numbers(size)) + 1):
            edge = work(edge, number)
        assert stated_in(rows[label], numbers(size)) == {"sc": len(edge)}, (size, rows[label])


@pytest.mark.parametrize("size", SIZES)
def test_rounds_are_numbered_without_gap_or_overlap(size: str) -> None:
    expected = 1
    for label in worked_by(size):
        _, _, first, last = ROUNDS[label]
        start, end = value_of(first, numbers(size)), value_of(last, numbers(size))
        assert start == expected, (size, label)
        assert end >= start, (size, label)
        expected = end + 1


@pytest.mark.parametrize("number", range(4, 17, 2))
def test_increases_of_even_rounds_lie_half_way_between_those_of_the_odd(pattern: dict, number: int) -> None:
    """Increases set off against each other make a round crown; common practice, no source."""
    rows = {label_of(row).split(" (")[0]: row for row in rows_of(pattern)}
    before, now = (increase_at(rows[f"Rnd {number - 1}"], number - 1), increase_at(rows[f"Rnd {number}"], number))
    assert abs(before - now - Fraction(1, 12)) <= Fraction(1, 12 * (number - 2))  # half a stitch of the round


def increase_at(row: str, number: int) -> Fraction:
    """Where the first increase of a crown round stands, as a part of the whole round; the others follow by sixths."""
    plain = re.search(r": \*?Sc in next (?:(\d+) sts|st),", row)[1]
    return (Fraction(plain or 1) + Fraction(1, 2)) / (6 * (number - 1))


def test_crown_gauge_makes_a_flat_disc(pattern: dict) -> None:
    """A flat disc needs 2 * pi * (row height / stitch width) increases a round: geometry."""
    gauge = pattern["gauge"]["single crochet"]
    assert round(2 * math.pi * gauge["stitches"] / gauge["rows"]) == 6


@pytest.mark.parametrize("size", SIZES)
def test_crown_is_as_wide_as_the_hat_is_round(size: str) -> None:
    """Crown diameter = circumference / pi: geometry; within one round of the crown."""
    diameter, around = 2 * (FULL[size] / 6) / (17 / 4), FULL[size] / 4
    assert abs(diameter - around / math.pi) < 2 / (17 / 4)


@pytest.mark.parametrize("size", SIZES)
def test_brim_spreads_but_does_not_ruffle(size: str) -> None:
    """A brim that grows by less than a flat ring (2 * pi a unit of depth) slopes; by more, it ruffles: geometry."""
    growth, depth = (8 * FULL[size] // 6 - FULL[size]) / 4, BRIM[size] / (17 / 4)
    assert 0.3 * 2 * math.pi * depth < growth < 2 * math.pi * depth


# Calico Joy, size chart: height of a cap, inches, by age; published copy seen.
CAPS = {"NB": (4.5, 5.5), "Y1": (6.75, 6.75), "Y2": (7.25, 7.5)}


@pytest.mark.parametrize(("size", "cap"), CAPS.items())
def test_hat_is_a_little_shallower_than_a_cap_without_brim(size: str, cap: tuple[float, float]) -> None:
    last_side = numbers(size)["last side"]
    assert 0.85 <= last_side / (17 / 4) / (sum(cap) / 2) <= 1


@pytest.mark.parametrize("size", SIZES)
def test_sides_are_deep_enough_for_their_plain_rounds(size: str) -> None:
    assert numbers(size)["last side"] - 4 > FULL[size] // 6 + 2
