"""Sums as a designer writes them: `bust + 3 in`, `max(bust, hip) / 2`, `[11, 11, 12] in`, `2 * band + 1`.

    sum     = product { (+ | -) product }
    product = part { (* | /) part }
    part    = - part | amount | list | name | function ( sum { , sum } ) | ( sum )
    amount  = number [unit]                  one token: 3 in, 6½ in, 7.5 cm, 3", 12 sts
    list    = [ amount { , amount } ] [unit] | amount ( amount { , amount } ) ... [unit]     one entry per size

`2/3` without blanks is one number, `2 / 3` a division. The reader knows no names: whether `upper arm` exists is
asked where the sum is worked out. Length and depth are limited, so no text can exhaust the reader.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import takewhile

from gradegen.design.formula import Amount, Call, Formula, Name, PerSize, Sum
from gradegen.findings import Finding, Place, Written
from gradegen.numbers.units import SPELLINGS
from gradegen.read.sums.mistakes import (
    FUNCTIONS,
    SUM_TOO_LONG,
    SUM_UNREADABLE,
    Misread,
    no_part,
    stray,
    unknown_function,
)
from gradegen.read.sums.tokens import Token, cut_tokens

LONGEST = 1000  # characters
DEEPEST = 30  # brackets within brackets
MOST_PARTS = 100  # signs + - * / in one sum; keeps the tree shallow enough to walk

Findings = tuple[Finding, ...]


def read_formula(written: Written, start: int = 0, end: int | None = None) -> tuple[Formula | None, Findings]:
    """The sum in text[start:end] as a tree; None and one finding at the exact character when it can't be read."""
    end = len(written.text) if end is None else end
    if end - start > LONGEST:
        place = written.place(start + LONGEST, end)
        return None, (SUM_TOO_LONG.at(place, f"This sum is longer than {LONGEST} characters; split it in two."),)
    try:
        return _Reader(written, list(cut_tokens(written.text, start, end))).whole_sum(), ()
    except Misread as misread:
        place = written.place(misread.start, misread.end)
        return None, (misread.rule.at(place, misread.message, hint=misread.hint),)


def read_amount(written: Written, start: int = 0, end: int | None = None) -> tuple[Amount | None, Findings]:
    """One number with or without a unit (`4 in`, `6 mm`, `168 g`); None and a finding for anything else."""
    formula, findings = read_formula(written, start, end)
    if formula is None or isinstance(formula, Amount):
        return formula, findings
    return None, (SUM_UNREADABLE.at(formula.place, "Write one number with its unit here, such as 4 in or 10 cm."),)


def is_name(text: str) -> bool:
    """True when a sum can call something by this name: words of letters, digits, _ and ', and no function's name."""
    first, *rest = cut_tokens(text, 0, len(text))
    return first.kind == "name" and len(rest) == 1 and first.text.lower() not in FUNCTIONS


class _Reader:
    """Goes once along the tokens; every method leaves `at` behind what it read."""

    def __init__(self, written: Written, tokens: list[Token]) -> None:
        self.written, self.tokens = written, tokens
        self.at, self.depth = 0, 0
        if sum(token.kind == "sign" for token in tokens) > MOST_PARTS:
            message = "This sum has too many parts; split it in two."
            raise Misread(SUM_TOO_LONG, tokens[0].start, tokens[-1].end, message)

    @property
    def here(self) -> Token:
        return self.tokens[self.at]

    def take(self) -> Token:
        token = self.here
        self.at += 1
        return token

    def sees(self, kind: str, *texts: str) -> bool:
        return self.here.kind == kind and (not texts or self.here.text in texts)

    def place(self, start: int) -> Place:
        return self.written.place(start, self.tokens[self.at - 1].end)

    def stray(self) -> Misread:
        return stray(self.written.text, self.tokens[self.at - 1], self.here)

    def whole_sum(self) -> Formula:
        if self.sees("end"):
            at = self.here.start
            raise Misread(SUM_UNREADABLE, max(at - 1, 0), at, "There is no sum here; write one such as bust + 3 in.")
        formula = self.sum()
        if not self.sees("end"):
            raise self.stray()
        return formula

    def sum(self) -> Formula:
        start, left = self.here.start, self.product()
        while self.sees("sign", "+", "-"):
            sign, right = self.take().text, self.product()
            left = Sum(sign, left, right, self.place(start))
        return left

    def product(self) -> Formula:
        start, left = self.here.start, self.part()
        while self.sees("sign", "*", "/"):
            sign, right = self.take().text, self.part()
            left = Sum(sign, left, right, self.place(start))
        return left

    def part(self) -> Formula:
        if self.depth >= DEEPEST:
            message = "There are too many brackets within brackets here."
            raise Misread(SUM_TOO_LONG, self.here.start, self.here.end, message)
        self.depth += 1
        formula = self.bare_part(self.take())
        self.depth -= 1
        return formula

    def bare_part(self, token: Token) -> Formula:
        match token.kind, token.text:
            case "number", _:
                return self.amount_or_list(token)
            case "name", _:
                return self.call(token) if self.sees("bracket", "(") else self.name(token)
            case "sign", "-":
                return self.negative(token)
            case "bracket", "[":
                return self.with_unit(self.entries(token, "]"), token.start)
            case "bracket", "(":
                formula = self.sum()
                self.close(token, ")")
                return formula
        raise no_part(self.written.text, self.tokens[self.at - 2] if self.at > 1 else None, token)

    def amount(self, token: Token) -> Amount:
        return Amount(token.number, token.text or None, self.written.place(token.start, token.end))

    def negative(self, token: Token) -> Formula:
        whole = self.part()
        if isinstance(whole, Amount):
            return replace(whole, number=-whole.number, place=self.place(token.start))
        minus = self.written.place(token.start, token.end)
        return Sum("*", Amount(Fraction(-1), None, minus), whole, self.place(token.start))

    def name(self, token: Token) -> Name:
        if token.text.lower() in FUNCTIONS:
            hint = f"{token.text.lower()}(first, second)"
            raise Misread(SUM_UNREADABLE, token.start, token.end, f"{token.text} needs brackets after it.", hint)
        return Name(token.text, self.written.place(token.start, token.end))

    def call(self, token: Token) -> Call:
        function = token.text.lower()
        if function not in FUNCTIONS:
            raise unknown_function(token)
        bracket = self.take()
        parts = [self.sum()]
        while self.sees("bracket", ","):
            self.take()
            parts.append(self.sum())
        self.close(bracket, ")")
        if function not in ("max", "min") and len(parts) > 2:
            message = f"{function} takes a length or number, and if wanted the step it goes by."
            raise Misread(SUM_UNREADABLE, token.start, token.end, message, f"{function}(bust, 1/4 in)")
        return Call(function, tuple(parts), self.place(token.start))

    def close(self, opened: Token, closing: str) -> None:
        if self.sees("end"):
            message = f"The {opened.text} opened here is never closed."
            raise Misread(SUM_UNREADABLE, opened.start, opened.end, message)
        if not self.sees("bracket", closing):
            raise self.stray()
        self.take()

    def amount_or_list(self, token: Token) -> Formula:
        """One amount, or a list as the trade writes it: `84 (90, 96)`, `1 (2, 3) (4, 5)`."""
        if not self.opens_list():
            return self.amount(token)
        entries = [self.amount(token)]
        while self.opens_list():
            entries += self.entries(self.take(), ")")
        return self.with_unit(entries, token.start)

    def opens_list(self) -> bool:
        """True before a bracket that holds nothing but numbers and commas."""
        if not self.sees("bracket", "("):
            return False
        inside = list(takewhile(lambda token: token.text != ")" and token.kind != "end", self.tokens[self.at + 1 :]))
        plain = all(token.kind == "number" or token.text in (",", "-") for token in inside)
        return plain and any(token.kind == "number" for token in inside)

    def entries(self, opened: Token, closing: str) -> list[Amount]:
        entries = [self.entry()]
        while self.sees("bracket", ","):
            self.take()
            entries.append(self.entry())
        self.close(opened, closing)
        return entries

    def entry(self) -> Amount:
        token = self.take()
        negative = token.kind == "sign" and token.text == "-"
        number = self.take() if negative and self.sees("number") else token
        if number.kind != "number":
            message = "A list for all sizes holds one number per size and nothing else."
            raise Misread(SUM_UNREADABLE, number.start, max(number.end, number.start + 1), message)
        value = -number.number if negative else number.number
        return Amount(value, number.text or None, self.written.place(token.start, number.end))

    def with_unit(self, entries: list[Amount], start: int) -> PerSize:
        """The list with the unit that follows it, if one does; an entry may then have no other unit of its own."""
        token = self.here
        spelled = {"unit": token.text, "name": SPELLINGS.get(token.text.lower(), "")}.get(token.kind)
        if spelled:
            self.take()
            other = next((entry.unit for entry in entries if entry.unit not in (None, spelled)), None)
            if other:
                message = f"The list is in {spelled}, and a number in it in {other}."
                raise Misread(SUM_UNREADABLE, token.start, token.end, message)
            entries = [replace(entry, unit=spelled) for entry in entries]
        return PerSize(tuple(entries), self.place(start))
