"""The lines of an ordinary text pattern: which part of the pattern each belongs to, and which lines belong together."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from gradegen.findings import Written

Part = Literal["head", "notes", "stitches", "rows", "other"]

_LABEL = re.compile(
    r"""\s*(?:
      (?:next|last|final|foundation|base|first|set[- ]?up)?\s*(?:rows?|rnds?|rounds?|r|rd)\b\.?\s*[\d(:-]
    | (?-i:[A-Z])[\w']*(?:\s+[\w']+){0,3}\s+(?:rows?|rnds?|rounds?)\s*(?:\d|:)
    | (?-i:[A-Z])[\w']*(?:\s+[\w']+){0,2}\s*(?:\([^)]{1,40}\))?\s*:(?=\s*(?:\*|ch\b|sc\b|dc\b|hdc\b|join\b|with\b))
    | \d+(?:st|nd|rd|th)\b.{0,60}?\b(?:rows?|rnds?|rounds?)\b
    | \d+(?:\s*-\s*\d+)?\s*[.):]
    )""",
    re.IGNORECASE | re.VERBOSE,
)
_HEADINGS: tuple[tuple[Part, re.Pattern[str]], ...] = (
    ("notes", re.compile(r"(?:pattern |general |designer'?s? )?notes?\b", re.I)),
    (
        "stitches",
        re.compile(
            r"(?:special (?:stitch|abbrev|term|technique)|stitch (?:guide|key|explan|defin)|stitches used)", re.I
        ),
    ),
    ("rows", re.compile(r"(?:instructions?|directions?|pattern|method|to make)\b", re.I)),
    (
        "other",
        re.compile(
            r"(?:materials?|you will need|supplies|yarn|gauge|tension|abbreviations?|measurements?|"
            r"finished (?:size|measure)|skill level|difficulty|hook|notions|finishing|assembly|making up|"
            r"blocking|about)\b",
            re.I,
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Line:
    """One instruction, note or heading: one printed line and those that continue it."""

    words: Written
    part: Part
    heading: str = ""


def has_label(line: str) -> bool:
    """True when a line begins as a row does: `Row 4:`, `5th rnd:`, `8-14):`."""
    return _LABEL.match(line) is not None


def _heading_of(line: str) -> tuple[Part, str] | None:
    """The part that a heading line opens; its words when it names a piece."""
    bare = line.strip().rstrip(":").strip()
    if not bare or len(bare) > 60 or has_label(line):
        return None
    lone = line.strip().endswith(":") or bare == bare.upper() or len(bare.split()) <= 4
    if not lone or bare.endswith((".", ",", ";", ")")) or any(sign.isdigit() for sign in bare):
        return None
    for part, pattern in _HEADINGS:
        if pattern.match(bare):
            return part, ""
    return ("rows", bare) if bare[0].isupper() and ":" not in bare and _names_piece(bare) else None


_STEP_WORDS = frozenset(
    [
        "ch",
        "sc",
        "dc",
        "hdc",
        "tr",
        "sl",
        "sk",
        "skip",
        "join",
        "turn",
        "fasten",
        "work",
        "rep",
        "repeat",
        "sew",
        "weave",
        "block",
        "attach",
        "join",
        "cut",
        "finish",
        "place",
    ]
)


def _names_piece(words: str) -> bool:
    return not any(word.lower() in _STEP_WORDS for word in words.split()) and len(words.split()) <= 4


def _continues(line: str, before: str) -> bool:
    """True when a line goes on with the sentence above it."""
    if has_label(line) or not before.strip():
        return False
    return line[:1].isspace() or line[:1].islower() or before.rstrip().endswith((",", ";", "(", "-"))


def text_lines(source: Written) -> list[Line]:
    """The lines of a text pattern, each with the part it stands in."""
    part: Part = "head"
    piece = ""
    before, start, offset = "", 0, 0
    kept: list[tuple[int, int, Part, str]] = []
    for raw in source.text.split("\n"):
        start, offset = offset, offset + len(raw) + 1
        heading = _heading_of(raw) if raw.strip() and not _is_first(kept) else None
        if heading is not None:
            part, piece = heading[0], heading[1]
        elif raw.strip():
            if part == "head" and has_label(raw):
                part = "rows"
            if kept and kept[-1][2] == part and _continues(raw, before) and part != "head":
                kept[-1] = (kept[-1][0], start + len(raw), part, kept[-1][3])
            else:
                lead = len(raw) - len(raw.lstrip())
                kept.append((start + lead, start + len(raw.rstrip()), part, piece))
        before = raw
    return [Line(source.part(a, b), p, h) for a, b, p, h in kept]


def _is_first(kept: list[tuple[int, int, Part, str]]) -> bool:
    return not kept
