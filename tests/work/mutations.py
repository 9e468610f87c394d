"""Rows with slips of the pen: dropped signs, changed digits, words doubled or swapped, brackets lost.

As a script it checks as many as asked and says how it went; a seed and the row to begin at part a long run:

    .venv/bin/python tests/work/mutations.py 1000000
    .venv/bin/python tests/work/mutations.py 500000 1 500000
"""

from __future__ import annotations

import json
import random
import sys
import time
from collections.abc import Iterator
from itertools import islice
from pathlib import Path
from typing import Any

ROWS = Path(__file__).resolve().parents[1] / "rows" / "own.jsonl"
SIGNS = "()[]{}*,;.:-=+x/ \n0123456789½¼'\"–…"
STITCHES = ["sc", "dc", "hdc", "tr", "ch", "sl", "st", "sp"]
WORDS = [
    *STITCHES,
    "in",
    "next",
    "each",
    "rep",
    "from",
    "to",
    "last",
    "around",
    "join",
    "twice",
    "times",
    "same",
    "99999999",
]
SLOW = 0.050  # seconds of process time


def rows() -> list[dict[str, Any]]:
    """The project's own rows, with what they are worked into."""
    return [json.loads(line) for line in ROWS.read_text("utf-8").splitlines()]


def mutated(text: str, dice: random.Random) -> str:
    """The text with one to four slips."""
    for _ in range(dice.randint(1, 4)):
        at = dice.randrange(len(text) + 1)
        kind = dice.randrange(6)
        if kind == 0:
            text = text[:at] + text[at + 1 :]
        elif kind == 1:
            text = text[:at] + dice.choice(SIGNS) + text[at:]
        elif kind == 2:
            text = text[:at] + dice.choice(SIGNS) + text[at + 1 :]
        elif kind == 3:
            text = text[:at] + " " + dice.choice(WORDS) + " " + text[at:]
        elif kind == 4:
            end = min(len(text), at + dice.randint(1, 30))
            text = text[:at] + text[at:end] * 2 + text[end:]
        else:
            text = text[:at] + text[at + dice.randint(1, 20) :]
    return text


def calls(number: int, seed: int) -> Iterator[dict[str, Any]]:
    """Keyword arguments for `check_row`, one mutated row each."""
    dice = random.Random(seed)
    known = rows()
    for _ in range(number):
        row = dice.choice(known)
        prior = row["prior"]
        edges = prior.get("runs") or prior.get("sts") or prior.get("chains")
        yield {
            "text": mutated(row["text"], dice),
            "label": row["label"] if dice.random() < 0.9 else mutated(row["label"] or "Row 1", dice),
            "prior": None if prior.get("made_in_row") or not isinstance(edges, list) else edges[: len(row["sizes"])],
            "worked": row["worked"],
            "sizes": row["sizes"],
            "terms": row["terms"],
            "notes": row["notes"],
            "definitions": row["definitions"],
        }


def seconds(call: dict[str, Any], tries: int = 3) -> float:
    """Process time of one check, the best of some tries."""
    from gradegen import check_row

    best = 9.0
    for _ in range(tries):
        start = time.process_time()
        check_row(**call)
        best = min(best, time.process_time() - start)
        if best < SLOW:
            break
    return best


def main(number: int, seed: int = 1, first: int = 0) -> int:
    """Check so many from the first wanted; print the slow and the failing; 1 when there are any."""
    bad, slowest = 0, 0.0
    for i, call in enumerate(islice(calls(first + number, seed), first, None), first):
        try:
            took = seconds(call)
        except Exception as fault:
            took = 0.0
            bad += 1
            sys.stdout.write(f"row {i}: {type(fault).__name__}: {fault}\n    {json.dumps(call)}\n")
        if took >= SLOW:
            bad += 1
            sys.stdout.write(f"row {i}: {took * 1000:.0f} ms\n    {json.dumps(call)}\n")
        slowest = max(slowest, took)
    sys.stdout.write(f"{number} rows, {bad} failed or slow, slowest {slowest * 1000:.1f} ms\n")
    return int(bad > 0)


if __name__ == "__main__":
    sys.exit(main(*(int(word) for word in sys.argv[1:])))
