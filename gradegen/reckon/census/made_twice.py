"""How many of a piece are made: `Make two.` in its notes, `Sleeve (make 2)` in its name."""

from __future__ import annotations

import re

from gradegen.design.pattern import Piece

_WORDS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "ten": 10, "twelve": 12}
_MADE = re.compile(
    rf"\bmake\s+(?P<number>\d{{1,3}}|{'|'.join(_WORDS)})\b"
    r"(?!\s*(?:more\s+)?(?:sts?|stitch|ch|chains?|rows?|rnds?|rounds?|times|sc|hdc|dc|tr|in\b|cm\b))",
    re.IGNORECASE,
)


def times_made(piece: Piece) -> int:
    """The number of pieces made by these rows; 1 where nothing is said."""
    for text in (piece.name.text, *(note.text for note in piece.notes)):
        if found := _MADE.search(text):
            word = found["number"].lower()
            return max(1, int(word) if word.isdigit() else _WORDS[word])
    return 1
