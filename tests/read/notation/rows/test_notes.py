"""What notes settle: turning chains, increases and decreases, the multiple."""

from __future__ import annotations

import pytest

from gradegen.design.notes import Multiple, NoteFacts
from gradegen.findings import Written
from gradegen.read.notation.notes.notes import read_notes
from gradegen.read.notation.rows import RowNames


def facts(*notes: str) -> NoteFacts:
    return read_notes([Written.plain(note) for note in notes], RowNames())


@pytest.mark.parametrize(
    ("note", "expected"),
    [
        ("Ch 2 at beg of row does not count as a st.", [(2, (), None)]),
        ("Ch 1 and ch 2 at beg of a rnd never count as a st.", [(1, (), None), (2, (), None)]),
        ("Beg ch-3 counts as a dc throughout.", [(3, ("dc",), None)]),
        ("Ch 3 at beg of row counts as first dc.", [(3, ("dc",), None)]),
        ("Beg ch 1 does not count.", [(1, (), None)]),
        ("Ch 3, turn: the ch-3 is the first d c of the next row.", [(3, ("dc",), None)]),
        ("The starting chain of each rnd stands for the first stitch.", [(None, ("st",), None)]),
        ("A turning ch-4 stands for the first tr c of the following row.", [(4, ("tr",), None)]),
        (
            "Turning chains stand for d c (ch 3) or for d c and ch 2 (ch 5).",
            [(3, ("dc",), None), (5, ("dc", "ch-2 sp"), None)],
        ),
        (
            "The ch-2 or ch-1 made to turn is not counted; ch-3 counts as d c.",
            [(2, (), None), (1, (), None), (3, ("dc",), None)],
        ),
        ("Ch 3 at start of d c rnds is 1 d c. S c rnds have no counted ch.", [(3, ("dc",), "dc"), (None, (), "sc")]),
        ("S c rnds start without a counted chain.", [(None, (), "sc")]),
        (
            "Ch 3 to turn always counts as 1 d c, ch 4 as 1 d c and ch 1.",
            [(3, ("dc",), None), (4, ("dc", "ch-1 sp"), None)],
        ),
        ("Ch 6 to turn = d c and ch 3.", [(6, ("dc", "ch-3 sp"), None)]),
        ("ch 4 counts as dc and ch 1.", [(4, ("dc", "ch-1 sp"), None)]),
        ("Worked in joined rounds from the centre.", []),
        ("A tile is ch 3 and 3 dc; a new tile starts with ch 6.", []),
        ("Leave a long tail and do not join.", []),
    ],
)
def test_turning_chains(note: str, expected: list[tuple[int | None, tuple[str, ...], str | None]]) -> None:
    assert [(one.length, one.as_, one.before) for one in facts(note).chains] == expected


@pytest.mark.parametrize(
    ("note", "names"),
    [
        ("inc = 2 sc in next st; dec = sc2tog.", ["inc", "dec"]),
        ("inc = 2 sc in next st, dec = invisible sc2tog. Do not join.", ["inc", "dec"]),
        ('"in" = 2 sc in the same st; "dec" = 2 sc together.', ["in", "dec"]),
        ("Corner = (3 dc, ch 2, 3 dc) in same sp.", ["corner"]),
        ("1 sp = ch 2, skip 2, d c in next. 1 bl = d c in each of 3.", ["sp", "bl"]),
        ("s d c = short double crochet.", []),
        ("Gauge: 12 sts = 4 in.", []),
    ],
)
def test_own_stitches(note: str, names: list[str]) -> None:
    assert list(facts(note).definitions) == names


@pytest.mark.parametrize(
    ("note", "multiple"),
    [
        ("Multiple of 14 + 1, plus 2 for the foundation ch.", Multiple(14, 1, 2)),
        ("Multiple of 8 + 1 (add 2 for foundation ch).", Multiple(8, 1, 2)),
        ("Start from a multiple of 6 + 3, plus 1 ch.", Multiple(6, 3, 1)),
        ("Worked over a multiple of 4 sts plus 2.", Multiple(4, 2, 0, of_stitches=True)),
        ("Multiple of 6.", Multiple(6, 0, 0)),
        ("No multiple is needed.", None),
    ],
)
def test_the_multiple(note: str, multiple: Multiple | None) -> None:
    assert facts(note).multiple == multiple
