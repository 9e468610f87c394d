"""A short run of the mutated rows: never an exception, never slow, every finding inside the row."""

from __future__ import annotations

import importlib.util
from pathlib import Path

from gradegen import check_row

SPEC = importlib.util.spec_from_file_location("mutations", Path(__file__).with_name("mutations.py"))
assert SPEC is not None
assert SPEC.loader is not None
mutations = importlib.util.module_from_spec(SPEC)
SPEC.loader.exec_module(mutations)


def test_mutated_rows_are_judged_without_an_exception() -> None:
    for call in mutations.calls(1500, seed=11):
        result = check_row(**call)
        lines = call["text"].count("\n") + 1
        assert all(1 <= finding.place.line <= lines for finding in result.findings), call


def test_mutated_rows_are_quick() -> None:
    slow = [call["text"] for call in mutations.calls(300, seed=12) if mutations.seconds(call) >= mutations.SLOW]
    assert not slow
