"""A value per size written out for a voice: every value with the name of its size."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from gradegen.write.notation.style import listing
from gradegen.write.words.print_numbers import LengthStyle

_SIGNS = {
    "½": "a half", "¼": "a quarter", "¾": "three quarters", "⅓": "a third", "⅔": "two thirds",
    "⅛": "an eighth", "⅜": "three eighths", "⅝": "five eighths", "⅞": "seven eighths",
}  # fmt: skip
UNITS = {
    "in": ("inch", "inches"), "cm": ("centimetre", "centimetres"), "mm": ("millimetre", "millimetres"),
    "yd": ("yard", "yards"), "m": ("metre", "metres"), "g": ("gram", "grams"), "oz": ("ounce", "ounces"),
}  # fmt: skip
_BEFORE = {"+": "plus", "−": "minus", "-": "minus"}
NOT_WORKED = "not worked"


def each_size(names: Sequence[str], values: Sequence[str]) -> str:
    """`size XS: 135; sizes S and M: 147`; the value alone where all sizes share it."""
    said = [NOT_WORKED if value in ("", "-", "–") else number_aloud(value) for value in values]
    if len(set(said)) <= 1:
        return said[0] if said else ""
    sizes: dict[str, list[str]] = {}
    for name, value in zip(names, said, strict=True):
        sizes.setdefault(value, []).append(name)
    return "; ".join(f"{_sizes(of)}: {value}" for value, of in sizes.items())


def each_length(names: Sequence[str], lengths: Sequence[Fraction], style: LengthStyle) -> str:
    """The same for lengths, in both units."""
    return each_size(names, [length_aloud(style.both(length), style) for length in lengths])


def length_aloud(both: tuple[str, str], style: LengthStyle) -> str:
    """`17 and a half inches, or 44.5 centimetres`."""
    return ", or ".join(in_unit(number, unit) for number, unit in zip(both, style.units, strict=True))


def in_unit(number: str, unit: str) -> str:
    """`4 inches`, `1 inch`, `five eighths of an inch`, `minus half an inch`."""
    one, more = UNITS[unit]
    if number[:1] in _BEFORE and number[1:] in _SIGNS:
        return f"{_BEFORE[number[0]]} {in_unit(number[1:], unit)}"
    if number in _SIGNS:
        of_one = f"{'an' if one[0] in 'aeio' else 'a'} {one}"
        return f"half {of_one}" if number == "½" else f"{_SIGNS[number]} of {of_one}"
    return f"{number_aloud(number)} {one if number == '1' else more}"


def number_aloud(number: str) -> str:
    """`17½` as `17 and a half`; ranges with `to`, signs as words."""
    for sign, words in _SIGNS.items():
        number = re.sub(rf"(?<=\d){sign}", f" and {words}", number).replace(sign, words)
    number = number.replace("–", " to ").replace("+", "plus ")
    return f"minus {number[1:]}" if number.startswith(("−", "-")) else number


def _sizes(names: Sequence[str]) -> str:
    return f"size {names[0]}" if len(names) == 1 else f"sizes {listing(names, ' and ')}"
