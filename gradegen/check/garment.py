"""Which measures of a garment are its neck, armholes, upper arms, cross back and lengths, and how they grow.

A measure is looked at for its name (`upper arm`, `cross back width`, `yoke depth`, `neck opening`, `body length`), or,
under any other name, because it is one body column with ease (`arm: upper arm + 2 in`). Shares and sums of columns
(`cap: upper arm / 3`) are parts of their own shape, and are not looked at.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from gradegen.design.checked import Checked
from gradegen.design.formula import Amount, Call, Formula, Name, Sum
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Measure
from gradegen.findings import Place
from gradegen.grade.body.bodies import folded
from gradegen.grade.body.sums import lists_in, names_in
from gradegen.grade.measure.lengths import Words

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
_OPENING = re.compile(r"(finished )?neck(line)? opening")
LEAST_AROUND = Fraction(13)  # inches; preemies' heads are 12 in around, the widest necks of garments 11 in across
_SAID: dict[Part, str] = {
    "neck width": "width of the neck", "neck around": "neck all the way round", "armhole": "depth of the armhole",
    "upper arm": "upper arm", "cross back": "cross back", "length": "length",
}  # fmt: skip
_PATTERNS = tuple((part, re.compile(rf"(finished )?({words})")) for part, words in _NAMES)
SIZES_FAR_APART = Fraction(4)  # inches of bust or chest from size to size, as tables have them


@dataclass(frozen=True, slots=True)
class Taken:
    """What a measure is taken for, and why: its name, or the body column it is, with ease."""

    part: Part
    why: str


@dataclass(frozen=True, slots=True)
class Growing:
    """One measure of a garment over its sizes, as wanted, in exact inches; `bodies`: the bust or chest of each.

    `why`: why it is looked at, as a sentence for the finding.
    """

    measure: Measure
    part: Part
    why: str
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
        taken = part_of(checked, measure)
        if taken is not None and taken.part in parts:
            known = [size for size in checked.sizes if measure.name in size.measures and column in size.graded_body]
            yield Growing(
                measure,
                taken.part,
                taken.why,
                tuple(known),
                tuple(size.measures[measure.name].target for size in known),
                tuple(size.graded_body[column] for size in known),
            )


def garment_column(checked: Checked) -> str | None:
    """The body column that a garment is chosen by, where that is bust or chest."""
    by = checked.pattern.sizes.by
    wanted = folded(by.text if by is not None else checked.table.by)
    return next((name for name in checked.table.columns if folded(name) == wanted in ("bust", "chest")), None)


def part_of(checked: Checked, measure: Measure) -> Taken | None:
    """Which part of a garment a measure is, by its name, else as one body column with ease; None for others."""
    name = folded(measure.name)
    for part, words in _PATTERNS:
        if words.fullmatch(name):
            return Taken(part, f"{measure.name} is looked at as the {_SAID[part]}, for its name")
    if _OPENING.fullmatch(name):
        return _opening(checked, measure)
    columns = {folded(column) for column in checked.table.columns}
    used = {folded(one.name).removeprefix("body ") for one in names_in(measure.formula)}
    column = next(iter(used)) if len(used) == 1 and used <= columns else ""
    if column not in _COLUMNS or share_of(measure.formula) != 1:
        return None
    return Taken(
        _COLUMNS[column], f"{measure.name} is looked at as the {_SAID[_COLUMNS[column]]}: it is {column} with ease"
    )


def _opening(checked: Checked, measure: Measure) -> Taken:
    """A neck opening is measured across or around: no neck is so wide as the narrowest are around."""
    lengths = [size.measures[measure.name].target for size in checked.sizes if measure.name in size.measures]
    part: Part = "neck around" if lengths and min(lengths) >= LEAST_AROUND else "neck width"
    return Taken(part, f"{measure.name} is looked at as the {_SAID[part]}, for its name and size")


def share_of(formula: Formula) -> Fraction | None:
    """How much of the one name in a sum the sum is: 1 for `upper arm + 2 in`, 1/2 for `upper arm / 2`, 0 for none.

    None where that is not one share for every size (`max(...)` of two shares, a product of names).
    """
    match formula:
        case Name():
            return Fraction(1)
        case Sum():
            return _share_of_sum(formula)
        case Call():
            shares = {share_of(part) for part in formula.parts} - {Fraction(0)}
            return shares.pop() if len(shares) == 1 else None if shares else Fraction(0)
    return Fraction(0)


def _share_of_sum(formula: Sum) -> Fraction | None:
    left, right = share_of(formula.left), share_of(formula.right)
    if left is None or right is None:
        return None
    if formula.sign in ("+", "-"):
        return left + (right if formula.sign == "+" else -right)
    if formula.sign == "*" and isinstance(formula.left, Amount) and not left:
        return right * formula.left.number
    if isinstance(formula.right, Amount) and not right and formula.right.number:
        return left * formula.right.number if formula.sign == "*" else left / formula.right.number
    return None


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
