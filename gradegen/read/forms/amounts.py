"""What stands in a field of a form, read as a count, a length, a weight or a time: exact, or a question, never a guess.

A field knows its own unit, which a bare number takes, and between what bounds an answer can lie; of two readings of one
number that one counts which lies between them, and where both do, both are given back for the tester to choose from.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from gradegen.numbers.exact import decimal_text
from gradegen.numbers.units import SPELLINGS, UNITS
from gradegen.read.forms.written_numbers import NUMBER, number_readings, tidy

_ABOUT = re.compile(r"^(?:~|≈|c\.|ca\.?|circa|about|around|roughly|approx(?:\.|imately)?)\s*", re.IGNORECASE)
_AFTER = re.compile(r"\s*\(?(?:approx(?:\.|imately)?|ish|or so)\)?$", re.IGNORECASE)
_RANGE = re.compile(rf"(?P<low>{NUMBER})\s*(?:-|–|—|\bto\b|\bor\b)\s*(?P<high>{NUMBER})(?P<unit>\D*)", re.IGNORECASE)
_PART = re.compile(
    rf"\s*(?:,|\band\b|&|\+)?\s*(?P<number>{NUMBER})\s*(?P<unit>[^\W\d_]+\.?|''|[\"'″′”])?", re.IGNORECASE
)
_AGAIN = re.compile(r"\s+/\s+|\s*[(=]\s*")
_OVER = re.compile(r"(?<=[a-z. ])\s*(?:\b(?:over|per|to|in)\b|/|=|:|@)\s*(?=\d)", re.IGNORECASE)
_ALIKE = Fraction(3, 100)  # two units said of one thing may differ so much: 10 cm are 4 in to the trade

_ALSO = {
    **dict.fromkeys(("gr", "grs", "gm", "gms", "gramm"), "g"),
    **dict.fromkeys(("mtr", "mtrs", "mts", "mt", "ms"), "m"),
    **dict.fromkeys(("yrd", "yrds", "ydd"), "yd"),
    **dict.fromkeys(("ozs",), "oz"),
    **dict.fromkeys(("'", "′"), "ft"),
}
_LARGE = {"kg": ("g", 1000), "kilo": ("g", 1000), "lb": ("oz", 16), "lbs": ("oz", 16), "km": ("m", 1000)}
_COUNTED = {
    **dict.fromkeys(("st", "sts", "stitch", "stitches", "st's"), "stitches"),
    **dict.fromkeys(("row", "rows", "rnd", "rnds", "round", "rounds"), "rows"),
    **dict.fromkeys(("rep", "reps", "repeat", "repeats"), "repeats"),
    **dict.fromkeys(("skein", "skeins", "ball", "balls", "hank", "hanks"), "skeins"),
}
_KINDS = {"length": "a length", "mass": "a weight"}


@dataclass(frozen=True, slots=True)
class Reading:
    """What a field says: its exact value; or the values between which its writer has to choose; or why it is neither.

    Lengths are inches, weights grams, times minutes. `over`: inches that a count was taken over, where it says so.
    """

    value: Fraction | None = None
    either: tuple[str, ...] = ()
    why: str = ""
    over: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Bounds:
    """Between what an answer can lie, in inches, grams, minutes or pieces.

    `usual`: below it nobody writes thousandths, so that `1,250 m` of yarn is 1250 m (None: anybody may).
    """

    least: Fraction
    most: Fraction
    usual: Fraction | None = None

    def __contains__(self, value: Fraction) -> bool:
        return self.least <= value <= self.most


def read_length(text: str, unit: str, bounds: Bounds) -> Reading:
    """A length in inches; a bare number is in the field's own unit. `5 ft 6 in` and `36 in / 91.5 cm` are read too."""
    return _read_measure(text, unit, "length", bounds)


def read_weight(text: str, unit: str, bounds: Bounds) -> Reading:
    """A weight in grams; a bare number is in the field's own unit."""
    return _read_measure(text, unit, "mass", bounds)


def read_count(text: str, what: str, bounds: Bounds) -> Reading:
    """A number of stitches, rows, repeats or skeins; `13.5 sts over 4 in` says over what length it was counted."""
    bare = _without_about(text)
    if asked := _range(bare):
        return Reading(either=asked)
    parts = _OVER.split(bare, maxsplit=1)
    over = _read_measure(parts[1], "", "length", Bounds(Fraction(1, 2), Fraction(60))) if len(parts) == 2 else None
    if over is not None and over.value is None:
        return over
    if asked := _range(parts[0]):
        return Reading(either=asked)
    found = _PART.fullmatch(parts[0])
    readings = number_readings(found["number"]) if found else ()
    if found is None or not readings:
        return Reading(why=f"it is no number of {what}")
    unit = (found["unit"] or "").rstrip(".").casefold()
    if unit and _COUNTED.get(unit) != what:
        return Reading(why=f"{what} are asked for")
    chosen = _chosen(((value, decimal_text(value, 3)) for value in readings), bounds, what)
    return chosen if over is None or chosen.value is None else Reading(chosen.value, over=over.value)


def _read_measure(text: str, unit: str, kind: str, bounds: Bounds) -> Reading:
    bare = _without_about(text)
    said = [part for part in _AGAIN.split(bare.replace(")", "")) if part]
    if len(said) > 1:
        return _alike([_read_measure(part, "", kind, bounds) for part in said], kind)
    if asked := _range(bare):
        return Reading(either=asked)
    parts = _parts(bare)
    if parts is None:
        return Reading(why=f"it is not {_KINDS[kind]}")
    named = _units_of([written for _, written in parts], unit, kind)
    if isinstance(named, Reading):
        return named
    sums = [
        (sum((n * factor * UNITS[name][0] for n, (name, factor) in zip(numbers, named, strict=True)), Fraction(0)),
         " ".join(f"{decimal_text(n * factor, 3)} {name}" for n, (name, factor) in zip(numbers, named, strict=True)))
        for numbers in product(*(readings for readings, _ in parts))
    ]  # fmt: skip
    return _chosen(sums, bounds, _KINDS[kind].removeprefix("a "))


def _without_about(text: str) -> str:
    return _AFTER.sub("", _ABOUT.sub("", tidy(text)))


def _range(text: str) -> tuple[str, ...]:
    """Both ends where a text gives two numbers to choose from; () for `13-1/2`, which is one."""
    if number_readings(text):
        return ()
    found = _RANGE.fullmatch(text)
    if not found:
        return ()
    return tuple(f"{end} {found['unit'].strip()}".strip() for end in (found["low"], found["high"]))


def _parts(text: str) -> list[tuple[tuple[Fraction, ...], str]] | None:
    """The numbers of a text, each with its unit as written; None where anything else stands there."""
    parts: list[tuple[tuple[Fraction, ...], str]] = []
    at = 0
    while at < len(text):
        found = _PART.match(text, at)
        readings = number_readings(found["number"]) if found else ()
        if found is None or not readings or len(parts) == 3:
            return None
        parts.append((readings, (found["unit"] or "").rstrip(".").casefold()))
        at = found.end()
        if text[at:].strip() == "":
            break
    return parts or None


def _units_of(written: list[str], own: str, kind: str) -> list[tuple[str, int]] | Reading:
    """The unit of every part with its factor, each smaller than the one before; the field's own for a bare number."""
    named: list[tuple[str, int]] = []
    for word in written:
        name, factor = _LARGE.get(word, (_ALSO.get(word) or SPELLINGS.get(word, ""), 1)) if word else (own, 1)
        if not word and (not own or len(written) > 1):
            return Reading(why="its unit is not said")
        if name not in UNITS:
            return Reading(why=f"“{word}” is no unit that is known here")
        if UNITS[name][1] != kind:
            return Reading(why=f"{_KINDS[kind]} is asked for")
        named.append((name, factor))
    sizes = [UNITS[name][0] * factor for name, factor in named]
    if sizes != sorted(set(sizes), reverse=True):
        return Reading(why="it says two amounts")
    return named


def _alike(readings: list[Reading], kind: str) -> Reading:
    """One thing said in two units: the first, where they agree."""
    values = [reading.value for reading in readings if reading.value is not None]
    if len(values) != len(readings):
        return next(reading for reading in readings if reading.value is None)
    if max(values) - min(values) <= _ALIKE * max(values):
        return Reading(values[0])
    return Reading(why=f"it says {_KINDS[kind]} twice, and the two differ")


def _chosen(readings: Iterable[tuple[Fraction, str]], bounds: Bounds, what: str) -> Reading:
    each: Mapping[Fraction, str] = dict(readings)
    likely = [value for value in each if value in bounds]
    if len(likely) > 1 and bounds.usual is not None:
        likely = [value for value in likely if value >= bounds.usual]
    if len(likely) == 1:
        return Reading(likely[0])
    if likely:
        return Reading(either=tuple(each[value] for value in likely))
    return Reading(why=f"no {what} here can be so {'small' if max(each) < bounds.least else 'large'}")
