"""Whether equations have whole solutions: by hand, by their common divisor, by trying, from made-up solutions."""

import random
from itertools import product
from math import gcd

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.grade.related.whole_sums import Equation, has_whole_solution


@pytest.mark.parametrize(
    ("equations", "has"),
    [
        ([({0: 2}, 4)], True), ([({0: 2}, 5)], False), ([({0: 6, 1: 10}, 4)], True), ([({0: 6, 1: 10}, 5)], False),
        ([({0: 1, 1: -2}, 1), ({0: 1, 2: -2}, 0)], False), ([({0: 1, 1: -2}, 1), ({0: 1, 2: -3}, 0)], True),
        ([({0: 1}, 4), ({0: 1}, 5)], False), ([({}, 0)], True), ([({}, 1)], False), ([], True),
        ([({0: 4, 1: -6}, 2), ({0: 1, 1: 1}, 1)], False), ([({0: -3}, 9)], True),
        ([({0: 10**30 + 1, 1: 10**30}, 1)], True),
    ],
)  # fmt: skip
def test_by_hand(equations, has):
    assert has_whole_solution([Equation(times, total) for times, total in equations]) == has


@settings(derandomize=True, max_examples=200)
@given(
    st.lists(
        st.tuples(st.lists(st.integers(-9, 9), min_size=1, max_size=4), st.integers(-30, 30)), min_size=1, max_size=1
    )
)
def test_one_equation_is_a_matter_of_the_common_divisor(equations):
    times, total = equations[0]
    divisor = gcd(*times)
    expected = total == 0 if divisor == 0 else total % divisor == 0
    assert has_whole_solution([Equation(dict(enumerate(times)), total)]) == expected


@settings(derandomize=True, max_examples=200)
@given(st.integers(0, 10**6))
def test_equations_made_from_a_solution_have_one(seed):
    rng = random.Random(seed)
    solution = [rng.randint(-50, 50) for _ in range(rng.randint(1, 5))]
    rows = [[rng.randint(-12, 12) for _ in solution] for _ in range(rng.randint(1, 5))]
    made = [Equation(dict(enumerate(row)), sum(a * b for a, b in zip(row, solution, strict=True))) for row in rows]
    assert has_whole_solution(made)


@settings(derandomize=True, max_examples=150)
@given(st.integers(0, 10**6))
def test_no_is_never_said_where_trying_finds_one(seed):
    rng = random.Random(seed)
    rows = [([rng.randint(-3, 3) for _ in range(3)], rng.randint(-4, 4)) for _ in range(2)]
    found = any(
        all(sum(a * b for a, b in zip(row, values, strict=True)) == total for row, total in rows)
        for values in product(range(-8, 9), repeat=3)
    )
    if found:
        assert has_whole_solution([Equation(dict(enumerate(row)), total) for row, total in rows])


@settings(derandomize=True, max_examples=100)
@given(st.integers(0, 10**6))
def test_no_is_right_where_some_remainder_shows_it(seed):
    """Modulo a small number, trying everything is complete: what has no solution there has none at all."""
    rng = random.Random(seed)
    modulus = rng.choice([2, 3, 4, 5])
    rows = [([modulus * rng.randint(-2, 2) for _ in range(2)], rng.randint(1, 6)) for _ in range(2)]
    if any(total % modulus for _, total in rows):
        assert not has_whole_solution([Equation(dict(enumerate(row)), total) for row, total in rows])
