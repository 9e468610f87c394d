"""A chart of a shaped piece keeps the rhythm of its size: plain rows between changes only where its rows have them."""

import re
from pathlib import Path

import pytest

from gradegen.design.pattern import Piece
from gradegen.pipeline import check_file
from gradegen.write.chart.counts import small_piece

PATTERNS = Path(__file__).resolve().parents[2] / "shared" / "patterns"


def rhythm(piece: Piece, index: int, place: int) -> set[str]:
    """Of one row's shaping in one size: "each" for changes in every row, "apart" for those with plain rows between."""
    said = " ".join(sentence.each[index] for sentence in piece.rows[place].sentences)
    each = re.search(r"every (?:row|rnd)", said)
    apart = re.search(r"every (?:other|\d+(?:nd|rd|th))", said)
    return {name for name, found in (("each", each), ("apart", apart)) if found}


@pytest.mark.parametrize(
    ("name", "least"), [("gunwale-pullover", 12), ("slipway-cardigan", 30), ("limpet-pullover", 8)]
)
def test_no_chart_changes_in_another_rhythm_than_its_size(name: str, least: int) -> None:
    checked = check_file(PATTERNS / f"{name}.yaml").checked
    assert checked is not None
    compared = 0
    for piece in checked.pattern.pieces:
        shaped = [at for at, row in enumerate(piece.rows) if row.sentences]
        for one in checked.sizes if shaped else ():
            small = small_piece(checked, piece, (one,))
            assert small is not None
            for at in shaped:
                whole = rhythm(piece, one.index, at)
                assert rhythm(small.piece, one.index, at) <= whole, (piece.name.text, one.name)
                compared += bool(whole)
    assert compared >= least
