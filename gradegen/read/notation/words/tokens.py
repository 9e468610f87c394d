"""The words, numbers and signs of a written row, each with its offsets in the text."""

from __future__ import annotations

import re
from typing import NamedTuple

from gradegen.design.rows import Number


class Token(NamedTuple):
    """One word, number or sign: text[start:end].

    `kind`: "word", "number" (`value`: the int), "count" (`value`: a Number per size or a sum), "measure" (a fraction or
    decimal), "ordinal" (`value`: 3 for "3rd"), "stitch" (`value`: its id; `own`: defined by the pattern), "chain"
    (`ch-2`; `value` 2), "open", "close", "star" ("*", "**"), "end", or the sign itself: , ; . : - / = x + " #.
    """

    kind: str
    low: str
    start: int
    end: int
    value: int | str | Number | None = None
    own: bool = False


_FRACTION = "½¼¾⅓⅔⅛⅜⅝⅞"
_SCAN = re.compile(
    rf"""\s+
    |(?P<ordinal>\d+(?:st|nd|rd|th)\b)
    |(?P<measure>\d*[{_FRACTION}]|\d+\.\d+|(?<![\d/])(?:\d+[ -])?\d+/(?:2|3|4|8|16)\b(?!/))
    |(?P<number>\d+)
    |(?P<word>w/(?=[ ]?[A-Za-z])|[A-Za-z][A-Za-z0-9]*(?:[-'’‑][A-Za-z0-9]+)*)
    |(?P<star>\*+)
    |(?P<open>[(\[{{]|<(?=\d[^<>\n]*>))
    |(?P<close>[)\]}}]|(?<=[\w.])>)
    |(?P<dash>[-–—−]+)
    |(?P<sign>[,;.:/=+×&])
    |(?P<other>.)""",
    re.VERBOSE,
)
_SHORTENED = frozenset({"dk", "lt", "med"})  # `Dk. Rose`: no end of a sentence
_CHAIN = re.compile(r"(?:ch|chain)[-‑]?(\d+)(?:[-‑]?(sps?|spaces?|loops?|lps?))?$")
_TIGHT = re.compile(r"([a-z]+)(\d+)$")
_NUMBER_WORDS = {
    word: number
    for number, word in enumerate(
        (
            *(
                "zero",
                "one",
                "two",
                "three",
                "four",
                "five",
                "six",
                "seven",
                "eight",
                "nine",
                "ten",
                "eleven",
                "twelve",
            ),
            *("thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"),
        )
    )
}


def scan(text: str) -> list[Token]:
    """The tokens of a text in order; blanks and quotation marks are left out, nothing else is lost."""
    tokens: list[Token] = []
    for found in _SCAN.finditer(text):
        kind = found.lastgroup
        if kind is None or (found.group() == "." and tokens and tokens[-1].low in _SHORTENED):
            continue
        tokens.extend(_token(kind, found.group(), found.start(), found.end()))
    return tokens


def _token(kind: str, text: str, start: int, end: int) -> tuple[Token, ...]:
    if kind == "word":
        return _word(text.lower().replace("’", "'").replace("‑", "-"), start, end)
    if kind == "number":
        return (Token("number", text, start, end, int(text[:9])),)
    if kind == "ordinal":
        return _ordinal(text, start, end)
    if kind == "dash":
        return (Token("-", text, start, end),)
    if kind == "sign":
        return (Token({"×": "x", "&": "word"}.get(text, text), "and" if text == "&" else text, start, end),)
    if kind == "other":
        return () if text in "\"'“”‘’`" else (Token("other", text, start, end),)
    return (Token(kind, text, start, end),)


def _ordinal(text: str, start: int, end: int) -> tuple[Token, ...]:
    value, ending = int(text[:-2][:9]), text[-2:]
    if ending == "st" and (value % 10 != 1 or value % 100 == 11):  # "2st" is two stitches
        return Token("number", text[:-2], start, end - 2, value), Token("word", "st", end - 2, end)
    return (Token("ordinal", text, start, end, value),)


def _word(low: str, start: int, end: int) -> tuple[Token, ...]:
    if low in _NUMBER_WORDS:
        return (Token("number", low, start, end, _NUMBER_WORDS[low]),)
    if low == "x":
        return (Token("x", low, start, end),)
    if low[0] == "c" and (chain := _CHAIN.match(low)) and ("-" in low or chain.group(2)):
        return _chain(chain, start, end)
    return (Token("word", _IN_FULL.get(low, low), start, end),)


_IN_FULL = {
    "nxt": "next",
    "hk": "hook",
    "ea": "each",
    "foll": "following",
    "prev": "previous",
    "betw": "between",
    "w/": "with",
}


def _chain(found: re.Match[str], start: int, end: int) -> tuple[Token, ...]:
    cut = start + found.end(1)
    first = Token("chain", found.string[: found.end(1)], start, cut, int(found.group(1)[:9]))
    rest = found.group(2)
    return (first, Token("word", rest, end - len(rest), end)) if rest else (first,)


def split_tight(token: Token) -> tuple[Token, Token] | None:
    """`dc2` as word and number; None when the word does not end in a number."""
    found = _TIGHT.match(token.low)
    if not found:
        return None
    cut = token.start + found.end(1)
    head = (
        Token("x", "x", token.start, cut) if found.group(1) == "x" else Token("word", found.group(1), token.start, cut)
    )
    return head, Token("number", found.group(2), cut, token.end, int(found.group(2)[:9]))


_TIGHT_ROW = re.compile(r"(rows?|rnds?|rounds?|rds?|r)(\d+)(?:-(?:rows?|rnds?|rounds?|rds?|r)?(\d+))?$")


def row_word_parted(token: Token) -> list[Token] | None:
    """`R5`, `Rnd12`, `R6-10` as row word and numbers."""
    found = _TIGHT_ROW.match(token.low) if token.kind == "word" else None
    if found is None:
        return None
    start = token.start
    parts = [Token("word", found.group(1), start, start + found.end(1))]
    for group in (2, 3):
        if found.group(group):
            if group == 3:
                parts.append(Token("-", "-", start + found.end(2), start + found.start(3)))
            begin, end = start + found.start(group), start + found.end(group)
            parts.append(Token("number", found.group(group), begin, end, int(found.group(group)[:9])))
    return parts
