"""Whole texts that once raised a false alarm or hid a fault, each with the arithmetic of what is right."""

from __future__ import annotations

from pathlib import Path

import pytest

from gradegen.findings import Severity
from gradegen.pipeline import check_text

HEAD = "Demo\n\nSizes: {sizes}\nTerms: US terms\n{worked}\n\nNotes\n- {note}\n\nInstructions\n{rows}\n"
SPIRAL, FLAT, ROUNDS = "Worked in a spiral.", "Worked flat in turned rows.", "Worked in joined rounds."
BASKET = (
    "Rnd 1: 6 sc in magic ring. [6]\nRnd 2: [inc] 6 times. [12]\nRnds 3-8 (10): Go on in the same way, one more sc "
    "between increases each time. [48 (60)]\nRnd 9 (11): Sc in each sc around. [48 (60)]"
)
CUFF = (
    "Row 1: Ch 11 (13), sc in 2nd ch from hook and in each ch across, turn. (10 (12) sc)\nRows 2-24 (28): Ch 1, sc in "
    "each st across, turn.\nEdge: Ch 1, sc in the end of each row. (24 (28) sc)\n"
)
BODY = "Rnd 1: Ch 100 (130), sl st in first ch to form a ring. Ch 1, sc in each ch around; join. (100 (130) sc)"
CLOSE = "Rnd 1: sc 6 in MC. (6)\nRnd 2: inc around. (12)\nRnd 3: *sc, inc* repeat 6x. (18)"
ROWS = {  # name -> (sizes, how it is worked, a note, its rows)
    "what words nobody could read come to is believed": ("S (M)", SPIRAL, "inc = 2 sc in next st.", BASKET),
    "as many row ends as rows": ("S (M)", FLAT, "Ch 1 is not a stitch.", CUFF),
    "a size with a stroke is one size": ("S/M (L/XL)", ROUNDS, "Ch 1 is not a stitch.", BODY),
    "a note of inc and dec": ("one size", SPIRAL, "inc: 2 sc in the same st. dec: sc 2 sts together.", CLOSE),
}


def errors(text: str, folder: Path) -> list[tuple[str, int]]:
    """The rules and lines of what is called wrong."""
    path = folder / "demo.txt"
    path.write_text(text, encoding="utf-8")
    found = check_text(path).findings
    return [(one.rule, one.place.line) for one in found if one.severity in (Severity.ERROR, Severity.INTERNAL)]


@pytest.mark.parametrize("name", ROWS)
def test_nothing_sound_is_called_wrong(name: str, tmp_path: Path) -> None:
    sizes, worked, note, rows = ROWS[name]
    assert errors(HEAD.format(sizes=sizes, worked=worked, note=note, rows=rows), tmp_path) == []


def test_a_row_along_row_ends_goes_on_to_prove_the_next(tmp_path: Path) -> None:
    # 24 = 4 x 6; 28 = 6 x 4 + 4
    sizes, worked, note, rows = ROWS["as many row ends as rows"]
    rows += "Edge 2: Ch 1, *sc in next 5 sts, 2 sc in next st; rep from * across."
    text = HEAD.format(sizes=sizes, worked=worked, note=note, rows=rows)
    assert errors(text, tmp_path) == [("repeat-does-not-fit", text[: text.index("Edge 2")].count("\n") + 1)]
