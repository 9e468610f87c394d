"""Which measures of a garment are its neck, armholes, upper arms, cross back and lengths, and how they grow."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Measure
from gradegen.findings import Place
from gradegen.grade.bodies import folded
from gradegen.grade.lengths import Words
from gradegen.grade.reckon import lists_in, names_in

Part = Literal["neck width", "neck around", "armhole", "upper arm", "cross back", "length"]

_COLUMNS: dict[str, Part] = {
    "upper arm": "upper arm", "cross back": "cross back", "armhole depth": "armhole", "back waist length": "length",
    "back hip length": "length",
}  # fmt: skip
_NAMES: tuple[tuple[Part, str], ...] = (
    ("upper arm", r"upper arms?|biceps?"),
    ("cross back", r"cross[ -]?back( width)?|cross width|shoulder to shoulder"),
    ("armhole", r"(armhole|yoke|raglan)s? depth"),
    ("neck width", r"(back )?neck(line)? width"),
    ("neck around", r"neck(line)?( opening)?( around| girth| circumference)|around (the )?neck(line)?"),
    ("length", r"((body|back|side|total|finished|garment) )?length( to (the )?underarm)?|length"),
)
_PATTERNS = tuple((part, re.compile(rf"(finished )?({words})")) for part, words in _NAMES)
SIZES_FAR_APART = Fraction(4)  # inches of bust or chest from size to size, as tables have them


@dataclass(frozen=True, slots=True)
class Growing:
    """One measure of a garment over its sizes, as wanted, in exact inches; `bodies`: the bust or chest of each."""

    measure: Measure
    part: Part
    sizes: tuple[GradedSize, ...]
    wanted: tuple[Fraction, ...]
    bodies: tuple[Fraction, ...]

    def steps(self) -> Iterator[tuple[GradedSize, Fraction, Fraction, Fraction]]:
        """Each larger size with the body of the smaller one, the step of the measure, and the step of the body."""
        known = tuple(zip(self.sizes, self.wanted, self.bodies, strict=True))
        for (before, less, small), (size, more, large) in pairwise(known):
            if before.wearer == size.wearer and large > small:
                yield size, small, more - less, large - small

    def share(self) -> Fraction | None:
        """How much of the body's growth, in percent of each, the measure follows from first to last size."""
        if not self.wanted or self.bodies[-1] <= self.bodies[0]:
            return None
        return (self.wanted[-1] / self.wanted[0] - 1) / (self.bodies[-1] / self.bodies[0] - 1)

    def own_step(self, size: GradedSize, column: str) -> Fraction:
        """How much the body itself grows in a column to this size; nothing where its table does not say."""
        at = self.sizes.index(size)
        return (self.between(self.sizes[at - 1], size, column) or Fraction(0)) if at else Fraction(0)

    def between(self, small: GradedSize, large: GradedSize, column: str) -> Fraction | None:
        """How much the body itself grows in a column from one size to another; None where its table does not say."""
        less, more = (_of_the_body(size, column) for size in (small, large))
        return None if less is None or more is None else more - less

    def place(self, size: GradedSize) -> Place:
        """The entry of this size in a typed list; else the whole sum."""
        listed = next(lists_in(self.measure.formula), None)
        return listed.each[size.index].place if listed and size.index < len(listed.each) else self.measure.formula.place


def _of_the_body(size: GradedSize, column: str) -> Fraction | None:
    return next((length for name, length in size.graded_body.items() if folded(name) == column), None)


def growing_parts(checked: Checked, *parts: Part) -> Iterator[Growing]:
    """These parts of a garment that goes by bust or chest; nothing for other things."""
    column = garment_column(checked)
    if column is None:
        return
    for measure in checked.pattern.measures.values():
        part = part_of(checked, measure)
        if part in parts:
            known = [size for size in checked.sizes if measure.name in size.measures and column in size.graded_body]
            yield Growing(
                measure,
                part,
                tuple(known),
                tuple(size.measures[measure.name].target for size in known),
                tuple(size.graded_body[column] for size in known),
            )


def garment_column(checked: Checked) -> str | None:
    """The body column that a garment is chosen by, where that is bust or chest."""
    by = checked.pattern.sizes.by
    wanted = folded(by.text if by is not None else checked.table.by)
    return next((name for name in checked.table.columns if folded(name) == wanted in ("bust", "chest")), None)


def part_of(checked: Checked, measure: Measure) -> Part | None:
    """Which part of a garment a measure is, by its name, else by the one body column it is made of."""
    name = folded(measure.name)
    for part, words in _PATTERNS:
        if words.fullmatch(name):
            return part
    columns = {folded(column) for column in checked.table.columns}
    used = {folded(one.name).removeprefix("body ") for one in names_in(measure.formula)}
    return _COLUMNS.get(next(iter(used))) if len(used) == 1 and used <= columns else None


def words_of(checked: Checked) -> Words:
    """Lengths in the unit the designer puts first."""
    return Words(checked.pattern.units)


def text_of(checked: Checked) -> str:
    """All that the pattern says about itself in words: title, pieces, notes, notions, finishing; small letters."""
    pattern = checked.pattern
    texts = [pattern.title, *pattern.notes, *pattern.finishing, *(notion.what for notion in pattern.notions)]
    texts += [text for piece in pattern.pieces for text in (piece.name, *piece.notes)]
    texts += [pattern.about] if pattern.about else []
    return "\n".join(text.text for text in texts).casefold()
