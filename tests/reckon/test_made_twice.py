"""How many of a piece are made, by its name and notes."""

from dataclasses import replace
from pathlib import Path

import pytest

from gradegen.design.pattern import Piece, Text
from gradegen.pipeline import check_file
from gradegen.reckon.census.made_twice import times_made

WRAP = Path(__file__).parents[2] / "shared" / "patterns" / "skerrywick-wrap.yaml"


@pytest.fixture(scope="module")
def piece() -> Piece:
    found = check_file(WRAP).checked
    assert found is not None
    return found.pattern.pieces[0]


@pytest.mark.parametrize(
    ("words", "times"),
    [
        ("Make two.", 2),
        ("Make 2 alike, and sew them to the body.", 2),
        ("Sleeve (make 2)", 2),
        ("Square (make 12)", 12),
        ("Go on from the yoke.", 1),
        ("Make 2 sts in each corner.", 1),
        ("Make 3 rows more for a deeper edge.", 1),
        ("Make 2 dc where you turn.", 1),
        ("It will make you warm.", 1),
    ],
)
def test_words(piece: Piece, words: str, times: int) -> None:
    assert times_made(replace(piece, notes=(Text(words, piece.place),))) == times
    assert times_made(replace(piece, name=Text(words, piece.place), notes=())) == times
