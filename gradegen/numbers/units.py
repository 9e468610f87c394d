"""The units a pattern uses, defined once: for exact conversion here, and for pint where unlike units are multiplied.

Importing pint costs 0.10-0.15 s (and numpy, where that is installed), which `check` and `grade` cannot spare. So
the definitions below are read twice: here, into exact fractions, for the everyday turn into inches or grams; and by
`registry()`, on first use, into a pint registry over Fraction that knows nothing but these. A test holds the two
against each other, and both against pint's own published definitions.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from pint import UnitRegistry

# name = value * base, in pint's own way of writing; [..] is a kind of thing that goes only with itself.
# 1 in = 2.54 cm and 1 yd = 0.9144 m: the international yard, 1959. 1 oz = 28.349523125 g: avoirdupois, 1959.
DEFINITIONS = """
in = [length]
ft = 12 * in
yd = 36 * in
mm = 10/254 * in
cm = 100/254 * in
m = 10000/254 * in
g = [mass]
oz = 28349523125/1000000000 * g
stitch = [stitch]
row = [row]
"""

# How designers write a unit, to the one spelling an Amount carries.
SPELLINGS = {
    **dict.fromkeys(("in", "ins", "inch", "inches", '"', "″", "”", "''"), "in"),
    **dict.fromkeys(("ft", "foot", "feet"), "ft"),
    **dict.fromkeys(("yd", "yds", "yard", "yards"), "yd"),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("g", "gram", "grams", "gramme", "grammes"), "g"),
    **dict.fromkeys(("oz", "ounce", "ounces"), "oz"),
    **dict.fromkeys(("st", "sts", "stitch", "stitches"), "sts"),
    **dict.fromkeys(("row", "rows", "rnd", "rnds", "round", "rounds"), "rows"),
}
DEFINED = {"sts": "stitch", "rows": "row"}  # an Amount's spelling, where the definition has another


class HasUnit(Protocol):
    """Anything with a number and a unit, such as an Amount."""

    @property
    def number(self) -> Fraction: ...  # noqa: D102
    @property
    def unit(self) -> str | None: ...  # noqa: D102


def _read_definitions() -> dict[str, tuple[Fraction, str]]:
    known: dict[str, tuple[Fraction, str]] = {}
    for line in DEFINITIONS.split("\n"):
        name, _, meaning = line.partition(" = ")
        if meaning.startswith("["):
            known[name] = (Fraction(1), meaning.strip("[]"))
        elif meaning:
            value, base = meaning.split(" * ")
            known[name] = (Fraction(value), known[base][1])
    return known


UNITS = _read_definitions()  # unit -> (how many inches, grams, stitches or rows it is; "length", "mass", ...)


def kind_of(unit: str | None) -> str | None:
    """What a unit measures: "length", "mass", "stitch", "row"; None for a bare number or an unknown unit."""
    known = UNITS.get(DEFINED.get(unit or "", unit or ""))
    return known[1] if known else None


def in_base_units(amount: HasUnit) -> Fraction:
    """The amount in exact inches, grams, stitches or rows; a bare number as it is."""
    known = UNITS.get(DEFINED.get(amount.unit or "", amount.unit or ""))
    return amount.number * known[0] if known else amount.number


def inches_of(amount: HasUnit) -> Fraction | None:
    """The amount in exact inches; None when it is no length."""
    return in_base_units(amount) if kind_of(amount.unit) == "length" else None


def grams_of(amount: HasUnit) -> Fraction | None:
    """The amount in exact grams; None when it is no mass."""
    return in_base_units(amount) if kind_of(amount.unit) == "mass" else None


def in_unit(base: Fraction, unit: str) -> Fraction:
    """Inches (or grams) in another unit of the same kind, exactly: 10 inches in "cm" is 127/5."""
    return base / UNITS[DEFINED.get(unit, unit)][0]


@cache
def registry() -> UnitRegistry[Fraction]:
    """A pint registry over Fraction that knows only our own units; built on first use (5 ms, and pint's import)."""
    import pint

    ours: UnitRegistry[Fraction] = pint.UnitRegistry(None, non_int_type=Fraction)
    for line in DEFINITIONS.strip().split("\n"):
        ours.define(line)
    return ours
