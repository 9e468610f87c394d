"""The text of one size: every size list and every sum in braces becomes that size's own number."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from fractions import Fraction

from slow_worker.steps import CannotReadError

ONE = r"(?:\d+|-)"
BRACKETED = rf"\s*[(\[{{]\s*{ONE}(?:\s*[,:]\s*{ONE})*\s*[)\]}}]"
LIST = re.compile(rf"(?<![\w-]){ONE}(?:{BRACKETED})+")
DASHED = re.compile(r"(?<![\w-])\d+(?:-\d+)+(?![\w-])")
SUM = re.compile(r"\{([^{}]*)\}")


class WrongLengthError(Exception):
    """A size list with more or fewer numbers than there are sizes."""


class NotWorkedError(Exception):
    """A `-` stands where this size's number would be."""


def for_size(text: str, size: int, sizes: Sequence[str], counts: Mapping[str, Sequence[int]]) -> str:
    """`text` as somebody who makes only this size would read it."""
    text = _only_passages(text, sizes[size], sizes)
    text = SUM.sub(lambda found: _sum(found, size, counts), text)
    if len(sizes) > 1:
        text = LIST.sub(lambda found: _own(found, text, size, len(sizes)), text)
        if len(sizes) > 2:  # with two sizes "3-4" is a range
            text = DASHED.sub(lambda found: _dashed(found, size, len(sizes)), text)
    return text


def label_for_size(label: str, size: int, sizes: Sequence[str], counts: Mapping[str, Sequence[int]]) -> str:
    """A label as one size reads it, without ordinals: `Rnds 10-16 (17, 18)` is `Rnds 10-17` in the second of three."""
    label = re.sub(r"(?<=\d)(?:st|nd|rd|th)\b", "", label)
    label = SUM.sub(lambda found: _sum(found, size, counts), label)
    if len(sizes) > 1:
        pattern = re.compile(LIST.pattern.replace(r"(?<![\w-])", r"(?<![\w])", 1))
        label = pattern.sub(lambda found: _own(found, label, size, len(sizes)), label)
    return label


def _sum(found: re.Match[str], size: int, counts: Mapping[str, Sequence[int]]) -> str:
    written = found[1]
    for name in sorted(counts, key=len, reverse=True):
        written = re.sub(rf"(?<![\w]){re.escape(name)}(?![\w])", str(counts[name][size]), written)
    if not re.fullmatch(r"[\d+\-*/() ]+", written) or (written == found[1] and not re.search(r"[+*/]", written)):
        return found[0]  # the trade's own brackets
    value = eval(re.sub(r"\d+", r"Fraction(\g<0>)", written), {"__builtins__": {}, "Fraction": Fraction})
    if value != int(value):
        raise CannotReadError(f"{found[0]} is {value}")
    return str(int(value))


def _own(found: re.Match[str], text: str, size: int, sizes: int) -> str:
    values = re.findall(ONE, found[0])
    if len(values) == sizes:
        if values[size] == "-":
            raise NotWorkedError
        tail = found[0][len(found[0].rstrip()) :]
        return values[size] + tail
    before = text[: found.start()].rstrip()
    inside = before.endswith(("(", "[", "{"))
    if len(values) > 2 or inside:
        raise WrongLengthError(f"{found[0]} for {sizes} sizes")
    return found[0]


def _dashed(found: re.Match[str], size: int, sizes: int) -> str:
    values = found[0].split("-")
    if len(values) == sizes:
        return values[size]
    if len(values) > 2:
        raise WrongLengthError(f"{found[0]} for {sizes} sizes")
    return found[0]


def _only_passages(text: str, size: str, sizes: Sequence[str]) -> str:
    """Keeps `for size M only, ...;` where the size is M, drops it up to the next `;` or `.` elsewhere."""

    def keep(found: re.Match[str]) -> str:
        named = [name.strip() for name in re.split(r",|\band\b", found[1]) if name.strip()]
        if any(name not in sizes for name in named):
            raise CannotReadError(found[0])
        return found[2] if size in named else ""

    return re.sub(r"(?i)\bfor sizes? ([^;.:]*?) only[,:] ([^;.]*[;.]?)", keep, text)
