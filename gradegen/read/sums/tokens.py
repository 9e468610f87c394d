"""The parts of a sum: a number with its unit is one token, a name may have blanks in it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from gradegen.numbers.exact import NUMBER, VULGAR, matched_value
from gradegen.numbers.units import SPELLINGS

SIGNS = {"+": "+", "-": "-", "−": "-", "–": "-", "*": "*", "×": "*", "·": "*", "/": "/", "÷": "/"}
BRACKETS = "()[],"
MARKS = {"''": "in", '"': "in", "″": "in", "”": "in", "'": "ft", "′": "ft", "’": "ft"}  # after a number

Kind = Literal["number", "name", "unit", "sign", "bracket", "bad number", "bad sign", "end"]


@dataclass(frozen=True, slots=True)
class Token:
    """One part of a sum: `text` is the sign, bracket, name, or unit (of a `number` too) in its one spelling."""

    kind: Kind
    text: str
    start: int
    end: int
    number: Fraction = Fraction(0)


def cut_tokens(text: str, start: int, end: int) -> Iterator[Token]:
    """The tokens of text[start:end], closed by an "end" token; offsets count in the whole text."""
    at = start
    while at < end:
        if text[at].isspace():
            at += 1
            continue
        token = _token_at(text, at, end)
        yield token
        at = token.end
    yield Token("end", "", end, end)


def _token_at(text: str, at: int, end: int) -> Token:
    sign = text[at]
    if sign in "0123456789." or sign in VULGAR:
        return _number(text, at, end)
    if sign.isalpha():
        stop = _name_end(text, at, end)
        return Token("name", " ".join(text[at:stop].split()), at, stop)
    if sign in SIGNS:
        return Token("sign", SIGNS[sign], at, at + 1)
    if sign in BRACKETS:
        return Token("bracket", sign, at, at + 1)
    mark = _mark(text, at, end)
    return Token("unit", mark[0], at, mark[1]) if mark else Token("bad sign", sign, at, at + 1)


def _number(text: str, at: int, end: int) -> Token:
    found = NUMBER.match(text, at, end)
    value = matched_value(found) if found else None
    stop = found.end() if found else at + 1
    if value is None or text[stop : stop + 1] == ".":
        while stop < end and text[stop] in "0123456789./":
            stop += 1
        return Token("bad number", text[at:stop], at, stop)
    unit, after = _unit(text, stop, end)
    return Token("number", unit, at, after, value)


def _unit(text: str, at: int, end: int) -> tuple[str, int]:
    """The unit that follows a number, in its one spelling, and where it ends; "" and the number's end for none."""
    mark = _mark(text, at, end)
    if mark:
        return mark
    word = at
    while word < end and text[word] in " \t":
        word += 1
    stop = word
    while stop < end and (text[stop].isalnum() or text[stop] in "_'’-"):
        stop += 1
    spelling = SPELLINGS.get(text[word:stop].lower(), "")
    return (spelling, stop) if spelling else ("", at)


def _mark(text: str, at: int, end: int) -> tuple[str, int] | None:
    for mark, unit in MARKS.items():
        if text.startswith(mark, at, end):
            return unit, at + len(mark)
    return None


def _word_end(text: str, at: int, end: int) -> int:
    """Where a word ends: letters, digits, _ and ' go on; a hyphen only between two letters (`cross-back`)."""
    while at < end:
        tight = text[at] == "-" and text[at + 1 : at + 2].isalpha() and at + 1 < end
        if not (text[at].isalpha() or text[at] in "0123456789_'’" or tight):
            break
        at += 1
    return at


def _name_end(text: str, at: int, end: int) -> int:
    """Where a name ends: words that begin with a letter, with blanks between."""
    stop = _word_end(text, at, end)
    while True:
        word = stop
        while word < end and text[word] in " \t\n":
            word += 1
        if word == stop or word >= end or not text[word].isalpha():
            return stop
        stop = _word_end(text, word, end)
