"""Numbers of a row as written."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.design.rows import Number
from gradegen.findings import Place, Written
from gradegen.read.sums.formula import read_formula
from gradegen.write.notation.numbers import Figures, formula_text, ordinal_text

NOWHERE = Place("<made up>", 1, 1, 1, 1)
ALL = Figures(("S", "M", "L"))


def _number(*values: int | None) -> Number:
    return Number(values, place=NOWHERE)


@pytest.mark.parametrize(
    ("number", "text"),
    [
        (_number(4), "4"),
        (_number(4, 5, 6), "4 (5, 6)"),
        (_number(4, 4, 4), "4"),
        (_number(None, 5, 6), "– (5, 6)"),
        (_number(0, 1, 2), "0 (1, 2)"),
    ],
)
def test_all_sizes(number: Number, text: str) -> None:
    assert ALL.text(number) == text


def test_one_size() -> None:
    medium = Figures(("S", "M", "L"), 1)
    assert medium.text(_number(4, 5, 6)) == "5"
    assert medium.text(_number(7)) == "7"
    assert medium.is_nothing(_number(1, 0, 1))
    assert medium.is_nothing(_number(1, None, 1))
    assert not medium.is_nothing(_number(0, 5, 0))


def test_a_list_that_is_too_short_has_nothing_for_the_size() -> None:
    assert Figures(("S", "M", "L"), 2).values(_number(1, 2)) == (None,)


@pytest.mark.parametrize(
    ("value", "text"),
    [(1, "1st"), (2, "2nd"), (3, "3rd"), (4, "4th"), (11, "11th"), (12, "12th"), (22, "22nd"), (113, "113th")],
)
def test_ordinals(value: int, text: str) -> None:
    assert ordinal_text(value) == text


def test_ordinals_per_size() -> None:
    assert ALL.ordinal(_number(8, 10, 12)) == "8th (10th, 12th)"


amounts = st.builds(
    lambda top, bottom, unit: Amount(Fraction(top, bottom), unit, NOWHERE),
    st.integers(0, 500),
    st.sampled_from([1, 2, 3, 4, 7, 8]),
    st.sampled_from([None, "in", "cm"]),
)
names = st.sampled_from(["band", "upper arm", "rounds"]).map(lambda name: Name(name, NOWHERE))
lists = st.lists(st.integers(1, 99), min_size=3, max_size=3).map(
    lambda each: PerSize(tuple(Amount(Fraction(n), "in", NOWHERE) for n in each), NOWHERE)
)


def _joined(parts: st.SearchStrategy[Formula]) -> st.SearchStrategy[Formula]:
    return st.one_of(
        st.builds(lambda sign, a, b: Sum(sign, a, b, NOWHERE), st.sampled_from("+-*/"), parts, parts),
        st.builds(lambda f, a, b: Call(f, (a, b), NOWHERE), st.sampled_from(["max", "min"]), parts, parts),
    )


formulas = st.recursive(st.one_of(amounts, names, lists), _joined, max_leaves=6)


@settings(derandomize=True, deadline=None, max_examples=300)
@given(formulas)
def test_a_sum_written_out_is_read_back_as_the_same_sum(formula: Formula) -> None:
    text = formula_text(formula)
    again, findings = read_formula(Written.plain(text))
    assert not findings
    assert again == formula
