"""Where pieces meet and do not agree: one mismatch per seam and size, with both numbers, for the rule of its name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Formula, Name
from gradegen.design.graded import GradedSize
from gradegen.design.seams import Division, Join, PickUp, Seam, SeamKind
from gradegen.findings import Finding, Place, Rule
from gradegen.grade.body.bodies import folded
from gradegen.grade.body.sums import Refused, Value, names_in
from gradegen.grade.measure.gauges import gauges_per_inch
from gradegen.numbers.exact import decimal_text, mixed_text
from gradegen.numbers.rounding import nearest_whole
from gradegen.numbers.units import inches_of
from gradegen.reckon.seams.edges_of_pieces import NotKnown, Sides, unit_of

EASED_IN = {"sleeve": Fraction(1, 2)}  # inches; a cap or a drop sleeve is eased in that much
LENGTHS_AGREE = Fraction(1, 4)  # inches; house
PICK_UP_OFF = Fraction(1, 20)  # of the stitches along rows; what is picked up one for one has to be right; house


@dataclass(frozen=True, slots=True)
class Mismatch:
    """Two numbers that should be one. `wanted` and `there` are words with units, `working` the sums behind them."""

    place: Place
    size: str
    seam: str
    wanted: str
    there: str
    working: str
    hint: str | None = None

    def told(self, rule: Rule, message: str) -> Finding:
        """The finding of a rule."""
        return rule.at(
            self.place,
            message,
            size=self.size,
            expected=self.wanted,
            found=self.there,
            because=self.working,
            hint=self.hint,
        )


def mismatched_joins(checked: Checked, kind: SeamKind) -> Iterator[Mismatch]:
    """The joins of one kind whose edges do not agree, size by size."""
    for seam in checked.pattern.seams:
        if isinstance(seam, Join) and seam.kind == kind:
            for size in checked.sizes:
                try:
                    found = _compared(checked, seam, size)
                except (Refused, NotKnown):
                    continue
                if found is not None:
                    yield found


def _compared(checked: Checked, seam: Join, size: GradedSize) -> Mismatch | None:
    sides = Sides(checked, size)
    left, right = sides.amount(seam.left), sides.amount(seam.right)
    units = unit_of(checked, seam.left, size), unit_of(checked, seam.right, size)
    lengths = "length" in (left.kind, right.kind) or (units[0] != units[1] and None not in units)
    if lengths:
        return _compared_lengths(checked, seam, size, (left, right), units)
    if left.number == right.number:
        return None
    unit = units[0] or units[1] or "sts"
    working = f"{_words(seam.left)} {_number(left)}, {_words(seam.right)} {_number(right)}"
    return Mismatch(seam.place, size.name, seam.text, f"{_number(left)} {unit}", f"{_number(right)} {unit}", working)


def _compared_lengths(
    checked: Checked, seam: Join, size: GradedSize, values: tuple[Value, Value], units: tuple[str | None, str | None]
) -> Mismatch | None:
    """Edges of unlike kinds (stitches to rows) meet by their length at the gauge."""
    inches = [_inches(checked, value, unit) for value, unit in zip(values, units, strict=True)]
    if inches[0] is None or inches[1] is None:
        return None
    within = (inches_of(seam.within) if seam.within else None) or EASED_IN.get(seam.kind, LENGTHS_AGREE)
    if abs(inches[0] - inches[1]) <= within:
        return None
    words = [f"{decimal_text(length, 2)} in" for length in inches if length is not None]
    parts = [
        f"{_words(formula)} {_number(value)}{f' {unit}' if unit else ''}"
        for formula, value, unit in zip((seam.left, seam.right), values, units, strict=True)
        if value.kind != "length"
    ]
    working = "; ".join([*parts, f"they may differ by {mixed_text(within)} in"])
    return Mismatch(seam.place, size.name, seam.text, words[0], words[1], working)


def _inches(checked: Checked, value: Value, unit: str | None) -> Fraction | None:
    if value.kind == "length":
        return value.number
    usable, _ = gauges_per_inch(checked.pattern.gauges)
    rates = {gauge.rows if unit == "rows" else gauge.stitches for gauge in usable.values()} - {None}
    rate = rates.pop() if len(rates) == 1 else None
    return value.number / rate if rate else None


def _words(formula: Formula) -> str:
    names = [name.name for name in names_in(formula)]
    return " and ".join(dict.fromkeys(names)) or "the other"


def _number(value: Value) -> str:
    return f"{mixed_text(value.number)} in" if value.kind == "length" else mixed_text(value.number)


# picked-up stitches --------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class PickedUp:
    """One pick-up in one size: the stitches said, those the edges offer, and how far off may still be meant."""

    seam: PickUp
    size: str
    count: int
    offered: Fraction
    within: Fraction
    working: str


def picked_up(checked: Checked) -> Iterator[PickedUp]:
    """Every pick-up in every size in which it can be worked out."""
    for seam in checked.pattern.seams:
        if isinstance(seam, PickUp):
            for size in checked.sizes:
                try:
                    yield _picked_up(checked, seam, size)
                except (Refused, NotKnown):
                    continue


def _picked_up(checked: Checked, seam: PickUp, size: GradedSize) -> PickedUp:
    sides = Sides(checked, size)
    count = sides.amount(seam.count).number
    offered, within, parts = Fraction(0), Fraction(0), []
    if seam.along is not None:
        rows = sides.amount(seam.along).number
        offered, within = rows * seam.ratio, PICK_UP_OFF * rows * seam.ratio
        parts.append(f"{mixed_text(rows)} rows at {seam.ratio.numerator} for {seam.ratio.denominator}")
    if seam.besides is not None:
        besides = sides.amount(seam.besides).number
        offered += besides
        parts.append(f"{mixed_text(besides)} sts one for one")
    if not parts:
        offered = count
    whole = nearest_whole(offered)
    return PickedUp(
        seam, size.name, int(count), offered, within, f"{' and '.join(parts)} are {whole} sts" if parts else ""
    )


# divisions -----------------------------------------------------------------------------------------------------------


def unbalanced_divisions(checked: Checked) -> Iterator[Mismatch]:
    """Divisions whose parts are not the whole, or whose underarm is missing on one side."""
    for seam in checked.pattern.seams:
        if isinstance(seam, Division):
            for size in checked.sizes:
                try:
                    yield from _balances(seam, Sides(checked, size))
                except (Refused, NotKnown):
                    continue


def _balances(seam: Division, sides: Sides) -> Iterator[Mismatch]:
    whole = sides.amount(seam.whole).number
    parts = [sides.amount(part).number for part in seam.fronts_and_back]
    sleeve, chain = sides.amount(seam.sleeve_part).number, sides.amount(seam.chain).number
    body_words = " + ".join(mixed_text(part) for part in parts)
    made = sum(parts) + 2 * sleeve
    if made != whole:
        working = f"{body_words} for the body and 2 x {mixed_text(sleeve)} for the sleeves are {mixed_text(made)}"
        yield _uneven(seam, sides, f"{mixed_text(whole)} sts", f"{mixed_text(made)} sts", working)
    if seam.body is not None:
        body, wanted = sides.amount(seam.body).number, sum(parts) + 2 * chain
        if body != wanted:
            working = f"the body is {body_words} + 2 x {mixed_text(chain)} at the underarms"
            yield _uneven(seam, sides, f"{mixed_text(wanted)} sts", f"{mixed_text(body)} sts", working)
    if seam.sleeve is not None:
        there, wanted = sides.amount(seam.sleeve).number, sleeve + chain
        if there != wanted:
            working = f"a sleeve is {mixed_text(sleeve)} + {mixed_text(chain)} along the underarm chain"
            yield _uneven(seam, sides, f"{mixed_text(wanted)} sts", f"{mixed_text(there)} sts", working)


def _uneven(seam: Division, sides: Sides, wanted: str, there: str, working: str) -> Mismatch:
    return Mismatch(seam.place, sides.size.name, seam.name, wanted, there, working)


# what cannot be compared ---------------------------------------------------------------------------------------------


def unknown_edges(checked: Checked) -> Iterator[Name]:
    """Names in seams and in the edges of pieces that nothing in the pattern answers to."""
    if not checked.sizes:
        return
    for piece in checked.pattern.pieces:
        yield from _unknown(piece.edges.values(), Sides(checked, checked.sizes[0], piece))
    for seam in checked.pattern.seams:
        yield from _unknown(sums_of(seam), Sides(checked, checked.sizes[0]))


def _unknown(sums: Iterable[Formula], sides: Sides) -> Iterator[Name]:
    for formula in sums:
        for name in names_in(formula):
            try:
                sides.named(name)
            except Refused as refused:
                if refused.finding is None and not _lies_in_an_edge(sides, name):
                    yield name
            except NotKnown:
                continue


def _lies_in_an_edge(sides: Sides, name: Name) -> bool:
    """True for `front shoulder` where the front has that edge: what is unknown in it is told where it stands.

    True for a count, too: where it could not be worked out, that is told already.
    """
    plain = folded(name.name)
    if name.name in sides.checked.pattern.counts:
        return True
    return any(
        plain == f"{folded(piece.name.text)} {folded(edge)}"
        for piece in sides.checked.pattern.pieces
        for edge in piece.edges
    )


def unfollowed_seams(checked: Checked) -> Iterator[tuple[Seam, str, str]]:
    """Seams that hang on rows which could not be followed: the seam, the size, and why."""
    for seam in checked.pattern.seams:
        for size in checked.sizes:
            for formula in sums_of(seam):
                try:
                    Sides(checked, size).amount(formula)
                except NotKnown as lost:
                    yield seam, size.name, lost.why
                    break
                except Refused:
                    continue


def sums_of(seam: Seam) -> tuple[Formula, ...]:
    """Every sum in a seam."""
    if isinstance(seam, Join):
        return seam.left, seam.right
    if isinstance(seam, PickUp):
        found: tuple[Formula | None, ...] = (seam.count, seam.along, seam.besides)
    else:
        found = (seam.whole, *seam.fronts_and_back, seam.sleeve_part, seam.chain, seam.body, seam.sleeve)
    return tuple(one for one in found if one is not None)
