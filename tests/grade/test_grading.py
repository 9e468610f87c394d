"""Whole patterns graded: measures, counts, the finished measure, order, and one size not touching another."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gradegen.grade import grade_sizes


def test_a_measure_and_its_count(graded):
    made = graded({"around": "bust + 3 in"}, {"band": {"across": "around", "multiple": 4}})
    assert made.targets("around") == [Fraction(n) for n in (32, 36, 40, 44, 48, 52, 56, 60, 64)]
    assert made.counts("band") == [112, 128, 140, 156, 168, 184, 196, 212, 224]  # ties (126, 154) go up
    assert made.finished("around")[1] == Fraction(128) * 4 / 14
    assert made.sizes[1].counts["band"].raw == 126
    assert made.sizes[1].counts["band"].rounded == "half-way between 124 and 128, taken up; 2 sts up"
    assert made.sizes[0].counts["band"].rounded == "comes out even"
    assert (made.sizes[0].counts["band"].below, made.sizes[0].counts["band"].above) == (108, 116)
    assert made.grave() == []


def test_the_words_name_both_neighbours(graded):
    made = graded({"around": "[40] in"}, {"band": {"across": "around", "multiple": 4}},
                  {"g": {"stitches": "13.97", "rows": 7}}, sizes=["M"])  # fmt: skip
    assert made.sizes[0].counts["band"].rounded == "nearest of 136 and 140; 0.3 sts up"


def test_exactly_how_it_was_rounded(graded):
    words = {
        "96": "comes out even",
        "97": "nearest of 96 and 100; 1 st down",
        "99.6": "nearest of 96 and 100; 0.4 sts up",
        "98": "half-way between 96 and 100, taken up; 2 sts up",
    }
    for raw, rounded in words.items():
        made = graded(
            {"a": f"{raw} in"}, {"n": {"across": "a", "multiple": 4}}, {"g": {"stitches": 4, "rows": 4}}, sizes=["M"]
        )
        assert made.sizes[0].counts["n"].rounded == rounded


def test_base_extra_is_kept_apart(graded):
    made = graded({"a": "20 in"}, {"n": {"across": "a", "multiple": 12, "plus": 11, "base_extra": 1}})
    size = made.sizes[0]
    assert (size.counts["n"].n, size.counts["n"].chain, size.counts["n"].repeats) == (71, 72, 5)
    assert size.numbers() == {"n": 71, "n chain": 72}


def test_parity_least_and_most(graded):
    made = graded(
        {"a": "10 in"},
        {
            "odd": {"across": "a", "multiple": 3, "parity": "odd"},
            "least": {"across": "a", "multiple": 4, "least": 50},
            "most": {"across": "a", "multiple": 4, "most": 21},
        },
    )  # fmt: skip
    counts = made.sizes[0].numbers()
    assert (counts["odd"], counts["least"], counts["most"]) == (33, 52, 20)
    assert made.sizes[0].counts["least"].rounded == "at least 50; 17 sts up"
    assert made.sizes[0].counts["most"].rounded == "at most 21; 15 sts down"


def test_an_impossible_parity_is_told_once_at_its_place(graded):
    made = graded({"a": "10 in"}, {"n": {"across": "a", "multiple": 4, "parity": "odd"}})
    finding = made.only("no-count-fits")
    assert (finding.place.line, finding.place.column, finding.size) == (40, 62, None)
    assert all("n" not in size.counts for size in made.sizes)


def test_pieces_share_the_measure(graded):
    made = graded({"around": "40 in"}, {"front": {"across": "around", "pieces": 2, "multiple": 6}})
    assert made.counts("front")[0] == 72  # 20 in at 3.5 per in = 70
    assert made.finished("around")[0] == Fraction(72 * 2) / Fraction(7, 2)


def test_rows_along_and_the_half_twist_band_on_both_sides(graded):
    made = graded(
        {"depth": "15 in"},
        {"rows": {"along": "depth"}, "rounds": {"along": "depth", "both_sides": True}},
        {"g": {"stitches": 14, "rows": 7}},
    )
    assert made.sizes[0].counts["rows"].n == 26  # 26.25
    assert made.sizes[0].counts["rows"].unit == "rows"
    assert made.sizes[0].counts["rounds"].n == 13  # 13.125: each round adds its height twice
    assert made.sizes[0].counts["rounds"].finished == Fraction(13 * 2 * 4, 7)


def test_row_repeat(graded):
    made = graded(
        {"depth": "15 in"}, {"rows": {"along": "depth", "multiple": 6, "plus": 1}}, {"g": {"rows": 7, "stitches": 1}}
    )
    assert made.counts("rows")[0] == 25


def test_gauge_in_repeats_in_centimetres_and_before_washing(graded):
    made = graded(
        {"a": "40 in", "d": "10 in"},
        {"by repeats": {"across": "a", "gauge": "shells", "multiple": 4}, "rows": {"along": "d", "gauge": "washed"}},
        {
            "shells": {"repeats": 5, "repeat_of": 4, "over": "10 cm"},
            "washed": {"stitches": 24, "rows": 31, "over": "4 in", "before_stitches": 26, "before_rows": 35},
        },
    )
    assert made.sizes[0].counts["by repeats"].raw == Fraction(40) * Fraction(254, 1000) * 20
    rows = made.sizes[0].counts["rows"]
    assert rows.n == 78  # 77.5, a tie up
    assert rows.on_hook == Fraction(78 * 4, 35)


def test_sums_whatever_their_order(graded):
    made = graded(
        {"a": "20 in"},
        {"total": {"sum": "2 * twice + 1"}, "twice": {"sum": "band + band chain"},
         "band": {"across": "a", "multiple": 5, "base_extra": 2}},
    )  # fmt: skip
    assert made.sizes[0].numbers()["band"] == 70
    assert made.sizes[0].numbers()["twice"] == 142
    assert made.sizes[0].numbers()["total"] == 285
    assert made.sizes[0].counts["total"].raw is None
    assert list(made.sizes[0].counts) == ["total", "twice", "band"]


def test_a_sum_with_a_multiple_is_snapped_too(graded):
    made = graded({"a": "20 in"}, {"band": {"across": "a"}, "half": {"sum": "band / 4", "multiple": 4}})
    assert made.sizes[0].counts["half"].n == 16
    assert made.sizes[0].counts["half"].raw == Fraction(35, 2)


def test_circles_are_told_once(graded):
    made = graded(
        {"a": "b + 1 in", "b": "a + 1 in", "c": "b + 1 in"},
        {"x": {"sum": "y"}, "y": {"sum": "z"}, "z": {"sum": "x + 1"}, "w": {"sum": "2 * x"}, "v": {"across": "a"}},
    )
    circles = [finding for finding in made.findings if finding.rule == "sum-in-a-circle"]
    assert [(finding.place.line, finding.place.column) for finding in circles] == [(10, 20), (40, 20)]
    assert len(made.findings) == 2
    assert not made.sizes[0].counts
    assert not made.sizes[0].measures


def test_a_half_count_is_told_per_size(graded):
    made = graded({"a": "[10, 10, 11] in"}, {"n": {"across": "a"}, "half": {"sum": "n / 2"}}, sizes=["S", "M", "L"])
    assert made.counts("n") == [35, 35, 39]
    assert [finding.size for finding in made.findings if finding.rule == "count-not-whole"] == ["S", "M", "L"]
    made = graded({"a": "[10, 10, 12] in"}, {"n": {"across": "a"}, "half": {"sum": "n / 2"}}, sizes=["S", "M", "L"])
    assert [finding.size for finding in made.findings if finding.rule == "count-not-whole"] == ["S", "M"]
    assert made.sizes[2].counts["half"].n == 21


def test_which_end_of_the_band_is_graded(graded):
    ends = {
        take: graded({"around": "bust"}, take=take, sizes=["M"]).targets("around") for take in ("low", "middle", "high")
    }
    assert ends == {"low": [36], "middle": [37], "high": [38]}


def test_sizes_chosen_and_lists_by_the_pattern(graded):
    made = graded({"depth": "[11, 12] in"}, sizes=["M", "XL"])
    assert [(size.name, size.index) for size in made.sizes] == [("M", 0), ("XL", 1)]
    assert made.targets("depth") == [11, 12]


def test_an_unknown_size_keeps_the_others_in_their_places(graded):
    made = graded({"depth": "[11, 12, 13] in"}, sizes=["M", "XK", "2X"])
    assert made.only("unknown-size").place == made.pattern.sizes.wanted[1].place
    assert made.targets("depth") == [11, 13]
    assert [size.index for size in made.sizes] == [0, 2]


def test_sizes_in_another_order_and_twice(graded):
    made = graded({"depth": "[11, 12, 13] in"}, sizes=["L", "M", "L"])
    assert made.rules() == ["size-repeated", "size-order-differs", "measure-shrinks"]


def test_a_list_of_the_wrong_length(graded):
    made = graded({"depth": "[11, 12] in"}, {"rows": {"along": "depth"}, "more": {"sum": "rows + 1"}})
    finding = made.only("size-list-length")
    assert (finding.place.line, finding.place.column, finding.expected, finding.found) == (10, 20, "9", "2")
    assert len(made.findings) == 1


def test_a_column_in_centimetres_only_is_turned_exactly_and_marked(graded, size_table):
    table = size_table(("A", "B"), "chest", {"chest": [30, 32]}, {"wrist": [15, 16]})
    made = graded({"cuff": "wrist + 1 in", "around": "chest"}, table=table)
    assert made.targets("cuff") == [Fraction(1500, 254) + 1, Fraction(1600, 254) + 1]
    assert made.sizes[0].converted == {"wrist"}
    note = made.only("inches-from-centimetres")
    assert (note.severity, note.place.line, note.place.column) == ("note", 10, 20)


def test_a_hole_in_the_table_concerns_its_size_alone(graded, size_table):
    table = size_table(("A", "B"), "chest", {"chest": [30, 32], "wrist": [6, None]})
    made = graded({"cuff": "wrist + 1 in"}, {"cuff sts": {"across": "cuff"}}, table=table)
    finding = made.only("body-measure-missing")
    assert (finding.size, finding.place.line, finding.place.column) == ("B", 10, 20)
    assert made.sizes[0].counts["cuff sts"].n == 25  # 24.5
    assert not made.sizes[1].counts
    assert len(made.findings) == 1


def test_a_derived_column_says_so(graded, size_table, column):
    table = size_table()
    girth = column("shoulder_girth", [33, 36.5, 40, 43.5, 47, 50.5, 54, 57.5, 61], None, 50,
                   derived="0.8676 x bust + 25.636 cm", spread_cm=Fraction("3.64"))  # fmt: skip
    table = replace(table, columns={**table.columns, "shoulder_girth": girth})
    made = graded({"around": "shoulder girth + 3 in"}, table=table, width="around")
    assert made.only("body-measure-derived").severity == "note"
    assert (made.sizes[0].ease, made.sizes[0].ease_body, made.sizes[0].fit) == (3, "shoulder_girth", None)


MEASURES = {"around": "bust + 3 in", "depth": "max(upper arm, 12 in) / 2"}
COUNTS = {
    "band": {"across": "around", "multiple": 6, "plus": 1},
    "rows": {"along": "depth", "multiple": 2},
    "sum": {"sum": "2 * band + rows"},
}


def test_adding_a_size_changes_nothing_in_the_others(graded):
    def without_index(size):
        return replace(size, index=0)

    alone = {name: without_index(graded(MEASURES, COUNTS, sizes=[name]).sizes[0]) for name in ("S", "M", "2X")}
    for chosen in (["S", "M"], ["S", "M", "2X"], ["XS", "S", "M", "L", "XL", "2X"]):
        for size in graded(MEASURES, COUNTS, sizes=chosen).sizes:
            assert without_index(size) == alone.get(size.name, without_index(size))


@settings(derandomize=True, max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    multiple=st.integers(1, 12),
    plus=st.integers(-3, 6),
    stitches=st.fractions(min_value=6, max_value=40, max_denominator=4),
    ease=st.fractions(min_value=-3, max_value=8, max_denominator=8),
    parity=st.sampled_from([None, "even", "odd"]),
)
def test_a_larger_body_never_gets_fewer_stitches(graded, multiple, plus, stitches, ease, parity):
    made = graded(
        {"around": f"bust + {ease} in"},
        {"n": {"across": "around", "multiple": multiple, "plus": plus, "parity": parity}},
        {"g": {"stitches": stitches, "rows": 8}},
    )
    if "no-count-fits" in made.rules():
        assert parity is not None
        assert multiple % 2 == 0
        return
    counts = made.counts("n")
    assert counts == sorted(counts)
    width = multiple * (2 if parity and multiple % 2 else 1)
    for size in made.sizes:
        one = size.counts["n"]
        assert (one.n - plus) % multiple == 0
        assert parity is None or one.n % 2 == (parity == "odd")
        assert 2 * abs(one.n - one.raw) <= width
        assert one.finished == one.n * 4 / stitches
        assert size.measures["around"].printed == one.finished


def test_nothing_to_grade(build):
    made = build()
    sizes, findings = grade_sizes(made.pattern, made.table)
    assert len(sizes) == 9
    assert findings == ()
