import statistics
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.reckon.testers.spread import spread_of

NUMBERS = st.lists(st.fractions(0, 1000, max_denominator=16), min_size=1, max_size=12)


@settings(derandomize=True)
@given(NUMBERS)
def test_mean_and_median_are_those_of_the_standard_library(numbers: list[Fraction]) -> None:
    # statistics: Python's own, exact over fractions
    spread = spread_of(numbers)
    assert spread is not None
    assert spread.mean == statistics.mean(numbers)
    assert spread.median == statistics.median(numbers)
    assert (spread.least, spread.most, spread.many) == (min(numbers), max(numbers), len(numbers))


@settings(derandomize=True)
@given(st.lists(st.fractions(0, 1000, max_denominator=16), min_size=2, max_size=12))
def test_shares_are_the_inclusive_quantiles_of_the_standard_library(numbers: list[Fraction]) -> None:
    spread = spread_of(numbers)
    assert spread is not None
    tenths = statistics.quantiles(numbers, n=10, method="inclusive")
    assert [spread.share(Fraction(at, 10)) for at in range(1, 10)] == tenths


def test_nothing_known_has_no_spread() -> None:
    assert spread_of([None, None]) is None
    only = spread_of([None, Fraction(3)])
    assert only is not None
    assert only.median == 3
