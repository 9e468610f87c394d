"""The engine and the slow worker on thousands of generated rows: the same verdict, counts, units, edge in every size.

Both are also held against what the row was built to be. `GRADEGEN_LONG=1` runs twenty times as many.
"""

from __future__ import annotations

import os
from collections import Counter
from typing import Any

import pytest
import strategies
from hypothesis import HealthCheck, given, settings
from slow_worker.edges import expand
from slow_worker.engine import plain
from slow_worker.row import Result, work
from slow_worker.stitches import family
from strategies import MadeRow

import gradegen

LONG = bool(os.environ.get("GRADEGEN_LONG"))


def many(examples: int) -> settings:
    """So many rows, always the same ones; twenty times as many and new ones each time in the long run."""
    return settings(
        max_examples=examples * (20 if LONG else 1),
        derandomize=not LONG,
        database=None,
        deadline=None,
        suppress_health_check=list(HealthCheck),
    )


def by_hand(row: MadeRow) -> list[Result]:
    """The row as the slow worker works it."""
    return work(
        row.text,
        prior=None,
        priors=[expand(prior) if prior else None for prior in row.priors],
        sizes=row.sizes,
        shape=row.shape,
        notes=row.notes,
        definitions=row.definitions,
    )


def by_engine(row: MadeRow) -> Any:
    """The row as the engine works it."""
    return gradegen.check_row(
        row.text,
        prior=list(row.priors) if row.priors[0] else None,
        worked=row.shape,
        sizes=row.sizes,
        notes=row.notes,
        definitions=row.definitions,
    )


def units_of(row: MadeRow, size: int) -> dict[str, int]:
    """What the row was built to make, by name as made: a sc2tog is no sc."""
    made = dict(Counter(row.after[size]))
    return made | {name: number for name, number in row.own[size].items() if number}


def totals_of(row: MadeRow, size: int) -> dict[str, int]:
    """The same as a stated count means it: `(40 sc)` counts its sc2tog too, `(20 dc)` its FPdc."""
    exact = units_of(row, size)
    return {name: sum(exact[other] for other in exact if other == name or family(other) == name) for name in exact}


RIGHT = {
    "repeat_rows": 250,
    "counting_rows": 200,
    "each_rows": 200,
    "to_last_rows": 250,
    "passing_rows": 200,
    "nested_rows": 120,
    "stopping_rows": 120,
    "slipped_rows": 150,
    "beginning_rows": 200,
}


@pytest.mark.parametrize(("kind", "examples"), RIGHT.items())
def test_right_rows_are_proved_by_both(kind: str, examples: int) -> None:
    @many(examples)
    @given(getattr(strategies, kind)())
    def agree(row: MadeRow) -> None:
        slow, fast = by_hand(row), by_engine(row)
        assert [result.error for result in slow] == [None] * len(row.sizes), slow
        assert fast.status == "proved", fast.findings or fast
        assert [result.made for result in slow] == list(row.made) == list(fast.made)
        if row.taken:
            assert [result.taken for result in slow] == list(row.taken) == list(fast.taken)
        for size, result in enumerate(slow):
            assert result.after == list(row.after[size]) == plain(fast.after[size])
            wanted = totals_of(row, size)
            assert wanted == {name: fast.units.get(name, [None] * len(row.sizes))[size] for name in wanted}
            assert units_of(row, size) == {name: result.units.get(name) for name in wanted}

    agree()


@many(250)
@given(strategies.miscounted_rows())
def test_a_changed_count_is_found_in_its_size_only(row: MadeRow) -> None:
    slow, fast = by_hand(row), by_engine(row)
    assert {size for size, result in zip(row.sizes, slow, strict=True) if result.error} == set(row.faulty)
    assert {result.error for result in slow if result.error} <= set(row.faults)
    errors = [finding for finding in fast.findings if finding.severity == "error"]
    assert [finding.size for finding in errors] == list(row.faulty)
    assert {finding.rule for finding in errors} <= set(row.faults)
    assert list(fast.made) == list(row.made) == [result.made for result in slow]


@many(200)
@given(strategies.misfit_rows())
def test_an_edge_that_does_not_fit_is_found_in_its_size_only(row: MadeRow) -> None:
    slow, fast = by_hand(row), by_engine(row)
    assert {size for size, result in zip(row.sizes, slow, strict=True) if result.error} == set(row.faulty)
    errors = [finding for finding in fast.findings if finding.severity == "error"]
    assert {finding.size for finding in errors} == set(row.faulty)
    assert {finding.rule for finding in errors} <= set(row.faults)
