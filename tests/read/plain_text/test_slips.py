"""Slips an editor meets in ordinary texts, each told once; the texts are our own, every count worked by hand."""

from pathlib import Path

from gradegen.findings import Severity
from gradegen.pipeline import Outcome, check_text

COWL = """Mossbank Cowl

Sizes: S (M, L)
US terms. Ch 2 at the beginning of a round does not count as a stitch.

Cowl
Foundation: Ch 72 (78, 84). Join with sl st to first ch to form a ring.
Rnd 1: Ch 2, hdc in each ch around, join with sl st to first hdc. (72 (78, 84) hdc)
Rnds 2-5: Ch 2, hdc in each st around, join. (72 (78, 84) hdc)
Rnd 6: Ch 2, *hdc in next 4 sts, hdc2tog; rep from * around, join. (60 (65, 70) hdc)
"""
CLOTH = """Alder Washcloth

US terms. One size.

Row 1: Ch 32. Sc in 2nd ch from hook and in each ch across. Turn. (31 sc)
Row 2: Ch 1, sc in first 3 sts, (shell in next st, sk 2 sts, sc in next st, sk 2 sts) 4 times, shell in next st,
  sc in last 3 sts. Turn. (5 shells, 10 sc)
Shell: 5 dc in the same st.
Fasten off.
"""


def checked(folder: Path, text: str) -> Outcome:
    path = folder / "pattern.txt"
    path.write_text(text, encoding="utf-8")
    return check_text(path)


def grave(outcome: Outcome) -> list[tuple[str, int, int]]:
    return [(f.rule, f.place.line, f.place.column) for f in outcome.findings if f.severity is not Severity.NOTE]


def test_a_row_number_left_out_is_told_where_the_numbers_go_on(tmp_path: Path) -> None:
    assert grave(checked(tmp_path, COWL)) == []
    assert set(grave(checked(tmp_path, COWL.replace("Rnd 6:", "Rnd 7:")))) == {("row-numbers-broken", 10, 1)}


def test_a_stitch_explained_behind_the_rows_is_no_row(tmp_path: Path) -> None:
    outcome = checked(tmp_path, CLOTH)
    assert grave(outcome) == []
    assert outcome.checked is not None
    assert (outcome.checked.proved, outcome.checked.wrong) == (2, 0)
