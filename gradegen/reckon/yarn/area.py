"""The finished area of every piece, where yarn is reckoned by area for want of anything better."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.reckon.census.made_twice import times_made


def finished_areas(checked: Checked) -> Mapping[str, Mapping[str, Fraction]]:
    """Size -> piece -> square inches, width times length as printed; {} where a piece lacks one of them."""
    found: dict[str, dict[str, Fraction]] = {}
    for size in checked.sizes:
        for piece in checked.pattern.pieces:
            width = size.measures.get(piece.width.text) if piece.width else None
            length = size.measures.get(piece.length.text) if piece.length else None
            if width is None or length is None:
                return {}
            found.setdefault(size.name, {})[piece.name.text] = width.printed * length.printed * times_made(piece)
    return found
