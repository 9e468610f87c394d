"""Row numbers in labels: `5`, `3-8 (12)`, `18 (19, 20)-60`, `12th-15th (14th-17th)`, `4 and 5`, `2, 4, 6, ... 12`."""

from __future__ import annotations

from dataclasses import dataclass, field

from gradegen.design.rows import Listed, Number
from gradegen.findings import Finding, Written
from gradegen.read.notation.sizes.list_entries import Entry
from gradegen.read.notation.sizes.size_lists import wrong_length
from gradegen.read.notation.words.row_names import RowNames
from gradegen.read.notation.words.tokens import Token

ROW_WORDS = {
    "row": "row", "rows": "row", "r": "row",
    "rnd": "round", "rnds": "round", "round": "round", "rounds": "round", "rd": "round", "rds": "round", "rn": "round",
}  # fmt: skip
_TO = frozenset({"to", "through", "thru"})
_MOST = 60


@dataclass(slots=True)
class RowNumbers:
    """What the numbers of a label say."""

    first: Number | None = None
    last: Number | None = None
    listed: tuple[Number, ...] = ()
    lists: list[Listed] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)


@dataclass(slots=True)
class _Span:
    """One item of the numbers: first and last per size, as entries."""

    firsts: list[Entry]
    lasts: list[Entry]


class NumberReader:
    """Goes along the tokens of a label; `at` is left behind what was read."""

    def __init__(self, written: Written, tokens: list[Token], names: RowNames) -> None:
        self.written, self.tokens, self.names, self.at = written, tokens, names, 0

    def token(self, ahead: int = 0) -> Token:
        """The token so many places ahead; an "end" token behind the last."""
        i = self.at + ahead
        return self.tokens[i] if i < len(self.tokens) else Token("end", "", 0, 0)

    def read(self) -> RowNumbers | None:
        """The numbers that stand here; None when none does."""
        spans: list[_Span] = []
        while len(spans) < _MOST:
            span = self._span()
            if span is None:
                break
            spans.append(span)
            if not self._another():
                break
        return self._numbers(spans) if spans else None

    def _another(self) -> bool:
        """Moves past what joins two numbers, when a number follows."""
        mark = self.at
        while (
            self.token().kind in (",", "other", ".")
            or self.token().low in ("and", "&", "+")
            or self.token().low in ROW_WORDS
        ):
            self.at += 1
        if self.at > mark and self._value() is not None:
            return True
        self.at = mark
        return False

    def _value(self) -> Entry | None:
        token = self.token()
        if token.kind in ("number", "ordinal") and isinstance(token.value, int):
            return Entry(token.value, token.start, token.end)
        if token.kind == "count" and isinstance(token.value, Number):
            return Entry(None, token.start, token.end, sum=token.value)
        return None

    def _span(self) -> _Span | None:
        first = self._value()
        if first is None:
            return None
        self.at += 1
        firsts, lasts = [first, *self._coloned()], [*self._to_last()]
        lasts += self._coloned() if lasts else []
        others = [] if lasts and self.token(-2).kind == "-" else self._hyphened()
        if others:
            return _Span(firsts, [*lasts, *others]) if lasts else _Span([*firsts, *others], [])
        while (more := self._bracket(bool(lasts))) is not None:
            if lasts:
                firsts += more.firsts if more.lasts else []
                lasts += more.lasts or more.firsts
            else:
                firsts += more.firsts
                lasts += more.lasts
        if not lasts:
            lasts = [*self._to_last()]
            while lasts and (more := self._bracket(True)) is not None:
                lasts += more.lasts or more.firsts
        return _Span(firsts, lasts)

    def _coloned(self) -> list[Entry]:
        """The `:8:9` of `4-8:8:9`: a number for each of the other sizes, two or more."""
        mark, entries = self.at, list[Entry]()
        while self.token().kind == ":" and self.token(1).kind == "number" and (len(self.names.sizes) > 2):
            self.at += 1
            entries += [entry] if (entry := self._value()) is not None else []
            self.at += 1
        if len(entries) == len(self.names.sizes) - 1:
            return entries
        self.at = mark
        return []

    def _hyphened(self) -> list[Entry]:
        """The `(10th-11th)` of `5th to 9th (10th-11th)`: a number for each of the other sizes, two or more."""
        mark, entries = self.at, list[Entry]()
        if self.token().kind == "open":
            self.at += 1
            while (entry := self._value()) is not None:
                entries.append(entry)
                self.at += 1
                if self.token().kind != "-":
                    break
                self.at += 1
            if self.token().kind == "close" and 1 < len(entries) == len(self.names.sizes) - 1:
                self.at += 1
                return entries
        self.at = mark
        return []

    def _to_last(self) -> list[Entry]:
        """The number behind `-`, `to`."""
        mark = self.at
        if self.token().kind == "." and self.token(1).kind == "-":
            self.at += 1  # `8.-14.`
        if self.token().kind == "-" or self.token().low in _TO:
            self.at += 1
            if self.token().low in ROW_WORDS:
                self.at += 1
            last = self._value()
            if last is not None:
                self.at += 1
                return [last]
        self.at = mark
        return []

    def _bracket(self, after_range: bool) -> _Span | None:
        """`(17, 18)`, `(14th-17th)`, `(6th through 10th, 7th through 12th)`; None, and nothing read, for words."""
        mark = self.at
        if self.token().kind != "open":
            return None
        self.at += 1
        firsts: list[Entry] = []
        lasts: list[Entry] = []
        while True:
            entry = self._value()
            if entry is None:
                break
            firsts.append(entry)
            self.at += 1
            lasts += self._to_last()
            if self.token().kind in (",", ":", ";"):
                self.at += 1
            elif self.token().kind == "close":
                self.at += 1
                return _Span(firsts, lasts)
            else:
                break
        self.at = mark
        return None

    def _numbers(self, spans: list[_Span]) -> RowNumbers:
        out = RowNumbers()
        spans = self._pairs_apart(spans)
        numbers = [
            (self._number(span.firsts, out), self._number(span.lasts, out) if span.lasts else None) for span in spans
        ]
        out.first, out.last = numbers[0]
        if len(numbers) > 1:
            out.listed = tuple(one for first, last in numbers for one in ((first, last) if last else (first,)))
            out.last = numbers[-1][1] or numbers[-1][0]
        return out

    def _pairs_apart(self, spans: list[_Span]) -> list[_Span]:
        """`17th, 18th (19th, 20th)` in two sizes: rows 17 and 18 of the one, 19 and 20 of the other."""
        sizes, rows = len(self.names.sizes), len(spans)
        entries = [entry for span in spans for entry in span.firsts]
        single = all(len(span.firsts) == 1 for span in spans[:-1]) and not any(span.lasts for span in spans)
        if rows < 2 or not single or len(spans[-1].firsts) == sizes or len(entries) != rows * sizes:
            return spans
        return [_Span(entries[i::rows], []) for i in range(rows)]

    def _number(self, entries: list[Entry], out: RowNumbers) -> Number:
        if len(entries) == 1 and entries[0].sum is not None:
            return entries[0].sum
        start, end = entries[0].start, entries[-1].end
        place = self.written.place(start, end)
        if len(entries) > 1:
            texts = tuple(self.written.text[entry.start : entry.end] for entry in entries)
            if self.written.text[end : end + 1] in (")", "]", "}"):
                end += 1
            out.lists.append(Listed(start, end, texts))
            if len(entries) != len(self.names.sizes) and not out.findings:
                out.findings.append(wrong_length(self.written, entries, start, end, self.names))
        places = tuple(self.written.place(entry.start, entry.end) for entry in entries)
        return Number(tuple(entry.value for entry in entries), place=place, places=places)
