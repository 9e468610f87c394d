from dataclasses import replace
from typing import Any

import pytest

from gradegen.design.checked import Checked
from gradegen.design.rows import Row
from gradegen.findings import Written
from gradegen.read.notation.rows import read_rows
from gradegen.read.notation.words.row_names import RowNames
from gradegen.write.words.own_words import in_own_words
from gradegen.write.words.phrases import Printing
from gradegen.write.words.print_numbers import length_style

NAMES = ("S", "M", "L")


def read(text: str) -> Row:
    rows, findings = read_rows(Written.plain(text, "x.yaml", 12, 7), RowNames(sizes=NAMES))
    assert findings == ()
    return rows[0]


def printing(samples: Any, *names: str) -> Printing:
    checked: Checked = samples["wrap"](NAMES)
    sizes = tuple(size for size in checked.sizes if not names or size.name in names)
    return Printing(checked.sizes, sizes, length_style(checked.pattern))


@pytest.mark.parametrize(
    ("size", "text"),
    [
        ("S", "Row 5: Sc in next 3 sts, sc in each st across, turn. 12 (14, 16) sc."),
        ("M", "Row 5: Sc in next 3 sts, 2 sc in next st; sc in each st across, turn. 12 (14, 16) sc."),
    ],
)
def test_a_passage_for_some_sizes(samples: Any, size: str, text: str) -> None:
    row = read(
        "Row 5: Sc in next 3 sts, for sizes M and L only, 2 sc in next st; sc in each st across, turn. 12 (14, 16) sc."
    )
    own = in_own_words(row, printing(samples, size))
    assert own.text == text
    assert [own.text[each.start : each.end] for each in own.lists] == ["12 (14, 16)"]


@pytest.mark.parametrize(("size", "end"), [("S", "Sc in next st."), ("M", "Dc in next st."), ("L", "Dc in next st.")])
def test_one_or_the_other(samples: Any, size: str, end: str) -> None:
    row = read("Row 7: Sc in each st across. For size S only: Sc in next st. For the larger sizes: Dc in next st.")
    own = in_own_words(row, printing(samples, size)).text
    assert own.rstrip(" .") + "." == f"Row 7: Sc in each st across. {end}"


def test_among_many_it_stays_as_written(samples: Any) -> None:
    row = read("Row 7: Sc in each st across. For size S only: Sc in next st.")
    assert in_own_words(row, printing(samples)) is row


def test_a_row_without_passages_stays(samples: Any) -> None:
    row = read("Row 7: Sc in each st across. (12 sc)")
    assert in_own_words(row, printing(samples, "S")) is row


def test_sentences_written_per_size(samples: Any) -> None:
    from gradegen.design.rows import Sentence

    text = "Row 9: Dec 1 st every 4th row 6 (7, 8) times. Fasten off. 3 (4, 5) sts."
    row = read(text)
    start = text.index("Dec")
    stretch = Sentence(start, text.index(" Fasten"), "sides", ("Dec on Row 9.", "Dec on Rows 9 and 13.", "Dec twice."))
    own = in_own_words(replace(row, sentences=(stretch,)), printing(samples, "M"))
    assert own.text == "Row 9: Dec on Rows 9 and 13. Fasten off. 3 (4, 5) sts."
    assert [own.text[each.start : each.end] for each in own.lists] == ["3 (4, 5)"]
    assert own.sentences == ()
