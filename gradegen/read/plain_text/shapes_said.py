"""How each piece of a text pattern is worked: as the text says, or else as the labels of its rows show."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence

from gradegen.design.pattern import Shape
from gradegen.findings import Finding, Rule, Severity, Written
from gradegen.read.plain_text.lines import Line

SHAPE_ASSUMED = Rule("shape-assumed", Severity.NOTE, "house", "the text does not say how the piece is worked")

_SHAPES: tuple[tuple[Shape, re.Pattern[str]], ...] = (
    ("half-twist band", re.compile(r"half[- ]twist|m(?:oe|o|ö)bius", re.I)),
    ("spiral", re.compile(r"spiral|without joining|do not join|don't join|continuous (?:rnd|round)", re.I)),
    ("joined rounds", re.compile(r"(?:worked|made|work) in (?:joined )?(?:rnds|rounds)|joined rounds", re.I)),
    ("flat", re.compile(r"worked flat|turned rows|(?:worked|work) in rows|back and forth", re.I)),
)


_GAUGE = re.compile(r"\b(?:gauge|tension|swatch)\b|=", re.I)
_JOINS = r"\bjoin|\bsl st (?:to|in|into) (?:the )?(?:first|top|beg)|\bss (?:to|in|into) (?:the )?(?:first|top|beg)"


def shapes_of(lines: Sequence[Line], source: Written) -> tuple[dict[str, Shape], tuple[Finding, ...]]:
    """The shape of each piece by its heading; a note where the text does not say it."""
    pieces: dict[str, list[Line]] = {}
    for line in lines:
        if line.part == "rows":
            pieces.setdefault(line.heading, []).append(line)
    said = _said(line for line in lines if line.part in ("head", "notes")) or _said(
        line for line in lines if line.part == "other" and not _GAUGE.search(line.words.text)
    )
    if said is not None:
        return dict.fromkeys(pieces, said), ()
    shapes = {heading: _by_labels(rows) for heading, rows in pieces.items()}
    return shapes, _assumed(shapes, source)


def _assumed(shapes: Mapping[str, Shape], source: Written) -> tuple[Finding, ...]:
    if not shapes:
        return ()
    different = len(set(shapes.values())) > 1
    read = "; ".join(f"{heading or 'Instructions'}: {shape}" for heading, shape in shapes.items())
    told = read if different else next(iter(shapes.values()))
    return (SHAPE_ASSUMED.at(source.place(0, 1), f"The text does not say how it is worked; read as: {told}."),)


def _said(lines: Iterable[Line]) -> Shape | None:
    """How it is worked: the first line that says so, outside the rows."""
    for line in lines:
        for shape, words in _SHAPES:
            if words.search(line.words.text):
                return shape
    return None


def _by_labels(rows: Sequence[Line]) -> Shape:
    words = " ".join(line.words.text for line in rows).lower()
    rounds = len(re.findall(r"\b(?:rnd|round|rd)s?\b|(?m:^)r\s?\d|\bmagic\b", words))
    if rounds <= len(re.findall(r"\brows?\b|\bturn\b", words)):
        return "flat"
    return "joined rounds" if re.search(_JOINS, words) else "spiral"
