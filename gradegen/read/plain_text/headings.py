"""Which lines of a text pattern are headings, and which part each opens: `Notes`, `EAR (make 2)`, `Left Front:`."""

from __future__ import annotations

import re
from typing import Literal

Part = Literal["head", "notes", "stitches", "rows", "other"]

_LABEL = re.compile(
    r"""\s*(?:
      (?:next|last|final|foundation|base|first|set[- ]?up)?\s*
        (?:(?:rows?|rnds?|rounds?|r|rd)\b\.?\s*[\d(:-]|(?:rows?|rnds?|rd?)\d)
    | (?-i:[A-Z])[\w']*(?:\s+[\w']+){0,3}\s+(?:rows?|rnds?|rounds?)\s*(?:\d|:)
    | (?-i:[A-Z])[\w']*(?:\s+[\w']+){0,2}\s*(?:\([^)]{1,40}\))?\s*:(?=\s*(?:\*|ch\b|sc\b|dc\b|hdc\b|join\b|with\b))
    | \d+(?:st|nd|rd|th)\b.{0,60}?\b(?:rows?|rnds?|rounds?)\b
    | \d+(?:\s*-\s*\d+)?\s*[.):]
    )""",
    re.IGNORECASE | re.VERBOSE,
)
_ROW_LABEL = re.compile(
    r"""\s*(?:(?:next|last|final|foundation|base|first|set[- ]?up)\s*)?(?:(?:rows?|rnds?|rounds?|r|rd)\b\.?\s*[\d(:-]
    |\d+(?:st|nd|rd|th)\s+(?:row|rnd|round)\s*(?:[:.—]|--)
    |(?:rows?|rnds?|rd?)\d|(?:foundation|base|starting|beginning)(?:\s+(?:chain|ch))?\s*[:-])""",
    re.IGNORECASE | re.VERBOSE,
)
_CHAIN_LINE = re.compile(
    r"""\s*(?:(?:with|using)\ [^.]{1,60}?,?\s*)?(?:make\ |work\ )?(?:(?:ch|chain)\s*\{?\d
        |\d+(?:\s*[(\[][\d\s,:;()\[\]-]*[)\]])?\s*(?:ch|chain)s?\b)
    |\s*(?:make|form|start\ with|begin\ with)\ a\ magic""",
    re.IGNORECASE | re.VERBOSE,
)
_EXPLAINS = re.compile(r"\bcounts?\b|\bdoes n[o']t\b|=|\bswatch\b", re.I)
_LISTED = re.compile(r"\s*(?:stitch(?:es)? used|abbrev(?:iation)?s?|materials?|skills?|techniques?|stitches)\b", re.I)
_HEADINGS: tuple[tuple[Part, re.Pattern[str]], ...] = (
    ("notes", re.compile(r"(?:(?:pattern|general|designer'?s?|construction) )?notes?\b", re.I)),
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
            r"(?:materials?|you will need|supplies|yarn|gauge|tension|abbrev(?:iation)?s?|measurements?|"
            r"finished (?:size|measure)|skill level|difficulty|hook|notions|finishing|assembly|making up|"
            r"blocking|about)\b",
            re.I,
        ),
    ),
)
_HEADED_ROW = re.compile(
    r"""\s*(?:(?-i:[A-Z])[A-Za-z' -]{2,30}:\s+
        (?=(?:rows?|rnds?|rounds?|r)\.?\s*\d|\d+(?:st|nd|rd|th)\s+(?:row|rnd|round))
    |(?-i:[A-Z][A-Z' -]{2,30}?)\s*(?:(?:\.\s*){3,}|…|--+|—|\.[-–—]+)\s*(?=\S))""",
    re.IGNORECASE | re.VERBOSE,
)
_EXPLAINED = re.compile(r"[\s*•-]*[A-Za-z](?:[A-Za-z0-9/. ]|\([^()]*\)){0,15}?\s*[-–—=:]\s")
_DEFINED = re.compile(r"[\s*•-]*([A-Za-z][\w -]{0,30}?)\s*(?:\([^()]{1,40}\))?\s*[:=]\s*(?=\S)")
_ONE_PLACE = re.compile(
    r"\b(?:in|into|around)(?: the| a| one| each| post of)* (?:same|next|indicated|specified|st|sp|place)\b"
    r"|\byo\b|\byarn over\b|\binsert\b|\bdrop\b|\bindicated\b",
    re.IGNORECASE,
)
_HOW_MANY = re.compile(
    r"""\s*(?:[-–—:]\s*)?(?:\(?\s*(?:make|work)\s+[\w ]{1,20}\)?
    |\((?:[^()\d]{1,40}|[^()]{0,40}\bmake\b[^()]{0,20})\)|[x×]\s*\d)\s*$""",
    re.IGNORECASE | re.VERBOSE,
)
_SAID_ELSEWHERE = re.compile(r"\bterms?\b|\blevel\b|^sizes?\b|\bsizes\b|\bonly$|\bworked\b|^by\b", re.I)
_STEP_WORDS = frozenset(
    re.findall(
        r"\w+",
        """
    ch sc dc hdc tr sl sk skip join turn fasten work rep repeat sew weave block attach
    cut finish place stuff fold leave insert continue close pull pin press
""",
    )
)
_BEGINNINGS = frozenset(
    re.findall(
        r"\w+",
        """
    with using make making hold holding beg begin beginning start starting magic as for
""",
    )
)


def has_label(line: str) -> bool:
    """True when a line begins as a row does: `Row 4:`, `5th rnd:`, `8-14):`."""
    return _LABEL.match(line) is not None and _LISTED.match(line) is None


def begins_rows(line: str) -> bool:
    """True when a line can only be the first of the rows, whatever part the text was in: `Rnd 1:`, `Ch 56, join`."""
    return _ROW_LABEL.match(line) is not None or (_CHAIN_LINE.match(line) is not None and not _EXPLAINS.search(line))


def heading_before_row(line: str) -> int:
    """Where the row begins behind a heading on its own line, `Armholes: Row 1: ...`; 0 where there is none."""
    found = _HEADED_ROW.match(line)
    return found.end() if found and not _is_listed(found[0]) else 0


def _is_listed(heading: str) -> bool:
    """True for `MATERIALS . . .`: what stands behind it is no row."""
    return any(opened in ("other", "notes", "stitches") and words.match(heading.strip()) for opened, words in _HEADINGS)


def defines_stitch(line: str, whole: str) -> bool:
    """True for `Beg PC: ch 3, 4 dc in same place` among the words before the rows: what it explains is used later."""
    found = _DEFINED.match(line)
    if found is None or _ROW_LABEL.match(line) or _LISTED.match(line) or not _ONE_PLACE.search(line):
        return False
    if re.search(r"\([^()]{1,12}\)\s*[:=]", found[0]):
        return True
    used = re.findall(rf"(?<![\w-]){re.escape(found[1].strip())}s?(?![\w-])", whole, re.IGNORECASE)
    return len(used) > 1


def heading_of(line: str, following: str, part: Part) -> tuple[Part, str] | None:
    """The part that a heading line opens, and its words when it names a piece; None when the line is no heading.

    `following`: the next line that isn't empty. Before the rows a piece's name must be followed by its work.
    """
    bare = _HOW_MANY.sub("", line.strip().rstrip(":").strip()).strip()
    if not bare or len(bare) > 60 or has_label(line):
        return None
    counted = bare != line.strip().rstrip(":").strip()
    if part in ("other", "stitches") and _EXPLAINED.match(line):
        return None
    lone = counted or line.strip().endswith(":") or bare == bare.upper() or len(bare.split()) <= 4
    if not lone or bare.endswith((".", ",", ";", ")")) or any(sign.isdigit() for sign in bare):
        return None
    for opened, pattern in _HEADINGS:
        if pattern.match(bare) and not _goes_on(bare, opened):
            return opened, ""
    if not _names_piece(bare) or (part != "rows" and not _is_work(following)):
        return None
    return "rows", bare


def _goes_on(bare: str, opened: Part) -> bool:
    """True where the words are a sentence of that part, not its heading: `Abbreviations in US terms`."""
    return opened == "other" and len(bare.split()) > 3 and bare != bare.upper()


def _is_work(line: str) -> bool:
    first = re.match(r"[\s(*]*([A-Za-z]+)", line)
    if _EXPLAINED.match(line) and not has_label(line):
        return False  # `sc - single crochet`
    return has_label(line) or (first is not None and first[1].lower() in _STEP_WORDS | _BEGINNINGS)


def _names_piece(words: str) -> bool:
    if _SAID_ELSEWHERE.search(words) or not words[0].isupper() or ":" in words or len(words.split()) > 4:
        return False
    if words.split()[0].lower() in ("with", "using", "holding", "changing", "in"):
        return False
    return not any(word.lower() in _STEP_WORDS for word in words.split())
