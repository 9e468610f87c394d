"""Ease as a number and by its published name, and which measure it is told of."""

from fractions import Fraction

import pytest

from gradegen.trade.ease import fit_name, fit_names


def ease(made):
    return [(size.ease_measure, size.ease_body, size.ease, size.fit) for size in made.sizes][2]


def test_the_first_measure_made_of_the_leading_column(graded):
    made = graded({"half": "bust / 2", "cuff": "upper arm", "around": "bust + 3 in", "hem": "around + 2 in"})
    assert ease(made) == ("around", "bust", 3, "classic fit")


def test_ease_is_what_comes_out_not_what_was_wanted(graded):
    made = graded({"around": "bust + 3 in"}, {"n": {"across": "around", "multiple": 4}})
    assert [size.ease - 3 for size in made.sizes] == [size.measures["around"].drift for size in made.sizes]
    assert any(size.ease != 3 for size in made.sizes)


def test_per_cent_ease_is_ease_and_a_height_is_none(graded, size_table):
    table = size_table(("S", "M", "L"), "head", {"head": [20, 22, 24]})
    made = graded({"height": "0.4 * head", "around": "0.95 * head"}, table=table)
    assert ease(made) == ("around", "head", Fraction(-6, 5), None)  # no published names for heads
    assert ease(graded({"height": "0.4 * head"}, table=table)) == (None, None, None, None)


def test_through_other_measures_and_the_larger_of_two(graded):
    assert ease(graded({"skin": "max(bust, upper arm)", "around": "skin + 2 in"}))[:3] == ("skin", "bust", 0)
    made = graded({"quarter": "(bust + 4 in) / 4", "around": "quarter * 4"})
    assert ease(made) == ("around", "bust", 4, "classic fit or loose fit")


def test_a_width_made_of_another_column(graded):
    made = graded({"cuff": "upper arm + 1 in"}, width="cuff")
    assert ease(made) == ("cuff", "upper_arm", 1, None)
    assert ease(graded({"cuff": "upper arm + 1 in"})) == (None, None, None, None)


@pytest.mark.parametrize(
    ("inches", "name"),
    [
        (-5, "closer than very close fitting"), (-4, "very close fitting"), (-2, "very close fitting"),
        (-1, "between very close fitting and close fitting"), (0, "close fitting"),
        (1, "between close fitting and classic fit"), (2, "classic fit"), (4, "classic fit or loose fit"),
        (5, "loose fit"), (6, "loose fit or oversized"), (12, "oversized"),
    ],
)  # fmt: skip
def test_names_where_they_touch_and_where_there_is_none(inches, name):
    assert fit_name(inches) == name


def test_the_names_have_a_source_and_a_mark():
    names = fit_names()
    assert names.source.publisher.startswith("Craft Yarn Council")
    assert names.trust == "from memory, unchecked"
    assert [fit.least for fit in names.fits] == sorted(fit.least for fit in names.fits)


def key_eases(made):
    return [(key.measure, key.body, key.ease) for key in made.sizes[2].key_eases]


def test_every_measure_of_one_body_column_has_its_ease_and_the_reported_one_comes_first(graded):
    made = graded({"arm": "upper arm + 2 in", "half": "bust / 2", "around": "bust + 3 in", "hem": "around + 2 in"})
    assert key_eases(made) == [("around", "bust", 3), ("arm", "upper_arm", 2)]


def test_a_share_of_a_column_and_a_sum_of_two_have_no_ease(graded):
    made = graded({"around": "bust + 3 in", "deep": "0.9 * upper arm", "both": "bust + upper arm"})
    assert key_eases(made) == [("around", "bust", 3)]


def test_the_key_ease_is_what_is_printed_less_the_body(graded):
    made = graded({"around": "bust + 3 in"}, {"n": {"across": "around", "multiple": 4}})
    for size in made.sizes:
        assert size.key_eases[0].ease == size.measures["around"].printed - size.graded_body["bust"]
