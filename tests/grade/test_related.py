"""Relations in whole patterns: what is solved with what, how it is told, and what is wrong with a relation."""

from fractions import Fraction
from itertools import pairwise

import pytest

SIZES = ["S", "M", "L"]
GAUGES = {"plain": {"stitches": 16, "rows": 18}}
FRONT = {"front": "[20, 21, 22] in", "neck": "[7, 7.25, 7.5] in", "shoulder": "[6.5, 6.75, 7.25] in"}
COUNTS = {
    "front": {"across": "front", "multiple": 4, "plus": 1},
    "neck": {"across": "neck", "parity": "odd"},
    "shoulder": {"across": "shoulder"},
}


@pytest.fixture
def related(graded):
    """A front of neck and shoulders in three sizes, with changes."""

    def make(relations=("front = neck + 2 * shoulder",), measures=None, **counts):
        changed = {name: {**COUNTS.get(name, {}), **given} for name, given in {**COUNTS, **counts}.items()}
        changed = {name: given for name, given in changed.items() if given}
        return graded({**FRONT, **(measures or {})}, changed, GAUGES, sizes=SIZES, relations=relations)

    return make


def test_the_relation_holds_in_every_size(related):
    made = related()
    for size in made.sizes:
        n = {name: count.n for name, count in size.counts.items()}
        assert n["front"] == n["neck"] + 2 * n["shoulder"]
        assert (n["front"] - 1) % 4 == 0
        assert n["neck"] % 2 == 1
    assert made.grave() == []


def test_a_count_says_what_it_was_solved_with(related):
    made = related()
    size = made.sizes[0]
    assert size.counts["front"].together == ("neck", "shoulder")
    assert "solved together with neck and shoulder" in size.counts["front"].rounded
    moved = [count for size in made.sizes for count in size.counts.values() if count.nearest is not None]
    for count in moved:
        assert abs(count.n - count.raw) > abs(count.nearest - count.raw)
        assert f"the nearest, {count.nearest}" in count.rounded


def test_without_relations_every_count_is_as_it_was(graded, related):
    alone = graded(FRONT, COUNTS, GAUGES, sizes=SIZES)
    assert all(count.together == () and count.nearest is None for size in alone.sizes for count in size.counts.values())
    assert all("together" not in count.rounded for size in alone.sizes for count in size.counts.values())
    other = related(relations=("neck <= front",))
    assert [other.counts(name) for name in COUNTS] == [alone.counts(name) for name in COUNTS]


def test_a_size_more_changes_nothing_in_the_others(graded):
    few, many = (
        graded({"around": "bust + 4 in", "panel": "bust / 3"},
               {"body": {"across": "around", "multiple": 6}, "panel": {"across": "panel", "multiple": 5}}, GAUGES,
               sizes=sizes, relations=["body = 3 * panel"])
        for sizes in (["S", "M", "L"], ["S", "M", "L", "XL", "2X", "3X"])
    )  # fmt: skip
    assert few.counts("body") == many.counts("body")[:3]
    assert few.counts("panel") == many.counts("panel")[:3]


def test_a_count_without_a_measure_follows_from_relations(related):
    made = related(
        relations=("front = neck + 2 * shoulder", "half = front - neck", "half = 2 * one"),
        half={"least": 4},
        one={"least": 2},
    )
    for size in made.sizes:
        half = size.counts["half"]
        assert half.n == size.counts["front"].n - size.counts["neck"].n == 2 * size.counts["one"].n
        assert (half.raw, half.target, half.finished, half.unit) == (None, None, None, "sts")
        assert half.rounded == "follows from front, neck and one"


def test_rows_follow_as_rows(graded):
    made = graded({"depth": "[8, 9, 10] in"}, {"deep": {"along": "depth"}, "pairs": {"least": 1}}, GAUGES,
                  sizes=SIZES, relations=["deep = 2 * pairs"])  # fmt: skip
    assert {size.counts["pairs"].unit for size in made.sizes} == {"rows"}


def test_sums_in_relations_hold_exactly_or_are_rounded_as_their_keys_say(graded):
    made = graded(
        {"around": "bust + 4 in", "arm": "upper arm + 2 in"},
        {"body": {"across": "around", "multiple": 4}, "sleeve": {"across": "arm"},
         "underarm": {"sum": "0.08 * body", "multiple": 2}, "yoke": {"sum": "body + 2 * sleeve - 4 * underarm"}},
        GAUGES, relations=["yoke = 8 * group"], sizes=["S", "M", "L", "XL"],
    )  # fmt: skip
    assert made.only("unknown-name").place.line == 60
    made = graded(
        {"around": "bust + 4 in", "arm": "upper arm + 2 in"},
        {"body": {"across": "around", "multiple": 4}, "sleeve": {"across": "arm"}, "group": {"least": 4},
         "underarm": {"sum": "0.08 * body", "multiple": 2}, "yoke": {"sum": "body + 2 * sleeve - 4 * underarm"}},
        GAUGES, relations=["yoke = 8 * group"], sizes=["S", "M", "L", "XL"],
    )  # fmt: skip
    for size in made.sizes:
        n = {name: count.n for name, count in size.counts.items()}
        assert n["yoke"] == n["body"] + 2 * n["sleeve"] - 4 * n["underarm"] == 8 * n["group"]
        assert n["underarm"] % 2 == 0
        assert size.counts["underarm"].raw == Fraction(8, 100) * n["body"]
        assert abs(n["underarm"] - size.counts["underarm"].raw) <= 3
    assert made.grave() == []


def test_a_sum_that_relations_cannot_use_is_told(graded):
    made = graded({"around": "bust + 4 in"}, {"body": {"across": "around"}, "half": {"sum": "max(body / 2, 20)"}},
                  GAUGES, relations=["body = 2 * half"], sizes=SIZES)  # fmt: skip
    finding = made.only("relation-not-plain")
    assert finding.place.line == 41
    assert "half" in finding.hint


@pytest.mark.parametrize(
    ("relation", "rule", "column", "width"),
    [
        ("front = nek + 2 * shoulder", "unknown-name", 28, 3),
        ("front = bust", "relation-not-plain", 28, 4),
        ("front = front width", "relation-not-plain", 28, 11),
        ("front = neck * shoulder", "relation-not-plain", 28, 15),
        ("front = 40 / neck", "relation-not-plain", 28, 9),
        ("front = max(neck, shoulder)", "relation-not-plain", 28, 19),
        ("front = neck + 3 in", "units-do-not-mix", 35, 4),
        ("front = neck / 0", "divides-by-nothing", 35, 1),
        ("front = [80, 84]", "size-list-length", 28, 8),
        ("4 = 4", "relation-not-plain", 20, 5),
        ("front - front = neck - neck", "relation-not-plain", 20, 27),
    ],
)
def test_what_is_wrong_with_a_relation(related, relation, rule, column, width):
    made = related(relations=(relation,), measures={"front width": "20 in"})
    finding = made.only(rule)
    assert (finding.place.line, finding.place.column) == (60, column)
    assert finding.place.end_column == column + width
    assert (finding.severity, finding.size) == ("error", None)
    assert made.grave() == [rule]
    assert made.counts("front")


def test_a_list_in_a_relation_is_one_number_per_size(related):
    made = related(relations=("shoulder = [24, 27, 30]",))
    assert made.counts("shoulder") == [24, 27, 30]


def test_strict_signs(related):
    made = related(relations=("neck > 30", "shoulder < 27"))
    assert min(made.counts("neck")) == 31
    assert max(made.counts("shoulder")) <= 26


def test_chains_count_with_what_is_extra(related):
    made = related(
        relations=("front chain = 3 * neck chain",),
        front={"multiple": 1, "plus": 0, "base_extra": 2},
        neck={"base_extra": 1},
    )
    for size in made.sizes:
        assert size.counts["front"].n + 2 == 3 * (size.counts["neck"].n + 1)


def test_weights_say_whose_drift_hurts_more(related):
    light, heavy = (
        related(front={"multiple": 1, "plus": 0, "weight": Fraction(1, 20)}, shoulder={"weight": weight})
        for weight in (Fraction(1, 20), Fraction(5))
    )
    drifts = [max(abs(size.counts["shoulder"].drift) for size in made.sizes) for made in (light, heavy)]
    assert drifts[1] <= drifts[0]
    assert max(abs(size.counts["shoulder"].n - size.counts["shoulder"].raw) for size in heavy.sizes) <= Fraction(1, 2)


@pytest.mark.parametrize(("centre", "odd"), [("motif", {True}), ("gap", {False})])
def test_a_centre_named_needs_no_solving(graded, centre, odd):
    made = graded({"around": "bust + 4 in"}, {"body": {"across": "around", "multiple": 6, "plus": 1, "centre": centre}})
    assert {count.repeats % 2 == 1 for size in made.sizes for count in size.counts.values()} == odd
    assert all(count.n == 6 * count.repeats + 1 for size in made.sizes for count in size.counts.values())


def test_the_same_centre_is_the_better_of_the_two(graded):
    def drift(centre):
        made = graded(
            {"around": "bust + 4 in"}, {"body": {"across": "around", "multiple": 6, "centre": centre}}, GAUGES
        )
        return [abs(size.counts["body"].drift) for size in made.sizes], made

    same, made = drift("same")
    assert len({count.repeats % 2 for size in made.sizes for count in size.counts.values()}) == 1
    assert (max(same), sum(same)) == min((max(one), sum(one)) for one in (drift("motif")[0], drift("gap")[0]))


def test_even_steps(graded):
    lengths = {"around": "[30, 31, 36, 37, 40, 45, 46, 49, 50] in"}
    uneven = graded(lengths, {"body": {"across": "around", "multiple": 4}}, GAUGES)
    even = graded(lengths, {"body": {"across": "around", "multiple": 4, "even_steps": True}}, GAUGES)
    steps = [{b - a for a, b in pairwise(made.counts("body"))} for made in (uneven, even)]
    assert max(steps[0]) - min(steps[0]) > 4
    assert max(steps[1]) - min(steps[1]) <= 4
    assert "in even steps" in even.sizes[1].counts["body"].rounded


def test_pins_without_relations(graded):
    made = graded(
        {"around": "bust + 4 in"}, {"body": {"across": "around", "multiple": 4, "pins": {"M": 164, "XL": 220}}}, GAUGES
    )
    alone = graded({"around": "bust + 4 in"}, {"body": {"across": "around", "multiple": 4}}, GAUGES)
    assert made.counts("body")[2] == 164
    assert made.counts("body")[4] == 220
    kept = [at for at in range(9) if at not in (2, 4)]
    assert [made.counts("body")[at] for at in kept] == [alone.counts("body")[at] for at in kept]
    assert made.sizes[2].counts["body"].pinned
    off = made.only("count-pinned-off")
    assert (off.size, off.place.line, off.severity) == ("XL", 40, "warning")


def test_the_last_size_is_not_touched_by_a_pin_that_fits(graded):
    made = graded({"around": "bust + 4 in"}, {"body": {"across": "around", "multiple": 4, "pins": {"M": 164}}}, GAUGES)
    assert made.rules() == []
    assert made.sizes[2].counts["body"].rounded == "pinned at 164, which comes out even"


@pytest.mark.parametrize(
    ("pins", "rule"), [({"M": 165}, "pin-not-allowed"), ({"Q": 164}, "unknown-size"), ({"M": 8}, "pin-not-allowed")]
)
def test_pins_that_cannot_be(graded, pins, rule):
    made = graded(
        {"around": "bust + 4 in"}, {"body": {"across": "around", "multiple": 4, "least": 20, "pins": pins}}, GAUGES
    )
    finding = made.only(rule)
    assert (finding.place.line, finding.place.column) == (40, 80)
    assert made.counts("body")[2] == 164


def test_a_pin_moves_what_it_is_related_to(related):
    made = related(shoulder={"pins": {"M": 28}})
    size = made.sizes[1]
    assert size.counts["shoulder"].n == 28
    assert size.counts["front"].n == size.counts["neck"].n + 56
    assert size.counts["shoulder"].rounded.startswith("pinned at 28")
    assert {finding.size for finding in made.findings if finding.rule == "count-pinned-off"} <= {"M"}


def test_measures_that_do_not_add_up_are_told(related):
    made = related(measures={"shoulder": "[4, 4.25, 4.75] in"})
    told = {finding.rule for finding in made.findings if finding.severity == "error"}
    assert told == {"relation-moved-measure"}
    finding = next(finding for finding in made.findings if finding.rule == "relation-moved-measure")
    assert "neck" in finding.hint or "front" in finding.hint


def test_order_of_sizes_and_of_counts_does_not_matter(graded):
    counts = {
        "front": {"across": "front", "multiple": 4, "plus": 1},
        "neck": {"across": "neck"},
        "shoulder": {"across": "shoulder"},
    }
    lengths = {"front": "bust / 2", "neck": "bust / 6", "shoulder": "bust / 6"}
    forth = graded(lengths, counts, GAUGES, sizes=["S", "M", "L"], relations=["front = neck + 2 * shoulder"])
    back = graded(lengths, counts, GAUGES, sizes=["L", "M", "S"], relations=["front = neck + 2 * shoulder"])
    assert [forth.counts(name) for name in counts] == [list(reversed(back.counts(name))) for name in counts]


def test_a_size_without_its_measure_is_left_out(graded, size_table):
    table = size_table(sizes=["S", "M"], inches={"bust": [33, 37], "upper_arm": [10, None]})
    made = graded({"around": "bust + 4 in", "arm": "upper arm + 2 in"},
                  {"body": {"across": "around"}, "sleeve": {"across": "arm"}, "both": {"least": 1}}, GAUGES, table,
                  relations=["both = body + sleeve"])  # fmt: skip
    assert made.only("body-measure-missing").size == "M"
    assert "both" in made.sizes[0].counts
    assert set(made.sizes[1].counts) == {"body"}
