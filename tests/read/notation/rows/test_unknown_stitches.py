"""Stitches nobody explains: told of at the word, and never seen in prose."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from gradegen.design.rows import Definition
from gradegen.findings import Place

Read = Callable[..., Any]


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("Ch 1, *sc in next st, twirl in next st; rep from * around", "twirl"),
        ("Ch 1, *ripple-st in next st, sk 1 st; rep from * around; join.", "ripple-st"),
        ("* S c in next 3 s c, clematis in next picot. Repeat from * across.", "clematis"),
        ("sc in next 2 sts, 2 pebble in next st, sc in last st", "pebble"),
        ("knot st in each st around", "knot"),
        ("sc in next st, moss st, sc in next st", "moss"),
    ],
)
def test_an_unexplained_stitch_is_told_of_at_its_word(
    text: str, word: str, read: Read, tree: Callable[..., str]
) -> None:
    _, findings = read(text)
    assert [finding.rule for finding in findings] == ["undefined-stitch"]
    assert findings[0].place.column == text.index(word) + 1
    assert "UNREAD" not in tree(text)


def test_a_stitch_is_told_of_once_a_row(read: Read) -> None:
    _, findings = read("twirl in next st, sc in next st, twirl in next st")
    assert [finding.rule for finding in findings] == ["undefined-stitch"]


def test_an_explained_stitch_is_no_finding(read: Read) -> None:
    own = {"twirl": Definition("twirl", "3 dc in next st", place=Place("x", 1, 1, 1, 1))}
    row, findings = read("2 twirls in next st, twirl in next twirl", own=own)
    assert not findings
    assert [make.stitch for step in row.steps for make in step.makes] == ["twirl", "twirl"]


@pytest.mark.parametrize(
    "text",
    [
        "Fasten off, weave in ends.",
        "Weave in each end with a needle.",
        "Knot a fringe in every second st.",
        "Sew buttons in each corner.",
        "Insert a ribbon in next row of eyelets.",
        "Run the tail through each st and pull.",
        "Catch the lining in each st.",
        "Mark the center st of each corner.",
        "Finish with whip st.",
        "Hide the tail in same st.",
        "Block to size while damp; press.",
        "Leave a tail, mattress st the sides.",
        "Work last st in next color.",
    ],
)
def test_prose_is_never_a_stitch(text: str, read: Read) -> None:
    row, findings = read(text)
    assert not findings
    assert row.is_prose
