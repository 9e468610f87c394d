"""What half a stitch does, what limits a measure, and what would come nearer: by hand, and by grading again."""

from fractions import Fraction

import pytest

from gradegen.grade.ask.nearer import find_nearer
from gradegen.grade.ask.sensitivity import limited_counts, sensitivity


@pytest.fixture
def sensed(graded):
    def make(*args, **given):
        made = graded(*args, **given)
        return made, *sensitivity(made.pattern, made.table, made.sizes)

    return make


def test_half_a_stitch_against_published_sums(graded):
    """184 sts are 46 in at 4.00 to the inch, 43.29 at 4.25, 52.57 at 3.5 (Double Ewe); here half a stitch over 2 in."""
    made = graded(
        {"around": "46 in"}, {"n": {"across": "around"}}, {"plain": {"stitches": 16, "rows": 20}}, sizes=["M"]
    )
    assert made.counts("n") == [184]
    found, _ = sensitivity(made.pattern, made.table, made.sizes)
    (size,) = found.felt[0].sizes
    assert size.finished + size.tighter == Fraction(184) / (4 + Fraction(1, 8))
    assert size.finished + size.looser == Fraction(184) / (4 - Fraction(1, 8))
    # twice half a stitch over 4 in is the quarter of a stitch to the inch of the source
    assert round(Fraction(184) / (4 + Fraction(2, 8)), 2) == Fraction("43.29")


def test_40_inches_at_half_a_stitch_more_and_less(graded):
    """40 in at 21.5 or 22.5 over 4 in are 215 or 225 sts (Knitting Robin)."""
    made = graded(
        {"around": "40 in"}, {"n": {"across": "around"}}, {"plain": {"stitches": 22, "rows": 20}}, sizes=["M"]
    )
    found, _ = sensitivity(made.pattern, made.table, made.sizes)
    (size,) = found.felt[0].sizes
    assert made.counts("n") == [220]
    assert Fraction(220) / (size.finished + size.looser) == Fraction(215, 40)
    assert Fraction(220) / (size.finished + size.tighter) == Fraction(225, 40)


def test_the_error_grows_with_the_size(sensed):
    _, found, _ = sensed({"around": "bust + 4 in"}, {"body": {"across": "around"}})
    looser = [size.looser for size in found.felt[0].sizes]
    assert looser == sorted(looser)
    assert [size.is_a_size for size in found.felt[0].sizes] == [2 * size.looser > 4 for size in found.felt[0].sizes]


def test_rows_feel_half_a_row_and_pieces_share(sensed):
    counts = {"deep": {"along": "depth"}, "half": {"across": "around", "pieces": 2}}
    _, found, _ = sensed({"depth": "[8, 9, 10] in", "around": "bust + 4 in"}, counts, sizes=["S", "M", "L"])
    deep, half = found.felt
    assert (deep.unit, half.unit) == ("rows", "sts")
    assert deep.sizes[0].finished + deep.sizes[0].looser == deep.sizes[0].finished * 8 / Fraction(15, 2)
    assert half.sizes[0].finished + half.sizes[0].looser == half.sizes[0].finished * 14 / Fraction(27, 2)


def test_a_metric_gauge_is_felt_over_10_cm(sensed):
    _, found, _ = sensed(
        {"around": "100 cm"},
        {"n": {"across": "around"}},
        {"plain": {"stitches": 7, "rows": 8, "over": "5 cm"}},
        sizes=["M"],
    )
    assert found.felt[0].over == "10 cm"
    (size,) = found.felt[0].sizes
    assert size.finished + size.looser == size.finished * 14 / Fraction(27, 2)


@pytest.mark.parametrize(
    ("rule", "by"),
    [
        ({"multiple": 12}, "multiple: 12"), ({"parity": "even", "multiple": 5}, "multiple: 5, parity: even"),
        ({"multiple": 6, "centre": "gap"}, "multiple: 6, centre: gap"), ({"least": 150}, "least: 150"),
        ({"pins": {"XS": 150}}, "the pin"), ({}, ""),
    ],
)  # fmt: skip
def test_what_limits_a_measure(graded, rule, by):
    made = graded({"around": "bust + 4 in"}, {"body": {"across": "around", **rule}})
    (one,) = limited_counts(made.pattern, made.sizes)
    assert one.by == by
    assert one.largest == max(abs(size.counts["body"].drift) for size in made.sizes)
    assert one.size in [size.name for size in made.sizes if abs(size.counts["body"].drift) == one.largest]


@pytest.mark.parametrize("multiple", [1, 2, 5, 9])
def test_half_a_repeat_is_the_bound_of_what_a_repeat_alone_moves(graded, multiple):
    made = graded({"around": "bust + 4 in"}, {"body": {"across": "around", "multiple": multiple}})
    (one,) = limited_counts(made.pattern, made.sizes)
    assert one.half_repeat == Fraction(multiple, 2) * Fraction(4, 14)
    assert one.largest <= one.half_repeat


def test_what_is_said_to_halve_the_drift_does(graded):
    counts = {"body": {"across": "around", "multiple": 12}, "deep": {"along": "depth"}}
    lengths = {"around": "bust + 4 in", "depth": "[8, 8, 9, 9, 10, 10, 11, 11, 12] in"}
    made = graded(lengths, counts)
    nearer = find_nearer(made.pattern, made.table)
    assert nearer.now.count == "body"
    assert nearer.halving
    for way in nearer.halving:
        assert 2 * way.largest.off <= nearer.now.off
        multiple = int(way.change.split()[1]) if way.change.startswith("multiple") else 12
        gauge = {"plain": {"stitches": 14, "rows": 8}}
        if way.change.startswith("gauge"):
            gauge["plain"]["stitches"] = Fraction(_number(way.change.split()[2]))
        again = graded(lengths, {**counts, "body": {**counts["body"], "multiple": multiple}}, gauge)
        drifts = [abs(size.counts[name].drift) for size in again.sizes for name in counts]
        assert max(drifts) == way.largest.off


def _number(text):
    whole = text.rstrip("¼½¾")
    return Fraction(whole) + {"": 0, "¼": Fraction(1, 4), "½": Fraction(1, 2), "¾": Fraction(3, 4)}[text[len(whole) :]]


def test_nothing_within_reach_that_halves_it_was_missed(graded):
    lengths, counts = {"around": "bust + 4 in"}, {"body": {"across": "around", "multiple": 7}}
    made = graded(lengths, counts)
    nearer = find_nearer(made.pattern, made.table)
    halving = set()
    for multiple in (1, 4, 5, 6, 8, 9):
        again = graded(lengths, {"body": {"across": "around", "multiple": multiple}})
        if 2 * max(abs(size.counts["body"].drift) for size in again.sizes) <= nearer.now.off:
            halving.add(f"multiple: {multiple} of body instead of 7")
    for quarters in range(-4, 5):
        stitches = 14 + Fraction(quarters, 4)
        again = graded(lengths, counts, {"plain": {"stitches": stitches, "rows": 8}})
        if quarters and 2 * max(abs(size.counts["body"].drift) for size in again.sizes) <= nearer.now.off:
            halving.add(stitches)
    found = {way.change if way.change.startswith("mult") else _number(way.change.split()[2]) for way in nearer.halving}
    assert found == halving or (len(nearer.halving) == 5 and found < halving)
    assert nearer.tried == 6 + 8


def test_a_pattern_that_comes_out_even_needs_nothing(sensed):
    _, found, _ = sensed({"around": "40 in"}, {"body": {"across": "around", "multiple": 4}}, sizes=["M"])
    assert found.nearer is None


def test_a_pattern_without_measures_gives_nothing(sensed):
    _, found, findings = sensed({}, {})
    assert (found.felt, found.limited, found.nearer, findings) == ((), (), None, ())


def test_related_counts_are_tried_together(graded):
    made = graded({"front": "bust / 2", "neck": "bust / 6"},
                  {"front": {"across": "front", "multiple": 8}, "neck": {"across": "neck"}, "shoulder": {"least": 4}},
                  relations=["front = neck + 2 * shoulder"])  # fmt: skip
    nearer = find_nearer(made.pattern, made.table)
    assert nearer.halving
    for way in nearer.halving:
        assert 2 * way.largest.off <= nearer.now.off


def test_the_girth_sizes_go_by_is_noted_in_every_size(sensed):
    made, _, findings = sensed({"around": "bust + 4 in", "arm": "upper arm + 2 in"},
                               {"sleeve": {"across": "arm"}, "body": {"across": "around"}})  # fmt: skip
    assert {(finding.rule, finding.severity) for finding in findings} == {("gauge-sensitivity", "note")}
    assert [finding.size for finding in findings] == [size.name for size in made.sizes]
    assert {finding.place.line for finding in findings} == {41}
