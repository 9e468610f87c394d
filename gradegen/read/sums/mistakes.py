"""What is wrong with a sum that can't be read, in plain words, at the sign to look at."""

from __future__ import annotations

from difflib import get_close_matches

from gradegen.findings import Rule, Severity
from gradegen.numbers.units import SPELLINGS
from gradegen.read.sums.tokens import Token

FUNCTIONS = ("max", "min", "round", "up", "down")

SUM_UNREADABLE = Rule(
    "sum-unreadable",
    Severity.ERROR,
    "file format",
    "A sum can't be read: a sign, bracket, name or number is not right.",
)
SUM_TOO_LONG = Rule(
    "sum-too-long", Severity.ERROR, "file format", "A sum is longer or more deeply bracketed than any pattern needs."
)


class Misread(Exception):  # noqa: N818  # the reader catches it; it never leaves read_formula
    """Reading stops at text[start:end]."""

    def __init__(self, rule: Rule, start: int, end: int, message: str, hint: str | None = None) -> None:
        self.rule, self.start, self.end, self.message, self.hint = rule, start, end, message, hint


def no_part(text: str, before: Token | None, token: Token) -> Misread:
    """What stands where a number, name or bracket belongs."""
    shown = text[token.start : token.end]
    if token.kind == "end" and before:
        return _at(before, f"Something is missing after {text[before.start : before.end]}: the sum stops here.")
    if token.kind == "bad number":
        return _at(token, f"{shown} is no number; write 6.5, 6 1/2 or 6½.")
    if token.kind == "bad sign":
        return _at(token, f"{shown} has no place in a sum; use + - * / and brackets.")
    return _at(token, f"A number or a name belongs here, before {shown}.")


def stray(text: str, before: Token, token: Token) -> Misread:
    """What stands where a sign + - * / or the end belongs."""
    if token.kind in ("bad number", "bad sign"):
        return no_part(text, before, token)
    if token.text == "," and token.kind == "bracket":
        return _comma(text, token)
    if token.kind == "bracket" and token.text in (")", "]"):
        return _at(token, f"This {token.text} closes nothing.")
    return _missing_sign(before, token, text[before.start : before.end], text[token.start : token.end])


def unknown_function(token: Token) -> Misread:
    """A name before a bracket that is none of the five."""
    near = get_close_matches(token.text.lower(), FUNCTIONS, n=1)
    message = f"{token.text} can't stand before a bracket: there are max, min, round, up and down, or a * is missing."
    return _at(token, message, f"{near[0]}(...)" if near else f"{token.text} * (...)")


def _at(token: Token, message: str, hint: str | None = None) -> Misread:
    return Misread(SUM_UNREADABLE, token.start, token.end, message, hint)


def _comma(text: str, token: Token) -> Misread:
    if text[token.start - 1 : token.start].isdigit() and text[token.end : token.end + 1].isdigit():
        return _at(token, "Write decimals with a point; a comma parts the entries of a list.", "7.5")
    return _at(token, "A comma belongs in lists only.")


def _missing_sign(before: Token, token: Token, left: str, right: str) -> Misread:
    near = get_close_matches(token.text.lower(), SPELLINGS, n=1, cutoff=0.7) if token.kind == "name" else []
    if before.kind == "number" and not before.text and near:
        message = f"{right} is no unit we know; lengths are in in, cm, mm, ft, yd or m."
        return _at(token, message, f"{left} {SPELLINGS[near[0]]}")
    hint = {"name": f"{left} * {right}", "bracket": f"{left} * {right}...)"}.get(token.kind)
    return _at(token, f"A sign + - * or / is missing between {left} and {right}.", hint)
