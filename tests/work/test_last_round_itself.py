"""`Sc in each st. Repeat last round 3 times` means the round just told, not the one above it (common practice)."""

from __future__ import annotations

from pathlib import Path

import pytest

from gradegen.pipeline import check_text

ABOVE = [
    "Rnd 1: Ch 3, join to form a ring, ch 3, 11 dc in ring, join.",
    "Rnd 2: Ch 3, dc in same st, 2 dc in each dc, join.",
]
AGAIN = "Next Rnd: Work 1 sc in each st. Repeat last round 3 times"


@pytest.mark.parametrize(("behind", "made"), [("", 24), (", sc in next 2 sts, sl st in next st", None)])
def test_the_round_just_told_is_the_one_repeated(tmp_path: Path, behind: str, made: int | None) -> None:
    file = tmp_path / "disc.txt"
    text = ["Harbour disc", "", "Terms: US terms", "", "Instructions", *ABOVE, f"{AGAIN}{behind}.", ""]
    file.write_text("\n".join(text), "utf-8")
    outcome = check_text(file)
    assert outcome.checked is not None
    assert not [one for one in outcome.findings if one.severity == "error"]
    assert [rows[-1].made for rows in outcome.checked.worked.values()] == [made]
