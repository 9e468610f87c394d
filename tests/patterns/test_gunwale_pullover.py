"""The raglan pullover, worked by hand: every round in every size as a plain list of stitches."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from patterns.by_hand import Edge, read_yaml, stated_in
from patterns.garments import (
    divided,
    even,
    graded,
    middle,
    numbers,
    of_size,
    passage,
    relations_hold,
    ribbed,
    rows_by_piece,
    shaped,
    sleeve_beginning,
)  # fmt: skip

NAME = "gunwale-pullover"
SIZES = ("XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X", "6X", "7X", "8X")
RIB = 5  # rounds of ribbing: 2 in at 10 rounds to 4 in


@pytest.fixture(scope="module")
def pattern() -> dict:
    return read_yaml(f"{NAME}.yaml")


@pytest.fixture(scope="module")
def bodies() -> dict:
    return read_yaml("gunwale-sizes.yaml")


# ---- counts ---------------------------------------------------------------------------------------------------------


def test_twelve_sizes_fit_28_to_72_in(bodies: dict) -> None:
    bust = bodies["columns"]["bust"]["in"]
    assert tuple(graded(NAME)["sizes"]) == SIZES == tuple(bodies["sizes"])
    assert (bust[0][0], bust[-1][1]) == (28, 72)
    assert all(0 < low - high <= 2 for (_, high), (low, _) in pairwise(bust))


def test_the_nine_published_sizes_are_those_of_the_table(bodies: dict) -> None:
    """Craft Yarn Council, Woman Size Chart, as sizes/women.yaml holds it; 5X upper arm as the table says to use it."""
    women = read_yaml("../../sizes/women.yaml")
    for name, column in bodies["columns"].items():
        published = list(women["columns"][name]["in"])
        if name == "upper arm":
            published[-1] = women["columns"][name]["use"]["5X"]["in"]
        assert column["in"][:9] == published, name


def test_the_three_invented_sizes_follow_their_rule(bodies: dict) -> None:
    """What the head of the file says: so much for each inch of bust. Ours, no source."""
    middles = [middle(band) for band in bodies["columns"]["bust"]["in"]]
    steps = [middles[at] - middles[8] for at in (9, 10, 11)]
    assert [float(one) for one in middles[9:]] == [65, 68, 71]
    arm = bodies["columns"]["upper arm"]["in"]
    assert arm[9:] == [arm[8] + float(step) / 4 for step in steps]
    depth = [sum(band) / 2 for band in bodies["columns"]["armhole depth"]["in"]]
    assert all(abs(depth[9 + i] - depth[8] - float(steps[i]) / 8) <= 1 / 8 for i in range(3))
    assert all("invented for the demo" in column["trust"] for column in bodies["columns"].values())


@pytest.mark.parametrize("size", SIZES)
def test_relations_hold(size: str) -> None:
    assert relations_hold(NAME, size) == []


@pytest.mark.parametrize("size", SIZES)
def test_no_count_is_further_from_its_length_than_a_repeat(pattern: dict, bodies: dict, size: str) -> None:
    """Half a repeat by rounding alone: arithmetic. What relations move stays within one repeat: ours."""
    at, counts = SIZES.index(size), numbers(NAME, size)
    column = {name: middle(values["in"][at]) for name, values in bodies["columns"].items()}
    assert abs(Fraction(counts["body"] * 4, 15) - (column["bust"] + 5)) <= Fraction(4 * 4, 2 * 15)
    assert abs(Fraction(counts["sleeve"] * 4, 15) - (column["upper arm"] + 2)) <= Fraction(2 * 4, 15)
    assert abs(Fraction(counts["yoke rounds"] * 4, 17) - (column["armhole depth"] + Fraction(3, 2))) <= Fraction(1, 2)
    assert pattern["measures"]["chest"] == "bust + 5 in"


# ---- rounds ---------------------------------------------------------------------------------------------------------


def rnd_1(n: dict[str, int]) -> list[str]:
    edge = Edge(["ch"] * n["neck"])
    for part in (n["back top"] // 2, n["sleeve top"], n["back top"], n["sleeve top"], n["back top"] // 2):
        for _ in range(part):
            edge.work("ch", "sc")
        if not edge.is_done:
            edge.make("ch-1")
    return edge.close()


CORNERS = {"full": (("sc", "ch-1", "sc"),), "body": (("sc", "ch-1"), ("ch-1", "sc")), "plain": (("ch-1",),)}


def raglan(before: list[str], kind: str) -> list[str]:
    """`sc in each st to next ch-1 sp`, what is worked in or over the space, four times, then to the end."""
    edge, corners = Edge(before), CORNERS[kind]
    for at in range(4):
        while edge.places[edge.at] == "sc":
            edge.work("sc", "sc")
        edge.work("ch-1", *corners[at % len(corners)])
    while not edge.is_done:
        edge.work("sc", "sc")
    return edge.close()


def yoke(n: dict[str, int]) -> list[list[str]]:
    """Every round of the yoke; the kinds of rounds in the order of the file."""
    pairs = (
        ["full", "body"] * n["mixed"] + ["full"] * n["quick"] + ["plain", "full"] * n["slow"] + ["plain"] * n["even"]
    )
    rounds = [rnd_1(n)]
    for kind in pairs:
        rounds.append(raglan(rounds[-1], kind))
    return rounds


WORDING = {
    "Rnd 2": "*sc in each st to next ch-1 sp, (sc, ch 1, sc) in next ch-1 sp; rep from * 3 more times,",
    "Rnd 3": "(sc, ch 1) in next ch-1 sp, sc in each st to next ch-1 sp, (ch 1, sc) in next ch-1 sp; rep from * once",
    "Rnds 4-{mixed end}": "Rep Rnds 2 and 3.",
    "Rnds {mixed end + 1}-{quick end}": "Rep Rnd 2.",
    "Rnd {quick end + 1}": "*sc in each st to next ch-1 sp, ch 1, sk next ch-1 sp; rep from * 3 more times,",
    "Rnd {quick end + 2}": "*sc in each st to next ch-1 sp, (sc, ch 1, sc) in next ch-1 sp; rep from * 3 more times,",
    "Rnds {quick end + 3}-{slow end}": "Rep last 2 rnds.",
    "Rnds {slow end + 1}-{yoke rounds}": "*sc in each st to next ch-1 sp, ch 1, sk next ch-1 sp; rep from * 3 more",
}


def last_rounds(n: dict[str, int]) -> dict[str, int]:
    """The last round of every label of the yoke."""
    return {
        "Rnd 1": 1,
        "Rnd 2": 2,
        "Rnd 3": 3,
        "Rnds 4-{mixed end}": n["mixed end"],
        "Rnds {mixed end + 1}-{quick end}": n["quick end"],
        "Rnd {quick end + 1}": n["quick end"] + 1,
        "Rnd {quick end + 2}": n["quick end"] + 2,
        "Rnds {quick end + 3}-{slow end}": n["slow end"],
        "Rnds {slow end + 1}-{yoke rounds}": n["yoke rounds"],
    }


def test_file_holds_the_rounds_worked_here(pattern: dict) -> None:
    rows = rows_by_piece(pattern)
    assert list(rows["Yoke"]) == ["Foundation", *last_rounds(numbers(NAME, "M"))]
    for label, words in WORDING.items():
        assert words in rows["Yoke"][label]


@pytest.mark.parametrize("size", SIZES)
def test_every_count_of_the_yoke(pattern: dict, size: str) -> None:
    n, rows = numbers(NAME, size), rows_by_piece(pattern)["Yoke"]
    rounds = yoke(n)
    assert len(rounds) == n["yoke rounds"]
    for label, last in last_rounds(n).items():
        made = rounds[last - 1]
        wanted = {"sc": made.count("sc"), "ch-1 sps": made.count("ch-1")}
        assert stated_in(rows[label], n) == wanted, (size, label)
    assert rounds[-1].count("sc") == n["yoke"]


@pytest.mark.parametrize("size", SIZES)
def test_lines_lie_alike_on_both_sides_and_parts_are_those_of_the_division(size: str) -> None:
    n = numbers(NAME, size)
    for made in yoke(n):
        assert made == made[::-1]
    corners = [at for at, place in enumerate(yoke(n)[-1]) if place == "ch-1"]
    parts = [b - a - 1 for a, b in pairwise(corners)]
    assert parts == [n["sleeve part"], n["back"], n["sleeve part"]]


@pytest.mark.parametrize("size", SIZES)
def test_every_count_of_the_body_and_the_neckband(pattern: dict, size: str) -> None:
    n, rows = numbers(NAME, size), rows_by_piece(pattern)
    body = rows["Body"]
    edge = divided(yoke(n)[-1], n, between=1)
    assert stated_in(body["Rnd 1"], n) == {"sc": edge.count("sc"), "ch sps": 2}
    edge = even(edge, "sc")
    assert stated_in(body["Rnd 2"], n) == {"sc": len(edge)} == {"sc": n["body"]}
    assert stated_in(body["Rnds 3-{body rounds}"], n) == {"sc": len(edge)}
    edge = even(edge, "dc")
    assert stated_in(body["Rnd {body rounds + 1}"], n) == {"dc": len(edge)}
    label = "Rnds {body rounds + 2}-{body rounds + rib rounds}"
    for _ in range(RIB - 1):
        edge = ribbed(edge)
    assert n["rib rounds"] == RIB
    assert stated_in(body[label], n) == {"FPdc": edge.count("FPdc"), "BPdc": edge.count("BPdc")}
    band = even(["loop"] * n["neck"], "sc")
    assert stated_in(rows["Neckband"]["Rnd 1"], n) == {"sc": len(band)}
    band = ribbed(even(band, "dc"))
    assert stated_in(rows["Neckband"]["Rnd 3"], n) == {"FPdc": band.count("FPdc"), "BPdc": band.count("BPdc")}


@pytest.mark.parametrize("size", SIZES)
def test_every_count_of_the_sleeves(pattern: dict, size: str) -> None:
    n, rows = numbers(NAME, size), rows_by_piece(pattern)["Sleeves"]
    left, right = sleeve_beginning(yoke(n)[-1], n, between=1)
    assert left == right
    edge = Edge(left)
    for kind, times in (("ch", n["underarm"] // 2), ("ch-1", 1), ("sc", n["sleeve part"]), ("ch-1", 1)):
        for _ in range(times):
            edge.work(kind, *(["sc"] if kind != "ch-1" else []))
    for _ in range(n["underarm"] // 2):
        edge.work("ch", "sc")
    edge = edge.close()
    assert stated_in(rows["Rnd 1"], n) == {"sc": len(edge)} == {"sc": n["sleeve"]}
    edge = even(edge, "sc")
    assert stated_in(rows["Rnd 2"], n) == {"sc": len(edge)}
    edge = ["sc2tog", *edge[2:-2], "sc2tog"]
    assert stated_in(rows["Dec Rnd"], n) == {"sts": len(edge)}
    text = of_size(passage(NAME, "Next {sleeve rounds - 3} rnds:"), SIZES.index(size), len(SIZES))
    rounds = list(shaped(text, edge, "sc"))
    assert len(rounds) + 3 == n["sleeve rounds"]
    assert stated_in(rows["Next {sleeve rounds - 3} rnds"], n) == {"sts": len(rounds[-1])} == {"sts": n["cuff"]}
    edge = ribbed(even(rounds[-1], "dc"))
    assert stated_in(rows["Next {rib rounds - 1} rnds"], n) == {"FPdc": len(edge) // 2, "BPdc": len(edge) // 2}


# ---- fit ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("size", SIZES)
def test_body_and_sleeve_meet_the_underarm_chain_from_both_sides(size: str) -> None:
    """A yoke is divided into front, back and two sleeves, and each underarm is met twice: arithmetic."""
    n = numbers(NAME, size)
    assert n["yoke"] == n["body"] + 2 * n["sleeve"] - 4 * n["underarm"]


def test_nothing_shrinks_and_the_neck_grows_far_less_than_the_chest() -> None:
    """Two published schematics over a like range (Mesic, Alary) grow x 2.1 at the chest, x 1.3 to 1.4 at the neck."""
    by_size = [numbers(NAME, size) for size in SIZES]
    for name in ("body", "sleeve", "cuff", "neck", "underarm", "yoke rounds", "body rounds", "sleeve rounds", "yoke"):
        assert all(a[name] <= b[name] for a, b in pairwise(by_size)), name
    grown = {name: by_size[-1][name] / by_size[0][name] for name in ("body", "neck", "sleeve")}
    assert grown["body"] > 2
    assert 1.1 < grown["neck"] < 1.4
    assert 1.9 < grown["sleeve"] < 2.2


@pytest.mark.parametrize("size", SIZES)
def test_a_head_passes_the_neck(size: str) -> None:
    """Craft Yarn Council, Head Circumference Chart, woman 21-23 in: from memory, unchecked. A loose chain gives."""
    assert Fraction(numbers(NAME, size)["neck"] * 4, 15) >= 22
