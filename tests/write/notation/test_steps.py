"""Steps in words: repeats within repeats, rows again, passages for some sizes."""

from __future__ import annotations

import pytest

from gradegen.design.rows import Row, SizesOnly, Work
from gradegen.findings import Written
from gradegen.read.notation.rows import read_row
from gradegen.read.notation.words.row_names import RowNames
from gradegen.write.notation.numbers import Figures
from gradegen.write.notation.steps import steps_words
from gradegen.write.notation.style import Notation, notation_style

SIZES = ("S", "M", "L")


def row(text: str) -> Row:
    found, _ = read_row(Written.plain(text), RowNames("US", SIZES))
    return found


def words(text: str, size: str | None = None) -> str:
    figures = Figures(SIZES, SIZES.index(size) if size else None)
    return steps_words(row(text).steps, Notation(notation_style(), "US", figures, "row"))


@pytest.mark.parametrize(
    "text",
    [
        "*sc in next 3 sts, inc; rep from * across",
        "*sc in next 3 sts, inc; rep from * once more",
        "*sc in next 3 sts, inc; rep from * 4 more times",
        "*sc in next 3 sts, inc; rep from * to last 2 sts, sc in last 2 sts",
        "**ch 4, *sc in next sp, ch 1; rep from * 2 more times; rep from ** across",
        "(sc in next 2 sts, inc) 6 times",
        "[(dc in next st, ch 1) 3 times, sk next st] 4 times",
        "dc2tog 3 times, inc",
        "*sc in next st, **ch 3, sk next st; rep from * across, ending last rep at **",
        "rep Rows 2 and 3",
        "rep Rows 3-6 2 more times",
        "rep last 2 rows 4 times",
        "work even in dc",
        "turn, leave rem sts unworked",
    ],
)
def test_house_style_stays_as_it_is(text: str) -> None:
    assert words(f"Row 9: {text}.") == text


def test_brackets_inside_brackets_differ() -> None:
    assert words("Row 9: ((2 dc, ch 1, 2 dc) in next sp, sc in next sp) 3 times.").startswith("[(2 dc,")


def test_a_passage_for_one_size() -> None:
    house = "for size S only: sc in next 3 sts; for sizes M and L only: dc in next 3 sts; for all sizes: sc in next st"
    text = f"Row 9: {house}."
    assert words(text) == house
    assert words(text, "S") == "sc in next 3 sts, sc in next st"
    assert words(text, "L") == "dc in next 3 sts, sc in next st"


def test_a_passage_for_all_other_sizes_says_so() -> None:
    work = next(step for step in row("Row 9: Sc in next 3 sts.").steps if isinstance(step, Work))
    others = SizesOnly((), (work,), place=work.place)
    says = Notation(notation_style(), "US", Figures(SIZES), "row")
    assert steps_words((others, work), says) == "for all other sizes: sc in next 3 sts; for all sizes: sc in next 3 sts"


def test_sentences_stay_sentences_and_remarks_stay_remarks() -> None:
    assert words("Row 9: Sc in next st. Fasten off.") == "sc in next st. Fasten off"
    assert words("Row 9: Sc in next st for thumb, sc in next st.") == "sc in next st for thumb, sc in next st"
