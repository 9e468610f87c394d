"""Published sums that tie counts to each other, put as relations: the counts come out as printed."""

from fractions import Fraction

import pytest

TEN = tuple("abcdefghij")
GAUGE = {"plain": {"stitches": 20, "rows": 28}}


@pytest.fixture
def solved(graded, size_table):
    """Counts without measures over as many sizes as the lists have, given by relations alone."""

    def make(names, *relations, sizes=TEN, counts=None, measures=None):
        table = size_table(sizes=sizes, inches={"bust": [30 + 2 * at for at in range(len(sizes))]})
        every = {**{name: {"least": 1} for name in names}, **(counts or {})}
        made = graded(measures or {}, every, GAUGE, table, relations=relations)
        assert made.grave() == []
        return made

    return make


BINDS = [7, 8, 9, 10, 11, 4, 4, 5, 5, 6]
REPEATS = [29, 30, 31, 32, 33, 25, 26, 27, 28, 29]


def test_a_raglan_back_in_ten_sizes(solved):
    """Free Vintage Knitting, pattern 1729: bind off at both ends, then decrease at both once and so many times more."""
    made = solved(
        ["start", "bind off", "times more", "end"],
        "start = [102, 108, 114, 120, 126, 86, 90, 96, 100, 106]",
        f"bind off = {BINDS}", f"times more = {REPEATS}", "end = start - 2 * bind off - 2 * (1 + times more)",
    )  # fmt: skip
    assert made.counts("end") == [28, 30, 32, 34, 36, 26, 28, 30, 32, 34]


def test_its_sleeve_tops_all_end_at_four(solved):
    made = solved(
        ["start", "bind off", "times more", "end"],
        "end = 4", f"bind off = {BINDS}", f"times more = {REPEATS}",
        "end = start - 2 * bind off - 2 * (1 + times more)",
    )  # fmt: skip
    assert made.counts("start") == [78, 82, 86, 90, 94, 64, 66, 70, 72, 76]


def test_its_front_neck(solved):
    made = solved(["front", "centre", "side"], "front = [44, 46, 48, 50, 52]", "front = 2 * side + centre", "side = 13",
                  sizes=TEN[:5])  # fmt: skip
    assert made.counts("centre") == [18, 20, 22, 24, 26]


def test_the_percentages_of_a_round_yoke(solved):
    """E. Zimmermann, as summarised by Jenjoyce Design: 40 in at 5; K 200, sleeve 66, underarm 16, yoke 268."""
    made = solved(
        ["yoke"], "yoke = body + 2 * sleeve - 4 * underarm", sizes=("a",), measures={"chest": "40 in"},
        counts={"body": {"across": "chest"}, "sleeve": {"sum": "33/100 * body"}, "underarm": {"sum": "8/100 * body"}},
    )  # fmt: skip
    assert [made.counts(name) for name in ("body", "sleeve", "underarm", "yoke")] == [[200], [66], [16], [268]]


def test_a_raglan_yoke_from_its_neck(solved):
    """Pepper Knits: 108 and 17 rounds of 8 are 244; less two sleeves of 48 they are 148, 31.15 in at 4.75."""
    made = solved(["neck", "rounds", "sleeve", "yoke", "body"], "neck = 108", "rounds = 17", "sleeve = 48",
                  "yoke = neck + 8 * rounds", "body = yoke - 2 * sleeve", sizes=("a",))  # fmt: skip
    assert (made.counts("yoke"), made.counts("body")) == ([244], [148])
    assert abs(Fraction(148) / Fraction("4.75") - Fraction("31.15")) < Fraction(1, 100)


def test_sides_that_are_three_stitches_more_than_half_a_multiple(solved):
    """Yarnspirations PAK0129-003407M: 87, 93, 99, 111, all 6k + 3; 17, 19, 19, 17 more are 104, 112, 118, 128."""
    made = solved(["cast on", "more", "after", "ribs"], "cast on = [87, 93, 99, 111]", "more = [17, 19, 19, 17]",
                  "after = cast on + more", "cast on = 6 * ribs + 3", sizes=TEN[:4])  # fmt: skip
    assert made.counts("after") == [104, 112, 118, 128]
    assert made.counts("ribs") == [14, 15, 16, 18]


def test_a_neck_and_shoulders_that_do_not_come_out_are_told(graded, size_table):
    """The same identity with one number changed; an odd one clashes with fewer, for what is taken off is even."""
    table = size_table(sizes=TEN, inches={"bust": [30 + 2 * at for at in range(10)]})

    def told(end):
        made = graded(
            {}, {name: {"least": 1} for name in ("start", "bind off", "times more", "end")}, GAUGE, table,
            relations=[
                "start = [102, 108, 114, 120, 126, 86, 90, 96, 100, 106]", f"bind off = {BINDS}",
                f"times more = {REPEATS}", "end = start - 2 * bind off - 2 * (1 + times more)",
                f"end = [28, 30, 32, 34, 36, 26, 28, {end}, 32, 34]",
            ],
        )  # fmt: skip
        finding = made.only("relations-clash")
        assert finding.size == "h"
        return [finding.place.line, *(place.line for place, _ in finding.see_also)]

    assert told(32) == [60, 61, 62, 63, 64]
    assert told(31) == [60, 63, 64]
