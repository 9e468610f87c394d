"""Numbers as people write them, turned into exact fractions and back: `6.5`, `6 1/2`, `6½`, `1/4`."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

VULGAR = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
LONGEST = 20  # digits in one number; nothing a piece of crochet needs is longer

# One written number at the start of a text. Blanks may stand only between a whole number and its fraction.
NUMBER = re.compile(
    rf"""(?P<whole>[0-9]+)[ ]?(?P<vulgar>[{VULGAR}])      # 6½   6 ½
      | (?P<only>[{VULGAR}])                              # ½
      | (?P<mixed>[0-9]+)[ ]+(?P<over>[0-9]+)[/⁄](?P<under>[0-9]+)(?![0-9.])   # 6 1/2
      | (?P<top>[0-9]+)[/⁄](?P<bottom>[0-9]+)(?![0-9.])   # 1/4
      | (?P<decimal>[0-9]+(?:\.[0-9]+)?|\.[0-9]+)         # 6  6.5  .5
    """,
    re.VERBOSE,
)

EIGHTHS = {Fraction(unicodedata.normalize("NFKC", sign).replace("⁄", "/")): sign for sign in VULGAR}


def vulgar_value(sign: str) -> Fraction:
    """The value of one fraction character, ½ -> 1/2."""
    return Fraction(unicodedata.normalize("NFKC", sign).replace("⁄", "/"))


def matched_value(found: re.Match[str]) -> Fraction | None:
    """The value of a NUMBER match; None for a fraction over zero, `6 3/2`, or more than 20 digits."""
    if len(found[0]) > LONGEST:
        return None
    if found["only"]:
        return vulgar_value(found["only"])
    if found["vulgar"]:
        return int(found["whole"]) + vulgar_value(found["vulgar"])
    if found["decimal"]:
        return Fraction(found["decimal"])
    if found["bottom"]:
        return Fraction(int(found["top"]), int(found["bottom"])) if int(found["bottom"]) else None
    over, under = int(found["over"]), int(found["under"])
    return int(found["mixed"]) + Fraction(over, under) if 0 < over < under else None


def read_number(text: str) -> Fraction | None:
    """The exact value of a written number, a leading minus allowed; None when it is not one number."""
    bare = text.strip()
    negative = bare[:1] in ("-", "−", "–")
    bare = bare[1:].lstrip() if negative else bare
    found = NUMBER.fullmatch(bare)
    value = matched_value(found) if found else None
    return -value if negative and value is not None else value


def mixed_text(value: Fraction) -> str:
    """A number with its fraction as a character where there is one: 17¾, ½, -2¼, else 3 5/16."""
    sign, size = ("-" if value < 0 else ""), abs(value)
    whole, rest = divmod(size, 1)
    if not rest:
        return f"{sign}{whole}"
    if rest in EIGHTHS:
        return f"{sign}{whole or ''}{EIGHTHS[rest]}"
    return f"{sign}{whole} {rest}" if whole else f"{sign}{rest}"


def with_minus(text: str) -> str:
    """A written number as it is printed: `−½`, with the sign for minus and not a hyphen."""
    return text.replace("-", "−")


def decimal_text(value: Fraction, places: int = 2) -> str:
    """A number with at most `places` decimals, halves away from zero, no empty zeros: 43.43, 32, -0.5."""
    scale = 10**places
    whole, rest = divmod(int(abs(value) * scale + Fraction(1, 2)), scale)
    sign = "-" if value < 0 and (whole or rest) else ""
    decimals = f"{rest:0{places}d}".rstrip("0") if places else ""
    return f"{sign}{whole}.{decimals}" if decimals else f"{sign}{whole}"
