"""Neck, yoke, body and sleeves of the pullovers meet in every size: their rows are worked on each other's edges."""

from __future__ import annotations

import re
import shutil
from functools import cache
from pathlib import Path

import pytest

from gradegen.design.checked import Checked
from gradegen.design.edge import stitches_in
from gradegen.design.worked import WorkedRow
from gradegen.findings import Severity
from gradegen.pipeline import check_file

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"
PULLOVERS = ("gunwale-pullover", "limpet-pullover")


@cache
def demo(name: str) -> Checked:
    found = check_file(PATTERNS / f"{name}.yaml").checked
    assert found is not None
    return found


def rows_of(checked: Checked, size: str, piece: str) -> list[WorkedRow]:
    places = {row.place for one in checked.pattern.pieces if one.name.text == piece for row in one.rows}
    return [row for row in checked.worked[size] if row.row.place in places]


@pytest.mark.parametrize("name", PULLOVERS)
def test_what_one_piece_leaves_is_what_the_next_one_meets(name: str) -> None:
    """Counts made and taken by the rows alone: none of the graded counts is asked."""
    checked = demo(name)
    assert (checked.wrong, checked.not_checked) == (0, 0)
    for size in checked.sizes:
        yoke, body, sleeves, band = (
            rows_of(checked, size.name, piece) for piece in ("Yoke", "Body", "Sleeves", "Neckband")
        )
        divided, joined = body[0], body[1]
        assert yoke[-1].after == divided.before
        left = (yoke[-1].made or 0) - (divided.made or 0)  # both sleeve parts
        chains = (joined.made or 0) - (divided.made or 0)  # both underarms
        assert left > 0 < chains
        assert left % 2 == chains % 2 == 0
        assert 2 * stitches_in(sleeves[0].before) == left + chains == 2 * (sleeves[0].made or 0)
        assert band[0].made == yoke[1].made  # round the other side of the neck's chain
        assert sum(row.times for row in yoke[1:]) == size.counts["yoke rounds"].n


CHANGES = {
    "sk next {sleeve part} sts,": "sk next {sleeve part + 2} sts,",
    "ch {underarm},": "ch {underarm + 2},",
    "sc in next {sleeve part} sts,": "sc in next {sleeve part + 2} sts,",
    "sc in last {underarm / 2} ch, join. ({sleeve} sc)": "sc in last {underarm / 2} ch, join. ({sleeve + 1} sc)",
}


@pytest.mark.parametrize("was", CHANGES)
@pytest.mark.parametrize("name", PULLOVERS)
def test_a_division_that_does_not_meet_is_found_in_every_size(name: str, was: str, tmp_path: Path) -> None:
    for file in PATTERNS.glob("*-sizes.yaml"):
        shutil.copy(file, tmp_path)
    text = re.sub(r"(?ms)^pictures:\n(?:[ #].*?\n|\n)*", "", (PATTERNS / f"{name}.yaml").read_text("utf-8"))
    assert was in text
    copy = tmp_path / f"{name}.yaml"
    copy.write_text(text.replace(was, CHANGES[was], 1), "utf-8")
    errors = [one for one in check_file(copy).findings if one.severity is Severity.ERROR]
    body = text[: text.index("name: Body")].count("\n") + 1
    assert {one.size for one in errors} == {size.name for size in demo(name).sizes}
    assert all(one.place.line > body or one.rule == "underarm-not-balanced" for one in errors)
