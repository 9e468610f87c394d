from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.numbers.snap import NoCount, Snapped, good_counts, snap

targets = st.fractions(min_value=0, max_value=600, max_denominator=32)
multiples, pluses = st.integers(1, 24), st.integers(-6, 30)
parities = st.sampled_from([None, "even", "odd"])
limits = st.one_of(st.none(), st.integers(1, 400))
ties = st.sampled_from(["up", "down"])


@pytest.mark.parametrize(
    ("target", "given_", "n"),
    [
        (Fraction(301, 2), {"multiple": 4}, 152),
        (97, {"multiple": 6, "plus": 2}, 98),
        (6, {"multiple": 4, "tie": "up"}, 8),
        (6, {"multiple": 4, "tie": "down"}, 4),
        (7, {"multiple": 3, "parity": "even"}, 6),
        (10, {"multiple": 12, "plus": -1}, 11),
        (0, {"multiple": 4}, 4),
        (0, {"multiple": 4, "plus": 3}, 3),
        (100, {"least": 110, "multiple": 4}, 112),
        (100, {"most": 90, "multiple": 4}, 88),
    ],
)
def test_nearest_good_count(target, given_, n):
    snapped = snap(target, **given_)
    assert isinstance(snapped, Snapped)
    assert snapped.n == n


def test_neighbours_ties_and_limits_are_told():
    assert snap(6, 4, tie="down") == Snapped(4, 1, None, 8, tie=True, held=False, grid=4)
    assert snap(100, 4, least=110) == Snapped(112, 28, None, 116, tie=False, held=True, grid=4)
    assert snap(100, 4, most=100) == Snapped(100, 25, 96, None, tie=False, held=False, grid=4)


@pytest.mark.parametrize(
    "given_",
    [{"multiple": 4, "parity": "odd"}, {"multiple": 4, "plus": 1, "parity": "even"},
     {"multiple": 10, "least": 11, "most": 19}, {"multiple": 0}, {"multiple": -3}, {"least": 5, "most": 4}],
)  # fmt: skip
def test_what_no_count_satisfies(given_):
    found = snap(10, **given_)
    assert isinstance(found, NoCount)
    assert found.why


@settings(derandomize=True, max_examples=400)
@given(targets, multiples, pluses, parities, limits, limits, ties)
def test_against_trying_every_count(target, multiple, plus, parity, least, most, tie):
    """Brute force: all counts to 2000, by distance, the tie rule breaking equals."""
    good = [
        n
        for n in range(max(1, plus), 2000)
        if (n - plus) % multiple == 0
        and (parity is None or n % 2 == (parity == "odd"))
        and (least is None or n >= least)
        and (most is None or n <= most)
    ]
    found = snap(target, multiple, plus, parity=parity, least=least, most=most, tie=tie)
    if not good:
        assert isinstance(found, NoCount)
        return
    assert isinstance(found, Snapped)
    assert found.n == min(good, key=lambda n: (abs(n - target), -n if tie == "up" else n))
    assert found.repeats * multiple + plus == found.n
    assert found.below == max((n for n in good if n < found.n), default=None)
    assert found.above == min((n for n in good if n > found.n), default=None)


@settings(derandomize=True)
@given(targets, multiples, pluses, parities, ties)
def test_snapping_twice_changes_nothing(target, multiple, plus, parity, tie):
    once = snap(target, multiple, plus, parity=parity, tie=tie)
    if isinstance(once, Snapped):
        assert snap(once.n, multiple, plus, parity=parity, tie=tie) == Snapped(
            once.n, once.repeats, once.below, once.above, tie=False, held=False, grid=once.grid
        )


@settings(derandomize=True)
@given(targets, targets, multiples, pluses, parities, limits, ties)
def test_a_larger_target_never_gets_fewer(one, other, multiple, plus, parity, least, tie):
    small, large = (snap(t, multiple, plus, parity=parity, least=least, tie=tie) for t in sorted((one, other)))
    if isinstance(small, Snapped):
        assert small.n <= large.n


@settings(derandomize=True)
@given(targets, multiples, st.integers(-6, 0))
def test_within_half_a_multiple(target, multiple, plus):
    snapped = snap(max(target, Fraction(multiple)), multiple, plus)
    assert 2 * abs(snapped.n - max(target, Fraction(multiple))) <= multiple
    assert not snapped.held


def test_good_counts_reach_their_last():
    grid = good_counts(6, 2, None, 10, 31)
    assert (grid.first, grid.step, grid.last) == (14, 6, 26)
