"""Which foundation chains work: derived from the rows, against brute force by two workers and against paper.

The slow worker shares no code with the program. `GRADEGEN_LONG=1` works every chain from 1 to 300 with both.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from reckon.stitch_patterns import PATTERNS, StitchPattern, checked
from slow_worker.whole import work_pattern

from gradegen.design.checked import Checked
from gradegen.pipeline import check_file
from gradegen.reckon.multiples.foundation import foundations
from gradegen.reckon.multiples.multiples import Derived, derive_multiple, grows_evenly
from gradegen.reckon.multiples.trial import Trial
from gradegen.work.edge.edges import read_runs

LONG = bool(os.environ.get("GRADEGEN_LONG"))
REACH, SLOW_REACH = (300, 300) if LONG else (60, 26)
DEMOS = Path(__file__).parents[2] / "shared" / "patterns"


@pytest.fixture(scope="module")
def trials(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Trial]:
    file = checked(tmp_path_factory.mktemp("patterns"))
    found = foundations(file.pattern)
    return {one.pieces[0].name.text: Trial(file.pattern, file.sizes, 0, one) for one in found}


@pytest.fixture(scope="module")
def derived(trials: dict[str, Trial]) -> dict[str, Derived | None]:
    return {name: derive_multiple(trial.work) for name, trial in trials.items()}


def by_name(pattern: StitchPattern) -> str:
    return pattern.name.replace(" ", "-")


def test_there_are_enough_patterns_of_every_shape(derived: dict[str, Derived | None]) -> None:
    assert len(PATTERNS) == len(derived) >= 40
    assert {one.shape for one in PATTERNS} >= {"flat", "joined rounds", "half-twist band"}


@pytest.mark.parametrize("pattern", PATTERNS, ids=by_name)
def test_derived_as_on_paper(pattern: StitchPattern, derived: dict[str, Derived | None]) -> None:
    found = derived[pattern.name]
    assert found is not None
    multiple, plus, fewest = pattern.takes
    assert (found.multiple, found.left, found.smallest) == (multiple, (plus,), fewest)
    assert found.also == ()


@pytest.mark.parametrize("pattern", PATTERNS, ids=by_name)
def test_derived_as_the_engine_finds_by_trying(
    pattern: StitchPattern, derived: dict[str, Derived | None], trials: dict[str, Trial]
) -> None:
    found, trial = derived[pattern.name], trials[pattern.name]
    assert found is not None
    chains = range(1, REACH + 1)
    assert [n for n in chains if found.allows(n)] == [n for n in chains if trial.work(n).works]


@pytest.mark.parametrize("pattern", PATTERNS, ids=by_name)
def test_derived_as_the_slow_worker_finds_by_trying(pattern: StitchPattern, derived: dict[str, Derived | None]) -> None:
    found = derived[pattern.name]
    assert found is not None
    for chains in range(1, SLOW_REACH + 1):
        assert found.allows(chains) == works_by_hand(pattern, chains), chains


def works_by_hand(pattern: StitchPattern, chains: int) -> bool:
    worked = work_pattern(pattern.rows, ("M",), pattern.shape, {"n": [chains]}, pattern.notes, pattern.stitches)
    return not any(row[0].error for row in worked)


def demo(name: str) -> Checked:
    found = check_file(DEMOS / name).checked
    assert found is not None
    return found


def test_the_wrap_by_engine_and_by_hand() -> None:
    """Its rows need 2N in sixes, so N in threes; the note asks for odd threes so that the strings are staggered."""
    file = demo("skerrywick-wrap.yaml")
    (foundation,) = foundations(file.pattern)
    trial = Trial(file.pattern, file.sizes, 0, foundation)
    found = derive_multiple(trial.work)
    assert found is not None
    assert (found.multiple, found.left, found.smallest) == (3, (0,), 6)
    chains = range(1, 301 if LONG else 61)
    assert [n for n in chains if trial.work(n).works] == [n for n in chains if n % 3 == 0 and n > 3]
    (piece,) = file.pattern.pieces
    rows = "\n".join(f"{row.text}" for row in piece.rows)
    stitches = {one.name: one.text for one in file.pattern.definitions}
    for n in range(1, 301 if LONG else 19):
        counts = {"band": [n], "lamps": [n // 3], "rounds": [file.sizes[0].counts["rounds"].n]}
        worked = work_pattern(rows, ("XS",), piece.shape, counts, [note.text for note in file.pattern.notes], stitches)
        assert (not any(row[0].error for row in worked)) == (n % 3 == 0 and n > 3), (n, worked)


def test_a_hat_from_a_ring_has_no_foundation_chain() -> None:
    assert foundations(demo("bollard-hat.yaml").pattern) == ()


@pytest.mark.parametrize(
    ("first", "second", "third", "grows"),
    [
        ("4 dc", "6 dc", "8 dc", True),
        ("4 dc", "6 dc", "9 dc", False),
        ("2 x (sc, 3 dc), sc", "3 x (sc, 3 dc), sc", "4 x (sc, 3 dc), sc", True),
        ("2 x (sc, 3 dc), sc", "3 x (sc, 4 dc), sc", "4 x (sc, 5 dc), sc", True),
        ("2 x (sc, 3 dc), sc", "3 x (sc, 3 dc), sc", "4 x (sc, 3 dc), dc", False),
        ("4 dc", "6 dc", "8 sc", False),
    ],
)
def test_edges_that_grow_evenly(first: str, second: str, third: str, grows: bool) -> None:
    assert grows_evenly(read_runs(first), read_runs(second), read_runs(third)) is grows
