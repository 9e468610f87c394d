"""Whatever is written: no exception, every place inside the text, and time in step with the length."""

from __future__ import annotations

import random
import time
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.findings import Written
from gradegen.read.notation.notes.definitions import read_definition
from gradegen.read.notation.notes.notes import read_notes
from gradegen.read.notation.rows import RowNames, read_row, read_rows
from gradegen.read.notation.sizes.lists import find_lists

NAMES = RowNames(sizes=("S", "M", "L"), counts=frozenset({"band"}))
WORDS = [
    "sc",
    "dc",
    "ch",
    "3",
    "sl",
    "st",
    "in",
    "next",
    "each",
    "st",
    "sts",
    "sp",
    "ch-2",
    "loop",
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    "*",
    "**",
    ",",
    ";",
    ".",
    ":",
    "=",
    "-",
    "/",
    "x",
    "6",
    "(4,",
    "5)",
    "rep",
    "repeat",
    "from",
    "around",
    "across",
    "to",
    "last",
    "of",
    "and",
    "with",
    "between",
    "same",
    "first",
    "1st",
    "2nd",
    "turn",
    "join",
    "skip",
    "for",
    "size",
    "M",
    "only",
    "all",
    "until",
    "more",
    "times",
    "twice",
    "row",
    "rnd",
    "Rnd",
    "inc",
    "dec",
    "corner",
    "shell",
    "picot",
    "center",
    "top",
    "through",
    "back",
    "loop",
    "only",
    "evenly",
    "at",
    "end",
    "band",
    "½",
    "1/2",
    "\n",
]


def read_all(text: str) -> None:
    written = Written.plain(text)
    row, findings = read_row(written, NAMES)
    read_row(written, NAMES, label=text[:40])
    read_rows(written, NAMES)
    read_definition("thing", written, NAMES)
    read_notes([written], NAMES)
    find_lists(written, NAMES.sizes, NAMES)
    assert all(0 <= one.start <= one.end <= len(text) for one in row.lists)
    lines = text.count("\n") + 1
    assert all(1 <= finding.place.line <= lines for finding in findings)


@settings(max_examples=300, deadline=None, derandomize=True)
@given(st.lists(st.sampled_from(WORDS), max_size=40))
def test_words_of_the_trade_in_any_order(words: list[str]) -> None:
    read_all(" ".join(words))


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.text(max_size=120))
def test_any_text(text: str) -> None:
    read_all(text)


def test_mutated_rows() -> None:
    rows = (
        "Rnd 3: Ch 1, *sc in next 3 (4, 5) sts, 2 sc in next st; rep from * around; join. [24 (30, 36)]",
        "** Ch 4, * shell in next sp; rep from * 2 times, ch 4; rep from ** around, ending with ch 2, dc in first st.",
        "4th Row: D c in next d c, (ch 2, d c in next d c) 3 times, in next sp make 2 d c, ch 2 and 2 d c. Ch 3, turn.",
    )
    draw = random.Random(7)
    for _ in range(400):
        text = draw.choice(rows)
        for _ in range(draw.randint(1, 4)):
            at = draw.randint(0, len(text))
            text = text[:at] + draw.choice(WORDS) * draw.randint(0, 3) + text[at + draw.randint(0, 6) :]
        read_all(text)


@pytest.mark.parametrize(
    "unit",
    [
        "(", "* sc in next st, ", "** sc, ", "(sc, inc) x 2 ", "3 (4, 5) ", "sc in next st and in next st ",
        "of next shell ", "center of ", "for size S only, sc; ", "with ", "1-", "* sc, rep from * 2 times, ",
        "2sc, ", "sc, ch 2, ", "{[(", "in same ",
    ],
)  # fmt: skip
def test_twice_the_text_takes_about_twice_the_time(unit: str) -> None:
    def seconds(text: str) -> float:
        written = Written.plain(text)
        read_row(written, NAMES)
        best = 1.0
        for _ in range(3):
            start = time.process_time()
            read_row(written, NAMES)
            best = min(best, time.process_time() - start)
        return best

    short = unit * (1500 // len(unit))
    assert seconds(short + short) < 4 * seconds(short) + 0.01


@pytest.mark.parametrize(
    "unit", ["(", "of next shell ", "and in next st ", "between next 2 dc of ", "{", "to ", "half "]
)
def test_nothing_nests_without_end(unit: str) -> None:
    read_all("sc in next st " + unit * 700)


def test_equal_rows_are_equal_wherever_they_stand(read: Callable[..., Any]) -> None:
    text = "Rnd 3: Ch 1, *sc in next 3 sts, inc; rep from * around. (24 sc)"
    moved, _ = read_row(Written.plain(text, "other.txt", 7, 9), RowNames())
    assert moved == read(text)[0]
