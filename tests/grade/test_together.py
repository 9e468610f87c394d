"""Related counts: against trying everything, and against a second solver of another kind."""

from __future__ import annotations

from fractions import Fraction

import pytest
from grade import joints
from grade.second_solver import Second

from gradegen.grade.related.best import best_counts


def solved_together(of):
    best = best_counts(of, of.conditions)
    assert best.is_proved
    return best.counts, best.unsolved


@pytest.mark.parametrize("seed", range(14))
def test_small_groups_against_trying_everything(seed):
    of = joints.random_joint(seed, sizes=2, counts=3, largest=9)
    counts, unsolved = solved_together(of)
    for size in range(2):
        wanted = joints.best_by_trying(of, size, most=48)
        if wanted is None:
            assert (size,) in unsolved
            continue
        found = joints.drifts(of, counts, size)
        assert joints.holds(of, counts, size)
        assert all(counts[name, size] in joints.allowed(one, 10_000) for name, one in of.rules.items())
        assert (max(found, default=0), sum(found)) == wanted


@pytest.mark.parametrize("seed", range(100, 116))
def test_alike_to_a_second_solver_size_by_size_and_in_their_steps(seed):
    of = joints.random_joint(seed, sizes=4, counts=6)
    counts, unsolved = solved_together(of)
    solved = [size for size in range(4) if (size,) not in unsolved]
    second = Second(of, tuple(range(4)))
    for size in range(4):
        alone = Second(of, (size,))
        best = alone.least_largest()
        assert (best is None) == ((size,) in unsolved)
        if best is not None:
            found = joints.drifts(of, counts, size)
            assert max(found, default=0) == best
            assert sum(found) == alone.least_sum(best)
    if len(solved) == 4:
        for size in solved:
            each = joints.drifts(of, counts, size)
            second.keep(size, max(each, default=Fraction(0)), sum(each, Fraction(0)))
        assert joints.steps_off(of, counts) == second.least_steps()


@pytest.mark.parametrize("seed", range(200, 212))
def test_alike_to_a_second_solver_where_sizes_hang_together(seed):
    of = joints.random_joint(seed, sizes=4, counts=5, coupled=True)
    if not of.couples_sizes:
        pytest.skip("no steps or centres drawn")
    counts, unsolved = solved_together(of)
    second = Second(of, tuple(range(4)))
    best = second.least_largest()
    assert (best is None) == bool(unsolved)
    if best is not None:
        found = [one for size in range(4) for one in joints.drifts(of, counts, size)]
        assert max(found, default=0) == best
        assert sum(found) == second.least_sum(best)


def test_the_same_every_time():
    of = joints.random_joint(7, sizes=6, counts=6)
    first = best_counts(of, of.conditions)
    assert all(best_counts(of, of.conditions) == first for _ in range(3))
