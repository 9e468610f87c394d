"""How long every sewn seam of a size is, from the edges that the pattern's `seams` name, and the yarn to sew it.

A seam lies between two edges and is counted once, by the longer where one is eased in. Stitches count by the stitch
gauge, row ends by the row gauge: a slanting edge is sewn row to row, so it counts by its rows.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.checked import Checked
from gradegen.design.formula import Formula, Sum
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Pattern, Yarn
from gradegen.design.seams import Join, PickUp, SeamKind
from gradegen.findings import Finding, Rule, Severity
from gradegen.grade.body.bodies import folded
from gradegen.grade.body.sums import Refused, names_in
from gradegen.reckon.seams.edges_of_pieces import NotKnown, Sides, unit_of
from gradegen.reckon.seams.gauge_of_edge import rate_of
from gradegen.trade.yarn_use import seam_use

SEAM_YARN_NOT_KNOWN = Rule(
    "seam-yarn-not-known", Severity.NOTE, "house", "How long a seam is, or whether it is sewn, is not said."
)
# How many seams of a name a garment has (common practice, no source); what is worked in rows, or only compared: none.
USUALLY_SEWN: Mapping[SeamKind, int] = {"shoulder": 2, "side": 2, "sleeve": 2, "width": 0, "raglan": 0}
_SEWING = ("seam", "seams", "sewing")
_SAY = "{join: front side = back side, sewn: 2}; sewn: 0 where rows join it, or where the line only compares."


@dataclass(frozen=True, slots=True)
class SewnSeam:
    """One line of the pattern's `seams` in one size: its inches, all seams of it together.

    `inches` None: it can't be known, and `why` says the reason.
    """

    seam: Join | PickUp
    inches: Fraction | None
    why: str = ""


@dataclass(frozen=True, slots=True)
class Sewing:
    """The yarn for seams: exact inches by size, and how many lengths of yarn one length of seam takes.

    `is_stated` False: the usual number, by common practice.
    """

    inches: Mapping[str, Fraction]
    each: Fraction
    is_stated: bool


def sewn_seams(checked: Checked, size: GradedSize) -> Iterator[SewnSeam]:
    """Every seam of one size that is sewn, and those of which it is not known."""
    for seam in checked.pattern.seams:
        if not isinstance(seam, Join | PickUp):
            continue
        times = _times(checked.pattern, seam)
        if times is None:
            yield SewnSeam(seam, None, "whether it is sewn, and how often, is not said")
        elif times:
            inches, why = _length(checked, seam, size)
            yield SewnSeam(seam, None if inches is None else times * inches, why)


def _times(pattern: Pattern, seam: Join | PickUp) -> int | None:
    """How many seams a line stands for: as said, else as is usual; None where its words leave it open."""
    if isinstance(seam, PickUp) or seam.sewn is not None:
        return seam.sewn
    usual = USUALLY_SEWN.get(seam.kind)
    if not usual:
        return usual
    is_open = seam.kind != "sleeve" and any(_is_of_several(side) for side in (seam.left, seam.right))
    return None if is_open or _is_of_round(pattern, seam) else usual


def _is_of_several(formula: Formula) -> bool:
    """True for an edge that holds more than one seam (`2 * shoulder + neck`)."""
    if not isinstance(formula, Sum):
        return False
    return formula.sign in "+*" or _is_of_several(formula.left) or _is_of_several(formula.right)


def _is_of_round(pattern: Pattern, seam: Join) -> bool:
    """True where a piece of the seam is worked in the round, or on what another left: rows may join it already."""
    names = [folded(name.name) for side in (seam.left, seam.right) for name in names_in(side)]
    pieces = [piece for piece in pattern.pieces if piece.shape != "flat" or piece.begin is not None]
    return any(name.startswith(f"{folded(piece.name.text)} ") for piece in pieces for name in names)


def _length(checked: Checked, seam: Join | PickUp, size: GradedSize) -> tuple[Fraction | None, str]:
    """The inches of one seam, or why they are not known."""
    edges = (seam.left, seam.right) if isinstance(seam, Join) else (seam.along or seam.count,)
    lengths, why = [], ""
    for edge in edges:
        try:
            lengths.append(_inches(checked, edge, edges, size))
        except (Refused, NotKnown) as lost:
            why = lost.why if isinstance(lost, NotKnown) else "one of its edges is not known"
    return (max(lengths), "") if lengths else (None, why)


def _inches(checked: Checked, edge: Formula, edges: tuple[Formula, ...], size: GradedSize) -> Fraction:
    value = Sides(checked, size).amount(edge)
    if value.number < 0:
        raise NotKnown("an edge comes to less than nothing")
    if value.kind == "length":
        return value.number
    unit = unit_of(checked, edge, size)
    if unit is None:
        raise NotKnown("its numbers may be stitches or rows")
    rate = rate_of(checked.pattern, edge, edges, unit)
    if rate is None:
        raise NotKnown(f"the gauge of its {'rows' if unit == 'rows' else 'stitches'} is not said")
    return value.number / rate


# yarn ----------------------------------------------------------------------------------------------------------------


def sewing_yarn(checked: Checked, yarn: Yarn) -> Sewing | None:
    """What the seams take of a yarn in every size; None where it sews none, or the designer's own amount stands."""
    if not _sews(checked.pattern, yarn):
        return None
    each = yarn.sewing or seam_use().use
    inches = {}
    for size in checked.sizes:
        known = [one.inches for one in sewn_seams(checked, size) if one.inches is not None]
        inches[size.name] = each * sum(known, Fraction(0))
    return Sewing(inches, each, yarn.sewing is not None) if any(inches.values()) else None


def _sews(pattern: Pattern, yarn: Yarn) -> bool:
    """True for the yarn that says so, else the first; for none where an amount of the designer's own is for seams."""
    own = {word for one in pattern.yarns for name in one.besides for word in name.lower().split()}
    if own & set(_SEWING):
        return False
    sewing = next((one for one in pattern.yarns if one.sewing is not None), pattern.yarns[0])
    return sewing.letter == yarn.letter


def seams_not_known(checked: Checked, yarn: Yarn, knows_lengths: bool) -> Iterator[Finding]:
    """One finding for every seam whose yarn is missing, with its sizes; one for all where the yarn has no length."""
    if not _sews(checked.pattern, yarn):
        return
    if not knows_lengths:
        if sewing_yarn(checked, yarn) is not None:
            message = "The yarn to sew the seams is not counted: how long a skein is, is not said."
            yield SEAM_YARN_NOT_KNOWN.at(yarn.place, message, hint="skein: 200 yd / 100 g")
        return
    missing: dict[int, tuple[SewnSeam, list[str]]] = {}
    for size in checked.sizes:
        for one in sewn_seams(checked, size):
            if one.inches is None:
                missing.setdefault(id(one.seam), (one, []))[1].append(size.name)
    for one, sizes in missing.values():
        which = "" if len(sizes) == len(checked.sizes) else f" in {', '.join(sizes)}"
        message = f"The yarn to sew this seam is not counted{which}: {one.why}."
        yield SEAM_YARN_NOT_KNOWN.at(one.seam.place, message, hint=_SAY)
