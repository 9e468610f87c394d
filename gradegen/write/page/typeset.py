"""Plain text as a typesetter sets it: what belongs together stays on one line, and signs are the proper ones."""

from __future__ import annotations

import re

from gradegen.write.words.marks import MARKS, without_marks

NARROW = "\N{NO-BREAK SPACE}"
_NUMBER = r"[0-9½¼¾⅓⅔⅛⅜⅝⅞)]"
_RULES = (
    (re.compile(rf"(?<=\d)-(?=[{MARKS}]?\d)"), "–"),  # 5-13
    (re.compile(r" - "), " – "),
    (re.compile(r"(?<=[A-Za-z])'(?=[a-z])"), "’"),
    (re.compile(rf"(?<={_NUMBER}) (?=(?:sts?|sps?|chs?|rnds?|rows?|reps?|times|more|in|cm|mm|yds?|m|g|oz)\b)"), NARROW),
    (re.compile(rf"(?<={_NUMBER}) (?=(?:FP|BP)?(?:e?sc|e?hdc|e?dc|d?tr)\w*)"), NARROW),
    (re.compile(r"\bfrom (?=\*)"), "from" + NARROW),
    (re.compile(r"\b([Ss]l) (?=sts?\b)"), r"\1" + NARROW),
    (re.compile(r"\b([Cc]h-\d+) (?=sps?\b)"), r"\1" + NARROW),
    (re.compile(rf"\b([Cc]h|[Ss]k|[Rr]nds?|[Rr]ows?|[Ss]izes?|next|last) (?=[{MARKS}]?\d)"), r"\1" + NARROW),
)
_HYPHENED = re.compile(r"(?<![\w-])(?=\S*-[A-Za-z0-9])[\w]+(?:-\w+)+")


def typeset(text: str) -> str:
    """The text with non-breaking spaces between a number and its word, dashes for ranges, and real apostrophes."""
    for pattern, replacement in _RULES:
        text = pattern.sub(replacement, text)
    return text


def plain_again(text: str) -> str:
    """Text read back from a page, made comparable: one kind of hyphen and apostrophe, no blanks, no marks of sizes."""
    text = without_marks(text)
    for sign, plain in (("–", "-"), ("‑", "-"), ("−", "-"), ("’", "'"), ("\N{SOFT HYPHEN}", "")):
        text = text.replace(sign, plain)
    return re.sub(r"\s+", "", text)


def hyphened_words(text: str) -> list[tuple[int, int]]:
    """Where words with a hyphen stand (`ch-1`, `V-st`), which must not break at it."""
    return [found.span() for found in _HYPHENED.finditer(text)]
