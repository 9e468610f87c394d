"""Yarn held against the size of the piece and against published amounts for whole pieces."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.pattern import Yarn
from gradegen.findings import Finding, Rule, Severity
from gradegen.numbers.exact import decimal_text
from gradegen.reckon.yarn.amounts import YarnNeed
from gradegen.trade.yarn import find_yarn_weights
from gradegen.trade.yarn_use import PieceRange, piece_ranges

OUTSIDE_RANGE = Rule(
    "yarn-outside-published-range", Severity.NOTE, "common practice", "Published amounts for such pieces are others."
)
CALLED = {
    "beanie": r"hat|beanie|cap",
    "scarf": r"scarf",
    "triangle shawl": r"shawl|shawlette",
    "adult sweater": r"sweater|pullover|jumper|cardigan",
    "baby blanket": r"blanket|afghan",
    "granny blanket": r"granny blanket|granny afghan",
}
LEEWAY = Fraction(1, 4)  # house: ranges are rough


@dataclass(frozen=True, slots=True)
class PerInch:
    """Yards for one finished inch of width in one size, and how far that is from the mean of all sizes."""

    size: str
    yards: Fraction
    off: Fraction


def yards_per_inch(checked: Checked, need: YarnNeed) -> tuple[PerInch, ...]:
    """Yards per finished inch of the measure sizes go by; () where that or the length of yarn is not known."""
    name = next((size.ease_measure for size in checked.sizes if size.ease_measure is not None), None)
    if name is None:
        name = next((piece.width.text for piece in checked.pattern.pieces if piece.width is not None), None)
    shares = []
    for size in checked.sizes:
        yarn, measure = need.of(size.name), size.measures.get(name) if name is not None else None
        if yarn is None or yarn.used.yards is None or measure is None or not measure.printed:
            return ()
        shares.append((size.name, yarn.used.yards / measure.printed))
    mean = sum((share for _, share in shares), Fraction(0)) / len(shares) if shares else Fraction(1)
    return tuple(PerInch(size, share, share / mean - 1) for size, share in shares)


def compare_with_published(checked: Checked, needs: tuple[YarnNeed, ...]) -> tuple[Finding, ...]:
    """Notes where a size takes far more or less than published for such a piece in such a yarn."""
    return tuple(_compared(checked, needs))


def _compared(checked: Checked, needs: tuple[YarnNeed, ...]) -> Iterator[Finding]:
    found = _range_for(checked)
    if found is None or len(needs) != 1 or len(checked.pattern.yarns) != 1:
        return
    yarn = checked.pattern.yarns[0]
    span = _span(found, yarn)
    for size in needs[0].sizes if span is not None else ():
        wearer = next((one.wearer for one in checked.sizes if one.name == size.size), "")
        if span is None or size.used.yards is None or wearer != found.wearer:
            continue
        low, high = span[0] * (1 - LEEWAY), span[1] * (1 + LEEWAY)
        if not low <= size.used.yards <= high:
            yield OUTSIDE_RANGE.at(
                yarn.place,
                f"Published amounts for {'an' if found.what[0] in 'aeiou' else 'a'} {found.what} are others.",
                size=size.size,
                expected=f"{decimal_text(span[0])} to {decimal_text(span[1])} yd",
                found=f"{decimal_text(size.used.yards, 0)} yd",
                because=str(found.source),
            )


def _range_for(checked: Checked) -> PieceRange | None:
    """The published range for what the title calls the piece; the longer name first."""
    title = checked.pattern.title.text.lower()
    for what, words in sorted(CALLED.items(), key=lambda pair: -len(pair[1])):
        if re.search(rf"\b(?:{words})s?\b", title):
            return next((one for one in piece_ranges() if one.what == what), None)
    return None


def _span(found: PieceRange, yarn: Yarn) -> tuple[Fraction, Fraction] | None:
    weights = find_yarn_weights(yarn.weight.text) if yarn.weight else ()
    if None in found.yards:
        return found.yards[None]
    return found.yards.get(weights[0].number) if len(weights) == 1 else None
