"""Spelling: one name for every stitch, one word for every sign, nothing that never changes a count."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

SPELLINGS = (
    (r"\bd\.? tr\.?(?: c)?\b", "dtr"),
    (r"\btr c\b", "tr"),
    (r"\b[sh] d c\b", "hdc"),
    (r"\bs c\b", "sc"),
    (r"\bd c\b", "dc"),
    (r"\bsl(?:ip)?[ -]?st(?:itch)?(?:es|s)?\b|\bss\b", "slst"),
    (r"\bchain\b(?= \d)", "ch"),
    (r"\b(?:stitches|stitch|sts)\b", "st"),
    (r"\b(?:spaces|space|sps|loops|loop|lps|lp|meshes|mesh)\b", "sp"),
    (r"\b(?:repeat|reps?)\b", "rep"),
    (r"\b(?:skip|miss)\b", "sk"),
    (r"\b(?:center|middle)\b", "centre"),
    (r"\bround\b(?! the)|\brnds?\b", "rnd"),
    (r"\bthrough(?:out)?\b", "in"),
    (r"\bchs\b", "ch"),
)
# Things that are said in passing and never change a count.
ASIDES = (
    r"\bgive one end (?:of the (?:chain|strip) )?a half[- ]?(?:turn|twist)(?: and)?",
    r"\b(?:taking care|being careful) not to twist(?: the (?:chain|ch))?",
    r"\bwithout twisting(?: the (?:chain|ch))?",
    r"\b(?:with|in|changing to|change to) (?:colour|color|yarn) [a-z]\b",
    r"\bwith (?:mc|cc)\b",
    r"\bplace (?:a )?marker[^,;.]*",
    r"\bmove marker up\b",
    r"\bdo not (?:turn|join)\b",
    r"\bfasten off\b",
    r"\b(?:in|working in) (?:the )?(?:back|front) sp(?: only)?",
    r"\b(?:in )?[bf]lo\b:?",
    r"\(\d+ (?:st|sc|hdc|dc|tr) (?:increased|decreased)\)",
    r"\bto form (?:a )?ring\b",
    r"\ball (?:the way )?(?:round|around)(?: the (?:band|hat|piece))?",
)
FREE_LOOPS = (
    r"in (?:the )?(?:free|unused|remaining) (?:sp|loop) of each ch"
    r"(?: along (?:the )?(?:other side|underside|second side)(?: of (?:the )?(?:ch|chain|foundation))?)?"
    r"(?: back)?(?: to (?:the )?(?:start|join|beginning))?"
)
TIMES = {"two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8"}
TOKEN = re.compile(r"\*\*|\*|ch-\d+|\d+-[a-z]+|\d+(?:st|nd|rd|th)\b|[a-z_][a-z0-9_]*(?:-[a-z]+)*|\d+|[()\[\]{}.,;:/=]")


class Word(str):
    """A word or sign that knows whether it stood glued to the one before."""

    glued: bool = False


def spell(text: str, own_names: Iterable[str]) -> str:
    """`text` in small letters with one spelling for every stitch and without asides; own names become one word."""
    return _spelled(text, tuple(own_names))


@cache
def _spelled(text: str, own_names: tuple[str, ...]) -> str:
    text = text.lower().replace("’", "'")
    for old, new in SPELLINGS:
        text = re.sub(old, new, text)
    text = re.sub(FREE_LOOPS, "in each freeloop", text)
    text = re.sub(r"\bin (?:the )?(?:[bf]lo|(?:back|front) sp(?: only)?) of\b", "in", text)
    for aside in ASIDES:
        text = re.sub(aside, " around " if aside.startswith(r"\ball") else " ", text)
    text = re.sub(r"\b(" + "|".join(TIMES) + r")(?= (?:more )?times)", lambda found: TIMES[found[1]], text)
    for name in sorted(own_names, key=len, reverse=True):
        plain = name.lower()
        for old, new in SPELLINGS:
            plain = re.sub(old, new, plain)
        text = re.sub(rf"(?<![\w-]){re.escape(plain)}(?:e?s)?(?![\w-])", one_word(name), text)
    return text


@cache
def one_word(name: str) -> str:
    """An own stitch's name as a single word."""
    plain = name.lower()
    for old, new in SPELLINGS:
        plain = re.sub(old, new, plain)
    return "own_" + re.sub(r"[^a-z0-9]+", "_", plain).strip("_")


def words(text: str) -> list[Word]:
    """Words and signs in order; anything else (a dash, a quote) falls away."""
    found, end = [], -1
    for match in TOKEN.finditer(text):
        word = Word(match[0])
        word.glued = match.start() == end
        end = match.end()
        found.append(word)
    return found
