"""Whatever a pattern says, grading gives sizes and located findings, never a traceback."""

from fractions import Fraction

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gradegen.grade import fit_body
from gradegen.read.sums.formula import MOST_PARTS

words = st.sampled_from(
    """bust + 3 in; a; b / 2; c; n; m chain; 2 * n + 1; [1, 2, 3] in; [1, 2] in; [3, 2 sts, 1 in]
    0 in; -5 in; 5; 12 sts; 1 / (a - a); up(bust / 3 in); max(a, b); round(a, 0 in); bust * bust
    nobody; wrist; wrist - 3 in; body a; 1/3 in; n / 7; m - n; max(3, 4); round(n)
    down(n / 3, 2); 0.000001 in; 99999999999999999999 in""".replace("\n", ";").split(";")
)
whole = st.integers(-3, 12)
rules = st.fixed_dictionaries(
    {},
    optional={
        "multiple": whole, "plus": whole, "base_extra": whole,
        "least": st.integers(-5, 300), "most": st.integers(-5, 300),
        "parity": st.sampled_from(["even", "odd"]), "tie": st.sampled_from(["up", "down"]), "both_sides": st.booleans(),
        "pieces": st.integers(-1, 4), "gauge": st.sampled_from(["g", "h", "x"]),
    },
)  # fmt: skip
counts = st.tuples(st.sampled_from(["across", "along", "sum"]), words, rules).map(
    lambda one: {one[0]: one[1], **one[2]}
)
numbers = st.one_of(st.integers(-1, 20), st.fractions(0, 30, max_denominator=4))
gauges = st.fixed_dictionaries(
    {"over": st.sampled_from(["4 in", "10 cm", "0 in", "3 sts"])},
    optional={"stitches": numbers, "rows": numbers, "repeats": numbers, "repeat_of": st.integers(0, 6),
              "before_stitches": numbers, "before_rows": numbers},
)  # fmt: skip


related = {
    "centre": st.sampled_from(["motif", "gap", "same"]), "even_steps": st.booleans(),
    "pins": st.dictionaries(st.sampled_from(["S", "M", "L", "Q"]), st.integers(-3, 300), max_size=2),
    "weight": st.fractions(Fraction(1, 50), 20, max_denominator=50),
}  # fmt: skip
joint_counts = st.tuples(
    st.sampled_from(["across", "along", "sum", "free"]), words,
    st.fixed_dictionaries({}, optional={"multiple": whole, "plus": whole, "parity": st.sampled_from(["even", "odd"]),
                                        "least": st.integers(-5, 300), "most": st.integers(-5, 300), **related}),
).map(lambda one: {**({} if one[0] == "free" else {one[0]: one[1]}), **one[2]})  # fmt: skip
relations = st.lists(
    st.sampled_from(
        """n = m; n = 2 * m + 1; m >= n; n < m; k = n + m - 3; n = [20, 30, 40]; n = [1, 2]; a = n; n = nobody
        n * m = 4; k = n / 7; n chain = 2 * m chain; n = 12 sts; n = 3 in; k > 99999999999; n + m = 2 * k
        n = max(m, k); 1 = 2;        n = 1/3 * m; n = m / 0; 1000003 * n = 999983 * m""".replace("\n", ";").split(";")
    ),
    max_size=3,
)


@settings(
    derandomize=True, max_examples=120, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    st.dictionaries(st.sampled_from(["a", "b"]), words),
    st.dictionaries(st.sampled_from(["n", "m", "k"]), joint_counts, min_size=1),
    relations,
    st.lists(st.sampled_from(["S", "M", "L", "Q"]), max_size=4),
)
def test_related_counts(graded, size_table, measures, rules, relations, sizes):
    table = size_table(
        ("S", "M", "L"), "bust", {"bust": [(28, 30), 33, (36, 38)], "a": [5, None, 4]}, {"wrist": [15, None, 17]}
    )
    made = graded(measures, rules, {"g": {"stitches": 14, "rows": 8}}, table, sizes, relations=relations)
    assert all(finding.severity != "internal" for finding in made.findings)
    for finding in made.findings:
        assert finding.place.line > 0
    for size in made.sizes:
        assert all(isinstance(count.n, int) for count in size.counts.values())


@settings(
    derandomize=True, max_examples=200, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(
    st.dictionaries(st.sampled_from(["a", "b", "c", "bust"]), words),
    st.dictionaries(st.sampled_from(["n", "m", "k"]), counts),
    st.dictionaries(st.sampled_from(["g", "h"]), gauges),
    st.lists(st.sampled_from(["S", "M", "L", "Q"]), max_size=4),
    st.sampled_from(["bust", "wrist", "waist"]),
    st.fractions(1, 90, max_denominator=8),
)
def test_grading_and_fitting(graded, size_table, measures, rules, gauge, sizes, by, body):
    table = size_table(
        ("S", "M", "L"), "bust", {"bust": [(28, 30), 33, (36, 38)], "a": [5, None, 4]}, {"wrist": [15, None, 17]}
    )
    made = graded(measures, rules, gauge, table=table, sizes=sizes or None, by=by)
    for finding in made.findings:
        assert finding.place.file in ("p.yaml", "t.yaml")
        assert finding.message
        assert len(finding.message) < 400
    for size in made.sizes:
        for name, one in size.counts.items():
            rule = made.pattern.counts[name]
            assert one.n >= 0
            assert one.chain == one.n + rule.base_extra
            assert rule.formula is not None or (one.n - rule.plus) % rule.multiple == 0
        assert all(one.target > 0 for one in size.measures.values())
    fit_body(made.pattern, made.table, made.sizes, {by: body, "nobody": body})


def test_the_longest_sum(graded):
    made = graded({"a": "1 in" + " + 1 in" * MOST_PARTS}, {"n": {"sum": "1" + " * 1" * MOST_PARTS}})
    assert made.rules() == []
    assert made.targets("a")[0] == MOST_PARTS + 1


def test_counts_multiplied_without_end(graded):
    sums = {f"n{at}": {"sum": " * ".join([f"n{at - 1}"] * 50)} for at in range(1, 8)}
    made = graded({"a": "bust"}, {"n0": {"across": "a"}, **sums}, sizes=["M"])
    assert made.only("sum-too-large").place.line == 41
    assert len(made.findings) == 1


def test_a_sum_that_swells_in_the_reader_is_held(graded):
    made = graded({"a": " * ".join(["9" * 20] * 30) + " * 1 in"}, sizes=["M", "L"])
    assert {finding.rule for finding in made.findings} == {"sum-too-large"}
