"""Rows by somebody who never saw the reader: 149 in eleven patterns, their answers from lists of stitches expanded.

Their first try stands in the README beside them; since then the reader has learned from them, so they show no more than
that nothing is lost again.
"""

from __future__ import annotations

import functools
from pathlib import Path
from typing import Any

from rows_answers import all_rows, kind_of
from test_own_rows import checked, judged

FILE = Path(__file__).parent / "other_hand.jsonl"
NOT_READ_YET = {
    "ub03-06": "one loop less in each of several rows told as one",
    "ub03-09": "chains between that are left out",
    "ub04-04": "blocks that a note explains in two halves",
    "ub05-06": "each chain of the underarms within a row of stitches",
    "ub05-09": "a row that says itself how often it is worked again and how its last one ends",
}
OTHERWISE = {
    "ub02-06": "a count that fits the chain left uncounted, called so and not plainly wrong",
    "ub03-01": "two shells told stitch by stitch in one ring",
    "ub04-05": "figures of filet told stitch by stitch",
    "ub04-06": "figures of filet told stitch by stitch",
}


@functools.cache
def answers() -> dict[str, Any]:
    """Row id to the engine's answer."""
    return {row["row_id"]: checked(row, FILE) for row in all_rows(FILE)}


def test_rows_of_another_hand() -> None:
    verdicts = {row["row_id"]: judged(row, answers()[row["row_id"]]) for row in all_rows(FILE)}
    wrong = {key: said for key, said in verdicts.items() if said != "right" and key not in OTHERWISE}
    assert wrong == dict.fromkeys(NOT_READ_YET, "left unread")


def test_none_of_them_is_called_wrong_without_reason() -> None:
    sound = [row for row in all_rows(FILE) if kind_of(row) in ("correct", "ambiguous")]
    assert len(sound) > 100
    assert not [row["row_id"] for row in sound if answers()[row["row_id"]].status == "wrong"]
