"""The side view of a piece worked in the round, from how many stitches each worked round has."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import CountRule, Gauge, Piece
from gradegen.design.worked import WorkedRow
from gradegen.grade.body.sums import names_in
from gradegen.numbers.units import inches_of
from gradegen.write.drawing.courses import width_of

_NEAR = 0.15  # how far a round's width by its stitches may lie from the measure before the stitches are not believed


@dataclass(frozen=True, slots=True)
class Profile:
    """Half a side view: (half width, how far down) from the beginning of the work to its last edge, in inches.

    `band`: the point where the width is measured. `measured`: first and last point of the length; `runs_along`: it is
    measured along the fabric. `is_worked`: taken from the worked rounds.
    """

    points: tuple[tuple[float, float], ...]
    band: tuple[float, float]
    measured: tuple[int, int]
    runs_along: bool
    is_worked: bool

    @property
    def height(self) -> float:
        """From the beginning of the work to its last edge, straight down."""
        return max(down for _, down in self.points)

    @property
    def widest(self) -> float:
        """The greatest half width."""
        return max(out for out, _ in self.points)


def round_profile(piece: Piece, around: float, length: float, checked: Checked, size: GradedSize) -> Profile:
    """From the worked rounds where their stitches agree with the measure around; else a plain tube or cap."""
    rounds = _rounds(piece, checked.worked.get(size.name, ()))
    gauge = _gauge_of(piece, checked)
    worked = _from_rounds(rounds, gauge, around, length) if gauge and rounds else None
    return worked or _plain(around, length, starts_closed=bool(rounds) and rounds[0] * 4 < max(rounds))


def _rounds(piece: Piece, worked: Sequence[WorkedRow]) -> list[int]:
    """How many stitches wide every single round is, chain spaces included."""
    mine = {row.place for row in piece.rows}
    widths: list[int] = []
    for row in worked:
        if row.row.place not in mine or not row.applies or row.times < 1:
            continue
        wide = max(row.made or 0, width_of(row.after))
        if not wide:
            return []
        before = widths[-1] if widths else wide
        widths += [before + (wide - before) * (at + 1) // row.times for at in range(row.times)]
    return widths


def _gauge_of(piece: Piece, checked: Checked) -> tuple[float, float] | None:
    """Stitches and rows to the inch, by the gauge that the count across this piece is made with."""
    pattern = checked.pattern
    width = piece.width.text if piece.width else ""
    named = [rule.gauge.text for rule in pattern.counts.values() if rule.gauge and _is_across(rule, width)]
    gauge = pattern.gauges.get(named[0]) if named else next(iter(pattern.gauges.values()), None)
    return _per_inch(gauge) if gauge else None


def _is_across(rule: CountRule, measure: str) -> bool:
    return rule.across is not None and any(name.name == measure for name in names_in(rule.across))


def _per_inch(gauge: Gauge) -> tuple[float, float] | None:
    over = inches_of(gauge.over)
    stitches = gauge.stitches or (gauge.repeats or 0) * (gauge.repeat_of or 0)
    if not over or not stitches or not gauge.rows:
        return None
    across, along = stitches / over, gauge.rows / over
    return across.numerator / across.denominator, along.numerator / along.denominator


def _from_rounds(rounds: Sequence[int], gauge: tuple[float, float], around: float, length: float) -> Profile | None:
    usual = max(set(rounds), key=lambda wide: (rounds.count(wide), wide))
    if abs(usual / gauge[0] - around) > _NEAR * around:
        return None
    step = 1 / gauge[1]
    half_widths = _softened([wide * around / usual / (2 * math.pi) for wide in rounds])
    begins = 0.0 if rounds[0] * 4 < max(rounds) else half_widths[0]
    points = _run_down(begins, half_widths, step)
    plain = [at + 1 for at, wide in enumerate(rounds) if wide == usual]
    band = points[(plain[0] + plain[-1]) // 2]
    first, last, along = _measured(points, plain, step, length)
    return Profile(tuple(points), band, (first, last), along, True)


def _softened(half_widths: Sequence[float]) -> list[float]:
    """Each width levelled with its neighbours, as fabric levels a sudden increase; the ends stay as they are."""
    levelled = []
    for at in range(len(half_widths)):
        reach = min(2, at, len(half_widths) - 1 - at)
        near = half_widths[at - reach : at + reach + 1]
        levelled.append(sum(near) / len(near))
    return levelled


def _run_down(begins: float, half_widths: Sequence[float], step: float) -> list[tuple[float, float]]:
    """Each round is one row high along the fabric: what it does not go outwards it goes down, its bends softened."""
    outward = [wide - before for before, wide in zip([begins, *half_widths], half_widths, strict=False)]
    leans = [math.asin(max(-1.0, min(1.0, out / step))) for out in outward]
    points, down = [(begins, 0.0)], 0.0
    for at, wide in enumerate(half_widths):
        near = leans[max(0, at - 2) : at + 3]
        down += step * math.cos(sum(near) / len(near))
        points.append((wide, down))
    return points


def _measured(
    points: Sequence[tuple[float, float]], plain: Sequence[int], step: float, length: float
) -> tuple[int, int, bool]:
    """Which stretch of the outline the length is: straight down, along the fabric, or the part of even width."""
    last, even = len(points) - 1, plain[-1]
    start = plain[0]
    choices = [
        (points[last][1], 0, last, False),
        (points[even][1], 0, even, False),
        (step * last, 0, last, True),
        (step * even, 0, even, True),
        (points[even][1] - points[start - 1][1], start - 1, even, False),
    ]
    _, first, end, along = min(choices, key=lambda choice: abs(choice[0] - length))
    return first, end, along


def _plain(around: float, length: float, *, starts_closed: bool) -> Profile:
    """A tube, or a cap with a round top."""
    half = around / (2 * math.pi)
    if not starts_closed:
        return Profile(((half, 0.0), (half, length)), (half, length * 0.6), (0, 1), False, False)
    rise = min(half, length * 0.6)
    top = [(half * math.sin(turn), rise * (1 - math.cos(turn))) for turn in (math.pi / 2 * at / 12 for at in range(13))]
    points = (*top, (half, length))
    return Profile(points, (half, (rise + length) / 2), (0, len(points) - 1), False, False)
