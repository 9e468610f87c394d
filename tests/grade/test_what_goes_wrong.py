"""Faults in sums, gauges and names: which rule, at which line and column, and nothing besides."""

import pytest

LINE = 10  # the first measure; sums begin at column 20


@pytest.mark.parametrize(
    ("words", "rule", "column", "width"),
    [
        ("bust + 3", "units-do-not-mix", 27, 1),
        ("3 + bust", "units-do-not-mix", 20, 1),
        ("bust + 3 sts", "units-do-not-mix", 27, 5),
        ("bust + 3 rows", "units-do-not-mix", 27, 6),
        ("bust + 3 g", "units-do-not-mix", 27, 3),
        ("bust * upper arm", "units-do-not-mix", 20, 16),
        ("2 * (bust * 3 in)", "units-do-not-mix", 25, 11),
        ("3 / bust", "units-do-not-mix", 20, 8),
        ("1 / 2 in", "units-do-not-mix", 20, 8),
        ("max(bust, 40)", "units-do-not-mix", 30, 2),
        ("max(bust, 3 sts) + 1 in", "units-do-not-mix", 30, 5),
        ("round(bust)", "units-do-not-mix", 20, 11),
        ("round(bust, 2)", "units-do-not-mix", 32, 1),
        ("bust - [1, 1, 1, 1, 1, 1, 1, 1, 1]", "units-do-not-mix", 27, 27),
        ("bust / 0", "divides-by-nothing", 27, 1),
        ("up(bust, 0 in)", "divides-by-nothing", 29, 4),
        ("40", "unit-wrong", 20, 2),
        ("bust / upper arm", "unit-wrong", 20, 16),
        ("20 rows", "unit-wrong", 20, 7),
        ("[1, 2, 3, 4, 5, 6, 7, 8, 9]", "unit-wrong", 20, 27),
        ("bsut + 3 in", "unknown-name", 20, 4),
        ("bust + esae", "unknown-name", 27, 4),
        ("bust-upper arm", "unknown-name", 20, 14),
        ("n / 2", "count-in-a-measure", 20, 1),
        ("n chain * 1 in", "count-in-a-measure", 20, 7),
    ],
)  # fmt: skip
def test_one_fault_one_finding(graded, words, rule, column, width):
    made = graded({"around": words}, {"n": {"across": "around"}})
    finding = made.only(rule)
    place = finding.place
    assert (place.line, place.column, place.end_column) == (LINE, column, column + width)
    assert (finding.severity, finding.size) == ("error", None)
    assert made.rules() == [rule]
    assert not made.sizes[0].measures


@pytest.mark.parametrize(
    ("words", "hint"),
    [
        ("bust + 3", "3 in"), ("40", "40 in"), ("[1½, 2, 3, 4, 5, 6, 7, 8, 9]", "[1½, 2, 3, 4, 5, 6, 7, 8, 9] in"),
        ("bsut", "Did you mean bust?"), ("bust-upper_arm", "bust - upper arm, with blanks"),
        ("1 / 2 in", "1/2 in (without blanks round the /)"), ("round(bust)", "round(..., 1/4 in)"),
    ],
)  # fmt: skip
def test_hints(graded, words, hint):
    assert graded({"around": words}).findings[0].hint == hint


def test_names_whatever_their_capitals(graded):
    made = graded({"Arm Hole": "Upper_Arm + 1 in", "b": "2 * arm  hole"})
    assert made.targets("b")[0] == 2 * made.targets("Arm Hole")[0]
    assert made.rules() == []


def test_a_measure_with_a_columns_name(graded):
    made = graded({"bust": "bust + 3 in", "half": "bust / 2", "skin": "body bust / 2"})
    assert (made.targets("bust")[2], made.targets("half")[2], made.targets("skin")[2] * 2) == (40, 20, 37)
    finding = made.only("name-has-two-meanings")
    assert (finding.severity, finding.place.line, finding.place.column, finding.hint) == ("note", 11, 20, "body bust")


def test_what_needs_a_faulty_measure_stays_silent(graded):
    made = graded(
        {"around": "bsut", "half": "around / 2", "more": "half + 1 in"},
        {"n": {"across": "more"}, "twice": {"sum": "2 * n"}, "x": {"across": "around"}},
    )
    assert made.rules() == ["unknown-name"]


@pytest.mark.parametrize("words", ["bust - 30 in", "[-1, 2, 2, 2, 2, 2, 2, 2, 2] in"])
def test_nothing_or_less(graded, words):
    made = graded({"a": words})
    assert made.only("measure-not-positive").size == "XS"
    assert len(made.sizes[1].measures) == 1


def test_less_than_nothing_points_at_the_entry(graded):
    made = graded({"a": "[1, 2, 3, 4, -5, 6, 7, 8, 9] in"})
    assert (made.only("measure-not-positive").place.column, made.only("measure-not-positive").size) == (33, "XL")


@pytest.mark.parametrize(
    ("given", "rule", "column"),
    [
        ({"across": "20"}, "unit-wrong", 20), ({"across": "20 sts"}, "unit-wrong", 20),
        ({"along": "20 rows"}, "unit-wrong", 20), ({"across": "other"}, "count-in-a-measure", 20),
        ({"across": "bost"}, "unknown-name", 20), ({"sum": "bust"}, "unit-wrong", 20),
        ({"sum": "other + bust"}, "units-do-not-mix", 28), ({"sum": "other + othre"}, "unknown-name", 28),
        ({"sum": "other + 1/2"}, "count-not-whole", 20), ({"sum": "3 - other"}, "count-below-zero", 20),
        ({"across": "bust - 100 in"}, "measure-not-positive", 20),
        ({"across": "bust", "gauge": "plian"}, "unknown-gauge", 5),
        ({"across": "bust", "pieces": 0}, "no-count-fits", 61),
        ({"across": "bust", "most": 5, "multiple": 6}, "no-count-fits", 61),
    ],
)  # fmt: skip
def test_faults_of_counts(graded, given, rule, column):
    made = graded({}, {"other": {"across": "bust"}, "n": given}, sizes=["M"])
    assert made.rules() == [rule]
    assert (made.findings[0].place.line, made.findings[0].place.column) == (41, column)
    assert "n" not in made.sizes[0].counts


def test_sums_may_use_amounts_and_ratios_of_lengths(graded):
    made = graded({"a": "10 in"}, {"n": {"across": "a"}, "m": {"sum": "n + 3"}, "k": {"sum": "round(bust / a)"}})
    assert (made.sizes[0].numbers()["m"], made.sizes[0].numbers()["k"]) == (38, 3)


@pytest.mark.parametrize(
    ("gauges", "given", "line"),
    [
        ({"g": {"stitches": 14}}, {"along": "bust"}, 40),
        ({"g": {"rows": 8}}, {"across": "bust"}, 40),
        ({"g": {"stitches": 14, "over": "4 sts"}}, {"across": "bust"}, 70),
        ({"g": {"stitches": 14, "over": "0 in"}}, {"across": "bust"}, 70),
        ({"g": {"repeats": 5, "rows": 8}}, {"across": "bust"}, 70),
        ({"g": {"stitches": 0}}, {"across": "bust"}, 70),
        ({"g": {"stitches": 14}, "h": {"stitches": 15}}, {"across": "bust"}, 40),
        ({}, {"across": "bust"}, 40),
    ],
)
def test_gauges_that_do_not_say_enough(graded, gauges, given, line):
    made = graded({}, {"n": given}, gauges)
    assert made.only("gauge-incomplete").place.line == line
    assert len(made.findings) == 1
    assert "n" not in made.sizes[0].counts


def test_sizes_that_go_by_nothing(graded):
    made = graded({"around": "bust + 3 in"}, by="hips")
    assert (made.only("unknown-column").place.line, made.sizes[0].to_fit, made.sizes[0].ease) == (3, None, None)
    assert made.targets("around")[0] == 32


def test_no_size_at_all(graded):
    made = graded({"around": "bust + 3 in"}, sizes=[])
    assert (made.rules(), made.sizes) == (["sizes-missing"], ())


def test_a_thousand_measures_in_a_chain(graded):
    chain = {f"m{at}": f"m{at - 1} + 1 in" for at in range(400, 0, -1)} | {"m0": "bust"}
    assert graded(chain, sizes=["M"]).targets("m400") == [437]
