"""Braces that name nothing are told once, at the name; those of the trade and those that are right stay untold."""

import pytest

from gradegen.findings import Written
from gradegen.read.notation.sizes.braces import find_braces, told_once
from gradegen.read.notation.words.row_names import RowNames

KNOWN = ("hat", "sleeve rounds", "around", "ring", "ring 1")


def told(text: str) -> list[tuple[str, int, int]]:
    found = find_braces(Written.plain(text), RowNames(), KNOWN)
    return [(one.rule, one.place.line, one.place.column) for one in found]


@pytest.mark.parametrize(
    ("text", "rule", "line", "column"),
    [
        ("Ch {haat}.", "name-in-braces-unknown", 1, 5),
        ("Sc around. ({2 * (haat + 1)} sc)", "name-in-braces-unknown", 1, 19),
        ("Row 1: sc.\n  Work {crown} rows.", "name-in-braces-unknown", 2, 9),
        ("Ch {hat sc}.", "name-in-braces-unknown", 1, 5),
        ("Ch 1, {rnig 1}, join.", "name-in-braces-unknown", 1, 8),
        ("Ch {2 hat}.", "sum-unreadable", 1, 7),
        ("Ch {hat. Join.\nRnd 2: Sc {hat}.", "brace-not-closed", 1, 4),
        ("Work {sleeve rounds - 3 rounds.", "brace-not-closed", 1, 6),
    ],
)
def test_a_slip_is_told_at_its_place(text: str, rule: str, line: int, column: int) -> None:
    assert told(text) == [(rule, line, column)]


@pytest.mark.parametrize(
    "text",
    [
        "Ch {hat}. ({hat / 2} sts)",
        "Next {max(hat, 2) - 3} rnds, {around} long.",
        "Ch 1, {ring 1}, join. ({ring} sc)",
        "*{dc, ch 1, dc} in next st; rep from * around.",
        "{sc in next st, 2 sc in next st} 6 times.",
        "{Sc2tog} twice, {shell in next sp} twice, {5} rows.",
        "{Turn the work so that the right side is up}",
    ],
)
def test_right_names_and_the_trades_brackets_stay_untold(text: str) -> None:
    assert told(text) == []


def test_a_name_that_is_missing_in_many_places_is_told_once() -> None:
    text = "Ch {haat}.\nSc {haat}. ({haat} sc, {sleve rounds})"
    found = told_once(find_braces(Written.plain(text), RowNames(), KNOWN))
    assert [(one.place.line, one.place.column) for one in found] == [(1, 5), (2, 25)]
    assert [[place.column for place, _ in one.see_also] for one in found] == [[5, 14], []]
