"""Our dimension check against a general library: sums are refused exactly where pint refuses them, else equal."""

from fractions import Fraction

import pint
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.findings import Place
from gradegen.grade.body.sums import Refused, Value, reckon
from gradegen.numbers.units import DEFINED, registry

HERE = Place("p.yaml", 1, 1, 1, 2)
BASE = {"length": "in", "mass": "g", "stitch": "stitch", "row": "row", None: ""}


class Nothing:
    def named(self, name: Name) -> Value:
        raise AssertionError

    def entry(self, listed: PerSize) -> Value:
        raise AssertionError


amounts = st.builds(
    Amount,
    st.fractions(min_value=-20, max_value=20, max_denominator=8),
    st.sampled_from([None, None, "in", "in", "cm", "yd", "mm", "g", "oz", "sts", "rows"]),
    st.just(HERE),
)
sums = st.recursive(
    amounts,
    lambda inner: st.one_of(
        st.builds(Sum, st.sampled_from("+-*/"), inner, inner, st.just(HERE)),
        st.builds(Call, st.sampled_from(["max", "min"]), st.tuples(inner, inner), st.just(HERE)),
    ),
    max_leaves=6,
)


class NotOurs(Exception):  # noqa: N818
    """Areas, rates and the like: pint has them, a pattern's sum does not."""


def by_pint(tree: Formula) -> pint.Quantity:
    match tree:
        case Amount():
            unit = DEFINED.get(tree.unit or "", tree.unit or "")
            return registry().Quantity(tree.number, unit)
        case Call():
            first, second = (by_pint(part) for part in tree.parts)
            first + second  # refuses unlike ones
            return max(first, second) if tree.function == "max" else min(first, second)
        case Sum():
            left, right = by_pint(tree.left), by_pint(tree.right)
            if tree.sign == "*" and left.dimensionality and right.dimensionality:
                raise NotOurs
            if tree.sign == "/" and right.dimensionality not in ({}, left.dimensionality):
                raise NotOurs
            return {"+": left.__add__, "-": left.__sub__, "*": left.__mul__, "/": left.__truediv__}[tree.sign](right)
    raise AssertionError


@settings(derandomize=True, max_examples=300, deadline=None)
@given(sums)
def test_sums_against_pint(tree):
    try:
        theirs = by_pint(tree)
    except (pint.DimensionalityError, NotOurs, ZeroDivisionError):
        theirs = None
    try:
        ours = reckon(tree, Nothing())
    except Refused as refused:
        found = (theirs, refused.finding.rule in ("units-do-not-mix", "divides-by-nothing"))
    else:
        found = (theirs.to(BASE[ours.kind]).magnitude if theirs is not None else None, ours.number)
        assert found[0] == found[1]
        return
    assert found == (None, True)


def test_a_number_is_exact_all_the_way():
    third = Sum("/", Amount(Fraction(1), "in", HERE), Amount(Fraction(3), None, HERE), HERE)
    assert reckon(Sum("*", third, Amount(Fraction(3), None, HERE), HERE), Nothing()) == Value(Fraction(1), "length")
