"""The maker between the sizes."""

from fractions import Fraction

import pytest

from gradegen.grade import fit_body, grade_sizes


@pytest.fixture
def pattern(graded):
    return graded(
        {"around": "bust + 3 in", "arm": "upper arm + 1 in", "depth": "[11, 11, 12, 12, 13, 13, 14, 14, 15] in"},
        {"band": {"across": "around", "multiple": 2}, "rows": {"along": "depth"}, "cuff": {"across": "arm"}},
    )


def fitted(made, gauge=None, **body):
    lengths = {name: Fraction(str(length)) for name, length in body.items()}
    return fit_body(made.pattern, made.table, made.sizes, lengths, gauge)


def test_a_body_on_a_graded_size_gets_that_size(pattern):
    own, findings = fitted(pattern, bust=41)
    size = pattern.sizes[3]
    assert own.own.numbers() == size.numbers()
    assert {name: one.printed for name, one in own.own.measures.items()} == {
        name: one.printed for name, one in size.measures.items()
    }
    assert own.nearest.size == "L"
    assert own.taken["bust"] == "given"
    assert [finding.rule for finding in findings] == ["body-measure-between"]


def test_between_two_sizes(pattern):
    own, _ = fitted(pattern, bust=38)
    assert own.own.counts["band"].n == 144  # 41 in at 3.5: 143.5
    assert own.own.graded_body["upper_arm"] == Fraction(11) + Fraction(1, 4)
    assert own.taken["upper_arm"] == "between M and L"
    own, _ = fitted(pattern, bust=35)
    assert own.own.measures["depth"].target == Fraction(23, 2)  # half-way between 11 and 12


def test_what_was_given_is_used(pattern):
    own, findings = fitted(pattern, bust=38, upper_arm=14)
    assert own.own.measures["arm"].target == 15
    assert own.taken["upper_arm"] == "given"
    assert findings == ()
    assert fitted(pattern, **{"bust": 38, "Upper arm": 14})[0].own.measures["arm"].target == 15


def test_ease_and_fit_are_hers(pattern):
    own, _ = fitted(pattern, bust=38)
    assert own.own.ease == Fraction(144 * 4, 14) - 38
    assert own.own.fit == "classic fit"


@pytest.mark.parametrize(
    ("bust", "size", "also"),
    [
        (29, "XS", ()),
        (30, "XS", ()),
        (39, "L", ("M",)),
        ("38.5", "M", ()),
        ("39.5", "L", ()),
        (70, "5X", ()),
        (20, "XS", ()),
    ],
)
def test_the_nearest_printed_size(pattern, bust, size, also):
    """CYC bust row: 39 in lies between M (36-38) and L (40-42); as far from both, the larger is taken."""
    own, _ = fitted(pattern, bust=bust)
    assert (own.nearest.size, own.nearest.also) == (size, also)


def test_bands_that_overlap(graded, size_table):
    """CYC head chart (from memory, unchecked): woman 21-23, man 22-24 in; a head of 22.25 fits both."""
    table = size_table(("woman", "man"), "head", {"head": [(21, 23), (22, 24)]})
    made = graded({"around": "head - 1 in"}, table=table)
    own, _ = fitted(made, head="22.25")
    assert (own.nearest.size, own.nearest.also) == ("woman", ("man",))
    assert fitted(made, head="22.75")[0].nearest.size == "man"


@pytest.mark.parametrize(("bust", "beyond"), [(70, True), (20, True), (62, False), (28, False)])
def test_beyond_the_sizes(pattern, bust, beyond):
    own, findings = fitted(pattern, bust=bust, upper_arm=14)
    assert [finding.rule for finding in findings] == (["body-outside-sizes"] if beyond else [])
    assert own.own.measures["around"].target == bust + 3


def test_her_own_gauge(pattern, gauge):
    own, _ = fitted(pattern, gauge("hers", 80, stitches=16, rows=9), bust=41, upper_arm=12)
    assert own.own.counts["band"].n == 176  # 44 in at 4 per in
    assert own.own.counts["rows"].n == 27
    # at her gauge the printed sizes come out smaller: 2X has 182 and measures 45.5 in, XL 168 and 42 in
    assert own.nearest.size == "2X"
    assert "at your gauge" in own.nearest.why


def test_rows_she_did_not_count_are_the_patterns(pattern, gauge):
    own, _ = fitted(pattern, gauge("hers", 80, stitches=16), bust=41, upper_arm=12)
    assert own.own.counts["rows"].n == 24


def test_one_gauge_of_several(graded, gauge):
    made = graded(
        {"around": "bust + 3 in", "depth": "12 in"},
        {"edge": {"along": "depth", "gauge": "edging"}, "band": {"across": "around", "gauge": "shells"}},
        {"edging": {"stitches": 14, "rows": 8}, "shells": {"stitches": 14, "rows": 8}},
    )
    own, findings = fitted(made, gauge("hers", 80, stitches=16, rows=16), bust=41)
    assert (own.own.counts["edge"].n, own.own.counts["band"].n) == (24, 176)
    assert [finding.rule for finding in findings] == ["own-gauge-used-for"]


def test_a_gauge_over_nothing(pattern, gauge):
    own, findings = fitted(pattern, gauge("hers", 80, stitches=16, over="4 sts"), bust=41, upper_arm=12)
    assert own.own.counts["band"].n == 154
    assert [finding.rule for finding in findings] == ["gauge-incomplete"]


def test_what_is_missing_or_unknown(pattern):
    own, findings = fitted(pattern, waist=30)
    assert own is None
    assert [finding.rule for finding in findings] == ["unknown-column", "body-measure-needed"]


def test_printed_sizes_are_as_before(pattern):
    fitted(pattern, bust=38)
    assert grade_sizes(pattern.pattern, pattern.table)[0] == pattern.sizes
