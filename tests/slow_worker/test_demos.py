"""Every row of every demo pattern, in every size, worked by hand: the engine must say the same.

The slow worker reads the YAML and the rows itself; only the graded counts come from `gradegen grade FILE --json`.
"""

from __future__ import annotations

import functools
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml
from slow_worker.engine import plain
from slow_worker.row import Result
from slow_worker.whole import split_rows, work_pattern

from gradegen.pipeline import check_file

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"


def demos() -> list[Path]:
    """The demos in the slow worker's reach; the garments are worked by hand in tests/patterns instead."""
    return [PATTERNS / "bollard-hat.yaml", PATTERNS / "skerrywick-wrap.yaml"]


@functools.cache
def graded(path: Path) -> dict[str, Any]:
    """Sizes and counts as the command prints them."""
    command = [sys.executable, "-m", "gradegen", "grade", str(path), "--json"]
    return json.loads(subprocess.run(command, capture_output=True, text=True, check=True).stdout)


@functools.cache
def by_hand(path: Path) -> list[tuple[str, list[list[Result]]]]:
    """Per piece, every row's results in every size."""
    pattern = yaml.safe_load(path.read_text("utf-8"))
    answer = graded(path)
    counts = {name: [one["count"] for one in values] for name, values in answer["counts"].items()}
    counts |= {f"{name} chain": [one["chain"] for one in values] for name, values in answer["counts"].items()}
    stitches = {
        name: str(what["text"] if isinstance(what, dict) else what)
        for name, what in (pattern.get("stitches") or {}).items()
    }
    worked = []
    for piece in pattern["pieces"]:
        notes = [str(note) for note in (pattern.get("notes") or []) + (piece.get("notes") or [])]
        results = work_pattern(
            piece["rows"],
            answer["sizes"],
            piece["shape"],
            counts,
            notes=notes,
            definitions=stitches,
            terms=pattern.get("terms", "US"),
        )
        worked.append((piece["name"], results))
    return worked


@functools.cache
def by_engine(path: Path) -> Any:
    """The pattern after every stage."""
    return check_file(path).checked


def test_there_are_demos() -> None:
    assert all(path.is_file() for path in demos())


@pytest.mark.parametrize("path", demos(), ids=lambda path: path.stem)
def test_the_slow_worker_proves_every_row_in_every_size(path: Path) -> None:
    for piece, rows in by_hand(path):
        texts = [
            part
            for one in yaml.safe_load(path.read_text("utf-8"))["pieces"]
            if one["name"] == piece
            for part in split_rows(one["rows"])
        ]
        for (label, _), results in zip(texts, rows, strict=True):
            assert [(result.error, result.why) for result in results if result.error] == [], (piece, label)


@pytest.mark.parametrize("path", demos(), ids=lambda path: path.stem)
def test_the_engine_agrees_on_every_row_and_size(path: Path) -> None:
    checked = by_engine(path)
    slow = [results for _, rows in by_hand(path) for results in rows]
    pairs = 0
    for size, name in enumerate(graded(path)["sizes"]):
        rows = checked.worked[name]
        assert len(rows) == len(slow)
        for worked, results in zip(rows, slow, strict=True):
            mine = results[size]
            where = (name, worked.label)
            assert (mine.times > 0) == worked.applies, where
            if not worked.applies:
                continue
            pairs += 1
            assert worked.status == "proved", where
            assert (worked.made or 0) == mine.made, where
            assert worked.times == mine.times, where
            if mine.made:  # a foundation chain is kept in another way
                assert plain(worked.after) == mine.after, where
            if mine.taken is not None:
                assert worked.taken == mine.taken, where
    assert pairs == checked.proved
    assert (checked.wrong, checked.not_checked) == (0, 0)
