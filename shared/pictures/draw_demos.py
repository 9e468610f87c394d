"""Draws the pictures of the demo patterns and writes them beside the demos.

.venv/bin/python shared/pictures/draw_demos.py

Both are worked out, not traced: the crown from the stitches of its rounds, the band from the surface with a half turn.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from pathlib import Path

PATTERNS = Path(__file__).resolve().parents[1] / "patterns"
INK, QUIET, ACCENT, PALE = "#20302f", "#9aa6a4", "#2d5a57", "#e4eeec"
ROUNDS = 8


def crown() -> str:
    """A crown from above: every stitch of eight rounds a dot on the spiral, those of an increase filled and joined."""
    spiral = " ".join(f"{x:.1f},{y:.1f}" for x, y in (_spot(turn / 60) for turn in range(60, (ROUNDS + 1) * 60 + 1)))
    parts = [f'<polyline points="{spiral}" fill="none" stroke="{QUIET}" stroke-width="0.5"/>']
    for number in range(1, ROUNDS + 1):
        stitches = 6 * number
        spots = [_spot(number + (at + 0.5) / stitches) for at in range(stitches)]
        pairs = set(_increases(number))
        for first in pairs:
            (x1, y1), (x2, y2) = spots[first], spots[first + 1]
            parts.append(
                f'<line x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}" stroke="{ACCENT}" stroke-width="1.6"/>'
            )
        for at, (x, y) in enumerate(spots):
            fill = ACCENT if at in pairs or at - 1 in pairs else "#ffffff"
            parts.append(f'<circle cx="{x:.1f}" cy="{y:.1f}" r="2.1" fill="{fill}" stroke="{INK}" stroke-width="0.6"/>')
    return _sheet("-112 -112 224 224", parts)


def _spot(turn: float) -> tuple[float, float]:
    """Where the spiral is after so many rounds; the first round begins on the right and goes against the clock."""
    radius = 10.5 * turn
    return radius * math.cos(2 * math.pi * turn), -radius * math.sin(2 * math.pi * turn)


def _increases(number: int) -> Iterator[int]:
    """The first stitch of each increase: at the end of a sixth in odd rounds, in its middle in even ones."""
    if number == 2:
        yield from range(0, 12, 2)
    elif number > 2:
        before = number - 2 if number % 2 else (number - 2) // 2
        yield from (sixth * number + before for sixth in range(6))


def half_twist() -> str:
    """A band with one half turn, seen from above and in front, nearer parts over farther ones."""
    steps, strips = 72, 4
    quads = []
    for at in range(steps):
        for strip in range(strips):
            ends = [(at, strip), (at + 1, strip), (at + 1, strip + 1), (at, strip + 1)]
            corners = [_on_band(2 * math.pi * step / steps, 2 * side / strips - 1) for step, side in ends]
            depth = sum(corner[2] for corner in corners) / 4
            quads.append((depth, strip, corners))
    parts = []
    for _, strip, corners in sorted(quads, key=lambda quad: quad[0]):
        path = "M" + " L".join(f"{x:.1f},{y:.1f}" for x, y, _ in corners) + "Z"
        fill = PALE if _is_upper(corners) else "#ffffff"
        parts.append(f'<path d="{path}" fill="{fill}" stroke="{fill}" stroke-width="0.4"/>')
        for side in (strip, strip + 1):
            (x1, y1, _), (x2, y2, _) = (corners[0], corners[1]) if side == strip else (corners[3], corners[2])
            colour, wide = (INK, 1.5) if side in (0, strips) else (ACCENT, 1.1) if side == strips / 2 else (QUIET, 0.5)
            parts.append(
                f'<path d="M{x1:.1f},{y1:.1f} L{x2:.1f},{y2:.1f}" stroke="{colour}" stroke-width="{wide}" '
                'stroke-linecap="round"/>'
            )
    return _sheet("-130 -80 260 172", parts)


def _on_band(around: float, across: float) -> tuple[float, float, float]:
    """A point of the band on the sheet, and how near it is; the turn lies in front."""
    turn = math.pi * _smooth((around / (2 * math.pi) - 0.5) * 1.7 + 0.5)
    x = (96 + 28 * across * math.cos(turn)) * math.sin(around)
    deep = (96 + 28 * across * math.cos(turn)) * math.cos(around)
    high = 28 * across * math.sin(turn)
    tilt = math.radians(50)
    return x, -deep * math.cos(tilt) - high * math.sin(tilt), -deep * math.sin(tilt) + high * math.cos(tilt)


def _is_upper(corners: list[tuple[float, float, float]]) -> bool:
    """Which of its two sides a piece of the band shows, by the way round its corners lie."""
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    return sum(x1 * y2 - x2 * y1 for (x1, y1, _), (x2, y2, _) in pairs) > 0


def _smooth(part: float) -> float:
    part = min(1.0, max(0.0, part))
    return part * part * (3 - 2 * part)


def _sheet(box: str, parts: list[str]) -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}">\n' + "\n".join(parts) + "\n</svg>\n"


if __name__ == "__main__":
    (PATTERNS / "bollard-hat-crown.svg").write_text(crown(), encoding="utf-8")
    (PATTERNS / "skerrywick-wrap-turn.svg").write_text(half_twist(), encoding="utf-8")
