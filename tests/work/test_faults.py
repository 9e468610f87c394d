"""Every kind of mistake a row can hold: wrong, it is found under its name in just its sizes; right, it is proved.

The arithmetic stands beside each pair.
"""

from __future__ import annotations

from typing import Any

import pytest

from gradegen import check_row

SIZES = ("S", "M", "L")
Row = dict[str, Any]

# name of the fault -> (what both rows share, the row written right, the row written wrong, the sizes blamed)
PAIRS: dict[str, tuple[Row, str, str, tuple[str, ...]]] = {
    "repeat-does-not-fit": (  # 60, 66 and 72 in sixes; 66 = 8 x 8 + 2 and 60 = 8 x 7 + 4, 72 = 8 x 9
        {"prior": [60, 66, 72], "worked": "joined rounds", "label": "Rnd 5"},
        "Ch 1, *sc in next 5 sts, 2 sc in next st; rep from * around; join.",
        "Ch 1, *sc in next 7 sts, 2 sc in next st; rep from * around; join.",
        ("S", "M"),
    ),
    "runs-short": (  # 14 + 4 + 12 = 30; 16 + 4 + 15 = 35 of 34
        {"prior": [30, 34, 38], "worked": "flat", "label": "Row 7"},
        "Ch 1, sc in next 14 (16, 18) sts, sc2tog twice, sc in next 12 (14, 16) sts, turn.",
        "Ch 1, sc in next 14 (16, 18) sts, sc2tog twice, sc in next 12 (15, 16) sts, turn.",
        ("M",),
    ),
    "stitches-left-over": (  # 17 + 2 + 18 = 37 of 38
        {"prior": [30, 34, 38], "worked": "flat", "label": "Row 7"},
        "Ch 1, sc in next 14 (16, 18) sts, sc2tog, sc in next 14 (16, 18) sts, turn.",
        "Ch 1, sc in next 14 (16, 17) sts, sc2tog, sc in next 14 (16, 18) sts, turn.",
        ("L",),
    ),
    "names-missing-target": (
        {"prior": [f"{n} x (sc, ch-3 sp)" for n in (12, 14, 16)], "worked": "joined rounds", "label": "Rnd 8"},
        "Ch 1, 4 sc in each ch-3 sp around; join. (48 (56, 64) sc)",
        "Ch 1, 4 sc in each ch-5 sp around; join. (48 (56, 64) sc)",
        SIZES,
    ),
    "foundation-off-multiple": (  # 6k + 3: 45, 51, 57; 53 = 6 x 8 + 5
        {"prior": None, "worked": "flat", "label": "Row 1", "notes": ["Multiple of 6 + 3 (add 1 for the turning ch)."]},
        "Ch 46 (52, 58), sc in 2nd ch from hook and in each ch across, turn.",
        "Ch 46 (54, 58), sc in 2nd ch from hook and in each ch across, turn.",
        ("M",),
    ),
    "turning-chain-convention": (  # the chain counts: 1 + 39 = 40, 1 + 40 = 41
        {"prior": [40, 44, 48], "worked": "flat", "label": "Row 9", "notes": ["Ch 3 counts as a dc."]},
        "Ch 3, dc in next st and in each st across, turn. (40 (44, 48) dc)",
        "Ch 3, dc in first st, dc in each st across, turn. (40 (44, 48) dc)",
        SIZES,
    ),
    "row-range-does-not-divide": (  # 12 and 16 rows in pairs; 15 rows are no pairs
        {
            "prior": [40, 44, 48],
            "worked": "flat",
            "earlier": {"Row 2": "Ch 1, sc in each st across, turn.", "Row 3": "Ch 1, hdc in each st across, turn."},
        },
        "Rows 4-15 (17, 19)|Rep Rows 2 and 3.",
        "Rows 4-15 (18, 19)|Rep Rows 2 and 3.",
        ("M",),
    ),
    "size-list-length": (
        {"prior": [40, 44, 48], "worked": "flat", "label": "Row 9"},
        "Ch 1, sc in each st across, turn. (40 (44, 48) sc)",
        "Ch 1, sc in each st across, turn. (40 (44) sc)",
        SIZES,
    ),
    "undefined-stitch": (
        {"prior": [40, 44, 48], "worked": "flat", "label": "Row 9", "definitions": {"knot-st": "2 sc tog in same st"}},
        "Ch 1, *sc in next st, knot-st in next st; rep from * across, turn.",
        "Ch 1, *sc in next st, brier-st in next st; rep from * across, turn.",
        SIZES,
    ),
    "stated-count-wrong": (  # 44 - 2 = 42
        {"prior": [40, 44, 48], "worked": "flat", "label": "Row 9"},
        "Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (38 (42, 46) sc)",
        "Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (38 (44, 46) sc)",
        ("M",),
    ),
    "stated-count-wrong for a unit": (  # 24 spaces in twos are 12, 14 and 16 shells
        {
            "prior": [f"{n} x (dc, ch-1 sp)" for n in (24, 28, 32)],
            "worked": "joined rounds",
            "label": "Rnd 4",
            "definitions": {"shell": "5 dc in same sp"},
        },
        "Ch 1, *sc in next ch-1 sp, shell in next ch-1 sp; rep from * around; join. (12 (14, 16) shells)",
        "Ch 1, *sc in next ch-1 sp, shell in next ch-1 sp; rep from * around; join. (12 (14, 17) shells)",
        ("L",),
    ),
}


def checked(shared: Row, row: str) -> Any:
    """The engine's answer; a row may bring its label before a bar."""
    label, _, text = row.rpartition("|")
    return check_row(text, **{"sizes": SIZES, **shared, **({"label": label} if label else {})})


@pytest.mark.parametrize("name", PAIRS)
def test_written_right_it_is_proved(name: str) -> None:
    shared, right, _, _ = PAIRS[name]
    found = checked(shared, right)
    assert found.status == "proved", found.findings
    assert not [one for one in found.findings if one.severity == "error"]


@pytest.mark.parametrize("name", PAIRS)
def test_written_wrong_it_is_found_under_its_name_in_its_sizes(name: str) -> None:
    shared, _, wrong, sizes = PAIRS[name]
    errors = [one for one in checked(shared, wrong).findings if one.severity == "error"]
    assert {one.rule for one in errors} == {name.split(" ")[0]}
    blamed = {one.size for one in errors}
    assert (set(SIZES) if None in blamed else blamed) == set(sizes)


def test_every_name_a_row_fault_can_have_is_here() -> None:
    from gradegen.read.notation.rows import UNDEFINED_STITCH
    from gradegen.read.notation.sizes.size_lists import SIZE_LIST_LENGTH
    from gradegen.work.edge import stops

    rules = {one.id for one in vars(stops).values() if type(one).__name__ == "Rule"}
    rules -= {
        "reading-chosen",
        "two-readings",
        "count-not-compared",
        "count-not-whole",
        "unknown-count",
    }  # notes, and faults of sums
    wanted = {UNDEFINED_STITCH.id, SIZE_LIST_LENGTH.id, *rules}
    assert wanted - {name.split(" ")[0] for name in PAIRS} == set()
