from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.numbers.snap import NoCount
from gradegen.numbers.spread import Spread, increase_after, plain_between, spread, two_rates


def test_order_and_tail():
    assert spread(14, 124) == Spread(((8, 2), (9, 12)), 0)
    assert list(spread(3, 10).at()) == [3, 6, 10]
    assert list(spread(3, 10, order="interleaved").at()) == [3, 6, 10]
    assert spread(4, 10, order="interleaved") == Spread(((2, 1), (3, 1), (2, 1), (3, 1)), 0)
    assert spread(4, 22, tail=2) == Spread(((5, 4),), 2)
    assert spread(0, 12) == Spread((), 12)
    assert spread(3, 13, right_side_only=True) == Spread(((4, 3),), 1)


@pytest.mark.parametrize("given_", [(13, 12, {}), (7, 12, {"right_side_only": True}), (3, 3, {"tail": 1}), (-1, 5, {})])
def test_what_does_not_fit(given_):
    events, rows, more = given_
    assert isinstance(spread(events, rows, **more), NoCount)


def test_impossible_in_one_row():
    """Common practice: impossible are decreases over n/2 and single increases over n."""
    assert isinstance(plain_between(9, 5), NoCount)
    assert plain_between(10, 5) == ((0, 5),)
    assert isinstance(increase_after(9, 10, "round"), NoCount)
    assert increase_after(3, 3, "flat") == (1, 2, 3)


def test_two_given_rates():
    assert two_rates(28, 116, 4, 6) == (26, 2)
    assert isinstance(two_rates(28, 117, 4, 6), NoCount)
    assert isinstance(two_rates(28, 300, 4, 6), NoCount)
    assert isinstance(two_rates(28, 116, 6, 4), NoCount)


@settings(derandomize=True, max_examples=200)
@given(
    st.integers(1, 60), st.integers(0, 400), st.sampled_from(["block", "interleaved"]),
    st.sampled_from(["none", "one interval"]), st.booleans(),
)  # fmt: skip
def test_a_spread_uses_what_it_says(events, rows, order, tail, right_side_only):
    found = spread(events, rows, order=order, tail=tail, right_side_only=right_side_only)
    unit = 2 if right_side_only else 1
    if isinstance(found, NoCount):
        tail_at_most = 0 if tail == "none" else rows // unit // events + 1
        assert events > rows // unit - tail_at_most
        return
    marks = list(found.at())
    assert found.events == len(marks) == events
    assert found.used + found.plain == rows
    assert marks == sorted(set(marks))
    assert all(mark % unit == 0 for mark in marks)
    intervals = found.totals()
    assert max(intervals) - min(intervals) in (0, unit)
    if tail == "none":
        assert found.plain < unit
    else:
        assert abs(found.plain - min(intervals)) <= 2 * unit
    assert spread(events, rows, order="block", tail=tail, right_side_only=right_side_only).totals() == intervals


@settings(derandomize=True)
@given(st.integers(1, 300), st.integers(1, 150))
def test_decreases_leave_nothing_over(stitches, decreases):
    groups = plain_between(stitches, decreases)
    if isinstance(groups, NoCount):
        assert 2 * decreases > stitches
        return
    assert sum((plain + 2) * times for plain, times in groups) == stitches
    assert sum(times for _, times in groups) == decreases
    assert sum((plain + 1) * times for plain, times in groups) == stitches - decreases


@settings(derandomize=True)
@given(st.integers(1, 300), st.integers(1, 300), st.sampled_from(["round", "flat"]))
def test_increases_stand_apart(stitches, increases, edges):
    found = increase_after(stitches, increases, edges)
    if isinstance(found, NoCount):
        assert increases > stitches
        return
    assert len(set(found)) == increases
    assert found[-1] <= stitches
    gaps = {b - a for a, b in pairwise(found)}
    assert not gaps or max(gaps) - min(gaps) <= 1
    if edges == "flat":
        assert abs(found[0] - (stitches - found[-1])) <= 1
