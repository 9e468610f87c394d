"""Printed booklet rows: how many are read and counted, and that nothing false is said of them.

The corpus is no part of the project. Where it is kept stands in GRADEGEN_BOOKLETS; without it nothing is measured.
Which rows are whole and which counts are right was found by hand, each row read and worked on paper
(`booklet_rows.json`); the goals are those of issue 3.
"""

from __future__ import annotations

import importlib.util
import os
import sys
from pathlib import Path
from typing import Any

import pytest

CORPUS = Path(
    os.environ.get("GRADEGEN_BOOKLETS", Path(__file__).resolve().parents[3] / "shared" / "corpus" / "booklets.jsonl")
)
SPEC = importlib.util.spec_from_file_location("booklets", Path(__file__).with_name("booklets.py"))
assert SPEC is not None
assert SPEC.loader is not None
booklets = importlib.util.module_from_spec(SPEC)
sys.modules["booklets"] = booklets
SPEC.loader.exec_module(booklets)


@pytest.fixture(scope="module")
def found() -> Any:
    if not CORPUS.is_file():
        pytest.skip("the corpus of printed booklet rows is not here; GRADEGEN_BOOKLETS says where it is kept")
    return booklets.figures(booklets.judge_all(CORPUS))


def test_at_least_so_many_whole_rows_are_read_and_counted(found: Any) -> None:
    assert found.read >= 0.80 * found.whole
    assert found.counted >= 0.50 * found.whole


def test_no_count_differs_from_the_one_worked_by_hand(found: Any) -> None:
    assert found.unlike == {}


def test_only_true_contradictions_are_called_wrong(found: Any) -> None:
    assert set(found.errors) <= set(booklets.known()["contradicted"])
