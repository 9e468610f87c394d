"""Whole generated pieces in plain text: the program hands every edge on itself, the slow worker works beside it."""

from __future__ import annotations

import contextlib
import io
import json
import os
import re
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from slow_worker.pieces import NOTES, MadePiece, as_text, pieces
from slow_worker.whole import work_pattern

from gradegen.cli import main

LONG = bool(os.environ.get("GRADEGEN_LONG"))
many = settings(
    max_examples=3000 if LONG else 150,
    derandomize=not LONG,
    database=None,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)


def checked(path: Path, piece: MadePiece, lines: list[str]) -> tuple[dict[str, Any], int]:
    """What `gradegen check FILE.txt --json` says, and the line of the first row."""
    text, first = as_text(piece, lines)
    path.write_text(text, encoding="utf-8")
    with contextlib.redirect_stdout(io.StringIO()) as printed:
        main(["check", str(path), "--json"])
    return json.loads(printed.getvalue()), first


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("pieces") / "piece.txt"


def test_whole_pieces_are_proved_by_both(path: Path) -> None:
    @many
    @given(pieces())
    def agree(piece: MadePiece) -> None:
        slow = work_pattern(piece.text, piece.sizes, piece.shape, notes=NOTES)
        assert [(result.error, result.why) for results in slow for result in results if result.error] == []
        assert [tuple(result.made for result in results) for results in slow] == list(piece.made)
        answer, _ = checked(path, piece, list(piece.lines))
        assert [finding for finding in answer["findings"] if finding["severity"] == "error"] == []
        assert (answer["proved"], answer["wrong"]) == (len(piece.lines) * len(piece.sizes), 0)
        assert answer["not_checked"] == 0

    agree()


def test_one_changed_count_is_one_finding_in_its_line_and_size(path: Path) -> None:
    @many
    @given(pieces(), st.data())
    def found(piece: MadePiece, data: st.DataObject) -> None:
        at = data.draw(st.integers(0, len(piece.lines) - 1), label="line")
        size = data.draw(st.integers(0, len(piece.sizes) - 1), label="size")
        lines = list(piece.lines)
        head, count = lines[at].rsplit(" [", 1)
        number = list(re.finditer(r"\d+", count))[size]
        lines[at] = f"{head} [{count[: number.start()]}{int(number[0]) + 40}{count[number.end() :]}"
        answer, first = checked(path, piece, lines)
        errors = [finding for finding in answer["findings"] if finding["severity"] == "error"]
        assert [(error["place"]["line"], error["size"]) for error in errors] == [(first + at, piece.sizes[size])]
        assert answer["wrong"] == 1

    found()
