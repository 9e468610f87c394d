"""The rows with answers, and what is right about an answer."""

from __future__ import annotations

import json
from collections import defaultdict
from functools import cache
from pathlib import Path
from typing import Any

Row = dict[str, Any]
FILE = Path(__file__).parent / "own.jsonl"


def all_rows(file: Path = FILE) -> list[Row]:
    """Every row, in the order of its pattern."""
    return [json.loads(line) for line in file.read_text(encoding="utf-8").splitlines()]


@cache
def by_pattern(file: Path = FILE) -> dict[str, list[Row]]:
    """The rows of each pattern."""
    patterns: dict[str, list[Row]] = defaultdict(list)
    for row in all_rows(file):
        patterns[row["pattern"]].append(row)
    return patterns


def earlier_than(row: Row, file: Path = FILE) -> dict[str, str]:
    """Label to text of the rows printed above this one in its pattern."""
    above: dict[str, str] = {}
    for other in by_pattern(file)[row["pattern"]]:
        if other["row_id"] == row["row_id"]:
            break
        above[other["label"]] = other["text"]
    return above


def kind_of(row: Row) -> str:
    """correct, ambiguous, prose, or fault."""
    expect = row["expect"]
    if expect.get("not_countable"):
        return "prose"
    if expect.get("ok") is False:
        return "fault"
    return "ambiguous" if "ambiguous" in expect else "correct"


def prior_of(row: Row) -> list[int | str] | None:
    """The edge before, per size: a number of plain stitches or runs; None when the row makes its own beginning."""
    prior = row["prior"]
    if prior.get("made_in_row") or prior["kind"] in ("ring", "chain both sides", "none"):
        return None
    if prior["kind"] == "row ends":
        return [f"{ends} row ends" for ends in prior["row_ends"]]
    return list(prior.get("runs") or prior["sts"])
