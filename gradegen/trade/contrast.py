"""How well a colour is told from white paper.

Formulas and limits: Web Content Accessibility Guidelines 2.2 (W3C Recommendation), "relative luminance", "contrast
ratio", success criteria 1.4.3 (text, 4.5:1) and 1.4.11 (lines, 3:1). The ratio knows lightness alone, so a colour that
passes also passes where a printer makes grey of it.
"""

from __future__ import annotations

import re
from fractions import Fraction

TEXT_LEAST, LINE_LEAST = Fraction(9, 2), Fraction(3)
_HEX = re.compile(r"#?([0-9a-f]{3}|[0-9a-f]{6})", re.IGNORECASE)
Rgb = tuple[int, int, int]


def rgb_of(text: str) -> Rgb | None:
    """`#2d5a57`, `2D5A57` or `#253` as red, green and blue from 0 to 255; None for anything else."""
    found = _HEX.fullmatch(text.strip())
    if found is None:
        return None
    digits = found[1] if len(found[1]) == 6 else "".join(2 * digit for digit in found[1])
    return int(digits[:2], 16), int(digits[2:4], 16), int(digits[4:], 16)


def hex_of(colour: Rgb) -> str:
    """`#2d5a57`."""
    return "#" + "".join(f"{each:02x}" for each in colour)


def luminance(colour: Rgb) -> float:
    """Relative luminance, 0 for black to 1 for white."""
    red, green, blue = (_linear(each / 255) for each in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(part: float) -> float:
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4


def on_paper(colour: Rgb, paper: Rgb = (255, 255, 255)) -> float:
    """The contrast ratio between a colour and the paper it is printed on, 1 to 21."""
    dark, pale = sorted((luminance(colour), luminance(paper)))
    return (pale + 0.05) / (dark + 0.05)


def darkened(colour: Rgb, least: Fraction) -> Rgb:
    """The colour itself where its contrast is enough, else the palest darker shade of it whose contrast is."""
    for parts in range(100, -1, -1):
        shade = tuple(each * parts // 100 for each in colour)
        if on_paper((shade[0], shade[1], shade[2])) >= least:
            return shade[0], shade[1], shade[2]
    return 0, 0, 0


def mixed(colour: Rgb, percent: int) -> Rgb:
    """So much of the colour on white paper."""
    red, green, blue = (255 - (255 - each) * percent // 100 for each in colour)
    return red, green, blue
