"""One number as people write it in a form: `13.5`, `13,5`, `13 1/2`, `13-1/2`, `1,250`, with every way to read it.

A comma or point before exactly three digits parts thousands in one country and decimals in another, so such a number
has two readings; which of them can be meant is for the field to say, and where both can, the tester is asked.
"""

from __future__ import annotations

import re
from fractions import Fraction

from gradegen.numbers.exact import LONGEST, VULGAR, read_number

_BLANKS = re.compile(r"[\s\N{NO-BREAK SPACE}\N{NARROW NO-BREAK SPACE}\N{THIN SPACE}]+")
_MIXED = re.compile(rf"(\d+)\s*[-–+]\s*(\d+[/⁄]\d+|[{VULGAR}])")
_GROUPS = re.compile(r"(?P<first>[1-9]\d{0,2})(?:(?P<sign>[ ,.'’])\d{3})(?:(?P=sign)\d{3})*(?P<rest>[.,]\d+)?")
_DECIMAL = re.compile(r"\d*[.,]\d+")

# A stretch of text that may be one number; blanks only before a fraction or before three digits.
NUMBER = (
    rf"(?:\d{{1,3}}(?:[ '’]\d{{3}})+(?:[.,]\d+)?(?![\d/⁄])|\d+\s*[-–+]\s*\d+[/⁄]\d+|\d+\s*[-–+]\s*[{VULGAR}]"
    rf"|\d+ +\d+[/⁄]\d+|\d+[/⁄]\d+|\d+ ?[{VULGAR}]|[{VULGAR}]|\d+(?:[.,]\d+)+|\d+|[.,]\d+)"
)


def tidy(text: str) -> str:
    """The text with plain blanks, none at its ends."""
    return _BLANKS.sub(" ", text).strip()


def number_readings(text: str) -> tuple[Fraction, ...]:
    """Every value the text can be read as, thousands first; () when it is no number."""
    bare = _MIXED.sub(r"\1 \2", tidy(text))
    if not bare or len(bare) > LONGEST:
        return ()
    found = _GROUPS.fullmatch(bare)
    if found:
        grouped = _grouped(bare, found)
        return () if grouped is None else (grouped, *_as_decimal(bare, found))
    if _DECIMAL.fullmatch(bare):
        return _only(bare.replace(",", "."))
    return _only(bare)


def _grouped(bare: str, found: re.Match[str]) -> Fraction | None:
    """With its groups as thousands; None where a second sign of the same kind makes nonsense of it."""
    sign, rest = found["sign"], found["rest"] or ""
    if rest and rest[0] == sign:
        return None
    whole = bare[: len(bare) - len(rest)].replace(sign, "")
    return read_number(whole + rest.replace(",", "."))


def _as_decimal(bare: str, found: re.Match[str]) -> tuple[Fraction, ...]:
    """The other reading of `1,250` and `1.250`."""
    if found["sign"] in ",." and not found["rest"] and bare.count(found["sign"]) == 1:
        return _only(bare.replace(",", "."))
    return ()


def _only(bare: str) -> tuple[Fraction, ...]:
    value = read_number(bare)
    return () if value is None or value < 0 else (value,)
