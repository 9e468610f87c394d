"""The wrap, worked by hand: every round in every size as a plain list of stitches."""

import re
from collections import Counter
from fractions import Fraction

import pytest
from patterns.by_hand import Edge, label_of, nearest, read_yaml, rows_of, stated_in, value_of

SIZES = ("XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X")
# Craft Yarn Council, Woman Size Chart: bust to fit, inches; several published copies agree.
BUST = {
    "XS": (28, 30),
    "S": (32, 34),
    "M": (36, 38),
    "L": (40, 42),
    "XL": (44, 46),
    "2X": (48, 50),
    "3X": (52, 54),
    "4X": (56, 58),
    "5X": (60, 62),
}
# Heinz, Peterson, Johnson, Kerk: Exploring Relationships in Body Dimensions (2003): women, cm, fitted on its open data.
SLOPE, INTERCEPT = Fraction("0.8676"), Fraction("25.636")
INCH = Fraction("2.54")
# Worked out on paper from the gauge and the two sources above.
BANDS = dict(zip(SIZES, (135, 147, 159, 171, 183, 195, 207, 219, 231), strict=True))
ROUNDS = dict(zip(SIZES, (11, 11, 11, 13, 13, 13, 15, 15, 15), strict=True))
LAMP = ("dc", "ch-1", "dc", "ch-1", "dc")
ROPE = ("hdc", *LAMP)


@pytest.fixture(scope="module")
def pattern() -> dict:
    return read_yaml("skerrywick-wrap.yaml")


def numbers(size: str) -> dict[str, int]:
    return {"band": BANDS[size], "lamps": BANDS[size] // 3, "rounds": ROUNDS[size]}


@pytest.mark.parametrize("size", SIZES)
def test_chain_is_the_nearest_one_on_the_multiple(pattern: dict, size: str) -> None:
    middle = Fraction(sum(BUST[size]), 2) * INCH
    around = (SLOPE * middle + INTERCEPT) / INCH + Fraction("3.125")
    assert pattern["measures"]["around"] == "shoulder girth + 3 1/8 in"
    rule, gauge = pattern["counts"]["band"], pattern["gauge"]["lamps"]
    raw = around * gauge["stitches"] / 4
    assert nearest(raw, rule["multiple"], rule["plus"]) == BANDS[size]
    assert abs(BANDS[size] - raw) * 4 / gauge["stitches"] < Fraction(1, 4)  # inches


@pytest.mark.parametrize("size", SIZES)
def test_rounds_make_the_depth_on_both_sides(pattern: dict, size: str) -> None:
    """W = 2 * R * h: each round adds its height on both sides of the chain. Common practice for half-twist bands."""
    depth = Fraction(str(_listed(pattern["measures"]["depth"])[SIZES.index(size)]))
    per_inch = Fraction(pattern["gauge"]["lamps"]["rows"], 4)
    rule = pattern["counts"]["rounds"]
    assert nearest(depth * per_inch / 2, rule["multiple"], rule["plus"]) == ROUNDS[size]
    assert abs(2 * ROUNDS[size] / per_inch - depth) <= Fraction(1, 4)


def _listed(text: str) -> list[str]:
    return [entry.strip() for entry in text[text.index("[") + 1 : text.index("]")].split(",")]


def test_every_size_staggers_the_lamps_across_the_chain() -> None:
    for band in BANDS.values():
        assert 2 * band % 6 == 0
        assert band % 6 == 3


def foundation(band: int) -> list[str]:
    return ["ch"] * band + ["free loop"] * band  # the one edge of a half-twist band meets every chain twice


def rnd_1(edge: Edge) -> list[str]:
    while not edge.is_done:
        edge.work(edge.places[edge.at], "hdc")
    return edge.close()


def rnd_2(edge: Edge) -> list[str]:
    while not edge.is_done:
        edge.work("hdc", "hdc")
        edge.take("hdc", 2)
        edge.work("hdc", *LAMP)
        edge.take("hdc", 2)
    return edge.close()


def rnd_3(edge: Edge) -> list[str]:
    while not edge.is_done:
        edge.work("hdc", "tr", "ch-2")  # the first tr is three of the ch-6
        for place in LAMP:  # a leg in each ch-1 sp; the dc are passed
            edge.take(place)
        edge.make("dc2tog", "ch-2")
    return edge.close()


def rnd_4(edge: Edge) -> list[str]:
    while not edge.is_done:
        edge.work("tr", "hdc")
        edge.take("ch-2")
        edge.work("dc2tog", *LAMP)
        edge.take("ch-2")
    return edge.close()


def rnd_plain(edge: Edge) -> list[str]:
    while not edge.is_done:
        edge.work("tr" if edge.places[edge.at] == "tr" else "dc2tog", "hdc")
        edge.work("ch-2", "hdc", "hdc")
    return edge.close()


def rnd_tips(edge: Edge) -> list[str]:
    while not edge.is_done:
        edge.work("hdc", "sc")
        edge.take("hdc", 2)
        edge.work("hdc", "dc", "dc", "picot", "dc", "dc")
        edge.take("hdc", 2)
    return edge.close()


# The wording each hand-worked round follows: change a round in the file and its list here must be worked anew.
WORDING = {
    "Foundation": "Ch {band}. Give one end a half turn and join with sl st in first ch.",
    "Rnd 1": "hdc in each ch around, then hdc in the free loop of each ch along the other side,",
    "Rnd 2": "*hdc in next st, sk next 2 sts, lamp in next st, sk next 2 sts; rep from * around,",
    "Rnd 3": (
        "Ch 6 (counts as tr and ch 2), dc2tog over next 2 ch-1 sps, ch 2, "
        "*tr in next hdc, ch 2, dc2tog over next 2 ch-1 sps, ch 2; rep from * around,"
    ),
    "Rnd 4": "*hdc in next tr, lamp in next dc2tog; rep from * around,",
    "Rnds 5-{rounds - 3}": "Rep Rnds 3 and 4.",
    "Rnd {rounds - 2}": "Rep Rnd 3.",
    "Rnd {rounds - 1}": "*hdc in next st, 2 hdc in next ch-2 sp; rep from * around,",
    "Rnd {rounds}": "*sc in next st, sk next 2 sts, tip in next st, sk next 2 sts; rep from * around,",
}
UNITS = {"lamps": "lamp", "tips": "picot", "ch-2 sps": "ch-2"}


def worked(size: str) -> dict[str, list[str]]:
    """Every label of the file with the edge its last round leaves."""
    edges, edge = {}, foundation(BANDS[size])
    for label, rnd in {"Rnd 1": rnd_1, "Rnd 2": rnd_2, "Rnd 3": rnd_3, "Rnd 4": rnd_4}.items():
        edge = edges[label] = rnd(Edge(edge))
    for number in range(5, ROUNDS[size] - 2):
        edge = (rnd_4 if number % 2 == 0 else rnd_3)(Edge(edge))
    edges["Rnds 5-{rounds - 3}"] = edge
    edge = edges["Rnd {rounds - 2}"] = rnd_3(Edge(edge))
    edges["Rnd {rounds - 1}"] = rnd_plain(Edge(edge))
    edges["Rnd {rounds}"] = rnd_tips(Edge(edges["Rnd {rounds - 1}"]))
    return edges


def count(edge: list[str], unit: str) -> int:
    """How many of a unit an edge holds; a lamp is five places of which three are dc."""
    if unit == "lamps":
        return Counter(edge)["dc"] // 3
    return Counter(edge)[UNITS.get(unit, unit)]


def test_file_holds_the_rounds_worked_here(pattern: dict) -> None:
    rows = rows_of(pattern)
    assert [label_of(row) for row in rows] == list(WORDING)
    for row in rows:
        assert WORDING[label_of(row)] in row


def test_stitches_are_the_ones_worked_here(pattern: dict) -> None:
    assert pattern["stitches"]["lamp"].startswith("(dc, ch 1, dc, ch 1, dc) in")
    assert pattern["stitches"]["tip"].startswith("(2 dc, picot, 2 dc) in")


@pytest.mark.parametrize("size", SIZES)
def test_every_stated_count(pattern: dict, size: str) -> None:
    edges = worked(size)
    for row in rows_of(pattern)[1:]:
        stated = stated_in(row, numbers(size))
        assert stated, row
        assert stated == {unit: count(edges[label_of(row)], unit) for unit in stated}, (size, row)


@pytest.mark.parametrize("size", SIZES)
def test_counts_name_every_stitch_made(pattern: dict, size: str) -> None:
    """No stitch of a round is left out of its count: lamps hold 3 dc, tips 4."""
    edges = worked(size)
    for row in rows_of(pattern)[1:]:
        stated = stated_in(row, numbers(size))
        said = sum(number * {"lamps": 3, "tips": 4, "ch-2 sps": 0}.get(unit, 1) for unit, number in stated.items())
        made = sum(not place.startswith(("ch-", "picot")) for place in edges[label_of(row)])
        assert said == made, (size, row)


@pytest.mark.parametrize("size", SIZES)
def test_the_rounds_to_repeat_are_whole_pairs(size: str) -> None:
    last = value_of("rounds - 3", numbers(size))
    assert last >= 6
    assert (last - 5 + 1) % 2 == 0


@pytest.mark.parametrize("off", [1, 2, 4, 5])
def test_a_chain_off_the_multiple_does_not_close(off: int) -> None:
    with pytest.raises(AssertionError):
        rnd_2(Edge(rnd_1(Edge(foundation(BANDS["M"] + off)))))


def test_ropes_and_lamps_grow_to_one_height(pattern: dict) -> None:
    """Over each pair of rounds. Heights in chains: hdc 2, dc 3, tr 4; common practice, no source."""
    rows = {label_of(row): row for row in rows_of(pattern)}
    height = {"hdc": 2, "dc": 3, "dc2tog": 3, "tr": 4}
    rope = [re.search(r"\*(\w+) in next", rows[label])[1] for label in ("Rnd 3", "Rnd 4")]
    lamp = [
        re.search(r"(\w+) over next", rows["Rnd 3"])[1],
        re.match(r"\(?(\w+)", pattern["stitches"]["lamp"])[1],
    ]
    assert sum(height[stitch] for stitch in rope) == sum(height[stitch] for stitch in lamp)
