"""Pieces that begin in one point, as hats do, seen from the side: their outline follows their worked rounds."""

from __future__ import annotations

from gradegen.design.checked import Checked
from gradegen.design.graded import GradedSize
from gradegen.design.pattern import Piece
from gradegen.write.drawing.courses import courses_of
from gradegen.write.drawing.outline import Outline, Point, Side, Span, drawn
from gradegen.write.drawing.profile import Profile, round_profile
from gradegen.write.drawing.sketch import arc_points

_MOST_IN_A_RING = 20  # stitches that begin in one point
_LEAN = 0.17  # how far an edge seen a little from above bends down, by its half width


def hat_outline(piece: Piece, checked: Checked, size: GradedSize) -> Outline | None:
    """The side view of a piece that begins in one point; None where it is open at its beginning."""
    if piece.width is None or piece.length is None:
        return None
    width, length = (size.measures.get(text.text) for text in (piece.width, piece.length))
    if width is None or length is None or width.printed <= 0 or length.printed <= 0:
        return None
    profile = round_profile(piece, drawn(width.printed), drawn(length.printed), checked, size)
    courses = courses_of(piece, checked, size)
    if profile.points[0][0] or (courses and courses[0].after > _MOST_IN_A_RING):
        return None
    out, down = profile.band
    front = arc_points((0.0, down), out, out * _LEAN, 180, 0)
    first, last = profile.measured
    side = [(-across, at) for across, at in profile.points[first : last + 1]]
    way: Side = "along" if profile.runs_along else "left"
    spans = (
        Span(width.name, width.printed, tuple(front), "around"),
        Span(length.name, length.printed, tuple(side if not profile.runs_along else side[::-1]), way),
    )
    return Outline(size.name, tuple(_edge(profile)), spans, (0.0, 0.0))


def _edge(profile: Profile) -> list[Point]:
    """Down the right side, along the front of the lower edge, up the left side."""
    out, down = profile.points[-1]
    front = arc_points((0.0, down), out, out * _LEAN, 0, 180)
    left = [(-across, at) for across, at in reversed(profile.points)]
    return [*profile.points, *front, *left[:-1]]
