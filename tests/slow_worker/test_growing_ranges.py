"""Ranges of growing rows, which the product works at once: the slow worker works every row of them."""

from __future__ import annotations

import pytest
from slow_worker.edges import expand
from slow_worker.row import Result, work

from gradegen import check_row

ROWS = [
    ("flat", 20, "Ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn."),
    ("flat", 90, "Ch 1, sc2tog, sc in each st across, turn."),
    ("flat", 31, "Ch 1, 2 hdc in first st, hdc in next 4 sts, hdc in each st across, turn."),
    ("spiral", 24, "2 sc in next st, sc in next 7 sts, 2 sc in next st, sc in each st around."),
    ("joined rounds", 40, "Ch 1, (sc in next 4 sts, 2 sc in next st) 3 times, sc in each st around, join."),
]


@pytest.mark.parametrize(("shape", "number", "text"), ROWS)
@pytest.mark.parametrize("rows", [12, 35])
def test_both_come_to_the_same(shape: str, number: int, text: str, rows: int) -> None:
    edge = expand(f"{number} sc")
    for _ in range(rows):
        row: Result = work(text, prior=edge, sizes=["one"], shape=shape, notes=["Ch 1 does not count as a st."])[0]
        assert row.made is not None
        edge = list(reversed(row.after)) if shape == "flat" else row.after
    result = check_row(
        text,
        prior=number,
        worked=shape,  # type: ignore[arg-type]
        sizes=["one"],
        label=f"Rows 2-{rows + 1}",
        notes=["Ch 1 does not count as a st."],
    )
    assert (result.status, result.made, result.times) == ("proved", (row.made,), (rows,))
