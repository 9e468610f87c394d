"""Where the reader of a row stands: its tokens, how far it is, and what it has found so far.

A form (`read_...`) that does not fit gives None or False and leaves the reader where it was.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal, NamedTuple

from gradegen.design.rows import Listed, Number, Step, Thing
from gradegen.findings import Finding, Place, Written
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.notation.words.tokens import Token
from gradegen.read.notation.words.word_lists import Phrases

Loop = Literal["front", "back"]
SEPARATORS = frozenset({",", ";", ".", ":"})
_BREAKS = frozenset({",", ";", ".", ":", "close", "star", "end"})
_GOING_ON = frozenset({"and", "then", "ending", "until", "till"})
DEEPEST = 12  # brackets within brackets
FURTHEST = 6  # places of places: `in st of shell of ...`, `in st and in st and ...`


class UnknownStitch(NamedTuple):
    """A stitch nobody explained, text[start:end]; `bare`: no place behind it makes it sure."""

    name: str
    start: int
    end: int
    bare: bool


@dataclass(slots=True)
class Reading:
    """The state of one row's reader; `at` moves forward only, or back to a mark after a form did not fit."""

    written: Written
    names: RowNames
    tokens: list[Token]
    at: int = 0
    depth: int = 0
    within: int = 0
    loop: Loop | None = None
    stop: Thing | None = None  # the ch-2 sp of `to the ch-2 sp`, which `in it` may mean
    tight_in_one: bool | None = None
    uses_tight: bool = False
    findings: list[Finding] = field(default_factory=list)
    unknown: list[UnknownStitch] = field(default_factory=list)
    counting: int | None = None
    bodies: dict[str, tuple[Step, ...]] = field(default_factory=dict)
    ran_on: list[Place] = field(default_factory=list)  # `sc 3 around`: a limit behind a number
    partners: dict[int, int] = field(default_factory=dict)
    lists: list[Listed] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Adds what ends every reading, and finds each bracket's partner once, so that no search runs twice."""
        stop = len(self.written.text)
        self.tokens = [*self.tokens, *(Token("end", "", stop, stop) for _ in range(10))]
        opened: list[int] = []
        for i, token in enumerate(self.tokens):
            if token.kind == "open":
                opened.append(i)
            elif token.kind == "close" and opened:
                self.partners[opened.pop()] = i

    @property
    def here(self) -> Token:
        """The token the reader stands before."""
        return self.tokens[self.at]

    def peek(self, ahead: int = 1) -> Token:
        """The token so many places ahead."""
        return self.tokens[self.at + ahead]

    def low(self, ahead: int = 0) -> str:
        """The word ahead in small letters; "" when it is no word."""
        token = self.tokens[self.at + ahead]
        return token.low if token.kind == "word" else ""

    def sees(self, *words: str) -> bool:
        """True when these words stand here, one after the other."""
        return all(self.tokens[self.at + i].low == word for i, word in enumerate(words))

    def accept(self, *words: str) -> bool:
        """Moves past one of these words or signs; False when none stands here."""
        token = self.tokens[self.at]
        if token.low in words and token.kind != "end":
            self.at += 1
            return True
        return False

    def accept_all(self, *words: str) -> bool:
        """Moves past these words in this order, or not at all."""
        if not self.sees(*words):
            return False
        self.at += len(words)
        return True

    def phrase(self, known: Phrases) -> bool:
        """Moves past the longest of the phrases that stands here."""
        return any(self.accept_all(*parts) for parts in known.get(self.tokens[self.at].low, ()))

    def number(self) -> Number | None:
        """The number, size list or sum that stands here."""
        token = self.tokens[self.at]
        if token.kind == "count" and isinstance(token.value, Number):
            self.at += 1
            return token.value
        if token.kind == "number" and isinstance(token.value, int):
            self.at += 1
            return self.whole(token.value, token.start, token.end)
        return None

    def whole(self, value: int, start: int, end: int) -> Number:
        """The same number for all sizes, written at text[start:end]."""
        place = self.written.place(start, end)
        return Number((value,), place=place, places=(place,))

    def chain_length(self, token: Token) -> Number:
        """The 5 of `ch-5`, the list or sum of `ch-6 (6, 8)`, `ch-{underarm}`."""
        if isinstance(token.value, Number):
            return token.value
        return self.whole(int(str(token.value)), token.start, token.end)

    def ordinal(self) -> Number | None:
        """`3rd`, `first`, `second` here as a number."""
        token = self.tokens[self.at]
        value = token.value if token.kind == "ordinal" else ORDINALS.get(token.low)
        if not isinstance(value, int):
            return None
        self.at += 1
        return self.whole(value, token.start, token.end)

    def place(self, mark: int, to: int | None = None) -> Place:
        """From the token at `mark` to before the one at `to` (here)."""
        last = max((self.at if to is None else to) - 1, mark)
        return self.written.place(self.tokens[mark].start, self.tokens[last].end)

    def text(self, mark: int, to: int | None = None) -> str:
        """The words from `mark` to before `to` (here) as written."""
        last = max((self.at if to is None else to) - 1, mark)
        return self.written.text[self.tokens[mark].start : self.tokens[last].end]

    def span(self, mark: int) -> tuple[int, int]:
        """Where in the text the words read since `mark` stand."""
        return self.tokens[mark].start, self.tokens[self.at - 1].end

    def partner(self, at: int) -> int | None:
        """Where the bracket that opens at `at` closes."""
        return self.partners.get(at)

    def at_break(self) -> bool:
        """True where one step may end: before a separator, star or bracket, or before "and", "then"."""
        token = self.tokens[self.at]
        if token.kind in _BREAKS or token.kind in ("open", "=", "-"):
            return True
        if token.kind == "count":
            return self.written.text[token.start] in "([{"
        if token.kind != "word":
            return False
        if token.low in ("rep", "repeat"):
            after = self.tokens[self.at + 1]
            return after.low == "from" or (
                after.kind in ("number", "count") and self.tokens[self.at + 2].low == "times"
            )
        return self._goes_on() or (token.low == "end" and self.tokens[self.at + 1].low in ("with", "last"))

    def _goes_on(self) -> bool:
        """`and`, `then`; behind the end of a row `with 3 sc in each corner` too."""
        word, at = self.tokens[self.at].low, self.at
        if word in ("with", "making", "placing", "working") and self.tokens[at - 1].low in ("around", "across", "end"):
            return self.tokens[at + 1].kind == "number" and self.tokens[at + 2].kind == "stitch"
        if word == "for":
            return [token.low for token in self.tokens[at + 1 : at + 3]] == ["a", "total"]
        return word in _GOING_ON

    def next_break(self, mark: int) -> int:
        """The index of the next separator, star or closing bracket; brackets in between are passed whole."""
        i = mark
        while self.tokens[i].kind not in _BREAKS:
            partner = self.partners.get(i) if self.tokens[i].kind == "open" else None
            i = i + 1 if partner is None else partner + 1
        return i


ORDINALS = {"first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6}


def is_one(number: Number | None) -> bool:
    """True for a plain 1, which is never written into the tree."""
    return number is not None and number.formula is None and number.values == (1,)


def unless_one(number: Number | None) -> Number | None:
    """The number; None for a plain 1."""
    return None if is_one(number) else number


def plain(number: Number | None) -> int | None:
    """The value of a number that is the same for all sizes."""
    return number.values[0] if number is not None and number.formula is None and len(number.values) == 1 else None
