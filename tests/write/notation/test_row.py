"""Rows written in house style: what is printed, for all sizes and for one, in US and UK terms."""

from __future__ import annotations

import pytest

from gradegen.design.rows import Row
from gradegen.findings import Written
from gradegen.read.notation.rows import read_row
from gradegen.read.notation.words.row_names import RowNames
from gradegen.trade.stitches import Terms
from gradegen.write.notation.row import write_row, write_rows

SIZES = ("S", "M", "L")


def _read(text: str, sizes: tuple[str, ...] = SIZES, terms: Terms = "US") -> Row:
    names = RowNames(terms, sizes, counts=frozenset({"band", "body"}))
    row, _ = read_row(Written.plain(text), names)
    assert row is not None
    return row


def _house(text: str, size: str | None = None, terms: Terms = "US", written_in: Terms = "US") -> str:
    return write_row(_read(text, terms=written_in), sizes=SIZES, size=size, terms=terms)


@pytest.mark.parametrize(
    ("written", "house"),
    [
        ("Rnd 2: Ch 1, 2 sc in each st around; join. [16]", "Rnd 2: Ch 1, 2 sc in each st around; join. (16 sts)"),
        ("Rd 5: sc 5, inc", "Rnd 5: Sc in next 5 sts, inc."),
        ("3rd Row: s c in next 4 s c, d tr c in next st.", "Row 3: Sc in next 4 sc, dtr in next st."),
        ("Row 4: (sc 2, inc) x 6 (24)", "Row 4: (sc in next 2 sts, inc) 6 times. (24 sts)"),
        ("Row 4: [sc, 2 sc in next st] 6 times.", "Row 4: (sc in next st, 2 sc in next st) 6 times."),
        (
            "Row 6: *dc 3, ch 2, skip 2 sts; repeat from * across.",
            "Row 6: *dc in next 3 sts, ch 2, sk next 2 sts; rep from * across.",
        ),
        ("Row 2: dc2/ch1/dc2 in ch-2 space, turn", "Row 2: (2 dc, ch 1, 2 dc) in next ch-2 sp, turn."),
        ("Row 8: Ch {band}", "Row 8: Ch {band}."),
        ("Row 8: Sc in next 84[90:96] sts", "Row 8: Sc in next 84 (90, 96) sts."),
    ],
)
def test_house_style(written: str, house: str) -> None:
    assert _house(written) == house


@pytest.mark.parametrize(
    ("size", "house"),
    [
        ("S", "Row 3: Sc in next 4 sts, dc in next 2 sts, turn. (84 sts)"),
        ("M", "Row 3: Sc in next 5 sts, turn. (90 sts)"),
        ("L", "Row 3: Sc in next 6 sts, dc in next st, turn. (96 sts)"),
    ],
)
def test_one_size_shows_only_its_own_numbers(size: str, house: str) -> None:
    text = "Row 3: Sc in next 4 (5, 6) sts, dc in next 2 (0, 1) sts, turn. (84 (90, 96) sts)"
    assert _house(text, size) == house


def test_a_row_for_other_sizes_is_not_written() -> None:
    text = "Row 7 (M and L only): Sc in each st across."
    assert _house(text, "S") == ""
    assert _house(text, "M") == "Row 7: Sc in each st across."
    assert _house(text) == "Row 7 (sizes M and L only): Sc in each st across."


def test_row_numbers_that_differ_by_size() -> None:
    text = "Rnds 10-16 (17, 18): Sc in each st around."
    assert _house(text) == text
    assert _house(text, "M") == "Rnds 10-17: Sc in each st around."


def test_sums_are_worked_out_where_their_worth_is_known() -> None:
    row = _read("Row 1: Ch {band}, sc in next {2 * body + 1} sts.")
    worth = {"band": (40, 44, 48), "2 * body + 1": (9, 9, 9)}

    def of(formula: object, index: int) -> int:
        from gradegen.write.notation.numbers import formula_text

        return worth[formula_text(formula)][index]  # type: ignore[arg-type]

    assert write_row(row, sizes=SIZES, worth=of) == "Row 1: Ch 40 (44, 48), sc in next 9 sts."
    assert write_row(row, sizes=SIZES, size="L", worth=of) == "Row 1: Ch 48, sc in next 9 sts."


@pytest.mark.parametrize(
    ("us", "uk"),
    [
        (
            "Row 2: Sc in next 3 sts, dc in next st, tr in next st.",
            "Row 2: Dc in next 3 sts, tr in next st, dtr in next st.",
        ),
        (
            "Rnd 3: Sk next 2 sts, hdc in next st, dc2tog; join.",
            "Rnd 3: Miss next 2 sts, htr in next st, tr2tog; join.",
        ),
        ("Row 4: FPdc around next dc, sl st in next st. (2 dc)", "Row 4: FPtr around next tr, ss in next st. (2 tr)"),
    ],
)
def test_terms_change_in_one_pass(us: str, uk: str) -> None:
    assert _house(us, terms="UK") == uk
    assert _house(uk, terms="US", written_in="UK") == us


def test_a_turning_chain_at_a_rows_end_moves_to_where_it_belongs() -> None:
    rows = (_read("1st Row: D c in each st across. Ch 3, turn."), _read("2nd Row: D c in each st across."))
    first, second = write_rows(rows, sizes=SIZES)
    assert "ch 3" not in first.lower()
    assert second.startswith("Row 2: Ch 3, ")
