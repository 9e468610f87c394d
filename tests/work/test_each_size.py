"""Counts of several sizes reckoned with as one say what each size says, or that the sizes part."""

from __future__ import annotations

import operator
from collections.abc import Callable, Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gradegen.design.edge import Run, Target
from gradegen.work.edge.each_size import each_size, edge_of_all, edges_in, in_sizes
from gradegen.work.edge.edges import plain, read_runs, space
from gradegen.work.edge.lines import Unlike

Sign = Callable[[int, int], int]
SUMS = [operator.add, operator.sub, operator.mul, operator.floordiv, operator.mod]
ANSWERS = [operator.lt, operator.le, operator.gt, operator.ge, operator.eq, operator.ne]
COUNTS = st.lists(st.integers(-30, 300), min_size=3, max_size=3)


@given(COUNTS, COUNTS | st.integers(-30, 300), st.sampled_from(SUMS), st.booleans())
def test_sums(counts: Sequence[int], other: Sequence[int] | int, sign: Sign, turned: bool) -> None:
    others = [other] * 3 if isinstance(other, int) else other
    left, right = each_size(counts), other if isinstance(other, int) else each_size(other)
    if turned and sign in SUMS[:3]:
        counts, others, left, right = others, counts, right, left
    try:
        wanted = [sign(*pair) for pair in zip(counts, others, strict=True)]
    except ZeroDivisionError:
        return
    found = sign(left, right) if sign in SUMS[:3] or not isinstance(left, int) else each_size(wanted)
    assert [*in_sizes(found, 3)] == wanted


@given(COUNTS, COUNTS | st.integers(-30, 300), st.sampled_from(ANSWERS))
def test_answers(counts: Sequence[int], other: Sequence[int] | int, sign: Sign) -> None:
    others = [other] * 3 if isinstance(other, int) else other
    wanted = {sign(*pair) for pair in zip(counts, others, strict=True)}
    left, right = each_size(counts), other if isinstance(other, int) else each_size(other)
    if len(wanted) > 1:
        with pytest.raises(Unlike):
            sign(left, right)
    else:
        assert sign(left, right) is wanted.pop()


@pytest.mark.parametrize("use", [range, str, "{}".format, space, lambda number: (1, 2) * number])
def test_what_is_about_one_size_is_refused(use: Callable[[int], object]) -> None:
    with pytest.raises((Unlike, TypeError)):
        use(each_size([3, 4]))


def test_edges_of_one_make_stand_for_each_other() -> None:
    edges = [read_runs("8 x (dc, ch-1 sp), 3 dc"), read_runs("9 x (dc, ch-1 sp), 3 dc")]
    both = edge_of_all(edges)
    assert [*edges_in(both, 2)] == edges
    (run, three) = both
    assert isinstance(run, Run)
    assert run.items == edges[0][0].items  # type: ignore[union-attr]
    assert three is edges[0][1]


@pytest.mark.parametrize(
    "other", [plain(5), (Target("st", "sc"),), read_runs("9 x (dc, ch-2 sp), 3 dc"), read_runs("3 dc")]
)
def test_edges_of_several_makes_part(other: tuple[Target | Run, ...]) -> None:
    with pytest.raises(Unlike):
        edge_of_all([read_runs("8 x (dc, ch-1 sp), 3 dc"), other])
