"""What was weighed and measured of a yarn, brought to one unit and to stitches."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.design.pattern import Weighed, Yarn
from gradegen.findings import Place
from gradegen.grade.body.sums import Refused, Value, reckon
from gradegen.numbers.exact import decimal_text
from gradegen.numbers.rounding import EXACT_INCH
from gradegen.numbers.units import inches_of
from gradegen.reckon.census.census import Census
from gradegen.reckon.yarn.amounts import YarnAmount
from gradegen.reckon.yarn.put_up import PutUp


@dataclass(frozen=True, slots=True)
class Evidence:
    """One thing weighed, in words; its stitches, or its area in square inches where they were not counted.

    `is_weighed` False: stitches unravelled, one of each.
    """

    words: str
    used: YarnAmount
    stitches: Mapping[str, int]
    area: Fraction | None
    place: Place
    is_weighed: bool = True


def gather_evidence(yarn: Yarn, census: Census, put_up: PutUp) -> tuple[Evidence, ...]:
    """Everything weighed of one yarn that can be counted: the sample, testers' pieces, swatches."""
    return tuple(_gathered(yarn, census, put_up))


def _gathered(yarn: Yarn, census: Census, put_up: PutUp) -> Iterator[Evidence]:
    for one in all_weighed(yarn):
        used = put_up.measured(one.used)
        if one.size is not None:
            stitches = one.stitches or census.of(one.size.text, yarn.letter)
            if one.stitches or (stitches and not census.missing.get(one.size.text)):
                yield Evidence(
                    f"{one.what} in size {one.size.text}, {_amount(one.used)}", used, stitches, None, one.place
                )
        elif one.stitches:
            counted = ", ".join(f"{number} {name}" for name, number in one.stitches.items())
            yield Evidence(f"swatch of {counted}, {_amount(one.used)}", used, one.stitches, None, one.place)
        elif one.width is not None and one.height is not None:
            area = (inches_of(one.width) or Fraction(0)) * (inches_of(one.height) or Fraction(0))
            sides = f"{_amount(one.width)} by {_amount(one.height)}"
            yield Evidence(f"swatch of {sides}, {_amount(one.used)}", used, {}, area, one.place)


def all_weighed(yarn: Yarn) -> tuple[Weighed, ...]:
    """Everything weighed of a yarn, the sample first."""
    if yarn.sample_size is None or yarn.sample_used is None:
        return yarn.weighed
    place = yarn.sample_used.place
    return Weighed("sample", yarn.sample_used, yarn.sample_size, yarn.sample_stitches, place=place), *yarn.weighed


def _amount(amount: Amount) -> str:
    return f"{decimal_text(amount.number)} {amount.unit or ''}".strip()


@dataclass(frozen=True, slots=True)
class _NoNames:
    """A scope in which nothing has a name."""

    def named(self, name: Name) -> Value:
        raise Refused(None)

    def entry(self, listed: PerSize) -> Value:
        raise Refused(None)


def unravelled_inches(yarn: Yarn) -> dict[str, Fraction]:
    """Yarn in one stitch by name, exact inches; a sum that is no length is left out."""
    found = {}
    for name, formula in yarn.unravelled.items():
        length = _length(formula)
        if length is not None and length > 0:
            found[name] = length
    return found


def unravelled_evidence(yarn: Yarn, inches: Mapping[str, Fraction], put_up: PutUp) -> tuple[Evidence, ...]:
    """The stitches unravelled as one piece of evidence, one of each stitch; none where nothing was."""
    if not inches:
        return ()
    said = ", ".join(f"{_in_unit(length, yarn.unravelled[name])} of {name}" for name, length in inches.items())
    used = put_up.filled(sum(inches.values(), Fraction(0)), None)
    place = next(formula.place for name, formula in yarn.unravelled.items() if name in inches)
    return (Evidence(f"unravelled: {said}", used, dict.fromkeys(inches, 1), None, place, False),)


def _in_unit(inches: Fraction, written: Formula) -> str:
    """A length in centimetres where it was measured so, else in inches."""
    parts = [written]
    while parts:
        part = parts.pop()
        if isinstance(part, Amount) and part.unit in ("cm", "mm", "m"):
            return f"{decimal_text(inches * EXACT_INCH, 1)} cm"
        if isinstance(part, Sum):
            parts += (part.left, part.right)
        elif isinstance(part, Call):
            parts += part.parts
    return f"{decimal_text(inches, 1)} in"


def _length(formula: Formula | Call) -> Fraction | None:
    try:
        value = reckon(formula, _NoNames())
    except Refused:
        return None
    return value.number if value.kind == "length" else None
