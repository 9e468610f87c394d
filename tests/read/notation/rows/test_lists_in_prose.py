"""Size lists and sums in prose, for printing one size alone."""

from __future__ import annotations

import pytest

from gradegen.findings import Written
from gradegen.read.notation.sizes.lists import find_lists

SIZES = ("S", "M", "L")


def found(text: str, names: frozenset[str] = frozenset()) -> list[tuple[str, tuple[str, ...]]]:
    lists, _ = find_lists(Written.plain(text), SIZES, names)
    return [(text[one.start : one.end], one.values) for one in lists]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Work until piece measures 17 (17½, 18) in.", [("17 (17½, 18)", ("17", "17½", "18"))]),
        ("Sew 5 (6, 7) buttons on.", [("5 (6, 7)", ("5", "6", "7"))]),
        (
            "Width 3.5[4:4.5] in, length 20-22-24 in.",
            [("3.5[4:4.5]", ("3.5", "4", "4.5")), ("20-22-24", ("20", "22", "24"))],
        ),
        ("Leave 4 (–, 6) in open.", [("4 (–, 6)", ("4", "–", "6"))]),
        ("Printed 2024-05-12, see page 3 (figure 4).", []),
        ("Hook 5 mm (H/8).", []),
        ("The band ({band} sts) lies flat.", [("{band}", ())]),
        ("Use {any} yarn.", []),
    ],
)
def test_lists(text: str, expected: list[tuple[str, tuple[str, ...]]]) -> None:
    assert found(text, frozenset({"band"})) == expected


def test_a_list_of_the_wrong_length_is_told_of() -> None:
    lists, findings = find_lists(Written.plain("Ease of 5 (6, 7, 8) in."), SIZES, frozenset())
    assert [finding.rule for finding in findings] == ["size-list-length"]
    assert lists[0].values == ("5", "6", "7", "8")
